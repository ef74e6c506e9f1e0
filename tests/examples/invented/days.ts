/** Days on which the invented caseload is looked at: ends and beginnings of years and quarters, leap days, and others. */
import { Temporal } from "temporal-polyfill";

const ZERO = Temporal.PlainDate.from("1899-12-30");

/** A day as spreadsheets count it, by the Temporal polyfill's calendar and not by ours. */
export const day = (iso: string): number => ZERO.until(Temporal.PlainDate.from(iso), { largestUnit: "days" }).days;

export const dateOf = (serial: number): Temporal.PlainDate => ZERO.add({ days: serial });

export const someDays = [
  "2026-01-01",
  "2026-11-26",
  "2027-03-31",
  "2028-02-29",
  "2028-03-01",
  "2029-01-01",
  "2031-08-31",
  "2032-10-01",
  "2035-12-31",
  "2038-06-17",
  "2040-12-31",
];

/** The first of every month from 2026 to 2040. */
export const everyMonth = Array.from({ length: 180 }, (_, i) =>
  day(`${2026 + Math.floor(i / 12)}-${String(1 + (i % 12)).padStart(2, "0")}-01`),
);
