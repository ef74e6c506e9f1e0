/**
 * Measures one function in a process of its own, from dist/functions.js with all functions warm: processor time beside
 * that of copying a column of as many rows, in turn; memory at the largest size. Prints JSON.
 */
import { cpu, inTurn, median } from "../measure";
import { warmBundle } from "./bundle";
import { cases, SHEET } from "./cases";
import { eachRow } from "./each-row";

/** At one size. */
export interface Timed {
  readonly rows: number;
  /** Milliseconds of processor time. */
  readonly ours: number;
  readonly copying: number;
}

export interface Measured {
  /** Smallest size first. */
  readonly timed: readonly Timed[];
  /** Megabytes at the highest: in all, and above what was there with the inputs in memory. */
  readonly inAll: number;
  readonly own: number;
  /** Megabytes of the texts that come out, one byte a character. */
  readonly texts: number;
  /** A sentence where the answer is an error as a whole. */
  readonly fault?: string;
}

const megabytes = (bytes: number): number => Math.round(bytes / 1e6);
const textBytes = (answer: unknown): number => {
  let sum = 0;
  if (Array.isArray(answer))
    for (const row of answer as unknown[][]) for (const cell of row) if (typeof cell === "string") sum += cell.length;
  return sum;
};

async function measure(name: string, quick: boolean): Promise<Measured> {
  const run = warmBundle().get(name)!;
  const one = cases.find((each) => each.name === name)!;
  const sizes = quick ? (one.sizes ?? SHEET).slice(0, 1) : (one.sizes ?? SHEET);
  let [inAll, own, texts, fault]: [number, number, number, string | undefined] = [0, 0, 0, undefined];
  const timed: Timed[] = [];
  // The largest first: nothing that a smaller one left behind counts as memory.
  for (const rows of [...sizes].reverse()) {
    const cells = one.cells(rows);
    const column = Array.from({ length: rows }, (_, row) => [row]);
    let answer: unknown;
    const ours = (): void => {
      answer = undefined;
      try {
        answer = run(...cells);
      } catch (thrown) {
        fault = (thrown as { message: string }).message;
      }
    };
    if (rows === sizes.at(-1)) {
      global.gc?.();
      const before = process.memoryUsage().rss;
      ours();
      inAll = megabytes(process.resourceUsage().maxRSS * 1024);
      own = Math.max(0, inAll - megabytes(before));
      texts = megabytes(textBytes(answer));
    }
    const figures = await inTurn(
      { ours: () => cpu(ours), copying: () => cpu(() => eachRow(column, (value) => value)) },
      quick ? 1 : 3,
    );
    timed.unshift({ rows, ours: median(figures.ours), copying: median(figures.copying) });
  }
  return { timed, inAll, own, texts, ...(fault !== undefined && { fault }) };
}

console.log(JSON.stringify(await measure(process.argv[2]!, process.argv[3] === "quick")));
