/** Dates as people say them: 3 April 2026. Figures alone can be turned round (3/4). */
import { calendarDate } from "../maths/calendar";

const MONTHS = [
  ...["January", "February", "March", "April", "May", "June"],
  ...["July", "August", "September", "October", "November", "December"],
];

export const SHORT_MONTHS: readonly string[] = MONTHS.map((month) => month.slice(0, 3));

export function dateInWords(serial: number): string {
  const { year, month, day } = calendarDate(serial);
  return `${day} ${MONTHS[month - 1]} ${year}`;
}

/** "3 Apr 2026"; a time of day is dropped. */
export function shortDate(serial: number): string {
  const { year, month, day } = calendarDate(Math.floor(serial));
  return `${day} ${SHORT_MONTHS[month - 1]} ${year}`;
}
