/**
 * A bumper with a balloon's water or check beside it, in somebody's own list: one of the two is wrong, and every column
 * says so. What the words mean stands in the shared template; that a bumper holds no water is what a bumper is.
 */
import { describe, expect, it } from "vitest";
import { recipeNamed } from "../../../src/columns/recipes/index";
import type { RowCells, Using } from "../../../src/columns/recipes/recipe";
import { settingNamed } from "../../../src/settings/index";
import type { KindKey } from "../../../src/settings/kinds";
import { day } from "../../../src/worksheet/dates";
import { CellError } from "../../../src/worksheet/error";

const using: Using = {
  kinds: {
    from: "words",
    words: new Map<string, KindKey>([
      ["balloon", "balloon gastrostomy"],
      ["bumper", "bumper adult"],
      ["gj", "gastrojejunal"],
      ["loop", "placing team"],
    ]),
  },
  value: (name) => settingNamed(name).default,
  written: (name) => String(settingNamed(name).default),
  asOf: day("2026-06-01"),
};
const everyoneHasABumper: Using = { ...using, kinds: { from: "everyone", kind: "bumper adult" } };
const last = day("2026-04-20");
const bumper: RowCells = { last, kind: "Bumper " };
const says = (key: "changeDue" | "atTheLatest" | "balloon" | "balloonLoss", row: RowCells, by = using) => {
  const recipe = recipeNamed(key);
  return [recipe.answer(row, by), recipe.problem(row, by)?.reason ?? null];
};
const contradiction = "a balloon check of a tube without a balloon: one of the two is wrong";

describe("a bumper with a balloon's water or check", () => {
  it.each([{ putIn: 5 }, { putIn: "5 mL" }, { out: 4.5 }, { out: "0 mL" }, { lastCheck: day("2026-05-25") }])(
    "%j: its change is not known",
    (cells) => {
      for (const key of ["changeDue", "atTheLatest"] as const) {
        expect(says(key, { ...bumper, ...cells })).toEqual(["kind not known", contradiction]);
        expect(says(key, { last, ...cells }, everyoneHasABumper)).toEqual(["kind not known", contradiction]);
      }
    },
  );
  it.each([
    {},
    { putIn: null },
    { putIn: "-" },
    { putIn: "n/a" },
    { out: 0 },
    { lastCheck: "" },
    { out: new CellError("#N/A") },
  ])("%j tells of none", (cells) =>
    expect(says("changeDue", { ...bumper, ...cells })).toEqual(["no set change", null]),
  );
  it("has no balloon that could be as filled", () => {
    for (const row of [
      { out: 5, putIn: 5 },
      { out: 0, putIn: 5 },
      { out: 5, putIn: null },
    ]) {
      expect(says("balloon", { ...bumper, ...row })).toEqual(["no balloon", contradiction]);
      expect(says("balloonLoss", { ...bumper, ...row })).toEqual(["no balloon", contradiction]);
    }
    expect(says("balloon", { ...bumper, out: null, putIn: null })).toEqual(["no balloon", null]);
  });
  it("leaves balloons, and kinds that do not say, to the figures", () => {
    for (const word of ["balloon", "GJ", "loop", "PEG", null]) {
      expect(says("balloon", { kind: word, out: 5, putIn: 5 })[0]).toBe("as filled");
      expect(says("balloon", { kind: word, out: 0, putIn: 5 })[0]).toBe("empty");
    }
    expect(says("balloon", { out: 5, putIn: 5 })[0]).toBe("as filled");
    expect(says("changeDue", { last, kind: "balloon", putIn: 5 })[0]).toBe(day("2026-07-20"));
  });
});
