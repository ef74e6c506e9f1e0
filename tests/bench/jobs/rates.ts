/** Exact limits of rates over long columns, against scipy: few counts again and again, and as many as there are. */
import { warmBundle } from "../functions/bundle";
import { cpu, inTurn, median, randoms } from "../measure";
import { ratesByScipy, type ByScipy } from "../peers/scipy";
import type { How, Job, Limit } from "../report/row";

const SIZES = [250_000, 500_000, 1_000_000];

interface Column {
  readonly numbers: Float64Array;
  readonly cells: readonly (readonly [number])[];
}

function column(rows: number, value: () => number): Column {
  const numbers = Float64Array.from({ length: rows }, value);
  return { numbers, cells: Array.from(numbers, (one) => [one] as const) };
}

/** Events and tube-days of A and of B, with so many different pairs of counts. */
function counts(rows: number, kinds: "1,000" | "all"): readonly Column[] {
  const random = randoms(7);
  const below = (most: number) => () => Math.floor(most * random());
  const days = () => 1000 + Math.floor(90_000 * random());
  const [mostA, mostB] = kinds === "1,000" ? [40, 25] : [1000, 1000];
  return [column(rows, below(mostA)), column(rows, days), column(rows, below(mostB)), column(rows, days)];
}

const NEAR = 1e-8;

function agree(what: string, ours: readonly unknown[], theirs: readonly number[]): void {
  theirs.forEach((value, i) => {
    const own = ours[i];
    const isSame = Number.isFinite(value) ? Math.abs((own as number) - value) <= NEAR * Math.abs(value) : own === "";
    if (!isSame) throw new Error(`${what} and scipy differ: ${String(own)} and ${value}`);
  });
}

async function against(how: How, rows: number, kinds: "1,000" | "all"): Promise<void> {
  const shipped = warmBundle();
  const columns = counts(rows, kinds);
  const [eventsA, daysA, eventsB, daysB] = columns.map(({ cells }) => cells) as [unknown, unknown, unknown, unknown];
  const rate = () => shipped.get("RATE")!(eventsA, daysA) as unknown[][];
  const ratio = () => shipped.get("RATERATIO")!(eventsA, daysA, eventsB, daysB) as unknown[][];
  const figures = await inTurn<"rate" | "ratio" | "scipy", number | ByScipy | undefined>(
    {
      rate: () => cpu(rate),
      ratio: () => cpu(ratio),
      scipy: () => ratesByScipy(...columns.map(({ numbers }) => numbers)),
    },
    how.quick ? 1 : 3,
  );
  const own = (which: "rate" | "ratio") => median(figures[which] as number[]);
  const theirs = figures.scipy.filter((one): one is ByScipy => one !== undefined);
  if (theirs.length === 0) how.notMeasured("scipy, because Python 3 with scipy was not found.");
  else {
    agree("RATE", rate()[0]!, theirs[0]!.firstRate);
    agree("RATERATIO", ratio()[0]!, theirs[0]!.firstRatio);
  }
  const told = (what: string, which: "rate" | "ratio", remark: string): void => {
    const ours = own(which);
    const limit: Limit = kinds === "1,000" ? { what: "ms", most: 500, is: ours } : { what: "ratio", most: 1 };
    how.row({
      what,
      size: `${rows.toLocaleString("en-GB")} rows, ${kinds === "all" ? "a million" : kinds} pairs of counts`,
      unit: "ms",
      ours,
      ...(theirs.length > 0 && { peer: theirs[0]!.version, theirs: median(theirs.map((one) => one[which])) }),
      // The limits hold for the longest column.
      ...(rows === SIZES.at(-1) && (kinds === "1,000" || theirs.length > 0) && { limits: [limit] }),
      remark,
    });
  };
  told("RATE with limits", "rate", "");
  told("RATERATIO with limits and p", "ratio", "scipy: limits and two tails");
}

export const rates: Job = {
  name: "rates",
  title: "Exact limits of rates against scipy",
  about:
    "RATE and RATERATIO from dist/functions.js, all functions warm, beside scipy's inverse incomplete gamma and beta " +
    "functions over whole arrays, in turn: processor time. Once with 1,000 pairs of counts again and again, as a sheet " +
    "has them, once with a million. The first row's answers are compared.",
  leavesOut:
    "the time that Python takes to start and to read the numbers; for p, scipy works out two tails, and does not search " +
    "where the second one begins, which ours does: its exact p for two rates comes row by row and would take minutes.",
  async run(how) {
    for (const rows of how.quick ? SIZES.slice(0, 1) : SIZES)
      for (const kinds of ["1,000", "all"] as const) await against(how, rows, kinds);
  },
};
