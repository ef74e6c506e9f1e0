/**
 * A worksheet function for programs: one row, arguments by name, read by the same rules as cells (docs/arguments.md)
 * and through the same `call`. Like `call` it never throws: a fault is a SheetError with its sentence, and the types
 * make a program look for it.
 */
import { call, type Answer } from "../../src/worksheet/call";
import type { Cell } from "../../src/worksheet/cell";
import type { SheetFunction } from "../../src/worksheet/define";
import { SheetError } from "../../src/worksheet/error";
import { functions } from "../../src/index";

/** A date: a worksheet's day number (1 May 2026 is 46143), or text in the one form `2026-05-01`. */
export type Day = number | string;

/** A worksheet's day number; `isoText` writes it as `2026-05-01`. */
export type DayNumber = number;

/** A list of values, or a block of them row by row, or one value alone. */
export type Cells<Value> = Value | readonly Value[] | readonly (readonly Value[])[];

export interface NamedFunction<Arguments, Value> {
  (args: Arguments): Value | SheetError;
  /** For whole columns at once: `call(changeDue.definition, [dates, 3])`. */
  readonly definition: SheetFunction;
}

const isCell = (value: unknown): value is Cell =>
  value === null || ["number", "string", "boolean"].includes(typeof value);

/** A list is a column. */
function block(name: string, given: unknown): Cell[][] | SheetError {
  const rows = (Array.isArray(given) ? given : [given]).map((row: unknown) => (Array.isArray(row) ? row : [row]));
  for (const row of rows) {
    if (!row.every(isCell)) return new SheetError(`${name} must hold numbers, texts, true, false and null only`);
  }
  return rows;
}

function single(name: string, given: unknown): Cell | SheetError {
  if (Array.isArray(given)) return new SheetError(`${name} must be one value: for whole columns use call`);
  return isCell(given) ? given : new SheetError(`${name} must be a number, a text, true, false or null`);
}

const blankAsNull = (cell: Exclude<Cell, null> | SheetError): Cell | SheetError => (cell === "" ? null : cell);

/** What the sheet would show as blank is null; an error in any cell of a row or block is the result. */
function valueOf(definition: SheetFunction, answer: Answer): unknown {
  if (!Array.isArray(answer)) return blankAsNull(answer);
  const fault = answer.flat().find((cell) => cell instanceof SheetError);
  if (fault) return fault;
  const rows = answer.map((row) => row.map(blankAsNull));
  return definition.result.shape === "row" ? rows[0] : rows;
}

export function named<Arguments extends object, Value>(name: string): NamedFunction<Arguments, Value> {
  const definition = functions.find((each) => each.name === name)!;
  const names = definition.order.map((argument) => argument.name);

  const run = (args: Arguments): Value | SheetError => {
    const given = (args ?? {}) as Readonly<Record<string, unknown>>;
    // TypeScript sees a misspelt argument; plain JavaScript would lose an option without a word.
    const unknown = Object.keys(given).find((each) => !names.includes(each));
    if (unknown !== undefined) {
      return new SheetError(`${unknown} is not an argument of ${name}, which takes ${names.join(", ")}`);
    }
    const cells: unknown[] = [];
    for (const argument of definition.order) {
      const value = given[argument.name] ?? null;
      const read = argument.param.mode === "range" ? block(argument.name, value) : single(argument.name, value);
      if (read instanceof SheetError) return read;
      cells.push(read);
    }
    return valueOf(definition, call(definition, cells)) as Value | SheetError;
  };
  return Object.assign(run, { definition });
}
