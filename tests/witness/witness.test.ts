/**
 * Our statistics against R's: cases.csv was written by witness.R ("npm run witness", needs R). Nothing of R is needed
 * to run this.
 */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { functions } from "../../src/index";
import { call } from "../../src/worksheet/call";
import { SheetError } from "../../src/worksheet/error";

interface Case {
  readonly name: string;
  readonly args: readonly unknown[];
  readonly within: number;
  readonly expected: readonly (number | "")[];
}

const cell = (text: string): number | string => (text === "" || Number.isNaN(Number(text)) ? text : Number(text));

function argument(text: string): unknown {
  const cells = text.split(" ").map(cell);
  return cells.length === 1 ? cells[0] : cells.map((one) => [one]);
}

const text = readFileSync(fileURLToPath(new URL("cases.csv", import.meta.url)), "utf8");
const [versions, , ...lines] = text.trimEnd().split("\n");
const cases = lines.map((line): Case => {
  const [name, args, within, expected] = line.split(",") as [string, string, string, string];
  return {
    name,
    args: args.split("|").map(argument),
    within: Number(within),
    expected: expected.split(" ").map((one) => (one === "NA" ? "" : Number(one))),
  };
});
const names = [...new Set(cases.map(({ name }) => name))];

test("the table says which versions wrote it, and covers the functions that R knows", () => {
  expect(versions).toMatch(/R version \d.*survival \d/);
  expect(names).toEqual(
    expect.arrayContaining(["LIFETABLE", "LIFEQUANTILE", "LIFECOMPARE", "LIFEWEIBULL", "FAILBY", "WEARRATIO"]),
  );
  expect(names).toEqual(expect.arrayContaining(["RATE", "RATERATIO", "STOCKLEVEL"]));
});

describe.each(names)("%s agrees with R", (name) => {
  const definition = functions.find((f) => f.name === name)!;
  const own = cases.filter((one) => one.name === name);

  test.each(own.map((one, i) => [i + 1, one] as const))("case %i", (_, { args, within, expected }) => {
    const answer = [call(definition, args)].flat(2);
    expect(answer.map((got) => (got instanceof SheetError ? got.message : typeof got))).toEqual(
      expected.map((want) => typeof want),
    );
    const off = answer.map((got, i) =>
      typeof got === "number"
        ? Math.abs(got - (expected[i] as number)) / Math.max(Math.abs(expected[i] as number), 1e-300)
        : 0,
    );
    const worst = off.indexOf(Math.max(...off));
    expect(Math.max(...off), `cell ${worst + 1}: ${answer[worst]} for R's ${expected[worst]}`).toBeLessThanOrEqual(
      within,
    );
  });
});
