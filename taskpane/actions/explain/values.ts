/** Values as people read them. */
import { textOf } from "../../../src/columns/sheet-block";
import { FIRST_DAY, LAST_DAY } from "../../../src/maths/calendar";
import type { Answer } from "../../../src/worksheet/call";
import type { Matrix } from "../../../src/worksheet/cell";
import type { SheetFunction } from "../../../src/worksheet/define";
import { CellError, SheetError } from "../../../src/worksheet/error";
import type { Value } from "../../workbook/port";
import { shortDate } from "../../../src/words/date-in-words";
import { count } from "../../texts/pieces";

const LONGEST = 80;

/** What numbers are counted in; "date" for day numbers. For a block it may be another for each column. */
export type Unit = string | undefined;
export type UnitOf = Unit | ((column: number) => Unit);

const isDay = (value: number): boolean => value >= FIRST_DAY && value <= LAST_DAY;

/** Twelve digits are more than anybody writes, and hide what binary fractions add. */
const figure = (value: number): string => String(Number(value.toPrecision(12)));

/** "14 Fr", "3 Mar 2026", `"12/14"`, "blank". */
export function valueText(value: Value, unit?: Unit): string {
  if (typeof value === "number") {
    if (unit === "date") return isDay(value) ? shortDate(value) : `${figure(value)}, which is no date`;
    return unit === undefined ? figure(value) : `${figure(value)} ${unit}`;
  }
  const text = textOf(value);
  if (text.trim() === "") return "blank";
  if (typeof value !== "string") return text;
  return `"${text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text}"`;
}

/** A block of cells: how many, and what the first ones hold. */
function blockText(block: Matrix<Value>, unit: UnitOf): string {
  const unitOf = typeof unit === "function" ? unit : () => unit;
  const cells = block.flatMap((row) => row.map((cell, column) => ({ cell, column })));
  const filled = cells.filter(({ cell }) => textOf(cell).trim() !== "");
  const first = filled.slice(0, 3).map(({ cell, column }) => valueText(cell, unitOf(column)));
  const more = filled.length > first.length ? ", …" : "";
  const blanks = filled.length < cells.length ? ` (${count(cells.length - filled.length, "blank")})` : "";
  return `${count(cells.length, "cell")}${blanks}${first.length > 0 ? `: ${first.join(", ")}${more}` : ""}`;
}

export const anyText = (value: Value | Matrix<Value>, unit?: UnitOf): string =>
  Array.isArray(value)
    ? blockText(value as Matrix<Value>, unit)
    : valueText(value as Value, typeof unit === "function" ? unit(0) : unit);

/** Cells that show their number as a date are one, whatever the formula takes it for; but 3 in such a cell is none. */
export const unitShown = (value: unknown, isDate: boolean, unit?: Unit): Unit =>
  isDate && (typeof value !== "number" || isDay(value)) ? "date" : unit;

/** What a function gives, or the sentence of its error. */
export function answerText(definition: SheetFunction, answer: Answer, unit: UnitOf): string {
  if (answer instanceof SheetError) return `${answer.code}: ${answer.message}.`;
  const plain = (one: unknown): Value => (one instanceof SheetError ? one.code : (one as Value));
  if (Array.isArray(answer))
    return `${anyText(
      answer.map((row) => row.map(plain)),
      unit,
    )}.`;
  if (answer === "") return "Nothing: what the row is about is blank.";
  return definition.result.kind === "text" && typeof answer === "string" ? answer : `${anyText(answer, unit)}.`;
}

/** Whether a cell shows what was worked out; a blank and "" are the same, and so is a blank that a formula hands on as 0. */
export function isSameValue(a: Value, b: Value): boolean {
  if (a instanceof CellError || b instanceof CellError)
    return a instanceof CellError && b instanceof CellError && a.code === b.code;
  if (typeof a === "number" && typeof b === "number") return Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a));
  const isNothing = (value: Value) => value === null || value === "";
  return a === b || (isNothing(a) && (isNothing(b) || b === 0)) || (isNothing(b) && a === 0);
}
