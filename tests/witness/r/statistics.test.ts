/**
 * Our statistics against R's: cases.csv was written by statistics.R ("npm run witness", needs R). Nothing of R is needed
 * to run this.
 */
import { describe, expect, test } from "vitest";
import { differencesFrom, readCases } from "./cases";

const { versions, cases } = readCases();
const names = [...new Set(cases.map(({ name }) => name))];

test("the table says which versions wrote it, and covers the functions that R knows", () => {
  expect(versions).toMatch(/R version \d.*survival \d/);
  expect(names).toEqual(
    expect.arrayContaining(["LIFETABLE", "LIFEQUANTILE", "LIFECOMPARE", "LIFEWEIBULL", "FAILBY", "WEARRATIO"]),
  );
  expect(names).toEqual(expect.arrayContaining(["RATE", "RATERATIO", "RATECHART", "STOCKLEVEL"]));
});

describe.each(names)("%s agrees with R", (name) => {
  const own = cases.filter((one) => one.name === name);
  test.each(own.map((one, i) => [i + 1, one] as const))("case %i", (_, one) =>
    expect(differencesFrom(one)).toEqual([]),
  );
});
