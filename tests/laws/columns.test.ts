import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changeState } from "../../src/columns/change-state";
import { findList } from "../../src/columns/find-list";
import { inA1 } from "../../src/columns/formula";
import { recipeNamed, recipes } from "../../src/columns/recipes/index";
import type { RecipeKey, RowCells, Using } from "../../src/columns/recipes/recipe";
import { roles, type Role } from "../../src/columns/role";
import type { SheetValue } from "../../src/columns/sheet-block";
import { spelled, spellings, wordKey, written } from "../../src/columns/spelling";
import { settingNamed } from "../../src/settings/index";
import { kinds } from "../../src/settings/kinds";
import { CellError, SheetError } from "../../src/worksheet/error";

const SEED = { seed: 20260601, numRuns: 1000 };
const AS_OF = 46174;

/** A list as clinics type them, at any place of a sheet, with or without titles above and notes below. */
const sheet = fc.record({
  top: fc.integer({ min: 0, max: 6 }),
  left: fc.integer({ min: 0, max: 5 }),
  titles: fc.array(fc.constantFrom("Community feeding tubes", "Invented data", "Printed in May"), { maxLength: 3 }),
  gap: fc.integer({ min: 0, max: 2 }),
  rows: fc.integer({ min: 4, max: 40 }),
  heads: fc.shuffledSubarray(["id", "kind", "size", "last", "notes", "water"], { minLength: 3, maxLength: 6 }),
  language: fc.constantFrom("English", "German", "none we know"),
  notes: fc.boolean(),
  chance: fc.array(fc.nat(1000), { minLength: 64, maxLength: 64 }),
});

const names: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  English: { id: "ID", kind: "Kind", size: "Size", last: "Last change", notes: "Notes", water: "Put in" },
  German: {
    id: "Kürzel",
    kind: "Sondenart",
    size: "Größe",
    last: "Letzter Wechsel",
    notes: "Notizen",
    water: "Füllmenge",
  },
  "none we know": { id: "Tunnus", kind: "Letkulaji", size: "Koko", last: "Vaihdettu", notes: "Muuta", water: "Vesi" },
};

const KINDS = ["balloon", "PEG", "GJ", "bumper"];
const cellOf = (head: string, row: number, chance: number): SheetValue => {
  switch (head) {
    case "id":
      return `D-${100 + row}`;
    case "kind":
      return KINDS[chance % KINDS.length]!;
    case "size":
      return chance % 9 === 0 ? `${12 + (chance % 3) * 2}FR` : 10 + (chance % 8);
    case "last":
      return chance % 13 === 0 ? "see letter" : 45600 + chance;
    case "water":
      return chance % 7 === 0 ? null : 4 + (chance % 3);
    default:
      return chance % 5 === 0 ? "rang the ward" : null;
  }
};

describe("finding a list", () => {
  it("finds the header row, columns and rows of lists at any place", () => {
    fc.assert(
      fc.property(sheet, ({ top, left, titles, gap, rows, heads, language, notes, chance }) => {
        // Notes alone beside one other column tell nothing of a list in an unknown language.
        fc.pre(heads.filter((head) => head !== "notes").length >= 3);
        const width = heads.length;
        const values: SheetValue[][] = [];
        const line = (cells: readonly SheetValue[]) =>
          values.push([
            ...new Array<SheetValue>(left).fill(null),
            ...cells,
            ...new Array<SheetValue>(width - cells.length).fill(null),
          ]);
        for (let i = 0; i < top; i++) line([]);
        for (const title of titles) line([title]);
        for (let i = 0; i < gap; i++) line([]);
        const headerRow = values.length;
        line(heads.map((head) => names[language]![head]!));
        for (let row = 0; row < rows; row++)
          line(heads.map((head, c) => cellOf(head, row, chance[(row * width + c) % chance.length]! + row * 7 + c)));
        if (notes) {
          line([]);
          line([]);
          line(["Sizes are French gauge unless marked."]);
        }
        const used = { top: 0, left: 0, rows: values.length, columns: left + width };
        const found = findList({ used, values, at: { row: headerRow + 1, column: left } });
        expect(found.area).toEqual({ top: headerRow, left, rows: rows + 1, columns: width });
      }),
      SEED,
    );
  });

  it("never throws and never reaches outside of the sheet, whatever stands there", () => {
    const value = fc.oneof(
      { weight: 4, arbitrary: fc.constant(null) },
      fc.string({ maxLength: 8 }),
      fc.double(),
      fc.boolean(),
      fc.constant(new CellError("#REF!")),
    );
    const block = fc.tuple(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 6 })).chain(([rows, columns]) =>
      fc.record({
        values: fc.array(fc.array(value, { minLength: columns, maxLength: columns }), {
          minLength: rows,
          maxLength: rows,
        }),
        row: fc.integer({ min: 0, max: 20 }),
        column: fc.integer({ min: 0, max: 20 }),
        header: fc.option(fc.integer({ min: 0, max: 20 }), { nil: undefined }),
      }),
    );
    fc.assert(
      fc.property(block, ({ values, row, column, header }) => {
        const used = { top: 3, left: 2, rows: values.length, columns: values[0]!.length };
        const correction = header === undefined ? undefined : { headerRow: header };
        const found = findList({ used, values, at: { row, column } }, correction);
        expect(found.sentence).not.toBe("");
        if (found.area === null) return;
        const { top, left, rows, columns } = found.area;
        expect(top).toBeGreaterThanOrEqual(3);
        expect(left).toBeGreaterThanOrEqual(2);
        expect(top + rows).toBeLessThanOrEqual(3 + values.length);
        expect(left + columns).toBeLessThanOrEqual(2 + values[0]!.length);
        expect(rows).toBeGreaterThanOrEqual(2);
        expect(found.headers).toHaveLength(columns);
      }),
      SEED,
    );
  });
});

