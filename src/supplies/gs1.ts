/**
 * GS1 element strings, as the bar code on a box holds them: identifiers, each followed by its value.
 *
 * Identifiers and their formats are those of GS1's public Barcode Syntax Dictionary that stand on devices and their
 * boxes; an identifier that is not listed is refused by name, because its length decides where the next one begins.
 */
import { dayNumber, daysInMonth } from "../maths/calendar";
import { cited } from "../worksheet/cited";
import { SheetError } from "../worksheet/error";

/** What a value consists of; "closed" ones have one length and need no separator behind them. */
interface Format {
  readonly kind: "key" | "digits" | "date" | "date and time" | "text";
  readonly least: number;
  readonly most: number;
  readonly closed: boolean;
}
const key = (length: number): Format => ({ kind: "key", least: length, most: length, closed: true });
const digits = (most: number): Format => ({ kind: "digits", least: 1, most, closed: false });
const text = (most: number): Format => ({ kind: "text", least: 1, most, closed: false });
const date: Format = { kind: "date", least: 6, most: 6, closed: true };

const FORMATS = new Map<string, Format>([
  ["00", key(18)],
  ["01", key(14)],
  ["02", key(14)],
  ["10", text(20)],
  ["11", date],
  ["12", date],
  ["13", date],
  ["15", date],
  ["16", date],
  ["17", date],
  ["20", { kind: "digits", least: 2, most: 2, closed: true }],
  ["21", text(20)],
  ["22", text(20)],
  ["235", text(28)],
  ["240", text(30)],
  ["241", text(30)],
  ["242", digits(6)],
  ["250", text(30)],
  ["30", digits(8)],
  ["37", digits(8)],
  ["7003", { kind: "date and time", least: 10, most: 10, closed: false }],
  ["710", text(20)],
  ["8004", text(30)],
  ["90", text(30)],
  ...["91", "92", "93", "94", "95", "96", "97", "98", "99"].map((id): [string, Format] => [id, text(90)]),
]);

/** Digits, letters and the signs that GS1 allows in texts (character set 82). */
const ALLOWED = /^[!"%-?A-Z_a-z]+$/;
const DIGITS = /^\d+$/;

/** How a scanner marks a GS1 code: GS1-128, DataMatrix, QR, DataBar and composite. */
const MARK = /^\](?:C1|d2|Q3|e0)/;
/** The separator that a scanner sends for FNC1. */
const GS = "\u001d";

const notGs1 = new SheetError("not a GS1 code; type lot and expiry from the print");

const fault = (id: string, what: string): SheetError =>
  new SheetError(`element (${id}) ${what}: scan or type it again`);

/** Sum with weights 3, 1, 3, ... from the right of the body; with the check digit it is a multiple of 10. */
export function hasCheckDigit(number: string): boolean {
  let sum = 0;
  for (let i = 0; i < number.length; i++) sum += Number(number[number.length - 1 - i]) * (i % 2 === 0 ? 1 : 3);
  return sum % 10 === 0;
}

/** Year of two digits: from 49 years back to 50 years ahead of the given year. */
const fullYear = (twoDigits: number, year: number): number => {
  const century = year - (year % 100);
  const ahead = twoDigits - (year % 100);
  return century + twoDigits + (ahead >= 51 ? -100 : ahead <= -50 ? 100 : 0);
};

/** Day number of YYMMDD; day 00 is the month's last day where GS1 allows it. Or what is wrong with it. */
export function dayOf(yymmdd: string, year: number, dayMayBeOpen = true): number | string {
  const [yy, month, dd] = [yymmdd.slice(0, 2), yymmdd.slice(2, 4), yymmdd.slice(4, 6)].map(Number) as [
    number,
    number,
    number,
  ];
  if (month < 1 || month > 12) return `has no month ${yymmdd.slice(2, 4)}`;
  const fully = fullYear(yy, year);
  const last = daysInMonth(fully, month);
  if (dd > last || (dd === 0 && !dayMayBeOpen)) return `has no day ${yymmdd.slice(4, 6)} in that month`;
  return dayNumber(fully, month, dd === 0 ? last : dd);
}

