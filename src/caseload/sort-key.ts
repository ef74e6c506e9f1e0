import { tableNames } from "./names";
import { URGENCY } from "./urgency";

/** Words, which sort by the alphabet; their places stand in a hidden column of numbers. */
export const TO_DO = "To do";

/** The column to sort by where somebody sorts a list by this one; null where it is this one itself. */
export const sortKey = (table: string, header: string): string | null =>
  table.toLowerCase() === tableNames.tubes.toLowerCase() && header === TO_DO ? URGENCY : null;
