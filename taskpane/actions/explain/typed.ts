/** A cell that holds a value without a formula: what it is read as in its column, or why it cannot be read. */
import { roleNamed, type Content, type Role } from "../../../src/columns/role";
import { BALLOONSTATE } from "../../../src/balloon/balloonstate";
import { FRTOMM } from "../../../src/sizes/frtomm";
import { MMTOFR } from "../../../src/sizes/mmtofr";
import { call } from "../../../src/worksheet/call";
import { dayOfText, readDate } from "../../../src/worksheet/dates";
import { SheetError } from "../../../src/worksheet/error";
import type { Overview, Value, Workbook } from "../../workbook/port";
import { contains } from "../../workbook/area";
import { asOfIn } from "../list/as-of";
import { locate } from "../list/find";
import { readList } from "../list/read-list";
import { shortDate } from "../../../src/words/date-in-words";
import type { Standing } from "./references";

/** What a cell of such a column is read as, or a fragment that says why it is not. Other contents are not judged here. */
const readers: { readonly [C in Content]?: (value: Exclude<Value, null>) => string | SheetError } = {
  date: (value) => {
    if (typeof value === "object") return new SheetError("it is an error");
    const read = readDate(value);
    if (read instanceof SheetError) return read;
    if (read === null) return "0, which counts as blank";
    return typeof value === "string" && dayOfText(value) !== null ? `the date ${shortDate(read)}` : shortDate(read);
  },
  size: (value) => {
    const millimetres = call(FRTOMM, [value]);
    return typeof millimetres === "number" ? `${tidy(millimetres * 3)} Fr` : asError(millimetres);
  },
  diameter: (value) => {
    const french = call(MMTOFR, [value]);
    return typeof french === "number" ? `${tidy(french / 3)} mm` : asError(french);
  },
  volume: (value) => {
    const state = call(BALLOONSTATE, [value, 1]);
    return state instanceof SheetError ? asError(state) : "a volume in mL";
  },
};

const tidy = (value: number): number => Number(value.toPrecision(9));

/** The function's sentence without the name of its argument and without the cell's own text, which is said before. */
const asError = (answer: unknown): string | SheetError =>
  answer instanceof SheetError ? new SheetError(answer.bare().said({ cell: "it" })) : "0, which counts as blank";

export interface ReadInColumn {
  /** "Size" */
  readonly header: string;
  /** What the column is taken for, and why: "Size; header "Size"; 38 of 40 values are sizes". */
  readonly because: string;
  readonly read: string | SheetError;
}

/** Null where the column is not known to hold sizes, dates, diameters or volumes. */
export async function readInColumn(
  workbook: Workbook,
  overview: Overview,
  { sheet, row, column }: Standing,
  value: Exclude<Value, null>,
): Promise<ReadInColumn | null> {
  const at = { sheet, area: { top: row, left: column, rows: 1, columns: 1 } };
  const here = { ...overview, selection: at };
  const { list: located } = await locate(workbook, here, {});
  if (!located || located.sheet.id !== sheet) return null;
  const list = await readList(workbook, here, located, asOfIn(overview, 0));
  if (!contains(list.area, row, column) || row === list.area.top) return null;
  const index = column - list.area.left;
  const guess = (Object.entries(list.guesses) as [Role, { column: number; because: string }][]).find(
    ([, one]) => one.column === index,
  );
  if (!guess) return null;
  const [role, { because }] = guess;
  const reader = readers[roleNamed(role).content];
  return reader
    ? { header: list.columns[index]!.header, because: `${roleNamed(role).label} (${because})`, read: reader(value) }
    : null;
}
