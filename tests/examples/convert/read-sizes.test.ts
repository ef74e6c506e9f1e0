/** What becomes of each cell of a column typed by twenty people; expected values follow from how the column is made. */
import { expect, test } from "vitest";
import { readSizes } from "../../../taskpane/actions/convert-sizes/read-sizes";
import type { SizeGroup, Way } from "../../../taskpane/actions/convert-sizes/interface";
import { CellError } from "../../../src/worksheet/error";
import type { Value } from "../../../taskpane/workbook/port";
import { messySizes, type Because, type Messy } from "./messy-sizes";

const read = (values: readonly Value[], way: Way = "toMm") =>
  readSizes(
    { sheet: "s", area: { top: 1, left: 2, rows: values.length, columns: 1 }, values, shownDates: new Map() },
    way,
  );
const rowsOf = (groups: readonly SizeGroup[]): number[] =>
  groups.flatMap(({ cells }) => cells.map(({ row }) => row)).sort((a, b) => a - b);
/** The first cell stands in row 2. */
const rowsThat = (fits: (messy: Messy) => boolean): number[] =>
  messySizes.flatMap((messy, i) => (fits(messy) ? [i + 2] : []));

test("the column is what its maker says: 1,402 sizes and 18 blanks", () => {
  expect(messySizes).toHaveLength(1420);
  expect(messySizes.filter(({ is }) => is !== "blank")).toHaveLength(1402);
});

test("1,380 are read and 22 are not; blanks are counted apart", () => {
  const { reading } = read(messySizes.map(({ cell }) => cell));
  expect(reading).toMatchObject({ of: 1420, read: 1380, notRead: 22, blank: 18, doubtful: 6 });
  expect(rowsOf(reading.unread)).toEqual(rowsThat(({ is }) => is === "not read"));
  expect(rowsOf(reading.doubts)).toEqual(rowsThat(({ is }) => is === "doubtful"));
});

test("each size that is read is a third of its French number in mm", () => {
  const { results } = read(messySizes.map(({ cell }) => cell));
  const wrong = messySizes.flatMap(({ cell, french, is }, i) => {
    const want = is === "blank" ? "" : is === "not read" ? "#VALUE!" : french! / 3;
    const got = results[i];
    const same =
      got instanceof CellError
        ? got.code === want
        : typeof got === "number" && typeof want === "number"
          ? Math.abs(got - want) < 1e-12
          : got === want;
    return same ? [] : [[cell, got, want]];
  });
  expect(wrong).toEqual([]);
});

/** Words of ours for the catalogue's reasons. */
const reasons: { readonly [B in Because]: RegExp } = {
  "two sizes": /more than one number/,
  "in doubt": /in doubt/,
  gauge: /^G means gauge; write Fr$/,
  "no French size": /^no French size/,
  outside: /above 0 and at most 60/,
};

test("what is not read is grouped by its reason, whatever stands in the cells", () => {
  const { reading } = read(messySizes.map(({ cell }) => cell));
  expect(reading.unread).toHaveLength(5);
  for (const [because, says] of Object.entries(reasons) as [Because, RegExp][]) {
    const group = reading.unread.find(({ reason }) => says.test(reason));
    expect(rowsOf(group ? [group] : []), because).toEqual(rowsThat((messy) => messy.because === because));
  }
  const sizes = reading.unread.map(({ cells }) => cells.length);
  expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
  const { cells } = reading.unread.find(({ reason }) => reasons.gauge.test(reason))!;
  for (const { address, row, text } of cells) {
    expect(address).toBe(`C${row}`);
    expect(messySizes[row - 2]!.cell).toBe(text);
  }
});

test("millimetres go back: three French to one, and what tubes do not have is doubted", () => {
  // ISO 20696: 1 mm = 3 CH. 1.5 mm is 4.5 Fr, 14 mm would be 42 Fr; 21 mm is above 60 Fr and is refused.
  const { reading, results } = read([4.7, "6 mm", "14 Fr", 1.5, 14, 21, null, 0, "", "4.7-5 mm"], "toFr");
  expect(reading).toMatchObject({ of: 10, read: 4, notRead: 3, blank: 3, doubtful: 2 });
  expect(results[0]).toBeCloseTo(14.1, 12);
  expect(results[1]).toBe(18);
  expect(rowsOf(reading.unread)).toEqual([4, 7, 11]);
  expect(rowsOf(reading.doubts)).toEqual([5, 6]);
});

test("errors in cells are not read, and a long text is cut short in the list", () => {
  const { reading, results } = read([new CellError("#N/A"), new CellError("#REF!"), "x".repeat(300)]);
  expect(reading).toMatchObject({ read: 0, notRead: 3 });
  expect(results.map((value) => (value as CellError).code)).toEqual(["#N/A", "#REF!", "#VALUE!"]);
  const longest = Math.max(
    ...reading.unread.flatMap(({ cells, reason }) => [reason.length, ...cells.map(({ text }) => text.length)]),
  );
  expect(longest).toBeLessThan(80);
});

test("a hundred thousand cells are read while somebody waits", () => {
  const many = Array.from({ length: 100_000 }, (_, i) => messySizes[i % messySizes.length]!.cell);
  const begun = performance.now();
  const { reading } = read(many);
  const took = performance.now() - begun;
  expect(reading.of).toBe(100_000);
  // usual is half a second; a reader that goes back and forth in a text would take minutes
  expect(took).toBeLessThan(20_000);
});