/** Reads a text expression of a formula back: `"a"&CHAR(10)&"b""c"`. */
function textOfExpression(expression: string): string {
  let rest = expression;
  let text = "";
  while (rest !== "") {
    const literal = /^"((?:[^"]|"")*)"/.exec(rest);
    const character = /^CHAR\((\d+)\)/.exec(rest);
    if (literal) text += literal[1]!.replaceAll('""', '"');
    else if (character) text += String.fromCharCode(Number(character[1]));
    else throw new Error(`not a text expression: ${rest}`);
    rest = rest.slice((literal ?? character)![0].length);
    if (rest !== "" && !rest.startsWith("&")) throw new Error(`no & at ${rest}`);
    rest = rest.slice(1);
  }
  return text;
}

describe("words in formulas", () => {
  const word = fc.string({ minLength: 1, maxLength: 30, unit: "grapheme" });
  it("are written so that they read back as they were", () => {
    fc.assert(
      fc.property(word, (text) => {
        expect(textOfExpression(written(text))).toBe(text);
      }),
      SEED,
    );
  });
  it("are alike for people when only spaces and letter case differ", () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[a-z]{1,8}( [a-z]{1,8}){0,2}$/), (text) => {
        const shouted = `  ${text.toUpperCase().replaceAll(" ", "   ")} `;
        expect(wordKey(shouted)).toBe(text);
        expect(spelled(shouted)).toBe(text);
        expect(spellings(text)).toEqual([text]);
      }),
      SEED,
    );
  });
});

const hostile = fc.oneof(
  fc.constant(null),
  fc.double(),
  fc.integer({ min: -10, max: 100_000 }),
  fc.constantFrom(
    "",
    " ",
    "no date",
    "kind not known",
    "no set change",
    "2026-02-30",
    "2027-01-01",
    "balloon",
    "14FR",
    "5 mL",
  ),
  fc.string(),
  fc.boolean(),
  fc.constantFrom(new CellError("#N/A"), new CellError("#DIV/0!")),
);
const kindSource = fc.oneof(
  fc.constantFrom(...kinds).map(({ key }) => ({ from: "everyone" as const, kind: key })),
  fc
    .array(fc.tuple(fc.string({ maxLength: 12 }), fc.constantFrom(...kinds)), { maxLength: 6 })
    .map((pairs) => ({ from: "words" as const, words: new Map(pairs.map(([text, { key }]) => [text, key])) })),
);
const usingOf = (source: Using["kinds"]): Using => ({
  kinds: source,
  value: (name) => settingNamed(name).default,
  written: (name) => String(settingNamed(name).default),
  asOf: AS_OF,
  lengths: [1.7, 2, 2.3, 2.5],
});

const reassuring: ReadonlySet<string> = new Set([
  ...["later", "due soon", "as filled", "in range", "same mark", "mature by weeks", "uncertain"],
]);
const NA = new CellError("#N/A");
interface Pool {
  readonly bad: readonly SheetValue[];
  readonly good: readonly SheetValue[];
}
type Pools = { readonly [R in Role]?: Pool };

