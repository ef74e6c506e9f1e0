/** Settings count as agreed only where who, when and the review all stand there and hold. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Cell } from "../../../src/worksheet/cell";
import { day } from "../../../src/worksheet/dates";
import { agreement } from "../../../taskpane/actions/clinic-settings/agreement";

const names = (cells: Readonly<Record<string, Cell>>) => ({
  names: Object.entries(cells).map(([name, value], i) => ({ name, value, refersTo: `='Clinic settings'!$B$${i + 1}` })),
});

const good = {
  Agreed_By: "Nutrition team",
  Agreed_On: day("2026-04-03"),
  Agreed_Until: day("2027-04-03"),
  As_of: day("2026-11-26"),
};

describe("settings agreed", () => {
  test("who, when, and when to review", () => {
    expect(agreement(names(good))).toEqual({
      agreed: true,
      sentence: "Settings agreed by Nutrition team on 3 Apr 2026, review by 3 Apr 2027.",
    });
  });

  test("names count whatever their letter case, and the day of review still counts", () => {
    const lower = Object.fromEntries(Object.entries(good).map(([name, value]) => [name.toLowerCase(), value]));
    expect(agreement(names({ ...lower, as_of: good.Agreed_Until })).agreed).toBe(true);
  });

  test.each<[string, Readonly<Record<string, Cell>>, RegExp]>([
    ["no day", { ...good, Agreed_On: null }, /Nutrition team is named, but the day/],
    ["0 for a day, as some hosts hand a blank over", { ...good, Agreed_On: 0 }, /the day is not entered/],
    ["a day as text that can be turned round", { ...good, Agreed_On: "3/4/26" }, /cannot be read/],
    ["a day ahead", { ...good, Agreed_On: day("2026-11-27") }, /on 27 Nov 2026, a day that has not come yet/],
    ["no review", { ...good, Agreed_Until: "" }, /no day is entered to review them by/],
    ["review past", { ...good, As_of: day("2027-04-04") }, /should have been reviewed by 3 Apr 2027/],
    ["today not known", { ...good, As_of: null }, /today’s date is not known/],
  ])("not agreed: %s", (_, cells, why) => {
    const { agreed, sentence } = agreement(names(cells));
    expect(agreed).toBe(false);
    expect(sentence).toMatch(/^Settings not agreed: /);
    expect(sentence).toMatch(why);
  });

  test.each([null, "", " \t "])("not agreed: nobody named, %j", (by) => {
    expect(agreement(names({ ...good, Agreed_By: by }))).toEqual({
      agreed: false,
      sentence: "Nobody has agreed these settings yet.",
    });
  });

  test("a day that stands still in the workbook does not put the review off", () => {
    expect(agreement(names(good), day("2027-05-01")).agreed).toBe(false);
  });

  test("no workbook, or none with such names", () => {
    expect(agreement(null).agreed).toBe(false);
    expect(agreement(names({ As_of: good.As_of }), good.As_of).sentence).toMatch(/no sheet on which a clinic agrees/);
  });

  test("law: agreed never without a name, a day of the past and a review that is not past", () => {
    const cell = fc.oneof(
      fc.constantFrom<Cell>(null, "", "  ", 0, true, "x", "2026-04-03", "3/4/26", -1, NaN),
      fc.integer({ min: good.As_of - 800, max: good.As_of + 800 }),
    );
    fc.assert(
      fc.property(cell, cell, cell, (by, on, until) => {
        const said = agreement(names({ Agreed_By: by, Agreed_On: on, Agreed_Until: until, As_of: good.As_of }));
        if (!said.agreed) return;
        expect(String(by ?? "").trim()).not.toBe("");
        const number = (date: Cell) => (typeof date === "number" ? date : day(String(date)));
        expect(number(on)).toBeLessThanOrEqual(good.As_of);
        expect(number(until)).toBeGreaterThanOrEqual(good.As_of);
      }),
      { seed: 7, numRuns: 2000 },
    );
  });
});
