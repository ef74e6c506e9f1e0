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

test("a bend is used where it is known, and the root is the same", () => {
  const cube = (x: number): readonly [number, number] => [x ** 3 - 8, 3 * x * x];
  let [plain, bent] = [0, 0];
  expect(findRoot((x) => (plain++, cube(x)), 0, 100, 5)).toBeCloseTo(2, 14);
  expect(findRoot((x) => (bent++, [...cube(x), 6 * x]), 0, 100, 5)).toBeCloseTo(2, 14);
  expect(bent).toBeLessThan(plain);
});

test("a last step that is too small to move ends the search", () => {
  let asked = 0;
  const rounded = (x: number): readonly [number, number] => [x === 3 ? -2e-16 : x - 3, 1];
  expect(findRoot((x) => (asked++, rounded(x)), -700, 700, 3)).toBe(3);
  expect(asked).toBeLessThan(4);
});
