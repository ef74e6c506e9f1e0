/** Whatever is edited, the saved copy holds what was there and what was meant, and nothing else changed. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addressOf, columnLetters } from "../../../taskpane/workbook/package";
import type { CellEdit, CellValue } from "../../../taskpane/workbook/package";
import { encodeXml } from "../../../taskpane/workbook/xlsx/xml/encoding";
import { escapeText } from "../../../taskpane/workbook/xlsx/xml/characters";
import { book, cellsOf, MAIN, opened, patched, SHEET, STYLES, partText } from "./build";
import { all, parsed } from "../new-file/reading";

const ROWS = 9;
const COLUMNS = 6;

interface Model {
  value: CellValue;
  formula: string | undefined;
  style: number;
}
type Sheet = Map<string, Model>;

const text = fc.string({ unit: fc.constantFrom("a", " ", "=", "<", "&", "é", "🙂", "\n", "\r", "\u0002", "_x0041_", "]]>", "'", '"'), maxLength: 6 });
const value: fc.Arbitrary<CellValue> = fc.oneof(
  text,
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.integer({ min: -5, max: 60_000 }),
  fc.boolean(),
  fc.constantFrom({ error: "#N/A" }, { error: "#DIV/0!" }),
);
const place = fc.tuple(fc.integer({ min: 1, max: ROWS }), fc.integer({ min: 1, max: COLUMNS }));
const formula = fc.constantFrom("1+1", "SUM(A1:B2)", 'IF(A1<2,"a&b","")', "T[[#This Row],[x]]");

/** A cell of the file before any edit; those in column F may belong to one shared group, "A{row}*2". */
const cell = fc.record({ value: fc.option(value, { nil: null }), formula: fc.option(formula, { nil: undefined }), style: fc.integer({ min: 0, max: 3 }) });
const sheet = fc.dictionary(place.map(([row, column]) => addressOf(row, column)), cell, { maxKeys: 40, size: "max" });

const spelling = fc.record({
  prefix: fc.constantFrom("", "x:", "main:"),
  quote: fc.constantFrom('"', "'"),
  gap: fc.constantFrom("", "\n  ", "<!-- <c r='A1'/> -->", "<?pi <row/>?>"),
  addresses: fc.boolean(),
  encoding: fc.constantFrom("utf-8", "utf-16le", "utf-16be"),
  hasMark: fc.boolean(),
});

const edit: fc.Arbitrary<CellEdit> = fc.oneof(
  fc.record({ value: fc.option(value, { nil: null }), style: fc.option(fc.integer({ min: 0, max: 3 }), { nil: undefined }) }),
  fc.record({ value, formula: formula.map((one) => ({ text: one })) }),
  fc.record({ style: fc.integer({ min: 0, max: 3 }) }),
  fc.record({ value, formula: fc.constant({ keep: true as const }) }),
);
const edits = fc.dictionary(
  fc.tuple(fc.integer({ min: 1, max: ROWS + 2 }), fc.integer({ min: 1, max: COLUMNS + 2 })).map(([row, column]) => addressOf(row, column)),
  edit,
  { maxKeys: 14, size: "max" },
);

function write(source: Record<string, Model>, shared: readonly number[], as: typeof spelling extends fc.Arbitrary<infer T> ? T : never): [Uint8Array, Sheet] {
  const { prefix: p, quote: q, gap } = as;
  const model: Sheet = new Map();
  const rows: string[] = [];
  let impliedRow = 0;
  for (let row = 1; row <= ROWS; row++) {
    const cells: string[] = [];
    let impliedColumn = 0;
    for (let column = 1; column <= COLUMNS; column++) {
      const ref = addressOf(row, column);
      const isShared = column === COLUMNS && shared.includes(row);
      const own = isShared ? { value: row * 2, formula: `A${row}*2`, style: 0 } : source[ref];
      if (!own) continue;
      model.set(ref, { ...own });
      const r = as.addresses || column !== impliedColumn + 1 ? ` r=${q}${ref}${q}` : "";
      impliedColumn = column;
      const f = isShared ? sharedElement(row, shared, p, q) : own.formula === undefined ? "" : `<${p}f>${escapeText(own.formula)}</${p}f>`;
      cells.push(`<${p}c${r}${own.style ? ` s=${q}${own.style}${q}` : ""}${content(own.value, p, q, f)}</${p}c>`);
    }
    if (cells.length === 0) continue;
    const r = as.addresses || row !== impliedRow + 1 ? ` r=${q}${row}${q}` : "";
    impliedRow = row;
    rows.push(`<${p}row${r} spans=${q}1:6${q}>${gap}${cells.join(gap)}${gap}</${p}row>`);
  }
  const namespace = p === "" ? "xmlns" : `xmlns:${p.slice(0, -1)}`;
  const xml = `<${p}worksheet ${namespace}=${q}${MAIN}${q}>${gap}<${p}sheetData>${gap}${rows.join(gap)}</${p}sheetData></${p}worksheet>`;
  // Without a mark a part must begin with "<", or its width cannot be told.
  const bytes = encodeXml(xml, { name: as.encoding as "utf-8", hasMark: as.hasMark });
  return [book({ styles: STYLES, sheets: [{ name: "S", xml: bytes }] }), model];
}