const blanks: readonly SheetValue[] = [null, "", "  ", NA, new CellError("#REF!"), true, "n/k", "*"];
const noDay: readonly SheetValue[] = [
  ...blanks,
  0,
  "0",
  "3/4/24",
  "2026-02-30",
  2019,
  -1,
  1e9,
  AS_OF + 1,
  AS_OF + 4000,
];
const noLength: readonly SheetValue[] = [...blanks, 0, "0", 23, -1, "2-3"];
const stoma: Pool = { bad: noDay, good: [AS_OF - 400, "2025-01-06"] };
const inPlace: Pool = { bad: noDay, good: [AS_OF - 60] };
const length: Pool = { bad: noLength, good: [2, 2.3] };
const water = (bad: readonly SheetValue[]): Pool => ({ bad: [...blanks, -1, 500, "3-5 mL", ...bad], good: [5] });

/** For each column its cells, well and ill: whatever is put together, one ill cell is enough. */
const badAndGood: { readonly [K in RecipeKey]?: Pools } = {
  changeDue: { last: inPlace },
  atTheLatest: { last: inPlace },
  change: {
    // A due date gone by is out of date: it must not read as one to come.
    due: { bad: [...blanks, 0, "0", "3/4/24", 14, -1, AS_OF - 1, AS_OF + 4000], good: [AS_OF + 1, AS_OF + 90] },
    latest: { bad: [NA, "May", AS_OF - 1, AS_OF + 4000, 14], good: [null, AS_OF + 120] },
    last: { bad: [NA, "see letter", "3/4/24", AS_OF + 1, 20260514], good: [null, AS_OF - 60] },
  },
  tract: { stomaMade: stoma, slowHealing: { bad: [], good: ["no"] } },
  balloonLoss: { out: water([]), putIn: water([0, "0"]) },
  balloon: { out: water([0]), putIn: water([0, "0"]) },
  checkDue: {
    stomaMade: stoma,
    last: inPlace,
    lastCheck: { bad: [NA, "see letter", "3/4/24", 2019, AS_OF + 1, AS_OF + 4000], good: [null, AS_OF - 9] },
  },
  sizeMm: { size: { bad: [...blanks, 0, "14G", "12/14", -3, 1e9, 4.7], good: [14, "14 Fr"] } },
  frFromMm: { diameter: { bad: [...blanks, 0, "0", "14 Fr", -3, 1e9, 14], good: [4.7] } },
  // A length beside a long tube contradicts it, and is told.
  fit: { length, lying: length, sitting: length, shape: { bad: [], good: [null, "low-profile", "?"] } },
  lengthToOrder: { lying: length, sitting: length, shape: { bad: [], good: [null, "low-profile", "?"] } },
  play: { gap: { bad: [...blanks, 0, -1, 300, "1 cm"], good: [10] } },
  mark: {
    markThen: { bad: [...blanks, 0, "0", -1, 90, "3-4"], good: [4] },
    markNow: { bad: [...blanks, 0, -1, 90, "3-4"], good: [4, 3.5] },
  },
};

type Combination = readonly [isBad: boolean, ...cells: (readonly [string, SheetValue])[]];

/** Every way to fill the cells, and whether any of them is ill. */
function combinations(pools: readonly (readonly [string, Pool])[]): readonly Combination[] {
  return pools.reduce<readonly Combination[]>(
    (all, [role, { bad, good }]) =>
      all.flatMap(([isBad, ...cells]) => [
        ...bad.map((cell): Combination => [true, ...cells, [role, cell]]),
        ...good.map((cell): Combination => [isBad, ...cells, [role, cell]]),
      ]),
    [[false]],
  );
}

