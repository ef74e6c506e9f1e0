/** The columns' formulas, worked out by the embedded grid's own engine, against what the preview promises. */
import { beforeAll, describe, expect, it } from "vitest";
import { recipeNamed, recipes } from "../../../src/columns/recipes/index";
import type { Dialect, KindSource, RecipeKey, RowCells, Using } from "../../../src/columns/recipes/recipe";
import type { Role } from "../../../src/columns/role";
import { spelled } from "../../../src/columns/spelling";
import type { SettingName } from "../../../src/settings/index";
import type { KindKey } from "../../../src/settings/kinds";
import { day } from "../../../src/worksheet/dates";
import { CASES_AS_OF, changeCases, type CaseCell } from "../change-cases";
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

const dialects = ["ours", "plain"] as const;
const byKind = (["changeDue", "atTheLatest"] as const).flatMap((key) =>
  dialects.map((dialect) => [key, dialect] as const),
);

describe.each(byKind)("%s in the grid, %s", (key, dialect) => {
  const recipe = recipeNamed(key);
  const kinds = inDialect(dialect, {
    from: "words",
    words: new Map(WORDS.map(([word, kind]) => [spelled(word)!, kind])),
  });
  const rows: readonly CaseCell[][] = [
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

const inDialect = (dialect: Dialect, source: KindSource): Using => ({ ...using(source), dialect });

describe.each(dialects)("checkDue in the grid, on a list that says what holds each tube in, %s", (dialect) => {
  const recipe = recipeNamed("checkDue");
  const listed = [...WORDS, ["GJ balloon", "gastrojejunal"], ["PEG-J Balloon", "gastrojejunal"]] as const;
  const kinds = inDialect(dialect, {
    from: "words",
    words: new Map(listed.map(([word, kind]) => [spelled(word)!, kind])),
  });
  const days: readonly CaseCell[][] = [
    [day("2025-01-06"), day("2026-04-01"), day("2026-05-25")],
    [day("2026-05-20"), day("2026-05-20"), null],
    [null, day("2026-04-01"), day("2026-05-25")],
    ["see letter", day("2026-04-01"), 0],
    ["=NA()", day("2026-04-01"), null],
  ];
  const rows = [...listed.map(([word]) => word), ...KINDS].flatMap((kind) =>
    days.map((row): CaseCell[] => [...row, kind]),
  );
  const roles = ["stomaMade", "last", "lastCheck", "kind"] as const;
  it(`says in all ${rows.length} rows what the preview promised`, async () => {
    const values = await workedOut(rows, recipe.template(slotsOf(roles), kinds));
    const promised = promisedBy("checkDue", roles, rows, kinds);
    expect(rows.map((row, i) => [row, values[i]])).toEqual(rows.map((row, i) => [row, promised[i]]));
    const words = new Set(values.filter((value) => typeof value === "string"));
    for (const word of ["no balloon", "balloon not known", "kind not known", "", "#VALUE!", "#N/A"])
      expect(words, word).toContain(word);
    // SickKids: weekly; of the 25 May 2026 the 1 June.
    expect(values[0]).toBe(day("2026-06-01"));
  });
});

interface Plain {
  readonly key: RecipeKey;
  readonly roles: readonly Role[];
  readonly rows: readonly (readonly CaseCell[])[];
}

const volumes: readonly CaseCell[] = [null, "", " ", 0, 5, 4.4, "4 ml", "n/k", "*", "=NA()"];
const lengths: readonly CaseCell[] = [null, " ", 0, "0", 2.3, 2.5, "2,1 cm", 23, -1, "*", true, "=NA()"];
const marks: readonly CaseCell[] = [null, " ", 0, "0", 4, 3, 5.5, "4 cm", -1, 90, "see letter", "=NA()"];
const gaps: readonly CaseCell[] = [null, "", "  ", 0, "0", 4.9, 5, 20, 20.1, "8 mm", "1 cm", -2, 300, true, "=NA()"];
/** Round the limits of 6 and 12 weeks, and what is no day at all. */
const STOMAS: readonly CaseCell[] = [
  ...[-36526, -36525, -85, -84, -83, -43, -42, -41, -1, 0, 0.9, 1, 400].map((days) => CASES_AS_OF + days),
  ...["2026-04-20", " 2026-04-19 ", "2026-03-09", "2027-01-01", "2026-02-30", "2026-13-01", "2026-04-20T09:00"],
  ...["3/4/24", "2019", "see letter", "*", "2026?04?20", "", "  ", "0", null, 0, 14, 2019, -5, 1e300, true, "=NA()"],
];
const SLOW: readonly CaseCell[] = ["no", " No ", "yes", "not known", "", null, 0, false, "n*", "=NA()"];
const SHAPES: readonly CaseCell[] = ["long", " LONG  tube", "low-profile", "lon?", "*", "", null, 0, true, "=NA()"];
const CHECKS: readonly CaseCell[] = [
  ...[null, "", "0", 0, day("2026-05-25"), day("2026-03-01"), "2026-05-20", day("2052-05-20"), "12/5/26", "=NA()"],
];
const pairs = (first: readonly CaseCell[], second: readonly CaseCell[]) =>
  first.flatMap((one) => second.map((other): CaseCell[] => [one, other]));

const plain: readonly Plain[] = [
  {
    key: "sizeMm",
    roles: ["size"],
    rows: [14, "14FR", "14,0", 0, null, "", "  ", "14G", "12/14", "*", true, 4.7, "=NA()"].map((size) => [size]),
  },
  {
    key: "frFromMm",
    roles: ["diameter"],
    rows: [4.7, "4.7 mm", "4,0", 0, "0", null, "", "  ", "14 Fr", "4-5", "*", true, 21, -1, "=NA()"].map((mm) => [mm]),
  },
  { key: "balloon", roles: ["out", "putIn"], rows: pairs(volumes, volumes) },
  { key: "balloonLoss", roles: ["out", "putIn"], rows: pairs(volumes, volumes) },
  { key: "tract", roles: ["stomaMade"], rows: STOMAS.map((stoma) => [stoma]) },
  { key: "tract", roles: ["stomaMade", "slowHealing"], rows: pairs(STOMAS, SLOW) },
  {
    key: "checkDue",
    roles: ["stomaMade", "last", "lastCheck"],
    rows: pairs(STOMAS, [day("2026-05-18"), null, "see letter", 0]).flatMap((row) =>
      CHECKS.map((one) => [...row, one]),
    ),
  },
  {
    key: "fit",
    roles: ["length", "lying", "sitting"],
    rows: pairs(lengths, lengths).flatMap((row) => [2.1, null, 2.4].map((one): CaseCell[] => [...row, one])),
  },
  {
    key: "fit",
    roles: ["length", "lying", "sitting", "shape"],
    rows: pairs([null, " ", 0, 2.3, "=NA()"], [null, "", 2.1, true]).flatMap((row) =>
      SHAPES.map((shape): CaseCell[] => [...row, row[1]!, shape]),
    ),
  },
  { key: "lengthToOrder", roles: ["lying", "sitting"], rows: pairs(lengths, lengths) },
  {
    key: "lengthToOrder",
    roles: ["lying", "sitting", "shape"],
    rows: pairs([null, " ", 0, 2, "=NA()"], [null, "", 2.1]).flatMap((row) =>
      SHAPES.map((shape): CaseCell[] => [...row, shape]),
    ),
  },
  { key: "play", roles: ["gap"], rows: gaps.map((gap) => [gap]) },
  { key: "mark", roles: ["markThen", "markNow"], rows: pairs(marks, marks) },
];

const promisedBy = (key: RecipeKey, roles: readonly Role[], rows: Plain["rows"], rule: Using) =>
  rows.map((row) => {
    const cells = Object.fromEntries(roles.map((role, i) => [role, asRow(row[i]!)])) as RowCells;
    return shown(recipeNamed(key).answer(cells, rule));
  });

const slotsOf = (roles: readonly Role[]) => Object.fromEntries(roles.map((role, index) => [role, slot(role, index)]));

describe.each(plain)("$key in the grid", ({ key, roles, rows }) => {
  it.each(dialects)(`says in all ${rows.length} rows what the preview promised, %s`, async (dialect) => {
    const using = { ...everyone, dialect };
    const values = await workedOut(rows, recipeNamed(key).template(slotsOf(roles), using));
    const promised = promisedBy(key, roles, rows, using);
    /* The engine rounds 3 * 4.7 to 15 digits. */
    const near = (value: unknown) => (typeof value === "number" ? expect.closeTo(value, 9) : value);
    expect(rows.map((row, i) => [row, values[i]])).toEqual(rows.map((row, i) => [row, near(promised[i])]));
  });
});

it("holds every column that can be added to its promise", () => {
  const held = [...plain.map(({ key }) => key), "change", "changeDue", "atTheLatest"];
  expect(new Set(held)).toEqual(new Set(recipes.map(({ key }) => key)));
});

describe("a clinic's own losses to act on", () => {
  it("count for small and for larger balloons, the smaller one where the fill is no plain number", async () => {
    const numbers = { Fill_Small: 4, Loss_Small: 0.3, Loss_Large: 2 } as const;
    const value: Using["value"] = (name) =>
      (numbers as { readonly [N in SettingName]?: number })[name] ?? everyone.value(name);
    const rule: Using = { ...everyone, value, written: (name) => String(value(name)) };
    const rows: CaseCell[][] = [
      [3.6, 4],
      [3.7, 4],
      [8.1, 10],
      [7.9, 10],
      ["9.6", "10 mL"],
      [null, 4],
      [4, "x"],
    ];
    const values = await workedOut(rows, recipeNamed("balloon").template(slotsOf(["out", "putIn"]), rule));
    // By hand: 0.4 of 4 is above 0.3; 0.3 is not; 1.9 of 10 is not above 2; 2.1 is; 0.4 of "10 mL" is above 0.3.
    expect(values).toEqual(["low", "as filled", "as filled", "low", "low", "not measured", "#VALUE!"]);
    expect(promisedBy("balloon", ["out", "putIn"], rows, rule)).toEqual(values);
  });
});
