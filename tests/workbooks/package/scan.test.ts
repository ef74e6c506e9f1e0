/** Rows read by the scanner and by the rules of XML (ECMA-376 part 1, 18.3.1.4; XML 1.0): the same cells, or the same refusal. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Refused } from "../../../taskpane/workbook/xlsx/refusal";
import { inspectSheet } from "../../../taskpane/workbook/package/sheet/inspect";
import { ranToItsEnd } from "../../../taskpane/workbook/xlsx/slices";
import { xmlBytes } from "../../../taskpane/workbook/xlsx/xml/encoding";
import { shortOrLong } from "../../budget";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const sheetOf = (rows: string) => `<?xml version="1.0"?>\n<worksheet xmlns="${MAIN}"><dimension ref="A1"/><sheetData>${rows}</sheetData><mergeCells count="1"><mergeCell ref="A1:B1"/></mergeCells></worksheet>`;

interface Read {
  readonly cells?: unknown;
  readonly refused?: string;
  readonly scanned: boolean;
}

function read(bytes: Uint8Array, isScanned: boolean): Read {
  const around = { partName: "s.xml", strings: ["one", "two"], dynamicMarks: new Set([1]) };
  try {
    const { store, layout, usedRange, arrays, frame } = ranToItsEnd(inspectSheet(xmlBytes(bytes, "s.xml"), around, 3, () => undefined, isScanned));
    const { rowNumbers, rowStarts, rowEnds, rowMarks, groups } = store.data;
    const rows = [...rowNumbers].map((number, at) => [number, rowStarts[at], rowEnds[at], rowMarks[at]]);
    return { cells: [[...store.cells()], rows, [...groups], layout.merges, [...layout.rows], usedRange, arrays, frame.tail], scanned: true };
  } catch (problem) {
    if (!(problem instanceof Refused)) throw problem;
    return { refused: problem.message, scanned: false };
  }
}

const both = (xml: string | Uint8Array): Read => {
  const bytes = typeof xml === "string" ? new TextEncoder().encode(xml) : xml;
  const [scanned, byRules] = [read(bytes, true), read(bytes, false)];
  expect(scanned).toEqual(byRules);
  return byRules;
};

const number = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
  fc.integer().map(String),
  fc.constantFrom("1.50", "007", "-0", "5.", ".5", "1e3", "1E-2", "0.1", "123456789012345678901", "1e400", "", " 1 ", "+1", "0.30000000000000004", "--1", "1.2.3", "NaN"),
);
const words = fc.constantFrom("plain", "a &amp; b", "é ü", "_x000D_", "line\nbreak", "cr\rhere", "]]&gt;", "]]>", "a > b", "&#13;", "&bad;", "", " kept ", "\u0001", "😀");
const content = fc.oneof(
  number.map((value) => `<v>${value}</v>`),
  fc.constantFrom("<v>0</v>", "<v>1</v>", "<v>2</v>", "<v>9</v>", "<v/>", ""),
  words.map((text) => `<v>${text}</v>`),
  words.map((text) => `<is><t>${text}</t></is>`),
  words.map((text) => `<is><t xml:space="preserve">${text}</t></is>`),
  words.map((text) => `<is><r><t>${text}</t></r></is>`),
);
const formula = fc.constantFrom(
  "",
  "",
  "<f>A1+1</f>",
  "<f>SUM(T[[#This Row],[a]])</f>",
  '<f>IF(A1&lt;2,"x","")</f>',
  '<f t="shared" ref="A1:A9" si="0">B1*2</f>',
  '<f t="shared" si="0"/>',
  '<f t="array" ref="C1:D2">X(1)</f>',
  '<f ca="1">NOW()</f>',
  '<f t="odd">1</f>',
  "<f/>",
);
const attributes = fc.constantFrom("", "", "", ' s="1"', ' s="2"', ' s="3"', ' t="s"', ' t="n"', ' t="str"', ' t="inlineStr"', ' t="b"', ' t="e"', ' t="d"', ' t="x"', ' cm="1"', ' vm="1"', ' t="str" s="1"', ' s="1" s="2"', " t=''", ' q="1"');
const cell = fc.tuple(fc.integer({ min: 1, max: 9 }), attributes, formula, content, fc.constantFrom("", "", "", "\n ", "<!-- x -->", "<extLst/>"));
const rowAttributes = fc.constantFrom("", ' spans="1:3"', ' ht="20.5" customHeight="1"', ' hidden="1"', ' s="1" customFormat="1"', ' x14ac:dyDescent="0.25"', ' spans="1" spans="1"', ' xmlns="urn:x"', ' hidden=""');
const row = fc.tuple(rowAttributes, fc.array(cell, { maxLength: 4 }), fc.constantFrom("", "", "\n", " <!-- </row> --> ", "text"));
const sheet = fc.array(row, { maxLength: 4 }).map((rows) =>
  sheetOf(
    rows
      .map(([own, cells, behind], at) => {
        const inRow = cells.map(([step, attribute, f, v, after], index) => `<c r="${"ABCDEFGHIJKLMNOPQRSTUVWXYZ"[index * 4 + (step % 4)]}${at * 2 + 1}"${attribute}>${f}${v}</c>${after}`);
        return `<row r="${at * 2 + 1}"${own}>${inRow.join("")}</row>${behind}`;
      })
      .join(""),
  ),
);

describe("the scanner of rows", () => {
  it("reads what the rules of XML read (seed 20261130)", () => {
    let taken = 0;
    fc.assert(
      fc.property(sheet, (xml) => {
        if (both(xml).scanned) taken++;
      }),
      { seed: 20261130, numRuns: shortOrLong(1_500, 20_000) },
    );
    expect(taken).toBeGreaterThan(100);
  });

  it("takes nothing that is damaged anywhere (seed 20261201)", () => {
    const odd = fc.constantFrom("<", ">", "&", '"', "'", "/", "=", " ", "\t", "\r", "]", "a", "0", "r", "é", "\u0000", "<!--", "-->", "<!DOCTYPE", "</row>", "<c>", "<row>", "sheetData>");
    fc.assert(
      fc.property(sheet, fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(3), odd), { minLength: 1, maxLength: 2 }), (xml, damages) => {
        let text = xml;
        for (const [where, cut, put] of damages) {
          const at = Math.floor(where * text.length);
          text = text.slice(0, at) + put + text.slice(at + cut);
        }
        both(text);
      }),
      { seed: 20261201, numRuns: shortOrLong(2_000, 40_000) },
    );
  });

  it("takes no bytes that are no UTF-8 (seed 20261202)", () => {
    fc.assert(
      fc.property(sheet, fc.double({ min: 0, max: 1, noNaN: true }), fc.integer({ min: 128, max: 255 }), (xml, where, byte) => {
        const bytes = new TextEncoder().encode(xml);
        bytes[Math.floor(where * (bytes.length - 1))] = byte;
        both(bytes);
      }),
      { seed: 20261202, numRuns: shortOrLong(500, 10_000) },
    );
  });
});
