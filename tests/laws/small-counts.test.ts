/**
 * Nobody works a small count out of the pages that are handed round. The attack knows every page, takes each from each
 * other, and tries every whole number that could stand where none is shown.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { protect, type Shown, type Sum } from "../../src/service/small-counts";
import { shortOrLong } from "../budget";

const LEAST = 3;

/** Two kinds of thing counted in two halves of a year, with every total: as pages of halves and of the year show them. */
const KEYS = ["1a", "1b", "1", "2a", "2b", "2", "Ya", "Yb", "Y"] as const;
const halves: readonly Sum[] = [
  { total: "1", parts: ["1a", "1b"] },
  { total: "2", parts: ["2a", "2b"] },
];
const all: readonly Sum[] = [
  ...halves,
  { total: "Y", parts: ["Ya", "Yb"] },
  { total: "Ya", parts: ["1a", "2a"] },
  { total: "Yb", parts: ["1b", "2b"] },
  { total: "Y", parts: ["1", "2"] },
];
const cellsOf = ([a, b, c, d]: readonly number[]) =>
  new Map<string, number>(
    KEYS.map((key, i) => [key, [a!, b!, a! + b!, c!, d!, c! + d!, a! + c!, b! + d!, a! + b! + c! + d!][i]!]),
  );

function pages(values: readonly number[]): { cells: Map<string, number>; shown: ReadonlyMap<string, Shown> } {
  const cells = cellsOf(values);
  const only = (half: string) => new Map([...cells].filter(([key]) => key.startsWith(half)));
  const before = new Map([...protect(only("1"), [halves[0]!], LEAST), ...protect(only("2"), [halves[1]!], LEAST)]);
  return { cells, shown: protect(cells, all, LEAST, before) };
}

/** Every set of four counts that would give the same pages. */
function possible(
  cells: ReadonlyMap<string, number>,
  shown: ReadonlyMap<string, Shown>,
): readonly Map<string, number>[] {
  const most = 14;
  const found: Map<string, number>[] = [];
  const fits = (one: Map<string, number>): boolean =>
    [...shown].every(([key, what]) => {
      const value = one.get(key)!;
      return what === "shown" ? value === cells.get(key) : what === "under" ? value < LEAST : value >= LEAST;
    });
  for (let a = 0; a <= most; a++)
    for (let b = 0; b <= most; b++)
      for (let c = 0; c <= most; c++)
        for (let d = 0; d <= most; d++) {
          const one = cellsOf([a, b, c, d]);
          if (fits(one)) found.push(one);
        }
  return found;
}

const count = fc.integer({ min: 0, max: 8 });
const four = fc.tuple(count, count, count, count);

describe("pages of halves and of their year", () => {
  it("show no count below the least", () =>
    fc.assert(
      fc.property(four, (values) => {
        const { cells, shown } = pages(values);
        for (const [key, value] of cells) expect(shown.get(key) === "shown" && value < LEAST).toBe(false);
      }),
      { seed: 20261201, numRuns: 500 },
    ));

  it("give none away when every number that could stand there is tried", () =>
    fc.assert(
      fc.property(four, (values) => {
        const { cells, shown } = pages(values);
        const ways = possible(cells, shown);
        for (const [key, what] of shown) {
          if (what !== "under") continue;
          expect(new Set(ways.map((way) => way.get(key))).size, `${key} of ${values.join()}`).toBeGreaterThan(1);
        }
      }),
      { seed: 20261201, numRuns: shortOrLong(20, 1500) },
    ));

  it("taken from each other leave no remainder below the least", () =>
    fc.assert(
      fc.property(four, (values) => {
        const { cells, shown } = pages(values);
        for (const { total, parts } of all) {
          const hidden = parts.filter((part) => shown.get(part) !== "shown");
          if (shown.get(total) !== "shown" || hidden.length === 0) continue;
          const rest = parts.reduce(
            (left, part) => (shown.get(part) === "shown" ? left - cells.get(part)! : left),
            cells.get(total)!,
          );
          expect(rest).toBeGreaterThanOrEqual(LEAST);
        }
      }),
      { seed: 20261201, numRuns: 500 },
    ));

  it("without the second look do give them away: the attack is able to find one", () => {
    const values = [6, 1, 5, 5];
    const cells = cellsOf(values);
    const naive = new Map(
      [...cells].map(([key, value]) => [key, value < LEAST ? ("under" as const) : ("shown" as const)]),
    );
    expect(new Set(possible(cells, naive).map((way) => way.get("1b")))).toEqual(new Set([1]));
  });

  it("hold nothing back where nothing is small, and nothing at all where the clinic shows every count", () => {
    expect([...pages([5, 6, 7, 8]).shown.values()].every((what) => what === "shown")).toBe(true);
    expect([...protect(cellsOf([0, 1, 2, 9]), all, 0).values()].every((what) => what === "shown")).toBe(true);
  });

  it("never take back what was handed out before", () =>
    fc.assert(
      fc.property(four, (values) => {
        const cells = cellsOf(values);
        const first = protect(new Map([...cells].filter(([key]) => key.startsWith("1"))), [halves[0]!], LEAST);
        const { shown } = pages(values);
        for (const [key, what] of first) expect(shown.get(key)).toBe(what);
      }),
      { seed: 20261201, numRuns: 200 },
    ));
});
