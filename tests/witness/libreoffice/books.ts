/**
 * What the second engine is asked: the ready-made caseload, hostile rows, every column of *Add columns*.
 *
 * No cell holds TRUE: LibreOffice keeps it as the number 1 (its help: "logical values are numbers"), so ISNUMBER(TRUE) is
 * TRUE there and FALSE in Excel, and every column that asks whether a cell holds a number differs rightly.
 */
import type { BookDescription, SheetDescription, TableColumn } from "../../../src/caseload/book";
import { caseloadBook, caseloadBookOf, type CaseloadRow, type CaseloadRows } from "../../../src/caseload/index";
import { AS_OF } from "../../../src/columns/as-of";
import type { ColumnSlot } from "../../../src/columns/formula";
import { recipes } from "../../../src/columns/recipes/index";
import type { Dialect, Recipe, RowCells, Slots, Using } from "../../../src/columns/recipes/recipe";
import { roles, type Content, type Role } from "../../../src/columns/role";
import type { SheetValue } from "../../../src/columns/sheet-block";
import { spelled } from "../../../src/columns/spelling";
import { settingNamed } from "../../../src/settings/index";
import type { KindKey } from "../../../src/settings/kinds";
import { day } from "../../../src/worksheet/dates";
import { CellError, SheetError } from "../../../src/worksheet/error";
import { AS_OF as HOSTILE_AS_OF, hostileRows, joined, OPTIONS, randoms } from "../../examples/caseload/hostile-rows";

export interface Asked {
  readonly what: string;
  readonly asOf: number;
  readonly book: BookDescription;
  /** The file is asked as people get it; else what stands round the calls of our functions. */
  readonly isAsItStands: boolean;
}

export const TODAY = day("2026-11-26");

export const asked = (): readonly Asked[] => [
  {
    what: "the invented caseload, all columns",
    isAsItStands: true,
    asOf: TODAY,
    book: caseloadBook({ asOf: TODAY, groups: ["fit", "plan", "spare"], people: "invented" }),
  },
  {
    what: "the invented caseload, columns left out",
    isAsItStands: true,
    asOf: TODAY,
    book: caseloadBook({ asOf: TODAY, groups: [], people: "invented" }),
  },
  {
    what: "a caseload of hostile rows",
    isAsItStands: true,
    asOf: HOSTILE_AS_OF,
    book: caseloadBookOf(withoutTrue(joined(hostileRows(240, 240, 40))), OPTIONS),
  },
  {
    what: "a caseload of hostile rows, columns left out",
    isAsItStands: true,
    asOf: HOSTILE_AS_OF,
    book: caseloadBookOf(withoutTrue(joined(hostileRows(120, 120, 20))), { ...OPTIONS, groups: [] }),
  },
  { what: "columns of *Add columns* on hostile cells", asOf: TODAY, book: recipesBook(odd), isAsItStands: false },
  {
    what: "columns of *Add columns* on hostile cells, in plain Excel",
    asOf: TODAY,
    book: recipesBook(odd, "plain"),
    isAsItStands: true,
  },
];

function withoutTrue(rows: CaseloadRows): CaseloadRows {
  const asWord = (list: readonly CaseloadRow[]) =>
    list.map((row) =>
      Object.fromEntries(Object.entries(row).map(([key, value]) => [key, value === true ? "TRUE" : value])),
    );
  return { tubes: asWord(rows.tubes), checks: asWord(rows.checks), changes: asWord(rows.changes) };
}

// ---- every column that can be added ---------------------------------------------------------------------------------

const NA = new CellError("#N/A");
const odd: readonly SheetValue[] = [
  ...[null, "", "  ", 0, "0", "*", "?", "~*", "=1+1", "1E5", "03-04", NA, -1, 1e300, "see letter"],
];
const words: readonly (readonly [string, KindKey])[] = [
  ["balloon", "balloon gastrostomy"],
  ["  balloon   J ", "balloon jejunostomy"],
  ["GJ", "gastrojejunal"],
  ["GJ balloon", "gastrojejunal"],
  ["bumper", "bumper adult"],
  ["PEG disc", "bumper child"],
  ["catheter", "placing team"],
  ['say "hi"', "gastrojejunal"],
  ["b*", "bumper adult"],
];
const byContent: { readonly [C in Content]: readonly SheetValue[] } = {
  date: [
    ...[-36526, -36525, -400, -90, -85, -84, -83, -43, -42, -41, -8, -7, -1, 0, 0.9, 1, 14, 15, 400].map(
      (days) => TODAY + days,
    ),
    ...[day("2025-08-31"), day("2024-02-29"), day("2052-03-04"), 2019, 20260514],
    ...["2026-02-11", " 2026-09-01 ", "2026-02-30", "2026-13-01", "2026-02-11T09:00", "3/4/24", "2026?04?20"],
  ],
  words: [...words.map(([word]) => word), "BALLOON ", "PEG", "bumpe?", 14],
  "change words": ["no date", "no set change", "kind not known", "check date", "No Date "],
  size: [14, "14FR", "CH 14", "14,0", "14G", "12/14", 4.7, 60],
  diameter: [4.7, "4.7 mm", "4,0", "14 Fr", "4-5", 21],
  volume: [5, 4.5, 4.4, 2.5, 6, 10, 8.9, "5cc", "4 ml", "n/k", "14,0"],
  length: [2.3, 2.1, 1.8, 2.5, 23, "2,1 cm", "2.3 cm", 0.6],
  distance: [4.9, 5, 20, 20.1, "8 mm", "1 cm", 300],
  mark: [4, 3, 5.5, "4 cm", 90],
};
/** Due and latest dates on somebody's own list hold words too. */
const contentOf = (role: Role, more: readonly SheetValue[]): readonly SheetValue[] => {
  const { content } = roles.find(({ key }) => key === role)!;
  return [...byContent[content], ...(role === "due" || role === "latest" ? byContent["change words"] : []), ...more];
};

