/**
 * The few plain Excel functions and operators that stand around ours in guards and in the columns that we add. Each
 * gives what Excel gives, or undefined where that is not sure: then nothing is claimed.
 */
import { textOf } from "../../../src/columns/sheet-block";
import { CellError } from "../../../src/worksheet/error";
import type { Value } from "../../workbook/port";

export const isError = (value: Value): value is CellError => value instanceof CellError;

/** The first error among the arguments answers for most functions. */
const passing =
  (work: (...values: Exclude<Value, CellError>[]) => Value | undefined) =>
  (...values: Value[]): Value | undefined => {
    const error = values.find(isError);
    return error ?? work(...(values as Exclude<Value, CellError>[]));
  };

export const truth = (value: Value): boolean | undefined => {
  if (typeof value === "boolean") return value;
  if (typeof value === "number") return value !== 0;
  return value === null ? false : undefined;
};

const all = (combine: (values: readonly boolean[]) => boolean) =>
  passing((...values) => {
    const known = values.map(truth);
    return known.some((one) => one === undefined) ? undefined : combine(known as boolean[]);
  });

/** Excel's TRIM: spaces at the ends, and all but one between words. */
const trim = (text: string): string => text.replace(/ +/g, " ").replace(/^ | $/g, "");

export const plainFunctions: Readonly<Record<string, (...values: Value[]) => Value | undefined>> = {
  AND: all((values) => values.every(Boolean)),
  OR: all((values) => values.some(Boolean)),
  NOT: passing((value) => {
    const known = truth(value!);
    return known === undefined ? undefined : !known;
  }),
  LEN: passing((value) => textOf(value!).length),
  TRIM: passing((value) => trim(textOf(value!))),
  LOWER: passing((value) => textOf(value!).toLowerCase()),
  UPPER: passing((value) => textOf(value!).toUpperCase()),
  EXACT: passing((a, b) => textOf(a!) === textOf(b!)),
  ISNUMBER: (value) => typeof value === "number",
  ISTEXT: (value) => typeof value === "string",
  ISBLANK: (value) => value === null,
  ISERROR: (value) => isError(value!),
  NA: () => new CellError("#N/A"),
};

const asNumber = (value: Value): number | undefined => {
  if (typeof value === "number") return value;
  if (typeof value === "boolean") return value ? 1 : 0;
  return value === null ? 0 : undefined;
};

const arithmetic = (work: (a: number, b: number) => number) =>
  passing((a, b) => {
    const [x, y] = [asNumber(a!), asNumber(b!)];
    // A text that looks like a number depends on the computer's language.
    return x === undefined || y === undefined ? undefined : work(x, y);
  });

/** A blank equals "" and 0; texts are compared without regard to case; a text is never equal to a number. */
function isEqual(a: Exclude<Value, CellError>, b: Exclude<Value, CellError>): boolean {
  if (a === null || b === null) {
    const other = a ?? b;
    return other === null || other === "" || other === 0 || other === false;
  }
  return typeof a === "string" && typeof b === "string" ? a.toLowerCase() === b.toLowerCase() : a === b;
}

const ordered = (holds: (difference: number) => boolean) =>
  passing((a, b) => {
    const known = [a!, b!].every((value) => typeof value === "number" || value === null);
    return known ? holds(Number(a ?? 0) - Number(b ?? 0)) : undefined;
  });

export const operators: Readonly<Record<string, (...values: Value[]) => Value | undefined>> = {
  "=": passing((a, b) => isEqual(a!, b!)),
  "<>": passing((a, b) => !isEqual(a!, b!)),
  "<": ordered((difference) => difference < 0),
  ">": ordered((difference) => difference > 0),
  "<=": ordered((difference) => difference <= 0),
  ">=": ordered((difference) => difference >= 0),
  "&": passing((a, b) => textOf(a!) + textOf(b!)),
  "+": (...values) => (values.length === 1 ? values[0] : arithmetic((a, b) => a + b)(...values)),
  "-": (...values) => arithmetic((a, b) => a - b)(...(values.length === 1 ? [0, ...values] : values)),
  "*": arithmetic((a, b) => a * b),
  "/": (a, b) => (asNumber(b!) === 0 ? undefined : arithmetic((x, y) => x / y)(a!, b!)),
  "%": (value) => arithmetic((a, b) => a / b)(value!, 100),
};
