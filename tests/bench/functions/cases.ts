/**
 * For each worksheet function what a long sheet would ask of it: as many rows as a sheet has, or the most that the
 * function can mean. Hardly any two rows are alike.
 */
export interface Case {
  readonly name: string;
  /** What the rows are, where they are not rows of results. */
  readonly counted?: string;
  /** The three sizes, each twice the one before. */
  readonly sizes?: readonly [number, number, number];
  readonly cells: (rows: number) => unknown[];
}

/** Rows of an Excel sheet, and a half and a quarter of them. */
export const SHEET = [262_144, 524_288, 1_048_576] as const;

const column = <T>(rows: number, cell: (row: number) => T): [T][] =>
  Array.from({ length: rows }, (_, row) => [cell(row)]);

/** From 0 to below `of`, in no order, the same in every run. */
const spread = (row: number, of: number): number => (Math.imul(row + 1, 2_654_435_761) >>> 0) % of;
const tenths = (from: number, to: number) => (row: number) => from + spread(row, Math.round(10 * (to - from)) + 1) / 10;
const whole = (from: number, to: number) => (row: number) => from + spread(row, to - from + 1);
const among =
  <T>(...values: readonly T[]) =>
  (row: number) =>
    values[spread(row, values.length)]!;
/** Another column than one made with the same limits. */
const other = (seed: number) => (row: number) => row * 7 + seed;

const TODAY = 46_143;
const past = whole(TODAY - 1500, TODAY);
const near = whole(TODAY - 200, TODAY + 400);
const yesNo = among("yes", "no");
const days = (row: number): number => 1 + spread(row, 700) + (row % 7) / 8;
const failed = (row: number): string => (spread(row, 3) === 0 ? "no" : "yes");

const prints = (row: number): string =>
  `${12 + 2 * spread(row, 7)} Fr x ${tenths(0.8, 5)(row).toFixed(1)} cm, ${3 + spread(other(1)(row), 8)} mL, REF ${row}`;
const checkDigit = (digits: string): number =>
  (10 - ([...digits].reduce((sum, digit, i) => sum + Number(digit) * (i % 2 === 0 ? 3 : 1), 0) % 10)) % 10;
const codes = (row: number): string => {
  const item = String(1_000_000_000_000 + row);
  return `(01)${item}${checkDigit(item)}(17)28${String(1 + (row % 12)).padStart(2, "0")}15(10)L${spread(row, 1e6)}(21)S${row}`;
};

/** So many checks of each person. */
const CHECKS_EACH = 20;
const checks = (rows: number): [unknown, unknown, unknown] => [
  column(rows, (row) => TODAY - 200 + 7 * (row % CHECKS_EACH) + spread(row, 5)),
  column(rows, tenths(4, 5)),
  column(rows, () => 5),
];
const MOST_CHECKS = 1000;

