/** The ready-made caseload for the pictures: its rows under the few headers that they read. */
import type { Header } from "../../../src/caseload/headers";
import type { RowsTable } from "../../../src/caseload/names";
import { AS_OF } from "../../../src/columns/as-of";
import { wordKey } from "../../../src/columns/spelling";
import type { Check } from "../../../src/pictures/checks";
import { devicesOf } from "../../../src/pictures/devices";
import type { Tube } from "../../../src/pictures/tubes";
import type { Overview, TableOverview, Value, Workbook } from "../../workbook/port";
import { textOf } from "../caseload/cells";
import { lists } from "../caseload/lists";
import { named, namesOf } from "../caseload/read";
import { headerKey, type Tables } from "../caseload/recognise";
import type { Pictured } from "./interface";

const read = {
  tubes: [
    ...["ID", "Status", "Held by", "Shape", "Lot", "Device in", "Status since", "Booked for", "Change due", "Access"],
  ],
  changes: ["ID", "In", "Out", "Reason", "Days in place", "Failed", "Unplanned", "Held by", "Shape", "Lot"],
  checks: ["ID", "Access", "Checked on", "Expected mL", "Loss mL", "State"],
} as const satisfies { readonly [T in RowsTable]: readonly Header<T>[] };
type Read<T extends RowsTable> = (typeof read)[T][number];

interface Rows<T extends RowsTable> {
  readonly count: number;
  /** Of the first row, as people count. */
  readonly firstRow: number;
  /** What stands in a row under a header; null where the column was left out. */
  readonly at: (row: number, header: Read<T>) => Value;
}

/** Column by column: a caseload's rows have 170 columns, and few are wanted. */
async function readColumns<T extends RowsTable>(
  workbook: Pick<Workbook, "read">,
  table: TableOverview,
  of: T,
): Promise<Rows<T>> {
  const { sheet, area, hasTotals } = table;
  const count = Math.max(0, area.rows - 1 - (hasTotals ? 1 : 0));
  const keys = table.columns.map(headerKey);
  const column = async (header: string): Promise<readonly Value[]> => {
    const at = keys.indexOf(headerKey(header));
    if (at < 0 || count === 0) return [];
    const cells = { top: area.top + 1, left: area.left + at, rows: count, columns: 1 };
    const { values = [] } = await workbook.read({ sheet, area: cells }, ["values"]);
    return values.map(([value]) => value ?? null);
  };
  const columns = new Map(
    await Promise.all(read[of].map(async (header) => [header as string, await column(header)] as const)),
  );
  return { count, firstRow: area.top + 2, at: (row, header) => columns.get(header)?.[row] ?? null };
}

const whole = (n: number): readonly number[] => Array.from({ length: n }, (_, i) => i);
const dayIn = (value: Value): number | null => (typeof value === "number" && value > 0 ? Math.floor(value) : null);
const numberIn = (value: Value): number | null => (typeof value === "number" ? value : null);

export async function readCaseloadPictured(
  workbook: Pick<Workbook, "read">,
  overview: Overview,
  tables: Tables,
  today: number,
): Promise<Pictured> {
  const [tubes, changes, checks] = await Promise.all([
    readColumns(workbook, tables.tubes, "tubes"),
    readColumns(workbook, tables.changes, "changes"),
    readColumns(workbook, tables.checks, "checks"),
  ]);
  const names = namesOf(overview);
  const day = (name: string): number | null => dayIn(named(names, name));
  const setting = (name: string): number | null => numberIn(named(names, name));
  const asOf = day(AS_OF) ?? today;
  const facts = devicesOf(
    {
      changes: whole(changes.count).map((row) => (header) => changes.at(row, header as Read<"changes">)),
      tubes: whole(tubes.count).map((row) => (header) => tubes.at(row, header as Read<"tubes">)),
    },
    asOf,
    day("Day_Oldest") ?? 1,
  );
  return {
    is: "pictured",
    ...facts,
    asOf,
    tubes: whole(tubes.count).flatMap((row) => tubeIn(tubes, row)),
    checks: checksIn(checks),
    lossLimits: { smallUpTo: setting("Fill_Small"), small: setting("Loss_Small"), large: setting("Loss_Large") },
    sheetRows: {
      changes: whole(changes.count).map((row) => changes.firstRow + row),
      tubes: whole(tubes.count).map((row) => tubes.firstRow + row),
    },
    own: null,
  };
}

/** A row in use; none for a blank one and for somebody who is away or has left. */
function tubeIn(tubes: Rows<"tubes">, row: number): readonly Tube[] {
  const text = (header: Read<"tubes">): string => textOf(tubes.at(row, header));
  if (["ID", "Status", "Device in", "Held by"].every((header) => text(header as Read<"tubes">) === "")) return [];
  const status = text("Status").toLowerCase();
  if (lists.Status.some((word) => word !== "active" && word === status)) return [];
  const [due, from] = [dayIn(tubes.at(row, "Change due")), dayIn(tubes.at(row, "Device in"))];
  return [
    {
      day: dayIn(tubes.at(row, "Booked for")) ?? due,
      person: wordKey(text("ID")),
      kind: wordKey(text("Held by")) || "not known",
      agreed: due !== null && from !== null && due > from ? due - from : null,
    },
  ];
}

function checksIn(checks: Rows<"checks">): readonly Check[] {
  const accesses = new Map<string, Set<string>>();
  const keyOf = (row: number): readonly [id: string, access: string] => [
    wordKey(textOf(checks.at(row, "ID"))),
    wordKey(textOf(checks.at(row, "Access"))),
  ];
  for (const row of whole(checks.count)) {
    const [id, access] = keyOf(row);
    accesses.set(id, (accesses.get(id) ?? new Set()).add(access));
  }
  return whole(checks.count).flatMap((row): Check[] => {
    const [id, access] = keyOf(row);
    const day = dayIn(checks.at(row, "Checked on"));
    if (id === "" || day === null) return [];
    return [
      {
        person: accesses.get(id)!.size > 1 && access !== "" ? `${id} ${access}` : id,
        day,
        loss: numberIn(checks.at(row, "Loss mL")),
        expected: numberIn(checks.at(row, "Expected mL")),
        says: wordKey(textOf(checks.at(row, "State"))),
      },
    ];
  });
}
