/** Lists that are hard for arithmetic: the right answer, or #N/A with a sentence, never a wrong number. */
import { describe, expect, test } from "vitest";
import { SheetError } from "../../src/worksheet/error";
import { column, tube } from "../examples/caller";

const row = (answer: unknown): unknown[] => (answer as unknown[][])[0]!;
const sentence = (answer: unknown): [string, string] => {
  const first = Array.isArray(answer) ? row(answer)[0] : answer;
  return first instanceof SheetError ? [first.code, first.message] : ["", `no error: ${String(first)}`];
};
const yes = (n: number): unknown[][] => column(new Array(n).fill("yes"));
/** Twenty devices of two people, or of two lots. */
const owners = column(Array.from({ length: 20 }, (_, i) => (i % 2 ? "a" : "b")));
const lasted = column(Array.from({ length: 20 }, (_, i) => 80 + i));
const near = (got: unknown, want: number, within: number): void =>
  expect(Math.abs((got as number) / want - 1)).toBeLessThanOrEqual(within);

describe("what cannot be estimated says so", () => {
  test.each([
    ["LIFETABLE", [column([90, 120]), column(["no", "no"])], "no device has failed yet"],
    ["LIFEWEIBULL", [column([90]), column(["yes"])], "at least 2 failures, on different days"],
    ["LIFEWEIBULL", [column([90, 90, 120]), column(["yes", "yes", "no"])], "at least 2 failures, on different days"],
    ["LIFEWEIBULL", [column([90, 91]), column(["no", "no"])], "at least 2 failures, on different days"],
    ["FAILBY", [column([80, 90, 91]), yes(3), 0.1], "too few: 3 failures, at least 10 are needed"],
    ["LIFECOMPARE", [column([80, 90]), yes(2), column(["a", "a"])], "needs two groups"],
    ["LIFECOMPARE", [column([80, 90]), column([0, 0]), column(["a", "b"])], "needs two groups"],
    [
      "WEARRATIO",
      ["a", column(["a", "b"]), column([80, 90]), column(["no", "no"])],
      "too few to say: 0 failures of 2 devices, at least 8 of 20 are needed",
    ],
    ["WEARRATIO", ["c", owners, lasted, yes(20)], "id does not stand in ids"],
    ["FAILBYID", ["c", owners, lasted, yes(20), 0.1], "id does not stand in ids"],
    ["FAILBYID", ["a", owners, column(new Array(20).fill(90)), yes(20), 0.1], "failures on different days"],
    ["AGEREPLACE", [column([80, 90]), yes(2), 3], "too few to say: 2 failures of 2 devices"],
    ["AGEREPLACE", [column(new Array(20).fill(90)), yes(20), 3], "at least 2 failures, on different days"],
    ["NOSPARE", [10, 14, lasted.slice(1), yes(19)], "too few to say: 19 failures of 19 devices"],
    ["UNPLANNED", [column([10]), 30, lasted.slice(1), yes(19)], "too few to say: 19 failures of 19 devices"],
    ["LOTSIGNAL", ["c", owners, lasted, yes(20), 5], "lot does not stand in lots"],
    ["LOTSIGNAL", ["a", owners, lasted, yes(20), 5], "without this lot too few to say: 10 failures of 10 devices"],
    ["WEARRATIO", ["a", column(["a", "A"]), column([80, 90]), yes(2)], "at least 2 people"],
  ] as const)("%s %j: %s", (name, args, says) => {
    const [code, message] = sentence(tube(name, ...args));
    expect(code).toBe("#N/A");
    expect(message).toContain(says);
  });

  test.each([
    ["LIFETABLE", [column([90, 120]), column(["yes", ""])], "failed is missing in row 2"],
    ["LIFETABLE", [column([0, 120]), column(["yes", "no"])], "days is missing in row 1"],
    ["LIFETABLE", [column([90, "3 weeks"]), column(["yes", "no"])], "days in row 2 must be one number of days"],
    ["LIFETABLE", [column([90, 120]), column(["yes", 2])], "failed in row 2 must be yes or no (or 1 or 0)"],
    ["LIFEQUANTILE", [column([90, 120, 60]), yes(2)], "days has 3 x 1 cells and failed 2 x 1: make them alike"],
    ["LIFECOMPARE", [column([90, 120]), yes(2), column(["balloon", ""])], "group is missing in row 2"],
    ["WEARRATIO", ["a", column(["a", ""]), column([100, 50]), yes(2)], "ids is missing in row 2"],
    ["WEARRATIO", ["a", column(["a", "b"]), column([100, ""]), yes(2)], "days is missing in row 2"],
    ["LIFEQUANTILE", [column([90, 120]), yes(2), 50], "share must be above 0, at most 1"],
    ["FAILBY", [column([90, 120]), yes(2), 0], "risk must be above 0, below 1"],
    ["FAILBY", [column([90, 120]), yes(2)], "risk is missing"],
    ["FAILBY", [column([90, 120]), yes(2), 0.1, 0.05], "level must be at least 0.5, below 1"],
  ] as const)("%s %j: %s", (name, args, says) => {
    const [code, message] = sentence(tube(name, ...args));
    expect(code).toBe("#VALUE!");
    expect(message).toContain(says);
  });

  test("more groups than kinds of device there can be are refused", () => {
    const many = column(Array.from({ length: 51 }, (_, i) => `P${i}`));
    expect(sentence(tube("LIFECOMPARE", column(many.map((_, i) => i + 1)), yes(51), many))[1]).toContain(
      "more than 50",
    );
  });
});

