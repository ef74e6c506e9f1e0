/** Roots, with functions whose root is known. */
import { expect, test } from "vitest";
import { findRoot, findRootBetween } from "../../../src/maths/root";

test("a root is found where Newton's step alone would leave the bracket", () => {
  const steep = (x: number): readonly [number, number] => [Math.atan(x - 3), 1 / (1 + (x - 3) ** 2)];
  expect(findRoot(steep, -1000, 1000, 500)).toBeCloseTo(3, 12);
  expect(findRootBetween((x) => Math.atan(x - 3), -1000, 1000)).toBeCloseTo(3, 12);
});

test("falling functions and roots at an end are found too", () => {
  expect(findRoot((x) => [2 - x, -1], 0, 2, 1)).toBeCloseTo(2, 12);
  expect(findRootBetween((x) => 8 - x ** 3, 0, 100)).toBeCloseTo(2, 12);
});
