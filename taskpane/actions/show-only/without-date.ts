/** Rows whose last change cannot be used as a date: blank, text, in the future, or too long ago to be believed. */
import { textOf } from "../../../src/columns/sheet-block";
import { dayNumber } from "../../../src/maths/calendar";
import { dayOfText } from "../../../src/worksheet/dates";
import type { Value } from "../../workbook/port";

/** A year typed for a date (2024) is a day of 1905. Clinic setting, no published source. */
const EARLIEST = dayNumber(1990, 1, 1);

function isUsableDay(value: Value, asOf: number): boolean {
  const day = typeof value === "number" ? Math.floor(value) : typeof value === "string" ? dayOfText(value) : null;
  return day !== null && day >= EARLIEST && day <= asOf;
}

export function withoutDateIn(values: readonly Value[], asOf: number) {
  const rows = new Set<number>();
  const different = new Map<string, Value>();
  values.forEach((value, row) => {
    if (isUsableDay(value, asOf)) return;
    rows.add(row);
    different.set(`${typeof value} ${textOf(value)}`, value);
  });
  return { rows, values: [...different.values()] };
}