describe("previews", () => {
  it("never throw, and never pass over a row without a usable answer", () => {
    const row = fc.record(Object.fromEntries(roles.map(({ key }) => [key, hostile])));
    fc.assert(
      fc.property(row, kindSource, (cells, source) => {
        const using = usingOf(source);
        for (const recipe of recipes) {
          const answer = recipe.answer(cells as RowCells, using);
          const problem = recipe.problem(cells as RowCells, using);
          const isMissing =
            answer instanceof SheetError ||
            answer instanceof CellError ||
            answer === null ||
            ["", "no date", "kind not known", "balloon not known", "check date", "not measured"].includes(
              String(answer),
            );
          const told = problem !== null && problem.severity !== "doubt";
          expect([recipe.key, answer, told]).toEqual([recipe.key, answer, isMissing]);
        }
      }),
      { ...SEED, numRuns: 5000 },
    );
  });

  it("give a reassuring word only where the due date can be read and lies ahead", () => {
    fc.assert(
      fc.property(hostile, hostile, hostile, (due, latest, last) => {
        const { state } = changeState({ due, latest, last }, { asOf: AS_OF, soonDays: 14, farMonths: 60 });
        if (state !== "later" && state !== "due soon") return;
        expect(due).toBeGreaterThanOrEqual(AS_OF);
        if (typeof latest === "number" && latest !== 0) expect(latest).toBeGreaterThanOrEqual(AS_OF);
        if (typeof last === "number") expect(last).toBeLessThan(AS_OF + 1);
      }),
      { ...SEED, numRuns: 20_000 },
    );
  });

  it("give no reassuring word, and no figure untold, where any needed cell is missing, impossible or out of date", () => {
    const using = usingOf({ from: "everyone", kind: "balloon gastrostomy" });
    const reassured = (Object.entries(badAndGood) as [RecipeKey, Pools][]).flatMap(([key, pools]) => {
      const recipe = recipeNamed(key);
      return combinations(Object.entries(pools)).flatMap(([isBad, ...cells]) => {
        const row = Object.fromEntries(cells) as RowCells;
        const answer = recipe.answer(row, using);
        const told = recipe.problem(row, using);
        const isReassuring = typeof answer === "number" ? told === null : reassuring.has(String(answer));
        return isBad && isReassuring ? [{ key, row, answer }] : [];
      });
    });
    expect(reassured).toEqual([]);
  });
  it("call no opening mature of which nobody has written down that it does not heal slowly", () => {
    const [using, tract] = [usingOf({ from: "everyone", kind: "balloon gastrostomy" }), recipeNamed("tract")];
    const word = (row: RowCells) => tract.answer({ stomaMade: AS_OF - 400, ...row }, using);
    expect(word({ slowHealing: "no" })).toBe("mature by weeks");
    expect(word({})).toBe("uncertain");
    for (const slow of [...blanks, 0, "yes", "not known", "?", "NO!"]) {
      expect(word({ slowHealing: slow }), String(slow)).toBe("uncertain");
    }
  });
  it("give no day for a balloon check where the list does not say that a balloon holds the tube", () => {
    const [good, told] = [{ stomaMade: AS_OF - 400, last: AS_OF - 60, lastCheck: AS_OF - 9 }, recipeNamed("checkDue")];
    const listed = fc.array(
      fc.tuple(
        fc.oneof(fc.constantFrom("balloon", "gj balloon"), fc.string({ maxLength: 12 })),
        fc.constantFrom(...kinds),
      ),
    );
    let days = 0;
    fc.assert(
      fc.property(listed, hostile, fc.nat(20), (pairs, cell, pick) => {
        const words = new Map(pairs.map(([text, { key }]) => [wordKey(text), key]));
        const kind = pick < pairs.length ? pairs[pick]![0] : cell;
        const answer = told.answer({ ...good, kind }, usingOf({ from: "words", words }));
        if (typeof answer !== "number") return;
        days += 1;
        const key = words.get(wordKey(String(kind)));
        expect([key, String(kind)]).toEqual(
          key === "gastrojejunal"
            ? [key, expect.stringMatching(/balloon/i)]
            : [expect.stringMatching(/^balloon /), String(kind)],
        );
      }),
      { ...SEED, numRuns: 5000 },
    );
    expect(days).toBeGreaterThan(100);
  });
  it("hold every column to that which can reassure", () => {
    const able = recipes.filter(({ words }) => words.length === 0 || words.some((word) => reassuring.has(word)));
    expect(Object.keys(badAndGood).sort()).toEqual(able.map(({ key }) => key).sort());
  });

  it("write formulas with every quote and bracket closed", () => {
    const slots = Object.fromEntries(roles.map(({ key, label }, index) => [key, { header: label, index }]));
    fc.assert(
      fc.property(kindSource, (source) => {
        for (const recipe of recipes) {
          const text = inA1(recipe.template(slots, usingOf(source)), 9, 0);
          const bare = text.replace(/"(?:[^"]|"")*"/g, "");
          expect(bare).not.toContain('"');
          expect([...bare].filter((c) => c === "(").length).toBe([...bare].filter((c) => c === ")").length);
        }
        expect(recipeNamed("change").template(slots, usingOf(source))).toBeDefined();
      }),
      SEED,
    );
  });
});
