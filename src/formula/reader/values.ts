/**
 * Values as Excel has them, and how it turns one kind into another. From Microsoft's pages on the functions and ECMA-376
 * part 1, 18.17.2 to 18.17.7; what depends on a computer's language (1,5; 3/4/26) is #VALUE!, never a guess.
 */
import { calendarDate, dayNumber, daysInMonth } from "../../maths/calendar";
import type { Cell } from "../../worksheet/cell";
import { CellError } from "../../worksheet/error";

/** `null` is an empty cell. */
export type Value = Cell | CellError;

export const VALUE = new CellError("#VALUE!");
export const NA = new CellError("#N/A");
export const NUM = new CellError("#NUM!");
export const REF = new CellError("#REF!");
export const DIV0 = new CellError("#DIV/0!");
export const NAME = new CellError("#NAME?");

export const isError = (value: unknown): value is CellError => value instanceof CellError;

/** Errors are the same by their code. */
export const isSame = (one: Value, other: Value): boolean =>
  one === other || (isError(one) && isError(other) && one.code === other.code);

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[Ee][+-]?\d+)?(%?)$/;
const ISO = /^(\d{4})-(\d{1,2})-(\d{1,2})$/;

/** The number that a text means in every language; undefined for all others. */
export function numberIn(text: string): number | undefined {
  const trimmed = text.trim();
  const plain = PLAIN.exec(trimmed);
  if (plain) return plain[1] === "%" ? Number(trimmed.slice(0, -1)) / 100 : Number(trimmed);
  const iso = ISO.exec(trimmed);
  if (!iso) return undefined;
  const [year, month, day] = iso.slice(1).map(Number) as [number, number, number];
  const isDay = year >= 1901 && month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
  return isDay ? dayNumber(year, month, day) : undefined;
}

export const finite = (value: number): number | CellError => (Number.isFinite(value) ? value : NUM);

export function toNumber(value: Value): number | CellError {
  if (typeof value === "number") return value;
  if (value === null) return 0;
  if (typeof value === "boolean") return value ? 1 : 0;
  return isError(value) ? value : (numberIn(value) ?? VALUE);
}

export function toTruth(value: Value): boolean | CellError {
  if (typeof value === "boolean") return value;
  if (typeof value === "number") return value !== 0;
  if (value === null) return false;
  if (isError(value)) return value;
  const word = value.toUpperCase();
  return word === "TRUE" ? true : word === "FALSE" ? false : VALUE;
}

/** Excel keeps 15 digits, and writes large and small numbers as 1E+21. */
function numberText(value: number): string {
  const text = String(Number(value.toPrecision(15)));
  return text.replace(/e([+-])(\d)$/, "E$10$2").replace("e", "E");
}

export function toText(value: Value): string | CellError {
  if (typeof value === "string") return value;
  if (typeof value === "number") return numberText(value);
  if (value === null) return "";
  return isError(value) ? value : value ? "TRUE" : "FALSE";
}

/** Numbers stand before texts, texts before FALSE and TRUE. */
const rank = (value: Value): number => (typeof value === "number" ? 0 : typeof value === "string" ? 1 : 2);

/** A blank counts as the 0, "" or FALSE that the other side asks for. */
const filled = (value: Value, other: Value): Value =>
  value !== null ? value : typeof other === "string" ? "" : typeof other === "boolean" ? false : 0;

/** Below 0, 0, or above 0; texts without regard to case. Neither side is an error. */
export function compared(one: Value, other: Value): number {
  const [a, b] = [filled(one, other), filled(other, one)];
  if (typeof a === "number" && typeof b === "number") return a - b;
  const ranks = rank(a) - rank(b);
  if (ranks !== 0) return ranks;
  const [x, y] = typeof a === "string" ? [a.toLowerCase(), (b as string).toLowerCase()] : [a!, b!];
  return x < y ? -1 : x > y ? 1 : 0;
}

/** Last day that a cell can hold. */
const LAST_DAY = 2_958_465;

/**
 * Year, month and day as Excel counts them: day 60 is the 29 February 1900 that never was, day 0 the 0 January 1900
 * (ECMA-376 part 1, 18.17.4.1). Undefined outside.
 */
export function dateOf(serial: number): { year: number; month: number; day: number } | undefined {
  const day = Math.floor(serial);
  if (!(day >= 0 && day <= LAST_DAY)) return undefined;
  if (day === 0) return { year: 1900, month: 1, day: 0 };
  if (day === 60) return { year: 1900, month: 2, day: 29 };
  return calendarDate(day < 60 ? day + 1 : day);
}

/** The day of a year, month and day that may lie over the ends of their months and years; undefined outside. */
export function serialOf(year: number, month: number, day: number): number | undefined {
  const whole = Math.trunc(year);
  const months = 12 * (whole >= 0 && whole < 1900 ? whole + 1900 : whole) + Math.trunc(month) - 1;
  const [y, m] = [Math.floor(months / 12), (((months % 12) + 12) % 12) + 1];
  if (!(y >= 1900 && y <= 9999)) return undefined;
  const first = dayNumber(y, m, 1);
  const serial = (first < 61 ? first - 1 : first) + Math.trunc(day) - 1;
  return serial >= 0 && serial <= LAST_DAY ? serial : undefined;
}