export const cases: readonly Case[] = [
  { name: "FRTOMM", cells: (rows) => [column(rows, tenths(5, 60))] },
  { name: "MMTOFR", cells: (rows) => [column(rows, tenths(1, 20))] },
  { name: "READPRINT", cells: (rows) => [column(rows, prints)] },
  { name: "STOCKSIZE", cells: (rows) => [column(rows, tenths(5, 60)), column(20, (row) => 6 + 2 * row)] },
  { name: "RETENTION", cells: (rows) => [column(rows, yesNo), column(rows, (row) => `red, lot ${row}`)] },
  {
    name: "REMOVAL",
    cells: (rows) => [
      column(rows, among("balloon", "bumper", "loop", "")),
      column(rows, among("G", "GJ", "J", "G")),
      column(rows, past),
      TODAY,
      column(rows, yesNo),
    ],
  },
  { name: "BALLOONDEVIATION", cells: (rows) => [column(rows, tenths(0, 6)), column(rows, tenths(3, 10))] },
  { name: "BALLOONSTATE", cells: (rows) => [column(rows, tenths(0, 6)), column(rows, tenths(3, 10))] },
  {
    name: "CHECKDUE",
    cells: (rows) => [column(rows, whole(44_000, 45_000)), column(rows, whole(45_000, 46_000)), column(rows, past)],
  },
  {
    name: "BALLOONTREND",
    counted: "checks of people with 20 each, a row for every person",
    cells: (rows) => [
      ...checks(rows),
      column(rows, (row) => `P-${Math.floor(row / CHECKS_EACH)}`),
      column(Math.ceil(rows / CHECKS_EACH), (person) => `P-${person}`),
    ],
  },
  {
    name: "BALLOONHALF",
    counted: `rows of expected, over ${MOST_CHECKS} checks`,
    cells: (rows) => [...checks(MOST_CHECKS), column(rows, tenths(3, 10))],
  },
  { name: "BALLOONDIAMETER", cells: (rows) => [column(rows, tenths(1, 20)), column(rows, whole(8, 24))] },
  { name: "CHANGEDUE", cells: (rows) => [column(rows, past), column(rows, whole(1, 12))] },
  { name: "DUEDATES", counted: "dates, the most it gives", sizes: [250, 500, 1000], cells: (rows) => [TODAY, 3, rows] },
  { name: "DUESTATE", cells: (rows) => [column(rows, near), TODAY, 14, column(rows, whole(TODAY, TODAY + 600))] },
  { name: "NEARESTOPEN", cells: (rows) => [column(rows, near), [["Sat"], ["Sun"], [TODAY + 3], [TODAY + 30]]] },
  { name: "TRACTSTATE", cells: (rows) => [column(rows, past), TODAY] },
  {
    name: "CHANGELOAD",
    counted: "tubes over 24 months",
    cells: (rows) => [column(rows, near), column(rows, whole(1, 12)), TODAY, 24],
  },
  {
    name: "BOOK",
    counted: "people, 100 for each session",
    cells: (rows) => [column(rows, near), column(Math.ceil(rows / 100), whole(TODAY, TODAY + 700)), 100],
  },
  {
    name: "STOMALENGTH",
    cells: (rows) => [column(rows, tenths(1, 4)), column(rows, tenths(1, 4)), column(20, (row) => 1 + row / 5)],
  },
  {
    name: "STOMAFIT",
    cells: (rows) => [column(rows, tenths(1, 4)), column(rows, tenths(1, 4)), column(rows, tenths(1, 4))],
  },
  { name: "FREEPLAY", cells: (rows) => [column(rows, whole(0, 40))] },
  { name: "MARKSHIFT", cells: (rows) => [column(rows, tenths(2, 6)), column(rows, tenths(2, 6))] },
  { name: "LIFETABLE", counted: "devices", cells: (rows) => [column(rows, days), column(rows, failed)] },
  {
    name: "LIFEQUANTILE",
    counted: "devices, and as many shares",
    cells: (rows) => [
      column(rows, days),
      column(rows, failed),
      column(rows, (row) => (1 + spread(row, 1e6)) / 1_000_001),
    ],
  },
  {
    name: "LIFECOMPARE",
    counted: "devices of 50 kinds",
    cells: (rows) => [
      column(rows, days),
      column(rows, failed),
      column(rows, (row) => `kind ${spread(other(3)(row), 50)}`),
    ],
  },
  { name: "LIFEWEIBULL", counted: "devices", cells: (rows) => [column(rows, days), column(rows, failed)] },
  {
    name: "FAILBY",
    counted: "devices, and as many risks",
    cells: (rows) => [
      column(rows, days),
      column(rows, failed),
      column(rows, (row) => (1 + spread(row, 1e6)) / 1_000_001),
    ],
  },
  {
    name: "WEARRATIO",
    counted: "devices of people with 20 each",
    sizes: [25_000, 50_000, 100_000],
    cells: (rows) => [
      column(rows / 20, (person) => `P-${person}`),
      column(rows, (row) => `P-${Math.floor(row / 20)}`),
      column(rows, days),
      column(rows, failed),
    ],
  },
  {
    name: "FAILBYID",
    counted: "devices of people with 10 each",
    sizes: [25_000, 50_000, 100_000],
    cells: (rows) => [
      column(rows / 10, (person) => `P-${person}`),
      column(rows, (row) => `P-${Math.floor(row / 10)}`),
      column(rows, days),
      column(rows, failed),
      0.1,
    ],
  },
  {
    name: "AGEREPLACE",
    counted: "devices, and a thousand ratios of costs",
    cells: (rows) => [column(rows, days), column(rows, failed), column(1000, (row) => 2 + row / 50)],
  },
  {
    name: "LOTSIGNAL",
    counted: "devices of lots with 100 each",
    sizes: [12_500, 25_000, 50_000],
    cells: (rows) => [
      column(rows / 100, (lot) => `L-${lot}`),
      column(rows, (row) => `L-${Math.floor(row / 100)}`),
      column(rows, days),
      column(rows, failed),
      column(rows / 100, () => 300),
    ],
  },
  {
    name: "UNPLANNED",
    counted: "devices now in, as many past ones, twelve windows",
    sizes: [12_500, 25_000, 50_000],
    cells: (rows) => [
      column(rows, whole(0, 200)),
      column(12, (month) => 30 * (month + 1)),
      column(rows, days),
      column(rows, failed),
    ],
  },
  {
    name: "NOSPARE",
    counted: "devices, and as many ages",
    cells: (rows) => [column(rows, whole(0, 700)), 14, column(rows, days), column(rows, failed)],
  },
  {
    name: "TUBEDAYS",
    cells: (rows) => [column(rows, whole(45_000, 46_000)), column(rows, whole(46_000, 46_143)), 45_700, TODAY],
  },
  {
    name: "RATE",
    counted: "rows with 1,000 counts",
    cells: (rows) => [column(rows, whole(0, 999)), column(rows, whole(1_000, 90_000))],
  },
  {
    name: "RATERATIO",
    counted: "rows with 1,000 pairs of counts",
    cells: (rows) => {
      const pair = (row: number) => spread(row, 1000);
      return [
        column(rows, (row) => pair(row) % 40),
        column(rows, whole(1_000, 90_000)),
        column(rows, (row) => Math.floor(pair(row) / 40)),
        column(rows, (row) => whole(1_000, 90_000)(other(5)(row))),
      ];
    },
  },
  {
    name: "RATECHART",
    counted: "months",
    cells: (rows) => [column(rows, whole(0, 12)), column(rows, whole(1_000, 9_000))],
  },
  { name: "STOCKLEVEL", cells: (rows) => [column(rows, tenths(0.1, 200)), column(rows, whole(1, 60))] },
  {
    name: "SUPPLYNEED",
    cells: (rows) => [column(rows, tenths(0.1, 10)), column(rows, whole(7, 90)), column(rows, whole(1, 30))],
  },
  { name: "READCODE", cells: (rows) => [column(rows, codes), "lot"] },
  {
    name: "RESTENERGY",
    cells: (rows) => [
      column(rows, among("M", "F")),
      column(rows, whole(19, 78)),
      column(rows, tenths(30, 120)),
      column(rows, whole(140, 200)),
    ],
  },
  { name: "FLUIDGOAL", cells: (rows) => [column(rows, tenths(3, 70)), "Holliday-Segar"] },
  {
    name: "FEEDPLAN",
    cells: (rows) => [
      column(rows, whole(500, 3000)),
      column(rows, among(1, 1.2, 1.5, 2)),
      column(rows, whole(10, 24)),
      column(rows, whole(69, 85)),
      40,
      column(rows, whole(1000, 3000)),
    ],
  },
  {
    name: "FEEDGIVES",
    cells: (rows) => [
      column(rows, whole(500, 3000)),
      1,
      40,
      column(rows, whole(69, 85)),
      column(rows, tenths(30, 120)),
    ],
  },
  { name: "PUMPRATE", cells: (rows) => [column(rows, whole(500, 3000)), column(rows, whole(8, 24))] },
  { name: "BOLUSPLAN", cells: (rows) => [column(rows, whole(500, 3000)), column(rows, whole(100, 400))] },
  { name: "DROPRATE", cells: (rows) => [column(rows, whole(50, 500)), column(rows, whole(30, 300)), 20] },
  {
    name: "FLUSHTOTAL",
    cells: (rows) => [column(rows, whole(0, 8)), column(rows, whole(10, 60)), column(rows, whole(0, 6)), 2, 30, 15],
  },
  {
    name: "WATERGAP",
    cells: (rows) => [column(rows, whole(1000, 3000)), column(rows, whole(500, 3000)), column(rows, whole(69, 85))],
  },
  { name: "FEEDSTEPS", counted: "steps, the most it gives", sizes: [50, 100, 199], cells: (rows) => [1, 1, 4, rows] },
  {
    name: "CATCHUPRATE",
    cells: (rows) => [column(rows, whole(1000, 2000)), column(rows, whole(0, 1500)), column(rows, whole(1, 24)), 150],
  },
  { name: "HANGFILLS", cells: (rows) => [column(rows, whole(10, 150)), column(rows, whole(8, 24)), 4] },
  {
    name: "REFEEDINGRISK",
    cells: (rows) => [
      column(rows, whole(18, 90)),
      column(rows, tenths(13, 30)),
      column(rows, whole(0, 20)),
      column(rows, whole(0, 16)),
      column(rows, yesNo),
      column(rows, yesNo),
    ],
  },
  {
    name: "CAMEOUT",
    cells: (rows) => [
      column(rows, past),
      column(rows, whole(TODAY, TODAY + 900)),
      column(rows, among("balloon", "bumper", "balloon", "")),
      column(rows, among("G", "G", "GJ", "J")),
      column(rows, yesNo),
      column(rows, yesNo),
      6,
      12,
      column(rows, (row) => `0000 ${row}`),
    ],
  },
  {
    name: "PLAINWORDS",
    cells: (rows) => [
      column(rows, () => "balloon"),
      column(rows, whole(8, 24)),
      column(rows, tenths(0.8, 5)),
      column(rows, tenths(3, 10)),
      column(rows, whole(TODAY, TODAY + 900)),
      column(rows, among("G", "GJ", "J", "")),
      column(rows, among("long", "low-profile")),
    ],
  },
];
