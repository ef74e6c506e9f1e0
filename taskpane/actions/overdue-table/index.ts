/** What is overdue, due or without a date, by kind, by who changes it and by where: of the caseload, or of somebody's own list. */
import {
  overdueTable,
  standingOf,
  standingOn,
  type Standing,
  type StandingCounts,
} from "../../../src/schedule/overdue-table";
import type { Role } from "../../../src/columns/role";
import { wordKey } from "../../../src/columns/spelling";
import { kinds } from "../../../src/settings/kinds";
import { overdueTable as words } from "../../texts/overdue-table";
import type { Value, Workbook } from "../../workbook/port";
import { addColumns } from "../add-columns";
import { textOf } from "../caseload/cells";
import { namesOf, readCaseload, textIn } from "../caseload/read";
import { numberIn } from "../caseload/settings";
import type { SheetOfValues } from "../new-sheet";

export const ways = ["kind", "changedBy", "place"] as const;
export type Way = (typeof ways)[number];

export interface Overdue {
  /** Whose: the list's name. */
  readonly label: string;
  readonly rows: number;
  readonly tables: readonly { readonly way: Way; readonly lines: readonly StandingCounts[] }[];
  /** What the list has no column for. */
  readonly missing: readonly Way[];
}

interface Row {
  readonly standing: Standing;
  readonly kind: string | null;
  readonly changedBy: string | null;
}

/** Where somebody who changes it does so, by the words of the caseload's list. */
const PLACES: Readonly<Record<string, keyof typeof words.places>> = {
  carer: "home",
  "nurse at home": "home",
  "nurse in clinic": "clinic",
  radiology: "radiology",
  endoscopy: "endoscopy",
  surgery: "theatre",
};

const AWAY = new Set(["in hospital", "on hold", "left"]);

export async function readOverdue(workbook: Workbook, today: number): Promise<Overdue | string> {
  const caseload = await readCaseload(workbook);
  if (caseload.is === "caseload") {
    const rows = caseload.tubes.rows.filter((row) => !AWAY.has(textIn(row, "Status").toLowerCase()));
    return tablesOf(
      caseload.tubes.sheetName,
      rows.map((row) => ({
        standing: standingOf(textIn(row, "Change")),
        kind: textIn(row, "Held by").toLowerCase(),
        changedBy: textIn(row, "Changed by").toLowerCase(),
      })),
    );
  }
  if (caseload.is === "incomplete") return caseload.sentence;
  return ofOwnList(workbook, today);
}

async function ofOwnList(workbook: Workbook, today: number): Promise<Overdue | string> {
  const survey = await addColumns.survey(workbook, { today });
  const { list, proposal, asOf } = survey;
  if (!list) return survey.sentence;
  const column = (role: Role): number | null => proposal.columns[role] ?? null;
  const [state, due, kind, changedBy] = [column("state"), column("due"), column("kind"), column("changedBy")];
  if (state === null && due === null) return words.noDates;
  const soon = numberIn(namesOf(await workbook.overview()), "Soon_Days");
  const said = proposal.kinds.from === "words" ? proposal.kinds.words : {};
  const kindOf = (value: Value): string => {
    const key = said[wordKey(textOf(value))];
    return kinds.find((one) => one.key === key)?.label ?? "";
  };
  const filled = list.rows.filter((row) => row.some((value) => textOf(value) !== ""));
  const dayOf = (value: Value): number | null => (typeof value === "number" && value > 0 ? Math.floor(value) : null);
  return tablesOf(
    list.label,
    filled.map((row) => ({
      standing:
        state !== null ? standingOf(textOf(row[state] ?? null)) : standingOn(dayOf(row[due!] ?? null), asOf.day, soon),
      kind: kind === null ? null : kindOf(row[kind] ?? null),
      changedBy: changedBy === null ? null : textOf(row[changedBy] ?? null).toLowerCase(),
    })),
  );
}

function tablesOf(label: string, rows: readonly Row[]): Overdue {
  const by: Readonly<Record<Way, (row: Row) => string | null>> = {
    kind: ({ kind }) => (kind === null ? null : kind || words.notKnown),
    changedBy: ({ changedBy }) => (changedBy === null ? null : changedBy || words.notKnown),
    place: ({ changedBy }) => (changedBy === null ? null : words.places[PLACES[changedBy] ?? "notKnown"]),
  };
  const tables = ways.flatMap((way) => {
    const own = rows.map((row) => ({ by: by[way](row), standing: row.standing }));
    return own.some((row) => row.by === null)
      ? []
      : [{ way, lines: overdueTable(own.map((row) => ({ ...row, by: row.by! }))) }];
  });
  return { label, rows: rows.length, tables, missing: ways.filter((way) => !tables.some((one) => one.way === way)) };
}

/** All tables one below the other. */
export const overdueSheet = ({ label, tables }: Overdue): SheetOfValues => ({
  name: words.sheetName,
  title: words.heading(label),
  columns: ["", ...words.columns],
  widths: [34, 12, 12, 12, 16, 10],
  rows: tables.flatMap(({ way, lines }, i) => [
    ...(i === 0 ? [] : [[null]]),
    [words.ways[way]],
    ...lines.map(({ by, counts, all }) => [
      by,
      counts.overdue,
      counts["due soon"],
      counts["no date"],
      counts.later,
      all,
    ]),
  ]),
});
