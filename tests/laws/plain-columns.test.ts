/**
 * Columns written in plain Excel say what our functions say, or refuse: over hostile cells, worked out by the reader of
 * formulas. What ours read besides (`14 Fr`, `5 mL`, a date written as a text) plain formulas answer with an error, so
 * that nothing missing, contradictory or unread ever reads well.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { AS_OF } from "../../src/columns/as-of";
import { inA1, inTable } from "../../src/columns/formula";
import { recipes } from "../../src/columns/recipes/index";
import type { Dialect, KindSource, Recipe, RowCells, Slots, Using } from "../../src/columns/recipes/recipe";
import { roles, type Role } from "../../src/columns/role";
import type { SheetValue } from "../../src/columns/sheet-block";
import { filePrefix } from "../../src/formula/newer";
import { parse } from "../../src/formula/parse";
import { Reader } from "../../src/formula/reader/reader";
import { ourFunctions } from "../../src/formula/reader/our-functions";
import { pieces } from "../../src/formula/tree";
import { functions } from "../../src/index";
import { settings, settingNamed, type SettingName } from "../../src/settings/index";
import { CellError, SheetError } from "../../src/worksheet/error";
import { shortOrLong } from "../budget";

const TODAY = 46174;
const SEED = { seed: 20261201, numRuns: shortOrLong(1500, 40_000) };
const WORDS: KindSource = {
  from: "words",
  words: new Map([
    ["balloon", "balloon gastrostomy"],
    ["gj balloon", "gastrojejunal"],
    ["gj", "gastrojejunal"],
    ["bumper", "bumper adult"],
    ["catheter", "placing team"],
  ]),
};
const using = (dialect: Dialect, kinds: KindSource = WORDS): Using => ({
  dialect,
  kinds,
  value: (name) => settingNamed(name).default,
  written: (name) => String(settingNamed(name).default),
  asOf: TODAY,
  lengths: [1.7, 2, 2.3, 2.5],
});

/** Ours have a plain twin; *Change* and *Tract* are plain Excel in any case. */
const twins = recipes.filter(({ functions: ours }) => ours.length > 0);
const rolesOf = (recipe: Recipe): readonly Role[] => [
  ...new Set([...recipe.needs.map(({ role }) => role), ...(recipe.needsKinds ? (["kind"] as const) : [])]),
];
const slots: Slots = Object.fromEntries(roles.map(({ key }, index) => [key, { header: key, index }]));
const slotsOf = (recipe: Recipe): Slots => Object.fromEntries(rolesOf(recipe).map((role) => [role, slots[role]!]));

/** What formulas give of one row of cells. */
function worth(
  cells: RowCells,
  formulas: readonly string[],
  numbers: { readonly [N in SettingName]?: SheetValue } = {},
) {
  const held = Object.entries(numbers) as [SettingName, SheetValue][];
  const reader = new Reader({
    sheets: ["List", "Numbers"],
    tables: [],
    names: [
      { name: AS_OF, refersTo: String(TODAY) },
      ...held.map(([name], i) => ({ name, refersTo: `Numbers!$A$${i + 1}` })),
    ],
    today: undefined,
    ours: ourFunctions(functions),
  });
  for (const [role, value] of Object.entries(cells) as [Role, SheetValue][])
    reader.put({ sheet: "List", row: 0, column: slots[role]!.index }, value);
  held.forEach(([, value], row) => reader.put({ sheet: "Numbers", row, column: 0 }, value));
  return formulas.map((text) => reader.worth({ sheet: "List", row: 0, column: roles.length + 1 }, text));
}

const shown = (value: unknown): unknown =>
  value instanceof SheetError || value instanceof CellError ? value.code : (value ?? "");

const number = fc.oneof(
  fc.constantFrom(0, 1, 5, 14, 4.4, 4.5, 2.3, 2.1, 60, 60.5, 61, 2019, -1, -0.5, 0.6, 1e9, 20260514),
  fc.integer({ min: TODAY - 800, max: TODAY + 40 }),
  fc.integer({ min: TODAY - 800, max: TODAY + 40 }).map((day) => day + 0.6),
  fc.integer({ min: 0, max: 100 }).map((tenths) => tenths / 10),
);
const cell = fc.oneof(
  { weight: 5, arbitrary: number },
  fc.constantFrom<SheetValue>(
    ...[null, "", "  ", "0", " 0 ", "balloon", "GJ", "GJ balloon", "bumper", "catheter", "PEG", "long", "low-profile"],
    ...["2026-03-05", " 2026-03-05 ", "2026-02-30", "3/4/26", "12. Mai", "14 Fr", "14", "4,5", "5 mL", "*", "?", "n/k"],
    ...[true, new CellError("#N/A"), new CellError("#REF!")],
  ),
);

