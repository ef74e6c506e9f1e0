/** Workbooks that other programs made: opened, saved unchanged, saved with two columns more, and read by SheetJS. */
import { readdirSync, readFileSync } from "node:fs";
import { type CellObject, read, type WorkSheet } from "@e965/xlsx";
import { strToU8, unzipSync, zipSync } from "fflate";
import { readXlsx } from "hucre/xlsx";
import { describe, expect, it } from "vitest";
import { addressOf, isRefusal, openPackage, parseRange, patchPackage } from "../../../taskpane/workbook/package";
import type { OpenedPackage, PackageEdits } from "../../../taskpane/workbook/package";
import { opening } from "../../../taskpane/workbook/package/open-package";
import { ranToItsEnd } from "../../../taskpane/workbook/xlsx/slices";

const FOLDER = new URL("../files/", import.meta.url);
const expected = JSON.parse(readFileSync(new URL("../expected.json", import.meta.url), "utf8")) as {
  files: Record<string, { sheets: { name: string; kind: string; state: string; protected: boolean }[]; tables: { name: string; sheet: string; ref: string; columns: string[] }[] }>;
  refused: Record<string, unknown>;
};
const bytesOf = (file: string): Uint8Array => new Uint8Array(readFileSync(new URL(file, FOLDER)));

function workbook(file: string): OpenedPackage {
  const answer = openPackage(bytesOf(file));
  if (isRefusal(answer)) throw new Error(answer.refused);
  return answer;
}

type Seen = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

/** What another program sees of every cell: SheetJS, or hucre where SheetJS finds no cell at all (prefixed elements). */
async function seenByAnother(bytes: Uint8Array, file: string): Promise<Seen> {
  if (file === "prefixed-single-quoted.xlsx") return seenByHucre(bytes);
  const sheets = read(inUtf8(bytes), { cellFormula: true, cellNF: true }).Sheets;
  return mapped(sheets, (sheet: WorkSheet) => mapped(sheet, (cell: CellObject) => ({ t: cell.t, v: cell.v, f: cell.f, z: cell.z })));
}

async function seenByHucre(bytes: Uint8Array): Promise<Seen> {
  const { sheets } = await readXlsx(bytes);
  return Object.fromEntries(
    sheets.map((sheet) => {
      const cells = sheet.rows.flatMap((row, at) => row.map((value, index) => [addressOf(at + 1, index + 1), { v: serial(value) }] as const));
      return [sheet.name, Object.fromEntries(cells.filter(([, { v }]) => v !== null))];
    }),
  );
}

/** hucre makes dates of date formats; day 0 is 30 December 1899 (ECMA-376 part 1, 18.17.4.1). */
function serial(value: unknown): unknown {
  return value instanceof Date ? value.getTime() / 86_400_000 + 25_569 : value;
}

function mapped<T>(from: Readonly<Record<string, T>>, change: (one: T) => unknown): Record<string, never> {
  return Object.fromEntries(Object.entries(from).filter(([key]) => !key.startsWith("!")).map(([key, one]) => [key, change(one)])) as never;
}

/** SheetJS reads no UTF-16 either: such parts are put into UTF-8 for it. */
function inUtf8(bytes: Uint8Array): Uint8Array {
  const wide = Object.entries(unzipSync(bytes)).map(([name, part]): [string, Uint8Array] => {
    const encoding = part[0] === 0xff && part[1] === 0xfe ? "utf-16le" : part[0] === 0xfe && part[1] === 0xff ? "utf-16be" : undefined;
    return [name, encoding ? strToU8(new TextDecoder(encoding).decode(part)) : part];
  });
  return zipSync(Object.fromEntries(wide), { level: 1 });
}

describe("every file in the folder", () => {
  it("is either described or refused in expected.json", () => {
    const known = [...Object.keys(expected.files), ...Object.keys(expected.refused)].sort();
    expect(readdirSync(FOLDER).sort()).toEqual(known);
  });

  it.each(Object.keys(expected.refused))("%s is refused in a sentence", (file) => {
    const answer = openPackage(bytesOf(file));
    expect(isRefusal(answer) && answer.refused).toMatch(/^(This|The) .*\.$/);
  });
});

