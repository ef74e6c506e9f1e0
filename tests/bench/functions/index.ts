/** Worksheet functions as shipped: against named peers in the same process, then all of them at three sizes. */
import { EDATE } from "@formulajs/formulajs";
import { addMonths } from "date-fns";
import { line, median, ms } from "../measure";
import { warmBundle } from "./bundle";
import { benchGrowth } from "./growth";

const ROWS = 1_000_000;
const RUNS = 9;

const cpu = (work: () => unknown): number => {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
};

/** Days from 1 January 1970 to day number 0 of a worksheet. */
const EPOCH = -25_569;
const DAY = 86_400_000;

/** What one would write by hand for dates that exist: whole numbers only, no checks, no errors. */
function integerAddMonths(serial: number, months: number): number {
  const days = serial + 693_899;
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
  return 365 * marchYear + leapDays + (((153 * fromMarch + 2) / 5) | 0) + Math.min(day, last) - 693_900;
}

function eachRow(rows: readonly (readonly number[])[], work: (value: number) => unknown): unknown[][] {
  const out = new Array<unknown[]>(rows.length);
  for (let r = 0; r < rows.length; r++) out[r] = [work(rows[r]![0]!)];
  return out;
}

/** CPU time of ours and a peer in turn, the order alternating. */
function against(what: string, ours: () => unknown, peer: () => unknown, wanted: string): void {
  ours();
  peer();
  const own: number[] = [];
  const other: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    if (run % 2 === 0) own.push(cpu(ours));
    other.push(cpu(peer));
    if (run % 2 === 1) own.push(cpu(ours));
  }
  line(
    what,
    `${ms(median(own))} against ${ms(median(other))}: ${(median(own) / median(other)).toFixed(2)} times`,
    wanted,
  );
}

/** Peers alone; they need nothing but dist/functions.js. */
export function benchPeers(): void {
  const shipped = warmBundle();
  const dates = Array.from({ length: ROWS }, (_, i) => [45_000 + ((i * 7) % 2000)]);
  const sizes = Array.from({ length: ROWS }, (_, i) => [5 + ((i * 7) % 50)]);
  const changeDue = () => shipped.get("CHANGEDUE")!(dates, 3);
  const rows = "1,000,000 rows, CPU, from dist/functions.js";

  const sample = [45_000, 45_322, 46_081, 46_812];
  for (const serial of sample) {
    const [ours, floor] = [shipped.get("CHANGEDUE")!(serial, 3), integerAddMonths(serial, 3)];
    const dateFns = Math.round(addMonths(new Date((serial + EPOCH) * DAY), 3).getTime() / DAY) - EPOCH;
    if (ours !== floor || Math.abs(dateFns - floor) > 1) throw new Error(`peers differ at ${serial}`);
  }

  against(
    `CHANGEDUE, ${rows}; peer: integer calendar by hand`,
    changeDue,
    () => eachRow(dates, (serial) => integerAddMonths(serial, 3)),
    "at most 2 times",
  );
  against(
    `CHANGEDUE, ${rows}; peer: date-fns addMonths`,
    changeDue,
    () => eachRow(dates, (serial) => addMonths(new Date((serial + EPOCH) * DAY), 3).getTime() / DAY - EPOCH),
    "at most 0.2 times",
  );
  against(
    `CHANGEDUE, ${rows}; peer: formulajs EDATE`,
    changeDue,
    () => eachRow(dates, (serial) => EDATE(serial, 3) as unknown),
    "at most 0.5 times",
  );
  against(
    `FRTOMM, ${rows}; peer: a nested loop by hand`,
    () => shipped.get("FRTOMM")!(sizes),
    () => eachRow(sizes, (size) => size / 3),
    "at most 1.5 times",
  );
}

export function benchFunctions(): void {
  benchPeers();
  benchGrowth();
}
