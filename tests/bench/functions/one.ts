/** Measures one function in a process of its own: CPU seconds at three sizes, memory at the largest. Prints JSON. */
import { warmBundle } from "./bundle";
import { cases, SHEET } from "./cases";

export interface Measured {
  readonly sizes: readonly number[];
  /** CPU seconds of the quickest of the runs. */
  readonly seconds: readonly number[];
  /** Megabytes at the highest, inputs and engine included, and above what was there with the inputs in memory. */
  readonly peak: number;
  readonly own: number;
  /** Megabytes of the texts that come out, one byte a character. */
  readonly texts: number;
  /** A sentence where the answer is an error as a whole. */
  readonly fault?: string;
}

/** A size is run again until so many seconds are spent, at most so often. */
const ENOUGH = 2;
const MOST_RUNS = 7;

const cpuSeconds = (work: () => unknown): number => {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
};

const megabytes = (bytes: number): number => Math.round(bytes / 1e6);
const textBytes = (answer: unknown): number =>
  Array.isArray(answer)
    ? (answer as unknown[][])
        .flat()
        .reduce<number>((sum, cell) => sum + (typeof cell === "string" ? cell.length : 0), 0)
    : 0;

function measure(name: string): Measured {
  const run = warmBundle().get(name)!;
  const one = cases.find((each) => each.name === name)!;
  const sizes = one.sizes ?? SHEET;
  const seconds: number[] = [];
  let [peak, own, texts, fault]: [number, number, number, string | undefined] = [0, 0, 0, undefined];
  for (const size of sizes) {
    const cells = one.cells(size);
    global.gc?.();
    const before = process.memoryUsage().rss;
    let answer: unknown;
    const tried: number[] = [];
    for (let spent = 0; tried.length < MOST_RUNS && (tried.length < 2 || spent < ENOUGH); spent += tried.at(-1)!) {
      answer = undefined;
      tried.push(
        cpuSeconds(() => {
          try {
            answer = run(...cells);
          } catch (thrown) {
            fault = (thrown as { message: string }).message;
          }
        }),
      );
      if (tried.length === 1 && size === sizes.at(-1)) {
        peak = megabytes(process.resourceUsage().maxRSS * 1024);
        own = Math.max(0, peak - megabytes(before));
      }
      if (spent > 20) break;
    }
    seconds.push(Math.min(...tried));
    if (size === sizes.at(-1)) texts = megabytes(textBytes(answer));
  }
  return { sizes, seconds, peak, own, texts, ...(fault !== undefined && { fault }) };
}

console.log(JSON.stringify(measure(process.argv[2]!)));
