/** Dates as people say them: 3 April 2026. Figures alone can be turned round (3/4). */
import { calendarDate } from "../maths/calendar";

const MONTHS = [
  ...["January", "February", "March", "April", "May", "June"],
  ...["July", "August", "September", "October", "November", "December"],
];

export function dateInWords(serial: number): string {
  const { year, month, day } = calendarDate(serial);
  return `${day} ${MONTHS[month - 1]} ${year}`;
}
