/** All worksheet functions as shipped: three sizes, processor time, memory, and what a doubling costs. */
import { fileURLToPath } from "node:url";
import { cases } from "../functions/cases";
import type { Measured } from "../functions/one";
import { inOwnProcess } from "../own-process";
import type { Job, Row } from "../report/row";

const SCRIPT = fileURLToPath(new URL("../functions/one.ts", import.meta.url));

/** What every function is meant to keep at its largest size. */
const MOST_MILLISECONDS = 1500;
const MOST_DOUBLING = 2.3;
const MOST_MEGABYTES = 600;
const MOST_TIMES_TEXTS = 3;

/** Below so many milliseconds a ratio says nothing. */
const TOO_SHORT = 20;

const number = (value: number): string => value.toLocaleString("en-GB");

function rowOf(name: string, counted: string, measured: Measured): Row {
  const { timed, inAll, own, texts, fault } = measured;
  const largest = timed.at(-1)!;
  const doublings = timed
    .slice(1)
    .flatMap(({ ours }, i) => (timed[i]!.ours < TOO_SHORT ? [] : [ours / timed[i]!.ours]));
  // Both together: clearing up memory falls into one or the other (measured: 2.9 and 1.4 of the same loop).
  const doubling = doublings.reduce((product, one) => product * one, 1) ** (1 / Math.max(1, doublings.length));
  const megabytes = Math.max(MOST_MEGABYTES, MOST_TIMES_TEXTS * texts);
  const smaller = timed.slice(0, -1).map(({ rows, ours }) => `${number(rows)} in ${number(Math.round(ours))} ms`);
  const remarks = [
    fault,
    smaller.join(", "),
    doublings.length > 0 ? `doublings ${doublings.map((one) => one.toFixed(2)).join(" and ")}` : "",
    `${number(own)} MB above the inputs, ${number(inAll)} in all`,
  ];
  const isLongEnough = largest.ours >= TOO_SHORT && largest.copying >= 1;
  return {
    what: name,
    size: `${number(largest.rows)} ${counted}`,
    unit: "ms",
    ours: largest.ours,
    ...(isLongEnough && { peer: "copying a column of as many rows", theirs: largest.copying }),
    limits: [
      { what: "ms", most: MOST_MILLISECONDS, is: largest.ours },
      ...(doublings.length > 0 ? [{ what: "doubling", most: MOST_DOUBLING, is: doubling }] : []),
      { what: "MB", most: megabytes, is: own },
      ...(fault === undefined ? [] : [{ what: "no error", most: 0, is: 1 }]),
    ],
    remark: remarks.filter(Boolean).join("; "),
  };
}

export const functions: Job = {
  name: "functions",
  title: "Every worksheet function over a whole column",
  about:
    "From dist/functions.js as Excel loads it, all functions warm, each in a process of its own: processor time for as " +
    "many rows as a sheet has, or the most that the function can mean, and for a half and a quarter of them. Beside it, " +
    "in turn, a plain loop that copies a column of as many rows. A doubling of the rows is meant to cost at most 2.3 " +
    "times as much (both doublings together, each in the remark), the memory above the inputs to stay below 600 MB or three times the texts that come out.",
  leavesOut: "what Excel or the grid does with the cells before and after (the jobs runtime, files and page).",
  run({ quick, row, notMeasured }) {
    for (const { name, counted = "rows" } of cases) {
      const measured = inOwnProcess<Measured>(SCRIPT, [name, quick ? "quick" : "full"]);
      if (typeof measured === "string") notMeasured(`${name}: ${measured}`);
      else row(rowOf(name, counted, measured));
    }
  },
};
