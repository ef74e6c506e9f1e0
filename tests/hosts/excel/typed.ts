/**
 * What Excel makes of a text that is put into a cell: it reads it as if somebody had typed it. English settings. Only
 * a leading apostrophe, or the cell's format "@", keeps a text as it is; the apostrophe is taken away in doing so.
 */
import { GENERAL } from "../../../taskpane/workbook/fake/book";
import { ApiError } from "./objects";

export interface Entry {
  readonly value: string | number | boolean | null;
  /** With "=". */
  readonly formula?: string;
  /** The format that Excel chooses for a cell of format General. */
  readonly format?: string;
}

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const DATE = /^(\d{1,4})[-/](\d{1,2})(?:[-/](\d{1,4}))?$/;
const NAMED_DATE = /^(\d{1,2})[ -]?([a-z]{3})[a-z]*(?:[ -](\d{2,4}))?$|^([a-z]{3})[a-z]*[ -](\d{1,2})$/i;

export function entered(typed: string | number | boolean, format: string): Entry {
  if (typed === "") return { value: null };
  /* Into a cell formatted as text even a number goes as a text. */
  if (format === "@") return { value: String(typed) };
  if (typeof typed !== "string") return { value: typed };
  if (typed.startsWith("'")) return { value: typed.slice(1) };
  if (typed.startsWith("@")) throw new ApiError("InvalidArgument", "That function isn't valid.");
  const read = asNumber(typed);
  if (read) return read;
  if (/^[=+-]/.test(typed) && typed.length > 1) {
    const formula = typed.startsWith("=") ? typed : `=${typed}`;
    return { value: null, formula };
  }
  if (/^(true|false)$/i.test(typed)) return { value: typed.toLowerCase() === "true" };
  return { value: typed };
}

function asNumber(typed: string): Entry | null {
  const text = typed.trim();
  if (NUMBER.test(text)) return { value: Number(text), ...(/e/i.test(text) && { format: "0.00E+00" }) };
  if (/^[+-]?\d+(\.\d+)?%$/.test(text)) return { value: Number(text.slice(0, -1)) / 100, format: "0%" };
  const time = /^(\d{1,2}):(\d{2})$/.exec(text);
  if (time) return { value: (Number(time[1]) * 60 + Number(time[2])) / 1_440, format: "h:mm" };
  const date = DATE.exec(text);
  if (date) return asDate(Number(date[1]), Number(date[2]), date[3] === undefined ? undefined : Number(date[3]));
  const named = NAMED_DATE.exec(text);
  const month = named ? MONTHS.indexOf((named[2] ?? named[4])!.toLowerCase()) + 1 : 0;
  if (!named || month === 0) return null;
  return serial(Number(named[3] ?? 2026), month, Number(named[1] ?? named[5]));
}

const asDate = (first: number, second: number, third = 2026): Entry | null =>
  first > 31 ? serial(first, second, third) : (serial(third, second, first) ?? serial(third, first, second));

function serial(year: number, month: number, day: number): Entry | null {
  const full = year < 100 ? 2000 + year : year;
  if (month < 1 || month > 12 || day < 1 || day > 31) return null;
  return { value: Date.UTC(full, month - 1, day) / 86_400_000 + 25_569, format: "dd/mm/yyyy" };
}

/** The format a cell has after an entry: a chosen one stays. */
export const formatAfter = (entry: Entry, format: string): string =>
  format === GENERAL && entry.format !== undefined ? entry.format : format;

/** What a cell shows, as Excel's library tells it: whatever the column's width. */
export function shown(value: string | number | boolean | null, format: string): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "string" || format === "@") return String(value);
  if (/[dy]/i.test(format)) {
    const date = new Date((Math.floor(value) - 25_569) * 86_400_000);
    const two = (part: number) => String(part).padStart(2, "0");
    return `${two(date.getUTCDate())}/${two(date.getUTCMonth() + 1)}/${date.getUTCFullYear()}`;
  }
  const decimals = /^0\.(0+)$/.exec(format)?.[1]!.length;
  return decimals === undefined ? String(value) : value.toFixed(decimals);
}
