/** What one would write by hand for dates that exist: whole numbers only, no checks, no errors. */

/** Days from 1 March of the year 0 to day number 0 of a worksheet. */
const SHIFT = 693_899;

export function integerAddMonths(serial: number, months: number): number {
  const days = serial + SHIFT;
  const century = ((4 * days + 3) / 146_097) | 0;
  const inCentury = days - (((146_097 * century) / 4) | 0);
  const yearOfCentury = ((4 * inCentury + 3) / 1461) | 0;
  const inYear = inCentury - (((1461 * yearOfCentury) / 4) | 0);
  const marchMonth = ((5 * inYear + 2) / 153) | 0;
  const day = inYear - (((153 * marchMonth + 2) / 5) | 0) + 1;
  const count = 1200 * century + 12 * yearOfCentury + marchMonth + 2 + months;
  const year = (count / 12) | 0;
  const month = count - 12 * year + 1;
  const isLeap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const last = month === 2 ? (isLeap ? 29 : 28) : month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
  const marchYear = month > 2 ? year : year - 1;
  const fromMarch = month > 2 ? month - 3 : month + 9;
  const leapDays = ((marchYear / 4) | 0) - ((marchYear / 100) | 0) + ((marchYear / 400) | 0);
  return 365 * marchYear + leapDays + (((153 * fromMarch + 2) / 5) | 0) + Math.min(day, last) - 1 - SHIFT;
}
