/** The cases that R worked out, and how far our functions are from them. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { functions } from "../../../src/index";
import { call } from "../../../src/worksheet/call";
import { SheetError } from "../../../src/worksheet/error";

export interface Case {
  readonly name: string;
  readonly args: readonly unknown[];
  readonly within: number;
  readonly expected: readonly (number | string)[];
}

const cell = (text: string): number | string => (text === "" || Number.isNaN(Number(text)) ? text : Number(text));

function argument(text: string): unknown {
  const cells = text.split(" ").map(cell);
  return cells.length === 1 ? cells[0] : cells.map((one) => [one]);
}

export function readCases(): { readonly versions: string; readonly cases: readonly Case[] } {
  const text = readFileSync(fileURLToPath(new URL("cases.csv", import.meta.url)), "utf8");
  const [versions, , ...lines] = text.trimEnd().split("\n");
  const cases = lines.map((line): Case => {
    const [name, args, within, expected] = line.split(",") as [string, string, string, string];
    return {
      name,
      args: args.split("|").map(argument),
      within: Number(within),
      expected: expected.split(" ").map((one) => (one === "NA" ? "" : cell(one.replaceAll("_", " ")))),
    };
  });
  return { versions: versions!, cases };
}

/** Where our function differs from R by more than the case allows, in words. */
export function differencesFrom({ name, args, within, expected }: Case): readonly string[] {
  const answer = [
    call(
      functions.find((one) => one.name === name)!,
      args,
    ),
  ].flat(2);
  if (answer.length !== expected.length) return [`${answer.length} cells for R's ${expected.length}`];
  return answer.flatMap((got, i) => {
    const want = expected[i]!;
    const isAlike =
      typeof got === "number" && typeof want === "number"
        ? Math.abs(got - want) / Math.max(Math.abs(want), 1e-300) <= within
        : got === want;
    const shown = got instanceof SheetError ? got.message : got;
    return isAlike ? [] : [`cell ${i + 1}: ${shown} for R's ${want}`];
  });
}
