/**
 * The nurse's job on workbooks that nobody here made: open in the real page, add five columns by the pane, save, and
 * read back with readers that are not ours. The added cells are right in value, formula and format; every other part of
 * the package is the same to the byte; the parts that changed, changed only where meant.
 */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import * as independent from "@e965/xlsx";
import { Temporal } from "temporal-polyfill";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launchBrowser } from "./launch";
import { expectedOf, type Expected, type RowFacts } from "./nurse/by-hand";
import {
  formatOf,
  layoutOf,
  partsOf,
  readGrowing,
  readSheet,
  readTable,
  withoutName,
  type CellXml,
  type Parts,
  type SheetXml,
} from "./nurse/package-xml";
import {
  added,
  chooseList,
  openFile,
  openWorkbookPage,
  pressAdd,
  save,
  sayColumns,
  sayKinds,
  tick,
} from "./nurse/workbook-page";
import { serveDist, type Served } from "./serve";

const FILES = fileURLToPath(new URL("../workbooks/files/", import.meta.url));

interface ListFacts {
  readonly sheet: string;
  readonly table: string | null;
  readonly range: string;
  readonly headerRow: number;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly columns: Readonly<Record<"kind" | "size" | "lastChange" | "waterIn" | "waterOut", string>>;
  /** [row, last change, kind as typed, size, water in, water out], typed by hand where the workbooks were made. */
  readonly rows: readonly (readonly [
    number,
    string | null,
    string | null,
    number | null,
    number | null,
    number | null,
  ])[];
}
const facts = JSON.parse(readFileSync(new URL("../workbooks/expected.json", import.meta.url), "utf8")) as {
  files: Record<string, { lists: ListFacts[]; tables: { name: string; totalsRow: boolean }[] }>;
};

interface Added {
  readonly header: string;
  readonly label: string;
  readonly format: string | null;
  readonly of: keyof Expected;
}
const COLUMNS: readonly Added[] = [
  { header: "Change due", label: "Change due", format: "d mmm yyyy", of: "due" },
  { header: "At the latest", label: "At the latest", format: "d mmm yyyy", of: "latest" },
  { header: "Change", label: "Change", format: null, of: "change" },
  { header: "Size mm", label: "Size in mm", format: "0.0", of: "size" },
  { header: "Balloon", label: "Balloon", format: null, of: "balloon" },
];

/** Files that the independent reader cannot open at all (prefixes, UTF-16); the browser's own XML parser reads them. */
const BEYOND_READER = new Set(["prefixed-single-quoted.xlsx", "utf16-part.xlsx"]);

const WORKBOOKS = [
  "table-with-totals.xlsx",
  "plain-list-title-rows.xlsx",
  "libreoffice-list.xlsx",
  "exceljs-two-tables.xlsx",
  "prefixed-single-quoted.xlsx",
  "utf16-part.xlsx",
  "list-odd-names.xlsx",
  "filter-on.xlsx",
  "blank-row-under-headers.xlsx",
  "chartsheet-only-and-list.xlsx",
  "dynamic-array-metadata.xlsx",
  "error-cells.xlsx",
  "many-sheets-other-language.xlsx",
  "tables-on-two-sheets.xlsx",
  "whole-column-formats.xlsx",
  "with-macro.xlsm",
];

const columnNumber = (letters: string): number => [...letters].reduce((n, c) => n * 26 + c.charCodeAt(0) - 64, 0);
const letters = (n: number): string =>
  n <= 26 ? String.fromCharCode(64 + n) : letters(Math.floor((n - 1) / 26)) + letters(((n - 1) % 26) + 1);

let browser: Browser;
let served: Served;
let tools: Page;