const using = (dialect: Dialect): Using => ({
  dialect,
  kinds: { from: "words", words: new Map(words.map(([word, kind]) => [spelled(word)!, kind])) },
  value: (name) => settingNamed(name).default,
  written: (name) => String(settingNamed(name).default),
  asOf: TODAY,
  lengths: [1.7, 2, 2.3, 2.5],
});

const SEED = 20_261_126;
/** LibreOffice 7.4 leaves the formulas of a table below its thousandth row without a result (measured). */
const MOST_ROWS = 900;

/** Every cell with every other while they are so few; else rows at random, the same in every run. */
function rowsFor(needs: readonly Role[], more: readonly SheetValue[]): readonly (readonly SheetValue[])[] {
  const pools = needs.map((role) => contentOf(role, more));
  if (pools.reduce((product, pool) => product * pool.length, 1) <= MOST_ROWS)
    return pools.reduce<SheetValue[][]>((rows, pool) => rows.flatMap((row) => pool.map((one) => [...row, one])), [[]]);
  const random = randoms(SEED);
  return Array.from({ length: MOST_ROWS }, () => pools.map((pool) => pool[Math.floor(random() * pool.length)]!));
}

const stored = (answer: ReturnType<Recipe["answer"]>): SheetValue =>
  answer instanceof SheetError ? new CellError(answer.code) : answer;

/** Columns that are added one after the other to a list with these columns. */
function sheetOf(
  name: string,
  needs: readonly Role[],
  added: readonly Recipe[],
  more: readonly SheetValue[],
  dialect: Dialect,
): SheetDescription {
  const slots: { [R in Role]?: ColumnSlot } = Object.fromEntries(
    needs.map((role, index) => [role, { header: role, index }]),
  );
  const takes: { readonly [key: string]: Role } = { changeDue: "due", atTheLatest: "latest" };
  const template = (recipe: Recipe) => recipe.template(slots as Slots, using(dialect));
  const computed = added.map((recipe, i): TableColumn => {
    const column = { header: recipe.header, width: 12, format: "General", kind: "computed", formula: template(recipe) };
    const role = takes[recipe.key];
    if (role) slots[role] = { header: recipe.header, index: needs.length + i, isAdded: true };
    return column as TableColumn;
  });
  const rows = rowsFor(needs, more).map((row) => {
    const cells: { [R in Role]?: SheetValue } = Object.fromEntries(needs.map((role, i) => [role, row[i]!]));
    const answers = added.map((recipe) => {
      const answer = stored(recipe.answer(cells as RowCells, using(dialect)));
      const role = takes[recipe.key];
      if (role) cells[role] = answer;
      return answer;
    });
    return [...row, ...answers];
  });
  const typed = needs.map((header): TableColumn => ({ header, width: 12, format: "General", kind: "typed" }));
  return { name, cells: [], table: { name: `List_${name}`, top: 0, left: 0, columns: [...typed, ...computed], rows } };
}

/** @param more cells that may stand in every column */
export const recipesBook = (
  more: readonly SheetValue[] = [...odd, true],
  dialect: Dialect = "ours",
): BookDescription => ({
  sheets: [
    ...recipes.map((one) =>
      sheetOf(
        one.key,
        [...new Set([...one.needs.map(({ role }) => role), ...(one.needsKinds ? (["kind"] as const) : [])])],
        [one],
        more,
        dialect,
      ),
    ),
    sheetOf(
      "oneAfterTheOther",
      ["last", "kind"],
      recipes.filter(({ key }) => ["changeDue", "atTheLatest", "change"].includes(key)),
      more,
      dialect,
    ),
  ],
  names: [{ name: AS_OF, refersTo: "TODAY()" }],
});
