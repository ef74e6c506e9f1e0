/**
 * The day at a glance, from the words of *To do*: how many rows ask for what, the most urgent first. Reads the few columns
 * that it shows and writes nothing. A row in use whose word is missing or unknown counts as missing: silence is no good
 * news.
 */
import { urgencyKey, urgencyOf, NO_URGENCY, type ToDoWord, type UrgencyClass } from "../../../src/caseload/urgency";
import { TO_DO } from "../../../src/caseload/sort-key";
import type { Overview, Place, Value, Workbook } from "../../workbook/port";
import { textOf } from "../caseload/cells";
import { lists } from "../caseload/lists";
import { headerKey, recogniseCaseload, type NoCaseload } from "../caseload/recognise";

export const classes: readonly UrgencyClass[] = ["act", "soon", "missing", "arranged", "quiet"];

export interface TodayRow {
  readonly id: string;
  /** As *To do* says it; "" where it says nothing though the row is in use. */
  readonly says: string;
  readonly asks: UrgencyClass;
  /** The tube to take along: size, shape, length, fill. */
  readonly tube: string;
  /** What *Missing or contradictory* names. */
  readonly missing: string;
  readonly due: Value;
  readonly bookedFor: Value;
  readonly changedBy: string;
  readonly place: Place;
}

export interface Day {
  readonly is: "day";
  /** Rows in use, the most urgent first. */
  readonly rows: readonly TodayRow[];
  readonly counts: Readonly<Record<UrgencyClass, number>>;
}

/** A row in which none of these is typed is a blank one. */
const TYPED = ["ID", "Status", "Size Fr", "Shape", "Length cm", "Fill mL", "Changed by", "Booked for"];
const MISSING = "Missing or contradictory";

export async function readDay(workbook: Pick<Workbook, "read">, overview: Overview): Promise<Day | NoCaseload> {
  const found = recogniseCaseload(overview);
  if (found.is !== "caseload") return found;
  const { sheet, area, columns, hasTotals } = found.tables.tubes;
  const count = area.rows - 1 - (hasTotals ? 1 : 0);
  const keys = columns.map(headerKey);
  const read = async (header: string): Promise<readonly Value[]> => {
    const at = keys.indexOf(headerKey(header));
    if (at < 0 || count < 1) return [];
    const column = { top: area.top + 1, left: area.left + at, rows: count, columns: 1 };
    const { values = [] } = await workbook.read({ sheet, area: column }, ["values"]);
    return values.map(([value]) => value ?? null);
  };
  const names = [...TYPED, "Change due", TO_DO, MISSING];
  const cells = new Map(await Promise.all(names.map(async (header) => [header, await read(header)] as const)));
  const rows = Array.from({ length: count }, (_, i) => {
    const value = (header: string): Value => cells.get(header)![i] ?? null;
    return rowOf(value, { sheet, area: { top: area.top + 1 + i, left: area.left, rows: 1, columns: area.columns } });
  })
    .filter((row) => row !== null)
    .sort((one, other) => placeOf(one) - placeOf(other));
  const counts = Object.fromEntries(classes.map((one) => [one, rows.filter(({ asks }) => asks === one).length]));
  return { is: "day", rows, counts: counts as Day["counts"] };
}

const placeOf = ({ says, asks }: TodayRow): number => {
  const known = urgencyOf(says);
  return known ? urgencyKey(known.word as ToDoWord) : asks === "missing" ? urgencyKey("date wrong") : NO_URGENCY;
};

function rowOf(value: (header: string) => Value, place: Place): TodayRow | null {
  const text = (header: string): string => textOf(value(header));
  const [id, says] = [text("ID"), text(TO_DO)];
  const known = urgencyOf(says);
  if (!known && TYPED.every((header) => text(header) === "")) return null;
  const isAway = lists.Status.some((word) => word !== "active" && word === text("Status").toLowerCase());
  if (!known && isAway) return null;
  const size = text("Size Fr");
  const [length, fill] = [text("Length cm"), text("Fill mL")];
  const parts = [
    size === "" ? "" : /^\d+([.,]\d+)?$/.test(size) ? `${size} Fr` : size,
    text("Shape"),
    length && `${length} cm`,
    fill && `balloon ${fill} mL`,
  ];
  return {
    id,
    says: known ? says : "",
    asks: known?.asks ?? "missing",
    tube: parts.filter(Boolean).join(", "),
    missing: text(MISSING),
    due: value("Change due"),
    bookedFor: value("Booked for"),
    changedBy: text("Changed by"),
    place,
  };
}