/** What is wrong with a value, if anything. */
function wrong({ kind, least, most }: Format, value: string, year: number): string | undefined {
  if (value.length < least) return value === "" ? "is empty" : "is too short";
  if (value.length > most) return `is longer than ${most} characters`;
  if (kind === "text") return ALLOWED.test(value) ? undefined : "has a character that GS1 does not allow";
  if (!DIGITS.test(value)) return "must be digits only";
  if (kind === "key") return hasCheckDigit(value) ? undefined : "has a wrong check digit";
  if (kind === "digits") return undefined;
  const day = dayOf(value.slice(0, 6), year, kind === "date");
  if (typeof day === "string") return day;
  const [hour, minute] = [Number(value.slice(6, 8)), Number(value.slice(8, 10))];
  return hour > 23 || minute > 59 ? "has no such time of day" : undefined;
}

type Elements = Map<string, string>;

function add(elements: Elements, id: string, value: string, year: number): SheetError | undefined {
  const problem = wrong(FORMATS.get(id)!, value, year);
  if (problem !== undefined) return fault(id, problem);
  const before = elements.get(id);
  if (before !== undefined && before !== value) return fault(id, "stands there twice with different values");
  elements.set(id, value);
  return undefined;
}

const unknown = (id: string): SheetError =>
  /^\d{2,4}$/.test(id)
    ? new SheetError(`element (${id}) is not one this function reads: type lot and expiry from the print`)
    : new SheetError(`${cited(id)} stands where an identifier should: scan or type it again`);

/** `(01)05012345678900(17)261231(10)A1`; an opening bracket inside a value is written \( . */
function readBracketed(code: string, year: number): Elements | SheetError {
  const elements: Elements = new Map();
  let at = 0;
  while (at < code.length) {
    const close = code.indexOf(")", at);
    if (code[at] !== "(" || close < 0) return notGs1;
    const id = code.slice(at + 1, close);
    if (!FORMATS.has(id)) return unknown(id);
    let value = "";
    for (at = close + 1; at < code.length && code[at] !== "("; at++) {
      if (code[at] === "\\" && code[at + 1] === "(") at++;
      value += code[at];
    }
    const problem = add(elements, id, value.trim(), year);
    if (problem) return problem;
  }
  return elements;
}

/** As a scanner sends it: closed values by their length, open ones up to the separator. */
function readScanned(code: string, year: number): Elements | SheetError {
  const elements: Elements = new Map();
  let at = code.startsWith(GS) ? 1 : 0;
  if (at === code.length) return notGs1;
  while (at < code.length) {
    const id = [2, 3, 4].map((length) => code.slice(at, at + length)).find((start) => FORMATS.has(start));
    if (id === undefined) return unknown(code.slice(at, at + 2));
    const format = FORMATS.get(id)!;
    const start = at + id.length;
    const separator = code.indexOf(GS, start);
    const end = format.closed ? start + format.most : separator < 0 ? code.length : separator;
    const problem = add(elements, id, code.slice(start, end), year);
    if (problem) return problem;
    at = code[end] === GS ? end + 1 : end;
  }
  return elements;
}

/** Without the scanner's mark or a separator, only an item number with its right check digit shows what it is. */
const looksScanned = (code: string): boolean => /^01\d{14}/.test(code) && hasCheckDigit(code.slice(2, 16));

/**
 * Values by identifier; every one of them has been checked.
 * @param year the year round which two-digit years are read
 */
export function readGs1(code: string, year: number): ReadonlyMap<string, string> | SheetError {
  const trimmed = code.replace(/^ +| +$/g, "");
  if (trimmed.startsWith("(")) return readBracketed(trimmed, year);
  const bare = trimmed.replace(MARK, "");
  if (bare !== trimmed || bare.includes(GS) || looksScanned(bare)) return readScanned(bare, year);
  return notGs1;
}