describe("sums and floats", () => {
  test("0.1 + 0.2 and 0.3 are one day", () => {
    expect(tube("LIFETABLE", column([0.1 + 0.2, 0.3, 0.4]), yes(3))).toHaveLength(2);
  });
  test("days of 1e-300 and of 1e300 keep their shape", () => {
    const days = [54, 187, 216, 240, 244, 335];
    const [shape, , , scale] = row(tube("LIFEWEIBULL", column(days), yes(6))) as number[];
    for (const unit of [1e-300, 1e-9, 1e9, 1e300]) {
      const [other, , , far] = row(tube("LIFEWEIBULL", column(days.map((d) => d * unit)), yes(6))) as number[];
      near(other, shape!, 1e-9);
      near(far, scale! * unit, 1e-9);
      near(row(tube("LIFEQUANTILE", column(days.map((d) => d * unit)), yes(6)))[0], 228 * unit, 1e-12);
    }
  });
  test("two failures nearly on one day: the shape is 2 x / ln(ratio) with x tanh x = 1", () => {
    for (const step of [1, 1e-3, 1e-6]) {
      const [shape] = row(tube("LIFEWEIBULL", column([100, 100 + step]), yes(2))) as number[];
      near(shape, (2 * 1.1996786402577339) / Math.log1p(step / 100), 1e-6);
    }
  });
  test("one failure among a million devices", () => {
    const days = column(Array.from({ length: 1_000_000 }, (_, i) => (i === 0 ? 5 : 10)));
    const failed = column(Array.from(days, (_, i) => (i === 0 ? 1 : 0)));
    const [day, atRisk, count, share, low, high] = row(tube("LIFETABLE", days, failed)) as number[];
    expect([day, atRisk, count, share]).toEqual([5, 1e6, 1, 1 - 1e-6]);
    // Limits of a share so near to 1: the failed share times exp(+-1.96), as Greenwood's sum is 1/(n (n - 1)).
    near(1 - low!, 1e-6 * Math.exp(1.959963984540054), 1e-4);
    near(1 - high!, 1e-6 / Math.exp(1.959963984540054), 1e-4);
    expect(row(tube("LIFEQUANTILE", days, failed))).toEqual(["", "", ""]);
    expect(sentence(tube("LIFEWEIBULL", days, failed))[0]).toBe("#N/A");
  });
  test("a million rows: half of them have failed from day 500 to day 501", () => {
    const days = column(Array.from({ length: 1_000_000 }, (_, i) => 1 + ((i * 7919) % 1000)));
    const [day, low, high] = row(tube("LIFEQUANTILE", days, yes(1_000_000))) as number[];
    expect(day).toBe(500.5);
    expect(low!).toBeGreaterThan(498);
    expect(high!).toBeLessThan(503);
    expect(tube("LIFETABLE", days, yes(1_000_000))).toHaveLength(1000);
  });
  test("one person has nearly all failures of 300: limits still hold the ratio, and the mean is the caseload's", () => {
    const ids = column([...Array.from({ length: 300 }, (_, i) => `P${i}`), ...new Array(9).fill("P0")]);
    const days = column(ids.map((_, i) => (i === 0 || i >= 300 ? 10 + (i % 3) : 100)));
    const failed = column(ids.map((_, i) => (i === 0 || i >= 300 ? "yes" : "no")));
    const rows = tube("WEARRATIO", column(["P0", "P7"]), ids, days, failed) as number[][];
    for (const [ratio, low, high] of rows) {
      expect(low!).toBeLessThanOrEqual(ratio!);
      expect(high!).toBeGreaterThanOrEqual(ratio!);
      expect(Number.isFinite(ratio)).toBe(true);
    }
    // The prior holds the spread back: a factor of 50 and more, as the counts alone would have it, is believed of nobody.
    expect(rows[0]![0]!).toBeGreaterThan(3);
    expect(rows[1]![0]!).toBeLessThan(1);
  });
  test("5,000 people with 20 devices each, one spill", () => {
    const people = Array.from({ length: 5000 }, (_, i) => `P${i}`);
    const ids = column(people.flatMap((id) => new Array<string>(20).fill(id)));
    // Every tenth person wears devices through four times as often.
    const failed = column(ids.map((_, i) => (i % 4 < (Math.floor(i / 20) % 10 === 0 ? 4 : 1) ? "yes" : "no")));
    const rows = tube("WEARRATIO", column(people), ids, column(ids.map((_, i) => 60 + (i % 37))), failed) as number[][];
    expect(rows).toHaveLength(5000);
    for (const [ratio] of rows) expect(Number.isFinite(ratio)).toBe(true);
  });
});
