/**
 * Numbers that their cells show as dates, in columns that are not taken for dates: "12-14" typed as a size becomes the day
 * 14 December there. A serial number such as 46370 would tell nobody what stands in the cell.
 */
import { FIRST_DAY, LAST_DAY } from "../../../src/maths/calendar";
import { shortDate } from "../../../src/words/date-in-words";
import type { Area, SheetId, Value, Workbook } from "../../workbook/port";
import { isDateFormat, DAYS_1904_TO_1900 } from "./samples";

/** By column of the list, then by its row: the date as a person would know it again. */
export type ShownDates = ReadonlyMap<number, ReadonlyMap<number, string>>;

/** Sizes, lengths and volumes are smaller; from memory, no list of tubes holds larger ones. */
const LEAST = 1000;

const mayBeDate = (value: Value): value is number => typeof value === "number" && value >= LEAST && value <= LAST_DAY;

/** Why it is none of what the column is for. */
export const MADE_A_DATE = "the cell holds a date: spreadsheets make one of 12-14 or 12/14; type it anew as text";

/**
 * @param area of the rows, without the header
 * @param columns of the list that are looked at
 */
export async function readShownDates(
  workbook: Workbook,
  sheet: SheetId,
  area: Area,
  rows: readonly (readonly Value[])[],
  columns: readonly number[],
  dateSystem: 1900 | 1904 | null,
): Promise<ShownDates> {
  const found = new Map<number, ReadonlyMap<number, string>>();
  for (const column of columns) {
    if (!rows.some((row) => mayBeDate(row[column] ?? null))) continue;
    const place = { top: area.top, left: area.left + column, rows: rows.length, columns: 1 };
    const { formats = [] } = await workbook.read({ sheet, area: place }, ["formats"]);
    const dates = new Map<number, string>();
    rows.forEach((row, index) => {
      const value = row[column] ?? null;
      if (!mayBeDate(value) || !isDateFormat(formats[index]?.[0] ?? "")) return;
      const serial = value + (dateSystem === 1904 ? DAYS_1904_TO_1900 : 0);
      if (serial >= FIRST_DAY && serial <= LAST_DAY) dates.set(index, shortDate(serial));
    });
    if (dates.size > 0) found.set(column, dates);
  }
  return found;
}
