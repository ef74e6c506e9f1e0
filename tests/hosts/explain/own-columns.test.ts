/**
 * Every column of ours can be explained: its formula is worked out again, from cells that people really have, and gives
 * what the column itself says that it gives.
 */
import { describe, expect, it } from "vitest";
import { explainCell } from "../../../taskpane/actions/explain";
import type { Explanation } from "../../../taskpane/actions/explain/interface";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import type { Value } from "../../../taskpane/workbook/port";
import { inTable } from "../../../src/columns/formula";
import { recipes } from "../../../src/columns/recipes/index";
import type { Recipe, Using } from "../../../src/columns/recipes/recipe";
import { roleNamed, roles, type Content, type Role } from "../../../src/columns/role";
import { functions } from "../../../src/index";
import { settingNamed } from "../../../src/settings/index";
import { day } from "../../../src/worksheet/dates";
import { CellError, SheetError } from "../../../src/worksheet/error";

const AS_OF = day("2026-06-01");
const using: Using = {
  kinds: {
    from: "words",
    words: new Map([
      ["balloon", "balloon gastrostomy"],
      ["bumper", "bumper adult"],
    ]),
  },
  value: (name) => settingNamed(name).default,
  written: (name) => String(settingNamed(name).default),
  asOf: AS_OF,
  lengths: [1.7, 2, 2.3, 2.5],
};

/** Cells as they stand in lists: a good one, a blank, one that cannot be read. Invented. */
const cells: { readonly [C in Content]: readonly Value[] } = {
  date: [day("2026-03-14"), null, "3/4/26"],
  words: ["balloon", null, "peg?"],
  "change words": ["overdue", null, "soonish"],
  size: ["14 Fr", null, "12/14"],
  diameter: [4.7, null, "4-5"],
  volume: [5, null, "some"],
  length: [2.3, null, "long"],
  distance: [4, null, "loose"],
  mark: [5, null, "five"],
};

const rolesOf = (recipe: Recipe): readonly Role[] => [
  ...recipe.needs.map(({ role }) => role),
  ...(recipe.needsKinds ? (["kind"] as const) : []),
];

const ours = recipes.filter((recipe) => recipe.functions.length > 0);

async function explained(recipe: Recipe, row: number): Promise<{ said: Explanation; given: unknown }> {
  const used = roles.filter(({ key }) => rolesOf(recipe).includes(key));
  const slots = Object.fromEntries(used.map(({ key, label }, index) => [key, { header: label, index }]));
  const values = used.map(({ key }) => cells[roleNamed(key).content][row] ?? null);
  const given = recipe.answer(Object.fromEntries(used.map(({ key }, i) => [key, values[i]!])), using);
  const formula = `=${inTable(recipe.template(slots, using), "Caseload")}`;
  const shown = given instanceof SheetError || given instanceof CellError ? { error: given.code } : { value: given };
  const rows = [
    [...used.map(({ label }) => label), recipe.header],
    [...(values as (string | number | null)[]), { formula, ...shown }],
  ];
  const width = String.fromCharCode(65 + used.length);
  const workbook = fakeWorkbook({
    sheets: [{ name: "Adults", rows, tables: [{ name: "Caseload", area: `A1:${width}2` }] }],
    names: [{ name: "As_of", refersTo: "=TODAY()", value: AS_OF }],
    selection: { sheet: "Adults", area: `${width}2` },
  });
  return { said: (await explainCell(workbook, functions)) as Explanation, given };
}

describe.each(ours.map((recipe) => [recipe.header, recipe] as const))("%s", (_, recipe) => {
  it.each([
    ["filled", 0],
    ["blank", 1],
    ["not readable", 2],
  ])("from cells that are %s", async (_, row) => {
    const { said, given } = await explained(recipe, row);
    expect(said.notes.filter((note) => /not worked out|Worked out again/.test(note))).toEqual([]);
    expect(said.column).toMatchObject({ header: recipe.header, help: recipe.help });
    if (given instanceof SheetError) {
      expect(said.headline).toContain(given.message);
      expect(said.calls.some(({ isError }) => isError)).toBe(true);
    }
    if (row === 0) expect(said.calls.length).toBeGreaterThan(0);
  });
});

it("there are columns to explain", () => expect(ours.length).toBeGreaterThan(5));
