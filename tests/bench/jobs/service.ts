/** The work of a whole service at once: booking and scanned codes. */
import { warmBundle } from "../functions/bundle";
import { median, milliseconds, inTurn, randoms } from "../measure";
import type { Job, Row } from "../report/row";
import { eachRow } from "../functions/each-row";

const FIRST_DAY = 46_143;
const RULES = ["worst first", "most in time"];
const SIZES = [10_000, 20_000, 40_000];

/** People due over two years, first and last days for some, 20 to a session. */
function booking(people: number, rule: string): readonly unknown[] {
  const random = randoms(3);
  const due = Array.from({ length: people }, () => [FIRST_DAY + Math.floor(730 * random())]);
  const earliest = due.map(([day]) => [random() < 0.5 ? day! - 30 : ""]);
  const latest = due.map(([day]) => [random() < 0.5 ? day! + 60 : ""]);
  const sessions = people / 20;
  const days = Array.from({ length: sessions }, (_, i) => [FIRST_DAY + Math.floor((730 * i) / sessions)]);
  return [due, days, 20, earliest, latest, rule];
}

/** Codes as a scanner sends them: item, expiry, lot and serial number. */
const codes = (rows: number): readonly unknown[] => [
  Array.from({ length: rows }, (_, i) => [
    `]d201123123123123331728${String(1 + (i % 12)).padStart(2, "0")}0010LOT${i}\u001D21S${i}`,
  ]),
  "lot",
];

async function measured(
  name: string,
  what: string,
  size: number,
  counted: string,
  cells: readonly unknown[],
): Promise<Row> {
  const run = warmBundle().get(name)!;
  const column = Array.from({ length: 1_000_000 }, (_, i) => [i]);
  const figures = await inTurn(
    {
      ours: () => milliseconds(() => run(...cells)),
      copying: () => milliseconds(() => eachRow(column, (value) => value)),
    },
    3,
  );
  return {
    what,
    size: `${size.toLocaleString("en-GB")} ${counted}`,
    unit: "ms",
    ours: median(figures.ours),
    peer: "copying a column of a million rows",
    theirs: median(figures.copying),
    ...(size === SIZES[0] && { limits: [{ what: "ms", most: 1000, is: median(figures.ours) }] }),
  };
}

export const service: Job = {
  name: "service",
  title: "A whole service at once: booking, scanned codes",
  about:
    "BOOK with either rule, 20 people to a session, and READCODE on codes as a scanner sends them, from " +
    "dist/functions.js: time on the clock, in turn with a plain loop that copies a million rows.",
  leavesOut:
    "people's wishes and places that change meanwhile. No other program is known that books by the same rules.",
  async run({ quick, row }) {
    for (const size of quick ? SIZES.slice(0, 1) : SIZES) {
      for (const rule of RULES) row(await measured("BOOK", `BOOK, ${rule}`, size, "people", booking(size, rule)));
      row(await measured("READCODE", "READCODE", size, "codes", codes(size)));
    }
  },
};
