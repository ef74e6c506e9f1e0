/** The day that "Change" counts from: the name As_of, where the workbook has it, else today. */
import { AS_OF } from "../../../src/columns/as-of";
import { FIRST_DAY } from "../../../src/maths/calendar";
import type { Overview } from "../../workbook/port";
import type { AsOf } from "./interface";
import { shortDate } from "../../../src/words/date-in-words";

export function asOfIn(overview: Overview, today: number): AsOf {
  const name = overview.names.find((one) => one.name.toLowerCase() === AS_OF.toLowerCase());
  if (!name) return { day: today, from: "today", refused: null };
  const { value, refersTo } = name;
  if (typeof value === "number" && value >= FIRST_DAY) return { day: Math.floor(value), from: "name", refused: null };
  if (/^=\s*TODAY\(\s*\)$/i.test(refersTo)) return { day: today, from: "name", refused: null };
  return {
    day: today,
    from: "name",
    refused: `This workbook has the name ${AS_OF} for something that is not a date (${refersTo}). The column "Change" counts from that name: give the other thing another name first.`,
  };
}

/** A day that somebody has fixed is used, but not in silence. */
export const staleDay = ({ day, from, refused }: AsOf, today: number): string | null =>
  from === "name" && refused === null && day !== today
    ? `The name ${AS_OF} stands for ${shortDate(day)}, which is not today: "Change" counts from that day.`
    : null;
