/** What examples print is for people: a date is printed as one, in the formula and in what it gives. */
import { expect, test } from "vitest";
import { exampleFormula, givenText } from "../../functions/formula-text";
import { functions } from "../../src/index";
import { day } from "../../src/worksheet/dates";

const printed = (name: string, isWanted: (formula: string) => boolean) => {
  const fn = functions.find((each) => each.name === name)!;
  const examples = fn.documentation!.examples.map((example) => [exampleFormula(fn, example), givenText(fn, example)]);
  return examples.filter(([formula]) => isWanted(formula!));
};

test("a month of a block, counts beside it left as they are", () => {
  // The first days of the months that the formula names, counted on a calendar.
  expect(printed("CHANGELOAD", (formula) => formula.includes('"2026-04-30"'))[0]![1]).toBe(
    "2026-05-01, 1; 2026-06-01, 1",
  );
});

test("a date of a label: as its code writes it", () => {
  const [usual, lastDay, fortyNine] = ["150707", "240200", "770101"].map(
    (code) => printed("READCODE", (formula) => formula.includes(`(17)${code}`) && formula.includes("expiry"))[0]![1],
  );
  // Day 00 is the month's last, and 2024 a leap year (GS1 General Specifications, as the examples' source says).
  expect([usual, lastDay, fortyNine]).toEqual(["2015-07-07", "2024-02-29", "1977-01-01"]);
});

test("a day number that is given as a date's cell holds it", () => {
  const [[formula]] = printed("TUBEDAYS", (text) => text.includes("DATE(")) as [[string, string]];
  expect(formula).toContain("DATE(2024,2,28), DATE(2024,3,1)");
  // An example of a slip: a year typed for a day stays what was typed.
  expect(printed("TUBEDAYS", (text) => text.includes("(2019, ")).length).toBeGreaterThan(0);
});

test("no other example prints a number that is a day of this century or the last decades", () => {
  const [from, until] = [day("1970-01-01"), day("2100-01-01")];
  const found = functions.flatMap((fn) =>
    fn.documentation!.examples.flatMap((example) =>
      [exampleFormula(fn, example), givenText(fn, example)].flatMap((text) =>
        (text.replace(/"[^"]*"/g, "").match(/(?<![\d.])\d{5}(?![\d.])/g) ?? [])
          .map(Number)
          .filter((number) => number >= from && number < until)
          .map((number) => `${fn.name} ${number}`),
      ),
    ),
  );
  // Tube-days of published studies, and the sum of a clinic's; nothing else.
  expect([...new Set(found)].map((text) => text.split(" ")[0])).toEqual(["RATE"]);
});
