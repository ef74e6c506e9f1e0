/** Days, months, years. */
import { daysInMonth } from "../../../maths/calendar";
import { NotKnown } from "../piece";
import { dateOf, NUM, serialOf, type Value } from "../values";
import { fromNumbers, type Rule } from "./rule";

const partOf = (part: "year" | "month" | "day"): Rule => fromNumbers(1, 1, (serial) => dateOf(serial)?.[part] ?? NUM);

/** So many whole months later; the last day of a shorter month. */
export function monthsLater(serial: number, months: number): Value {
  const date = dateOf(serial);
  if (!date) return NUM;
  const count = 12 * date.year + date.month - 1 + Math.trunc(months);
  const [year, month] = [Math.floor(count / 12), (count % 12) + 1];
  if (year < 1900 || year > 9999) return NUM;
  return serialOf(year, month, Math.min(date.day, daysInMonth(year, month))) ?? NUM;
}

/** The last day of the month so many whole months later. */
function monthsEnd(serial: number, months: number): Value {
  const later = monthsLater(serial, months);
  const date = typeof later === "number" ? dateOf(later)! : undefined;
  return date ? (serialOf(date.year, date.month, daysInMonth(date.year, date.month)) ?? NUM) : later;
}

const TODAY: Rule = {
  least: 0,
  most: 0,
  bind: (_, { around: { today } }) => {
    if (today === undefined) throw new NotKnown("TODAY");
    return () => today;
  },
};

export const dates = {
  YEAR: partOf("year"),
  MONTH: partOf("month"),
  DAY: partOf("day"),
  DATE: fromNumbers(3, 3, (year, month, day) => serialOf(year!, month!, day!) ?? NUM),
  EDATE: fromNumbers(2, 2, monthsLater),
  EOMONTH: fromNumbers(2, 2, monthsEnd),
  TODAY,
};