describe.each(Object.keys(expected.files))("%s", (file) => {
  it("holds the sheets and tables a careful human sees", () => {
    const opened = workbook(file);
    const meant = expected.files[file];
    expect(opened.sheets.map(({ name, kind, state, isProtected }) => ({ name, kind, state, protected: isProtected }))).toEqual(meant?.sheets);
    expect(opened.tables.map(({ name, sheetName, ref, columns }) => ({ name, sheet: sheetName, ref, columns: columns.map((one) => one.name) }))).toEqual(
      meant?.tables.map(({ name, sheet, ref, columns }) => ({ name, sheet, ref, columns })),
    );
  });

  it("is the same file when nothing was changed", () => {
    const answer = patchPackage(workbook(file), {});
    expect(!isRefusal(answer) && answer.bytes).toEqual(bytesOf(file));
  });

  it("takes two columns, and another program finds everything else as it was", async () => {
    const opened = workbook(file);
    for (const { edits, sheetName, added } of additions(opened)) {
      const answer = patchPackage(opened, edits);
      if (isRefusal(answer)) {
        expect(answer.refused).toMatch(NO_ROOM);
        continue;
      }
      const was = await seenByAnother(bytesOf(file), file);
      const is = await seenByAnother(answer.bytes, file);
      expect(Object.values(was).some((cells) => Object.keys(cells).length > 0) || file === "empty.xlsx").toBe(true);
      expect(Object.keys(is)).toEqual(Object.keys(was));
      for (const [name, before] of Object.entries(was)) {
        const here = name === sheetName ? added : new Map<string, object>();
        const untouched = ([ref]: [string, unknown]): boolean => !here.has(ref);
        expect(Object.entries(is[name] ?? {}).filter(untouched)).toEqual(Object.entries(before).filter(untouched));
        for (const [ref, meant] of here) {
          const found = is[name]?.[ref] as Record<string, unknown>;
          const facets = Object.entries(meant).filter(([facet]) => found && facet in found);
          expect([ref, found]).toMatchObject([ref, Object.fromEntries(facets)]);
          expect(facets.length).toBeGreaterThan(0);
        }
      }
      comparePackages(opened, answer.bytes, answer.changedParts);
    }
  });
});

const NO_ROOM = /is in the way|is not empty|beyond column XFD|is protected|needs the cells/;

interface Addition {
  readonly edits: PackageEdits;
  readonly sheetName: string;
  /** What SheetJS must find. */
  readonly added: ReadonlyMap<string, object>;
}

/** Two columns beside every table, and beside every sheet's cells where there is no table. */
function additions(opened: OpenedPackage): Addition[] {
  const format = "d mmm yyyy";
  const inTables = opened.tables.map((table): Addition => {
    const { top, bottom, right } = parseRange(table.ref) as NonNullable<ReturnType<typeof parseRange>>;
    const added = new Map<string, object>([
      [addressOf(top, right + 1), { t: "s", v: "Change due" }],
      [addressOf(top, right + 2), { t: "s", v: "At the\nlatest <&>" }],
    ]);
    for (let row = top + 1; row <= bottom - table.totalsRowCount; row++) {
      added.set(addressOf(row, right + 1), { t: "n", v: 46_000 + row, f: "_xldudf_TUBE_CHANGEDUE(TODAY(),30)", z: format });
      added.set(addressOf(row, right + 2), { t: "s", v: `text ${row}` });
    }
    const addColumns = [
      { header: "Change due", calculatedColumnFormula: "_xldudf_TUBE_CHANGEDUE(TODAY(),30)", valueAt: (row: number) => 46_000 + row, style: { numberFormat: format } },
      { header: "At the\nlatest <&>", valueAt: (row: number) => `text ${row}`, width: 14 },
    ];
    return { edits: { tables: [{ table: table.name, addColumns }] }, sheetName: table.sheetName, added };
  });
  const bare = opened.sheets.filter((sheet) => sheet.kind === "worksheet" && !opened.tables.some((table) => table.sheetName === sheet.name));
  const inLists = bare.map((sheet): Addition => {
    const used = parseRange(sheet.usedRange ?? "A1") as NonNullable<ReturnType<typeof parseRange>>;
    const lastRow = Math.min(used.bottom, 12_000);
    const added = new Map<string, object>();
    for (let row = used.top; row <= lastRow; row++) {
      added.set(addressOf(row, used.right + 1), { t: "n", v: 1000 + row / 4, f: `A${row}+1`, z: format });
      added.set(addressOf(row, used.right + 2), { t: "s", v: ` ${row} ` });
    }
    const fills = [
      { column: used.right + 1, firstRow: used.top, lastRow, formula: { fromFirst: `A${used.top}+1` }, valueAt: (row: number) => 1000 + row / 4, style: { numberFormat: format } },
      { column: used.right + 2, firstRow: used.top, lastRow, valueAt: (row: number) => ` ${row} ` },
    ];
    return { edits: { sheets: new Map([[sheet.name, { fills }]]) }, sheetName: sheet.name, added };
  });
  return [...inTables, ...inLists];
}

/** The order of the parts, and the bytes of those that did not change. */
function comparePackages(before: OpenedPackage, bytes: Uint8Array, changed: readonly string[]): void {
  const after = ranToItsEnd(opening(bytes, before.parts.limits));
  const kept = before.parts.files.entries.filter(({ name }) => after.parts.files.find(name) !== undefined);
  expect(after.parts.files.entries.map(({ name }) => name).slice(0, kept.length)).toEqual(kept.map(({ name }) => name));
  for (const { name } of kept) {
    if (changed.includes(name)) continue;
    expect(Buffer.compare(after.parts.files.content(name), before.parts.files.content(name))).toBe(0);
  }
}