describe.each(twins.map((recipe) => [recipe.header, recipe] as const))("%s in plain Excel", (_, recipe) => {
  const row = fc.record(Object.fromEntries(rolesOf(recipe).map((role) => [role, cell])));
  const [plain, ours] = (["plain", "ours"] as const).map((dialect) =>
    inA1(recipe.template(slotsOf(recipe), using(dialect)), 0, 0),
  ) as [string, string];

  it("gives what our function gives, or an error where only the function reads the cell", () => {
    let same = 0;
    fc.assert(
      fc.property(row, (cells) => {
        const [inPlain, inOurs] = worth(cells as RowCells, [plain, ours]).map(shown);
        const promised = shown(recipe.answer(cells as RowCells, using("plain")));
        expect([cells, inPlain]).toEqual([cells, promised]);
        if (inPlain === inOurs) same++;
        else {
          const isText = (value: unknown) => typeof value === "string" && value.trim() !== "";
          const isError = (value: unknown) => String(value).startsWith("#");
          // Two errors may differ by their code: both say that there is no answer.
          expect([cells, inPlain, inOurs, isError(inPlain)]).toEqual([cells, inPlain, inOurs, true]);
          if (!isError(inOurs)) expect(Object.values(cells).some(isText)).toBe(true);
        }
      }),
      SEED,
    );
    expect(same).toBeGreaterThan(SEED.numRuns / 3);
  });

  it("uses nothing newer than Excel 2019, nothing of ours and nothing that is worked out at every entry", () => {
    const template = recipe.template(slotsOf(recipe), using("plain"));
    const called = pieces(parse(plain)).flatMap((piece) => (piece.is === "call" ? [piece.name.toUpperCase()] : []));
    expect(called.length).toBeGreaterThan(0);
    for (const name of called) {
      expect(name).not.toMatch(/^TUBE/);
      expect(filePrefix(name)).toBe("");
      expect(["TODAY", "NOW", "RAND", "OFFSET", "INDIRECT", "CELL", "INFO", "LET", "TEXT", "VALUE"]).not.toContain(
        name,
      );
    }
    expect(inTable(template, "Caseload")).not.toContain("@");
  });
});

describe("a number of the settings sheet that our function would refuse", () => {
  const good: { readonly [key: string]: RowCells } = {
    changeDue: { last: TODAY - 60, kind: "balloon" },
    atTheLatest: { last: TODAY - 60, kind: "balloon" },
    balloon: { out: 3, putIn: 5 },
    checkDue: { stomaMade: TODAY - 400, last: TODAY - 60, lastCheck: TODAY - 9, kind: "balloon" },
    fit: { length: 2.3, lying: 2, sitting: 2.1 },
    lengthToOrder: { lying: 2, sitting: 2.1 },
    play: { gap: 10 },
    mark: { markThen: 4, markNow: 5.5 },
  };
  const named = twins.filter((recipe) => recipe.settings(WORDS).length > 0 && good[recipe.key]);
  it.each(named.map((recipe) => [recipe.header, recipe] as const))("%s: gives no answer by it", (_, recipe) => {
    const names = settings.map(({ name }) => name).filter((name) => recipe.settings(WORDS).includes(name));
    const byName: Using = { ...using("plain"), written: (name) => (names.includes(name) ? name : "0") };
    const slotsGiven = Object.fromEntries(Object.keys(good[recipe.key]!).map((role) => [role, slots[role as Role]!]));
    const formula = inA1(recipe.template(slotsGiven, byName), 0, 0);
    const defaults = Object.fromEntries(names.map((name) => [name, settingNamed(name).default]));
    const give = (numbers: object) => shown(worth(good[recipe.key]!, [formula], { ...defaults, ...numbers })[0]);
    const atDefault = shown(recipe.answer(good[recipe.key]!, using("plain")));
    expect(give({})).toBe(atDefault);
    for (const ill of [null, "many", -1, 5000])
      for (const name of names) {
        const found = give({ [name]: ill });
        // Another kind's number, or one that this row does not come to, changes nothing.
        if (found !== atDefault)
          expect([name, ill, found]).toEqual([name, ill, expect.stringMatching(/^(#|no setting)/)]);
      }
    expect(names.some((name) => give({ [name]: null }) !== atDefault)).toBe(true);
  });
});
