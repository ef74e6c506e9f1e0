/** Texts that look like formulas carry `quotePrefix` (ECMA-376 part 1, 18.8.45), so that F2 and Enter leave them texts. */
import { describe, expect, it } from "vitest";
import { all, parsed } from "../new-file/reading";
import { cellEdits, oneSheet, partText, patched, SHEET, STYLES } from "./build";

const quotedXfs = (bytes: Uint8Array): readonly boolean[] => {
  const styles = parsed(partText(bytes, "xl/styles.xml"));
  const list = all(styles, "cellXfs")[0]!.children;
  return list.map(({ attributes }) => attributes["quotePrefix"] === "1");
};
const cell = (bytes: Uint8Array, address: string) =>
  all(parsed(partText(bytes, SHEET)), "c").find(({ attributes }) => attributes["r"] === address)!;
const isQuoted = (bytes: Uint8Array, address: string): boolean =>
  quotedXfs(bytes)[Number(cell(bytes, address).attributes["s"] ?? 0)]!;

const rows = '<row r="1"><c r="A1" s="1"><v>46000</v></c><c r="B1"><f>A1*2</f><v>92000</v></c></row>';

describe("a text typed into a cell", () => {
  it.each(["=1+1", "+44 20 7946 0000", "-", "@home", "\tindented", "'quoted"])("%j is marked as a text", (text) => {
    const { bytes } = patched(oneSheet(rows), cellEdits({ A1: { value: text }, D4: { value: text } }));
    expect([isQuoted(bytes, "A1"), isQuoted(bytes, "D4")]).toEqual([true, true]);
    // the look of before, but for the mark
    expect(all(parsed(partText(bytes, "xl/styles.xml")), "cellXfs")[0]!.children[4]!.attributes).toMatchObject({
      numFmtId: "14",
      quotePrefix: "1",
    });
  });

  it.each(["14 Fr", "see letter", "", "a=b"])("%j is not", (text) => {
    const { bytes } = patched(oneSheet(rows), cellEdits({ A1: { value: text } }));
    expect(quotedXfs(bytes)).not.toContain(true);
  });

  it("results are not, and a number or formula loses the mark", () => {
    const quoted = STYLES.replace('<xf numFmtId="14"', '<xf quotePrefix="1" numFmtId="14"');
    const edits = { A1: { value: 3 }, B1: { value: "=", formula: { text: 'IF(A1=3,"=","")' } } };
    const { bytes } = patched(oneSheet(rows, { styles: quoted }), cellEdits(edits));
    expect([isQuoted(bytes, "A1"), isQuoted(bytes, "B1")]).toEqual([false, false]);
  });

  it("is saved without the mark where the workbook's styles can take none", () => {
    const { bytes } = patched(oneSheet(rows.replace(' s="1"', ""), { styles: "<styleSheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"/>" }), cellEdits({ A1: { value: "=1" } }));
    expect(cell(bytes, "A1").attributes["t"]).toBe("inlineStr");
  });
});
