/** Dates and sizes over long columns, against libraries that people use for them and what one would write by hand. */
import { EDATE } from "@formulajs/formulajs";
import { addMonths } from "date-fns";
import { integerAddMonths } from "../functions/by-hand";
import { warmBundle } from "../functions/bundle";
import { eachRow } from "../functions/each-row";
import { cpu, medians } from "../measure";
import type { How, Job } from "../report/row";

const SIZES = [10_000, 100_000, 1_000_000];
const ROUNDS = 5;

/** Days from day number 0 of a worksheet to 1 January 1970. */
const EPOCH = 25_569;
const DAY = 86_400_000;

const byDateFns = (serial: number): number => addMonths(new Date((serial - EPOCH) * DAY), 3).getTime() / DAY + EPOCH;
const byFormulajs = (serial: number): unknown => EDATE(serial, 3) as unknown;
const byHand = (serial: number): number => integerAddMonths(serial, 3);

/** Whoever gives another date is no peer. The libraries count in local time: their clock may be an hour off. */
function agree(changeDue: (serial: number, months: number) => unknown): void {
  for (const serial of [45_000, 45_322, 46_081, 46_812]) {
    const [ours, hand, theirs] = [changeDue(serial, 3), byHand(serial), byDateFns(serial)];
    if (ours !== hand || Math.abs(theirs - hand) > 1) throw new Error(`peers differ at day ${serial}`);
  }
}

async function against({ quick, row }: How): Promise<void> {
  const shipped = warmBundle();
  agree(shipped.get("CHANGEDUE")! as (serial: number, months: number) => unknown);
  for (const size of quick ? SIZES.slice(0, 2) : SIZES) {
    const dates = Array.from({ length: size }, (_, i) => [45_000 + ((i * 7) % 2000)]);
    const sizes = Array.from({ length: size }, (_, i) => [5 + ((i * 7) % 50)]);
    // Short columns are done often enough for the clock.
    const often = 1_000_000 / size;
    const time = (work: () => unknown) => () =>
      cpu(() => {
        for (let i = 0; i < often; i++) work();
      }) / often;
    const spent = await medians(
      {
        changeDue: time(() => shipped.get("CHANGEDUE")!(dates, 3)),
        byHand: time(() => eachRow(dates, byHand)),
        dateFns: time(() => eachRow(dates, byDateFns)),
        formulajs: time(() => eachRow(dates, byFormulajs)),
        frToMm: time(() => shipped.get("FRTOMM")!(sizes)),
        loop: time(() => eachRow(sizes, (value) => value / 3)),
      },
      quick ? 3 : ROUNDS,
    );
    const rows = `${size.toLocaleString("en-GB")} rows`;
    const pair = (what: string, ours: number, peer: string, theirs: number, most: number) =>
      row({ what, size: rows, unit: "ms", ours, peer, theirs, limits: [{ what: "ratio", most }] });
    pair("CHANGEDUE, 3 months", spent.changeDue, "whole numbers by hand", spent.byHand, 2);
    pair("CHANGEDUE, 3 months", spent.changeDue, "date-fns addMonths", spent.dateFns, 0.2);
    pair("CHANGEDUE, 3 months", spent.changeDue, "formulajs EDATE", spent.formulajs, 0.5);
    pair("FRTOMM", spent.frToMm, "a nested loop by hand", spent.loop, 1.5);
  }
}

export const dates: Job = {
  name: "dates",
  title: "Dates and sizes against libraries and plain loops",
  about:
    "From dist/functions.js with all functions warm: processor time of a column of due dates, beside date-fns, " +
    "formulajs and whole-number calendar arithmetic written by hand, in one process in turn.",
  leavesOut: "that only ours refuses what is no date, and says why; the loops by hand check nothing.",
  run: against,
};
