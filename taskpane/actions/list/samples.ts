/** Values as a person would know them again. */
import { textOf } from "../../../src/columns/sheet-block";
import { FIRST_DAY, LAST_DAY } from "../../../src/maths/calendar";
import { shortDate } from "../../../src/words/date-in-words";
import type { Value } from "../../workbook/port";

export const DAYS_1904_TO_1900 = 1462;
const SAMPLES = 4;
const LONGEST = 40;

/** A number format that shows days, months or years; what stands in quotes, brackets or behind "\" is no code. */
export function isDateFormat(format: string): boolean {
  const codes = format.replace(/"[^"]*"|\[[^\]]*\]|\\.|_.|\*./g, "");
  return /[dy]/i.test(codes) && !/general/i.test(codes);
}

function sampleOf(value: Value, isDate: boolean, dateSystem: 1900 | 1904 | null): string {
  if (typeof value === "number") {
    const serial = value + (dateSystem === 1904 ? DAYS_1904_TO_1900 : 0);
    if (isDate && serial >= FIRST_DAY && serial <= LAST_DAY) return shortDate(serial);
    return String(Number(value.toPrecision(12)));
  }
  const text = textOf(value).replace(/\s+/g, " ").trim();
  return text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text;
}

/** The first few different values of a column. */
export function samplesOf(
  values: readonly Value[],
  formats: readonly string[],
  dateSystem: 1900 | 1904 | null,
): readonly string[] {
  const isDate = formats.some(isDateFormat);
  const found = new Set<string>();
  for (const value of values) {
    const text = sampleOf(value, isDate, dateSystem);
    if (text !== "") found.add(text);
    if (found.size === SAMPLES) break;
  }
  return [...found];
}
