/**
 * How old an opening is, in three bands. Weeks count from the day on which the opening was made, never from the last
 * change; cut-offs of ACI/GENCA's emergency page (6 and 12 weeks) stand as defaults.
 */
import type { Cell } from "../worksheet/cell";
import { readDate } from "../worksheet/dates";
import { argument, fault } from "../worksheet/error";
import { number, plainDays, reading } from "../worksheet/parameters";
import { yesNo, yesNoOrDoubt } from "../worksheet/yes-no";

export type Tract = "immature" | "uncertain" | "mature by weeks";

/** ACI/GENCA, emergency page. */
const IMMATURE_BELOW = 6;
const MATURE_FROM = 12;
/**
 * No shorter setting makes an opening old enough for a sentence that tells how: RCH Melbourne counts from 8 weeks; the
 * sources that say less are left to the placing team.
 */
export const LEAST_MATURE_FROM = 8;

/** An opening cannot be older than this; a year typed instead of a date (2019) reads as a day of 1905. */
const OLDEST_YEARS = 100;

/** Never 0: an empty settings cell must not make every opening old. 1 and 2 weeks are the shortest in any source. */
export const immatureBelow = () =>
  number("Weeks below which an opening is immature", { unit: "weeks", min: 1, max: 104, fallback: IMMATURE_BELOW });
export const matureFrom = (least = 2) =>
  number("Weeks from which an opening counts as mature", {
    unit: "weeks",
    min: least,
    max: 104,
    fallback: MATURE_FROM,
  });

export const bandsCross = fault`${argument("immature")} is above ${argument("mature")}: check both settings`;

/** What is wrong with the age, or its band. */
export function tractBand(
  stomamade: number,
  asof: number,
  immature: number,
  mature: number,
): Tract | "future" | "too old" {
  if (stomamade > asof) return "future";
  if (asof - stomamade > OLDEST_YEARS * 365.25) return "too old";
  const weeks = Math.floor((asof - stomamade) / 7);
  if (weeks < immature) return "immature";
  return weeks < mature ? "uncertain" : "mature by weeks";
}

const SLOW = "Slow healing (malnutrition, ascites, steroids, immune suppression)? yes, no or not known";

/** Left out or blank it is not known: nobody has written down that this opening heals well. */
export const slowHealing = () => yesNo(SLOW, { fallback: "not known" });
export const slowHealingOrDoubt = () => yesNoOrDoubt(SLOW, { fallback: "not known" });

/** A date for sentences about danger: what cannot be read is not known, never refused. */
const dateOrDoubt = (cell: Exclude<Cell, null>): number | "not known" => {
  const day = readDate(cell);
  return typeof day === "number" ? day : "not known";
};

export type DateOrDoubt = number | "not known";

/** A required argument; blank is not known. */
export const doubtfulDate = (help: string) => ({
  ...reading<DateOrDoubt, object>(help, { unit: "date", plain: plainDays }, dateOrDoubt),
  ifBlank: "not known" as const,
});

export const doubtfulOptionalDate = (help: string) =>
  reading<DateOrDoubt, { fallback: DateOrDoubt; unit: string }>(
    help,
    { fallback: "not known", unit: "date", plain: plainDays },
    dateOrDoubt,
  );

/** The band as sentences about danger need it: a missing, impossible or future date is not known. */
export function tractOrDoubt(
  stomamade: DateOrDoubt,
  asof: DateOrDoubt,
  immature: number,
  mature: number,
): Tract | "not known" {
  if (stomamade === "not known" || asof === "not known") return "not known";
  const band = tractBand(stomamade, asof, immature, mature);
  return band === "future" || band === "too old" ? "not known" : band;
}
