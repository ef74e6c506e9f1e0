/** At most 35% of the height is held, and half of the width; what is next to the list stays longest. */
import { expect, test } from "vitest";
import { heldWithin } from "../../../taskpane/workbook/embedded/page/held";

/** Rows 0 to 5 are held, the last of them a header in three lines; two columns. */
const freeze = { startRow: 6, ySplit: 6, startColumn: 2, xSplit: 2 };
const sizes = {
  row: (at: number) => [30, 24, 24, 24, 24, 78][at]!,
  column: (at: number) => [80, 220][at]!,
};

test.each([
  [
    { height: 600, width: 800 },
    { rows: 6, columns: 2 },
  ],
  // 35% of 580 is 203: the title gives way
  [
    { height: 580, width: 800 },
    { rows: 5, columns: 2 },
  ],
  [
    { height: 300, width: 500 },
    { rows: 2, columns: 1 },
  ],
  // not even the header fits: nothing is held, and all can be reached
  [
    { height: 200, width: 150 },
    { rows: 0, columns: 0 },
  ],
])("in %o", (room, held) => expect(heldWithin(freeze, sizes, room)).toEqual(held));

test("hidden rows take no room", () => {
  const row = (at: number) => (at < 5 ? 0 : 78);
  expect(heldWithin(freeze, { ...sizes, row }, { height: 300, width: 800 }).rows).toBe(6);
});

test("a sheet that holds nothing goes on holding nothing", () => {
  const none = { startRow: -1, ySplit: 0, startColumn: -1, xSplit: 0 };
  expect(heldWithin(none, sizes, { height: 300, width: 300 })).toEqual({ rows: 0, columns: 0 });
});
