/** The columns' formulas, worked out by the embedded grid's own engine, against what the preview promises. */
import { beforeAll, describe, expect, it } from "vitest";
import { recipeNamed } from "../../../src/columns/recipes/index";
import type { RowCells } from "../../../src/columns/recipes/recipe";
import type { Role } from "../../../src/columns/role";
import { spelled } from "../../../src/columns/spelling";
import type { KindKey } from "../../../src/settings/kinds";
import { day } from "../../../src/worksheet/dates";
import { changeCases, type CaseCell } from "../change-cases";
import { asRow, everyone, shown, slot, using, workedOut } from "./engine";

describe("Change in the grid", () => {
  let all: unknown[] = [];
  let withoutLast: unknown[] = [];
  const due = slot("Due", 0);
  beforeAll(async () => {
    const rows = changeCases.map(({ due: d, latest, last }) => [d, latest, last]);
    const change = recipeNamed("change");
    all = await workedOut(rows, change.template({ due, latest: slot("Latest", 1), last: slot("Last", 2) }, everyone));
    withoutLast = await workedOut(rows, change.template({ due }, everyone));
  });
  it.each(changeCases.map((one, i) => ({ ...one, i })))("$why: $gives", ({ gives, i }) => {
    expect(all[i]).toBe(gives);
  });
  it("agrees with the core's rule when only the due date is known", () => {
    const rule = recipeNamed("change");
    const expected = changeCases.map((one) => rule.answer({ due: asRow(one.due) }, everyone));
    expect(withoutLast).toEqual(expected);
  });
});

/** Words as people type them, hostile ones among them; all but "PEG" are given a kind. */
const WORDS: readonly (readonly [word: string, kind: KindKey])[] = [
  ["balloon", "balloon gastrostomy"],
  ["BGT ", "balloon gastrostomy"],
  ["  balloon   J ", "balloon jejunostomy"],
  ["GJ", "gastrojejunal"],
  ["bumper", "bumper adult"],
  ["PEG disc", "bumper child"],
  ["catheter", "placing team"],
  ["PEG", "not known"],
  ['say "hi"', "gastrojejunal"],
  ["a,b;c", "bumper adult"],
  ["{x}", "bumper adult"],
  ["peg's", "bumper adult"],
  ["1/2", "bumper child"],
  ["14 May", "bumper child"],
  ["100%", "placing team"],
  ["two\nlines", "bumper adult"],
  ["hard\u00a0space", "bumper adult"],
  ["trailing hard\u00a0", "bumper adult"],
  ["Ärmel", "bumper adult"],
  ["?!", "bumper adult"],
  ["~?", "bumper adult"],
  ["=1+1", "bumper adult"],
  ["#2", "bumper adult"],
];
const KINDS: readonly CaseCell[] = [
  ...WORDS.map(([word]) => word),
  "BALLOON",
  "*",
  "?",
  "b*",
  "|",
  14,
  true,
  null,
  "",
  "=NA()",
];
const DATES: readonly CaseCell[] = [
  day("2025-08-31"),
  day("2025-11-03") + 0.6,
  "2026-02-11",
  " 2026-02-11T09:00 ",
  "3/4/24",
  "see letter",
  "*",
  0,
  "0",
  null,
  "  ",
  true,
  day("2052-03-04"),
  20260514,
  "=NA()",
];

describe.each(["changeDue", "atTheLatest"] as const)("%s in the grid", (key) => {
  const recipe = recipeNamed(key);
  const kinds = using({ from: "words", words: new Map(WORDS.map(([word, kind]) => [spelled(word)!, kind])) });
  const rows = [
    ...KINDS.map((kind): CaseCell[] => [day("2025-08-31"), kind]),
    ...DATES.flatMap((date) => ["balloon", "bumper", "PEG", null].map((kind): CaseCell[] => [date, kind])),
  ];
  const slots = { last: slot("Last", 0), kind: slot("Kind", 1) };
  let values: unknown[] = [];
  beforeAll(async () => {
    values = await workedOut(rows, recipe.template(slots, kinds));
  });
  it.each(rows.map(([last, kind], i) => ({ last, kind, i })))("last $last, kind $kind", ({ last, kind, i }) => {
    const answer = recipe.answer({ last: asRow(last!), kind: asRow(kind!) }, kinds);
    expect(values[i]).toBe(shown(answer));
  });
});

interface Sizes {
  readonly key: "sizeMm" | "balloon";
  readonly roles: readonly Role[];
  readonly rows: readonly (readonly CaseCell[])[];
}
const volumes: readonly CaseCell[] = [null, "", " ", 0, 5, 4.4, "4 ml", "n/k", "*", "=NA()"];
const plain: readonly Sizes[] = [
  {
    key: "sizeMm",
    roles: ["size"],
    rows: [14, "14FR", "14,0", 0, null, "", "  ", "14G", "12/14", "*", true, 4.7, "=NA()"].map((size) => [size]),
  },
  { key: "balloon", roles: ["out", "putIn"], rows: volumes.flatMap((out) => volumes.map((put) => [out, put])) },
];

describe.each(plain)("$key in the grid", ({ key, roles, rows }) => {
  it("says in every row what the preview promised", async () => {
    const recipe = recipeNamed(key);
    const slots = Object.fromEntries(roles.map((role, index) => [role, slot(role, index)]));
    const values = await workedOut(rows, recipe.template(slots, everyone));
    const promised = rows.map((row) => {
      const cells = Object.fromEntries(roles.map((role, i) => [role, asRow(row[i]!)])) as RowCells;
      return shown(recipe.answer(cells, everyone));
    });
    expect(rows.map((row, i) => [row, values[i]])).toEqual(rows.map((row, i) => [row, promised[i]]));
  });
});
