/**
 * GS1 element strings, as the bar code on a box holds them: identifiers, each followed by its value.
 *
 * Identifiers and their formats are all of those in GS1's public Barcode Syntax Dictionary; one that is not listed is
 * refused by name, because its length decides where the next one begins.
 */
import { dayNumber, daysInMonth } from "../maths/calendar";
import { cited } from "../worksheet/cited";
import { SheetError } from "../worksheet/error";
import { formats, type Format, type Part } from "./gs1-formats";

const signs = (set: RegExp): readonly boolean[] =>
  Array.from({ length: 128 }, (_, code) => set.test(String.fromCharCode(code)));

/** Which characters a part may hold, by their codes. */
const ALLOWED = {
  N: signs(/\d/),
  X: signs(/[!"%-?A-Z_a-z]/),
  Y: signs(/[#\-/0-9A-Z]/),
  Z: signs(/[A-Za-z0-9_=-]/),
} as const;

function isAllowed(type: Part["type"], text: string): boolean {
  const allowed = ALLOWED[type];
  for (let i = 0; i < text.length; i++) if (allowed[text.charCodeAt(i)] !== true) return false;
  return true;
}

/** How a scanner marks a GS1 code: GS1-128, DataMatrix, QR, DataBar and composite. */
const MARK = /^\](?:C1|d2|Q3|e0)/;
/** The separator that a scanner sends for FNC1. */
const GS = "\u001d";

const notGs1 = new SheetError("not a GS1 code; type lot and expiry from the print");

const fault = (id: string, what: string): SheetError =>
  new SheetError(`element (${id}) ${what}: scan or type it again`);

const digitAt = (digits: string, at: number): number => digits.charCodeAt(at) - 48;
const twoDigitsAt = (digits: string, at: number): number => 10 * digitAt(digits, at) + digitAt(digits, at + 1);

/** Sum with weights 3, 1, 3, ... from the right of the body; with the check digit it is a multiple of 10. */
export function hasCheckDigit(number: string): boolean {
  let sum = 0;
  for (let i = 0; i < number.length; i++) sum += digitAt(number, number.length - 1 - i) * (i % 2 === 0 ? 1 : 3);
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
  const [yy, month, dd] = [twoDigitsAt(yymmdd, 0), twoDigitsAt(yymmdd, 2), twoDigitsAt(yymmdd, 4)];
  if (month < 1 || month > 12) return `has no month ${yymmdd.slice(2, 4)}`;
  const fully = fullYear(yy, year);
  const last = daysInMonth(fully, month);
  if (dd > last || (dd === 0 && !dayMayBeOpen)) return `has no day ${yymmdd.slice(4, 6)} in that month`;
  return dayNumber(fully, month, dd === 0 ? last : dd);
}

/** What is wrong with the characters of one part, if anything. */
function wrongIn({ type, check }: Part, text: string, year: number): string | undefined {
  if (!isAllowed(type, text)) return type === "N" ? "must be digits only" : "has a character that GS1 does not allow";
  if (check === "csum") return hasCheckDigit(text) ? undefined : "has a wrong check digit";
  if (check === "hhmi")
    return Number(text.slice(0, 2)) > 23 || Number(text.slice(2)) > 59 ? "has no such time of day" : undefined;
  if (check === undefined) return undefined;
  const day = dayOf(text, year, check === "yymmd0");
  return typeof day === "string" ? day : undefined;
}

/** What is wrong with a value, if anything: its parts one after the other. */
function wrong({ parts, most }: Format, value: string, year: number): string | undefined {
  if (value === "") return "is empty";
  let at = 0;
  for (const part of parts) {
    if (part.optional && at === value.length) break;
    const text = value.slice(at, at + part.most);
    if (text.length < part.least) return "is too short";
    const problem = wrongIn(part, text, year);
    if (problem !== undefined) return problem;
    at += text.length;
  }
  return at < value.length ? `is longer than ${most} characters` : undefined;
}

type Elements = Map<string, string>;

function add(elements: Elements, id: string, format: Format, value: string, year: number): SheetError | undefined {
  const problem = wrong(format, value, year);
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

/** Where a value ends that begins here: at the next opening bracket that nobody marked as its own. */
function endOfValue(code: string, start: number): number {
  let end = code.indexOf("(", start);
  while (end >= 0 && code[end - 1] === "\\") end = code.indexOf("(", end + 1);
  return end < 0 ? code.length : end;
}

/** `(01)05012345678900(17)261231(10)A1`; an opening bracket inside a value is written \( . */
function readBracketed(code: string, year: number): Elements | SheetError {
  const elements: Elements = new Map();
  let at = 0;
  while (at < code.length) {
    const close = code.indexOf(")", at);
    if (code[at] !== "(" || close < 0) return notGs1;
    const id = code.slice(at + 1, close);
    const format = formats.get(id);
    if (format === undefined) return unknown(id);
    at = endOfValue(code, close + 1);
    const written = code.slice(close + 1, at);
    const value = written.includes("\\") ? written.replaceAll("\\(", "(") : written;
    const problem = add(elements, id, format, value.trim(), year);
    if (problem) return problem;
  }
  return elements;
}

const SHORTEST_ID = 2;
const LONGEST_ID = 4;

/** As a scanner sends it: closed values by their length, open ones up to the separator. */
function readScanned(code: string, year: number): Elements | SheetError {
  const elements: Elements = new Map();
  let at = code.startsWith(GS) ? 1 : 0;
  if (at === code.length) return notGs1;
  while (at < code.length) {
    let id = code.slice(at, at + SHORTEST_ID);
    let format = formats.get(id);
    for (let length = SHORTEST_ID + 1; format === undefined && length <= LONGEST_ID; length++) {
      id = code.slice(at, at + length);
      format = formats.get(id);
    }
    if (format === undefined) return unknown(code.slice(at, at + SHORTEST_ID));
    const start = at + id.length;
    const separator = code.indexOf(GS, start);
    const end = format.closed ? start + format.most : separator < 0 ? code.length : separator;
    const problem = add(elements, id, format, code.slice(start, end), year);
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
  const trimmed = code.startsWith(" ") || code.endsWith(" ") ? code.replace(/^ +| +$/g, "") : code;
  if (trimmed.startsWith("(")) return readBracketed(trimmed, year);
  const bare = trimmed.replace(MARK, "");
  if (bare !== trimmed || bare.includes(GS) || looksScanned(bare)) return readScanned(bare, year);
  return notGs1;
}