function sharedElement(row: number, shared: readonly number[], p: string, q: string): string {
  if (row !== shared[0]) return `<${p}f t=${q}shared${q} si=${q}0${q}/>`;
  return `<${p}f t=${q}shared${q} ref=${q}F${row}:F${shared.at(-1)}${q} si=${q}0${q}>A${row}*2</${p}f>`;
}

function content(own: CellValue, p: string, q: string, f: string): string {
  if (own === null) return `>${f}`;
  if (typeof own === "number") return `>${f}<${p}v>${own}</${p}v>`;
  if (typeof own === "boolean") return ` t=${q}b${q}>${f}<${p}v>${own ? 1 : 0}</${p}v>`;
  if (typeof own === "object") return ` t=${q}e${q}>${f}<${p}v>${own.error}</${p}v>`;
  return ` t=${q}str${q}>${f}<${p}v>${escaped(own)}</${p}v>`;
}

/** By another way than the product's: every character that is not plain as _xHHHH_. */
function escaped(own: string): string {
  return [...own].map((one) => (/[a-zé '"🙂=\n]/u.test(one) ? one : `_x${one.charCodeAt(0).toString(16).padStart(4, "0")}_`)).join("");
}

/** What the edits mean, on the model; an edit that keeps a formula where there is none is left out beforehand. */
function apply(model: Sheet, changes: Record<string, CellEdit>): void {
  for (const [ref, change] of Object.entries(changes)) {
    const present = model.get(ref) ?? { value: null, formula: undefined, style: 0 };
    if (typeof change.style === "number") present.style = change.style;
    if (change.value !== undefined) {
      present.value = change.value;
      if (!change.formula) present.formula = undefined;
      else if ("text" in change.formula) present.formula = change.formula.text;
    }
    model.set(ref, present);
  }
}

/** Cells without content and style are as good as absent; -0 is written as 0. */
function seen(model: Iterable<[string, Model]>): Record<string, Model> {
  const cells = [...model].filter(([, one]) => one.value !== null || one.formula !== undefined || one.style !== 0);
  return Object.fromEntries(cells.sort().map(([ref, one]) => [ref, { ...one, value: one.value === 0 ? 0 : one.value }]));
}

/** The style that a cell's style is but for the mark of texts like formulas (quoted.test.ts). */
function withoutMark(bytes: Uint8Array): (style: number) => number {
  const xfs = all(all(parsed(partText(bytes, "xl/styles.xml")), "cellXfs")[0]!, "xf").map(({ attributes, children }) => {
    const others = Object.entries(attributes).filter(([name]) => name !== "quotePrefix");
    return JSON.stringify([others.sort(), children]);
  });
  return (style) => xfs.indexOf(xfs[style]!);
}

describe("a saved copy", () => {
  it("holds the model, on random sheets, spellings and edits (seed 20260802)", () => {
    const group = fc.uniqueArray(fc.integer({ min: 1, max: ROWS }), { maxLength: ROWS }).map((rows) => rows.sort((one, other) => one - other));
    fc.assert(
      fc.property(sheet, group, spelling, edits, (source, shared, as, wanted) => {
        const [bytes, model] = write(source as Record<string, Model>, shared, as);
        const changes = Object.fromEntries(
          Object.entries(wanted).filter(([ref, one]) => !(one.formula && "keep" in one.formula) || model.get(ref)?.formula !== undefined),
        );
        const before = seen([...cellsOf(bytes)].map(([ref, one]) => [ref, { value: one.value, formula: one.formula?.text, style: one.styleIndex }]));
        expect(before).toEqual(seen(model));
        const saved = patched(bytes, { sheets: new Map([["S", { cells: new Map(Object.entries(changes)) }]]) });
        apply(model, changes);
        const base = withoutMark(saved.bytes);
        const after = [...cellsOf(saved.bytes)].map(([ref, one]): [string, Model] => [ref, { value: one.value, formula: one.formula?.text, style: base(one.styleIndex) }]);
        expect(seen(after)).toEqual(seen(model));
        expect(opened(saved.bytes).parts.files.xml(SHEET).encoding).toEqual({ name: as.encoding, hasMark: as.hasMark });
        expect(saved.changedParts.filter((part) => part !== SHEET && part !== "xl/styles.xml")).toEqual([]);
      }),
      { seed: 20260802, numRuns: 400 },
    );
  });

  it("saved twice is the same as saved once (seed 20260803)", () => {
    fc.assert(
      fc.property(sheet, spelling, edits, (source, as, wanted) => {
        const [bytes] = write(source as Record<string, Model>, [], as);
        const changes = new Map(Object.entries(wanted).filter(([, one]) => !(one.formula && "keep" in one.formula)));
        const once = patched(bytes, { sheets: new Map([["S", { cells: changes }]]) }).bytes;
        const twice = patched(once, { sheets: new Map([["S", { cells: changes }]]) }).bytes;
        expect(opened(twice).parts.files.xml(SHEET).text).toBe(opened(once).parts.files.xml(SHEET).text);
      }),
      { seed: 20260803, numRuns: 100 },
    );
  });

  it("addresses count as Excel counts", () => {
    expect([1, 26, 27, 702, 703, 16_384].map(columnLetters)).toEqual(["A", "Z", "AA", "ZZ", "AAA", "XFD"]);
  });
});