beforeAll(async () => {
  [browser, served] = await Promise.all([launchBrowser(), serveDist()]);
  tools = await browser.newPage();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

/** What a cell of the file shows, as the expectations say it. */
function shown(cell: CellXml | undefined): number | string {
  if (!cell || cell.value === null) return "";
  return cell.type === "n" ? Number(cell.value) : cell.value;
}

/** Where the first list of a file has no room, or a column by one of our names stands already. */
const SECOND_LIST = new Set(["exceljs-two-tables.xlsx"]);
const HAS_SIZE_MM = new Set(["error-cells.xlsx"]);

/** Adds the columns to the file's main list and gives the file before and after. */
async function nurseAddsColumns(name: string) {
  const list = facts.files[name]!.lists[SECOND_LIST.has(name) ? 1 : 0]!;
  const before = new Uint8Array(readFileSync(FILES + name));
  const today = Temporal.Now.plainDateISO();
  const { page, requests, faults } = await openWorkbookPage(browser, served.url);
  await openFile(page, FILES + name);
  await page.getByRole("heading", { level: 1, name }).waitFor();
  await chooseList(
    page,
    new RegExp(
      list.table
        ? `^table .${list.table}. on`
        : `^list on sheet .${list.sheet.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}.`,
    ),
  );
  const columns = COLUMNS.filter(({ of }) => !(of === "size" && HAS_SIZE_MM.has(name)));
  await tick(
    page,
    columns.map(({ label }) => label),
  );
  const { kind, size, lastChange, waterIn, waterOut } = list.columns;
  await sayColumns(page, {
    "Last change": lastChange,
    "Kind of tube": kind,
    ...(columns.some(({ of }) => of === "size") && { Size: size }),
    "Water out": waterOut,
    "Water put in": waterIn,
  });
  await sayKinds(page);
  await pressAdd(page);
  await added(page);
  const saved = await save(page);
  await page.context().close();
  return { list, columns, today, requests, faults, before, after: saved.bytes, savedAs: saved.name };
}

/** The list's rows as the maker's script knows them, with what only the cells themselves can tell. */
function rowFacts(list: ListFacts, cells: Readonly<Record<string, CellXml>>): (RowFacts & { readonly row: number })[] {
  const byRow = new Map(list.rows.map((row) => [row[0], row]));
  return Array.from({ length: list.lastRow - list.firstRow + 1 }, (_, i) => {
    const row = list.firstRow + i;
    const [, lastChange = null, kind = null, sizeFr = null, waterIn = null, waterOut = null] = byRow.get(row) ?? [];
    const { columns } = list;
    const cell = (column: string) => cells[`${column}${row}`];
    const text = (column: string) => (cell(column)?.value ?? "").trim();
    /** The number 0 is a blank where it cannot be meant; the text 0 was typed by somebody. */
    const holds = (column: string) => text(column) !== "" && !(text(column) === "0" && cell(column)!.type === "n");
    const last = cell(columns.lastChange);
    return {
      row,
      lastChange,
      hasLastChange: holds(columns.lastChange) && text(columns.lastChange) !== "0",
      lastNumber: last?.type === "n" && last.value !== null ? Number(last.value) : null,
      kind,
      error: [last, cell(columns.kind)].find((each) => each?.type === "e")?.value ?? null,
      sizeFr,
      hasSize: holds(columns.size),
      waterIn,
      hasWaterIn: holds(columns.waterIn),
      waterOut,
      hasWaterOut: text(columns.waterOut) !== "",
    };
  });
}

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean => Buffer.from(a).equals(Buffer.from(b));

describe.each(WORKBOOKS)("%s", (name) => {
  test("gets its columns, and nothing else in it changes", async () => {
    const { list, columns, today, before, after, requests, faults, savedAs } = await nurseAddsColumns(name);
    expect(savedAs).toBe(name);
    expect(faults).toEqual([]);
    for (const address of requests)
      expect(
        address.startsWith(served.url) || address.startsWith("blob:") || address.startsWith("data:"),
        address,
      ).toBe(true);

    const [old, now] = [partsOf(before), partsOf(after)];
    const layout = await layoutOf(tools, now, list.sheet);
    const right = columnNumber(list.range.split(":")[1]!.replace(/\d/g, ""));
    const column = (i: number) => letters(right + 1 + i);
    const addresses = columns.flatMap((_, i) =>
      Array.from({ length: list.lastRow - list.headerRow + 2 }, (__, r) => `${column(i)}${list.headerRow + r}`),
    );
    const sheetBefore = await readSheet(
      tools,
      old[layout.sheet]!,
      layout.strings ? old[layout.strings] : undefined,
      addresses,
    );
    const sheetAfter = await readSheet(
      tools,
      now[layout.sheet]!,
      layout.strings ? now[layout.strings] : undefined,
      addresses,
    );

    await theAddedCellsAreRight(list, columns, today, column, sheetBefore.cells, sheetAfter.cells, now, layout.styles);
    await onlyWhatWasMeantChanged(list, columns, old, now, layout);
    expect(sheetAfter.rest).toBe(sheetBefore.rest);
    theRulesAreExcelsOwn(sheetBefore, sheetAfter);
    theResultsStay(sheetBefore.cells, sheetAfter.cells);
    for (const [i, look] of sheetBefore.columns.entries())
      if (i <= right) expect(sheetAfter.columns[i] ?? "", `column ${i}`).toBe(look);

    if (!BEYOND_READER.has(name)) theIndependentReaderAgrees(list, columns, before, after, column, sheetAfter.cells);
  });
});

async function theAddedCellsAreRight(
  list: ListFacts,
  columns: readonly Added[],
  today: Temporal.PlainDate,
  column: (i: number) => string,
  cellsBefore: Readonly<Record<string, CellXml>>,
  cells: Readonly<Record<string, CellXml>>,
  parts: Parts,
  styles: string,
) {
  columns.forEach(({ header }, i) => expect(cells[`${column(i)}${list.headerRow}`]?.value).toBe(header));
  const wrong: string[] = [];
  for (const row of rowFacts(list, cellsBefore)) {
    const want = expectedOf(row, today);
    columns.forEach(({ of }, i) => {
      const value = want[of];
      const cell = cells[`${column(i)}${row.row}`];
      const got = shown(cell);
      const same = typeof value === "number" && typeof got === "number" ? Math.abs(value - got) < 1e-9 : got === value;
      if (!same)
        wrong.push(
          `${column(i)}${row.row} (${columns[i]!.header}) is ${String(got)}, not ${String(value)}; ${JSON.stringify(row)}`,
        );
      if (!cell?.formula) wrong.push(`${column(i)}${row.row} holds no formula`);
    });
  }
  expect(wrong).toEqual([]);
  for (const [i, { format }] of columns.entries()) {
    if (format === null) continue;
    const style = cells[`${column(i)}${list.firstRow}`]!.style;
    expect(await formatOf(tools, parts[styles]!, style)).toBe(format);
  }
  const first = cells[`${column(0)}${list.firstRow}`]!.formula!;
  /* Plain Excel where that says the same of every row of the list, our function where it does not: never both. */
  if (first.includes("EDATE(")) expect(first).not.toContain("_xldudf_");
  else expect(first).toContain("_xldudf_TUBE_CHANGEDUE(");
  if (list.table) expect(first).toContain(`${list.table}[[#This Row],[`);
  else expect(first).toContain(`${list.columns.lastChange}${list.firstRow}`);
}

/** States have their colours by kinds of rule that every spreadsheet knows; no function of ours stands in one. */
function theRulesAreExcelsOwn(before: SheetXml, after: SheetXml) {
  expect(before.rules).toEqual([]);
  expect(after.rules.length).toBeGreaterThan(0);
  for (const { type, formulas } of after.rules) {
    expect(["cellIs", "beginsWith", "containsText"], type).toContain(type);
    for (const formula of formulas) expect(formula).not.toMatch(/TUBE|_xldudf/);
  }
}

/** A result that the file had stays, but where today or chance decides; one that it lacked comes in as the screen shows it. */
function theResultsStay(before: SheetXml["cells"], after: SheetXml["cells"]) {
  const other = Object.values(before).filter(
    ({ ref, formula, value }) =>
      formula !== null &&
      value !== null &&
      value !== "" &&
      !savedWithoutUs(formula, value) &&
      !workedOutAnew(formula) &&
      after[ref]?.value !== value,
  );
  expect(other.map(({ ref, formula, value }) => [ref, formula, value, after[ref]?.value])).toEqual([]);
}

/** Whatever stood there, Excel works these out at every change too. */
const workedOutAnew = (formula: string): boolean => /\b(TODAY|NOW|RAND|RANDBETWEEN|OFFSET|INDIRECT)\(/.test(formula);

/** A formula of ours that was saved by a program that does not know it: its result comes in. */
const savedWithoutUs = (formula: string, value: string): boolean => value === "#NAME?" && formula.includes("TUBE.");

async function onlyWhatWasMeantChanged(
  list: ListFacts,
  columns: readonly Added[],
  old: Parts,
  now: Parts,
  layout: Awaited<ReturnType<typeof layoutOf>>,
) {
  const names = (parts: Parts) => Object.keys(parts).filter((part) => !part.endsWith("/"));
  const gone = names(old).filter((part) => !(part in now));
  // The order of calculation is Excel's to work out again when formulas come in.
  expect(gone.filter((part) => !part.endsWith("calcChain.xml"))).toEqual([]);
  expect(names(now).filter((part) => !(part in old))).toEqual([]);
  const changed = names(old).filter((part) => part in now && !sameBytes(old[part]!, now[part]!));

  const meant = new Set([layout.sheet, layout.styles, "xl/workbook.xml", ...(layout.strings ? [layout.strings] : [])]);
  if (gone.length > 0) for (const part of ["[Content_Types].xml", "xl/_rels/workbook.xml.rels"]) meant.add(part);
  for (const part of changed) {
    if (part.includes("/tables/") && list.table !== null) continue;
    if (part.startsWith("xl/worksheets/") && part !== layout.sheet) {
      const [before, after] = await Promise.all([old, now].map((parts) => readSheet(tools, parts[part]!, undefined)));
      expect(after!.rest, part).toBe(before!.rest);
      theResultsStay(before!.cells, after!.cells);
      continue;
    }
    expect([...meant], `changed: ${changed.join(", ")}`).toContain(part);
  }

  const [bookBefore, bookAfter] = [
    await withoutName(tools, old["xl/workbook.xml"]!, "As_of"),
    await withoutName(tools, now["xl/workbook.xml"]!, "As_of"),
  ];
  expect(bookAfter.refersTo).toBe(bookBefore.refersTo ?? "TODAY()");
  expect(bookAfter.rest).toBe(bookBefore.rest);

  const lists = ["numFmts", "fonts", "fills", "borders", "cellXfs", "dxfs"];
  const [stylesBefore, stylesAfter] = [
    await readGrowing(tools, old[layout.styles]!, lists),
    await readGrowing(tools, now[layout.styles]!, lists),
  ];
  expect(stylesAfter.rest).toBe(stylesBefore.rest);
  for (const each of lists)
    expect(stylesAfter.lists[each]!.slice(0, stylesBefore.lists[each]!.length)).toEqual(stylesBefore.lists[each]);

  if (list.table !== null) await theTableGrew(list, columns, old, now, changed);
}

async function theTableGrew(
  list: ListFacts,
  columns: readonly Added[],
  old: Parts,
  now: Parts,
  changed: readonly string[],
) {
  const headers = columns.map(({ header }) => header);
  const tables = changed.filter((part) => part.includes("/tables/"));
  expect(tables).toHaveLength(1);
  const [before, after] = [
    await readTable(tools, old[tables[0]!]!, headers),
    await readTable(tools, now[tables[0]!]!, headers),
  ];
  expect(after.name).toBe(list.table);
  expect(after.rest).toBe(before.rest);
  expect(after.count).toBe(String(before.columns.length + columns.length));
  expect(after.columns.slice(0, before.columns.length)).toEqual(before.columns);
  const fresh = after.columns.slice(before.columns.length);
  expect(fresh.map((column) => column.name)).toEqual(headers);
  expect(fresh.every((column) => column.formula !== null)).toBe(true);
  expect(new Set(after.columns.map((column) => column.id)).size).toBe(after.columns.length);
  const widened = (ref: string) => {
    const [from, to] = ref.split(":") as [string, string];
    return `${from}:${letters(columnNumber(to.replace(/\d/g, "")) + columns.length)}${to.replace(/\D/g, "")}`;
  };
  expect(after.ref).toBe(widened(before.ref));
  if (before.filterRef !== null) expect(after.filterRef).toBe(widened(before.filterRef));
}

/** SheetJS opens both files: same cells as before, ours beside them with the same values that the XML parser saw. */
function theIndependentReaderAgrees(
  list: ListFacts,
  columns: readonly Added[],
  before: Uint8Array,
  after: Uint8Array,
  column: (i: number) => string,
  cells: Readonly<Record<string, CellXml>>,
) {
  const options = { cellFormula: true, cellNF: true } as const;
  const [oldBook, newBook] = [independent.read(before, options), independent.read(after, options)];
  expect(newBook.SheetNames).toEqual(oldBook.SheetNames);
  for (const sheetName of oldBook.SheetNames) {
    const [oldSheet, newSheet] = [oldBook.Sheets[sheetName]!, newBook.Sheets[sheetName]!];
    for (const [address, cell] of Object.entries(oldSheet)) {
      if (address.startsWith("!") || typeof cell !== "object") continue;
      const { t, v, w, f, z } = cell as independent.CellObject;
      const now = newSheet[address] as independent.CellObject | undefined;
      if (t === "z" && now === undefined) continue;
      const here = `${sheetName}!${address}`;
      expect({ f: now?.f, z: now?.z }, here).toEqual({ f, z });
      if (savedWithoutUs(f ?? "", w ?? "")) expect(now?.t, here).not.toBe("e");
      else if (!workedOutAnew(f ?? "")) expect({ t: now?.t, v: now?.v }, here).toEqual({ t, v });
    }
  }
  const sheet = newBook.Sheets[list.sheet]!;
  for (let row = list.firstRow; row <= list.lastRow; row++) {
    for (let i = 0; i < columns.length; i++) {
      const address = `${column(i)}${row}`;
      const cell = sheet[address] as independent.CellObject;
      expect(cell.f, address).toBeTruthy();
      const mine = shown(cells[address]);
      if (typeof mine === "number") expect(cell.v, address).toBeCloseTo(mine, 9);
      else if (!mine.startsWith("#")) expect(cell.v ?? "", address).toBe(mine);
    }
  }
  expect(sheet[`${column(0)}${list.firstRow}`].z).toBe("d mmm yyyy");
}
