/** The last guard: a fault planted in the writer must end in a refusal, never in a file. */
import { afterEach, describe, expect, it, vi } from "vitest";
import { isRefusal, patchPackage } from "../../../taskpane/workbook/package";
import { CellWriter } from "../../../taskpane/workbook/package/patch/cells/cell-text";
import { FormulaGroups } from "../../../taskpane/workbook/package/patch/cells/formula-groups";
import { Outgoing } from "../../../taskpane/workbook/package/patch/outgoing";
import { StyleSheet } from "../../../taskpane/workbook/package/patch/styles/style-sheet";
import { cellEdits, oneSheet, opened, refusalOf } from "./build";

const bytes = oneSheet(
  `<row r="1"><c r="A1"><f t="shared" ref="A1:A2" si="0">B1</f><v>1</v></c><c r="B1"><v>1</v></c></row>` +
    `<row r="2"><c r="A2"><f t="shared" si="0"/><v>1</v></c></row>`,
);
const save = (edits: Record<string, unknown>) => patchPackage(opened(bytes), cellEdits(edits));

afterEach(() => vi.restoreAllMocks());

describe("a fault in the writer", () => {
  it("none: the copy is offered", () => {
    expect(isRefusal(save({ A1: { value: 2 }, B1: { value: "x", style: { numberFormat: "0.0" } } }))).toBe(false);
  });

  it("a wrong value, a value that is lost, a value in another type", () => {
    for (const wrong of [
      { type: "", text: "<v>3</v>" },
      { type: "", text: "" },
      { type: "str", text: "<v>2</v>" },
    ]) {
      vi.spyOn(CellWriter.prototype, "content").mockReturnValue(wrong);
      expect(refusalOf(save({ B1: { value: 2 } }))).toMatch(/did not read back as it was meant.*B1 on the sheet "S"/);
    }
  });

  it("XML that is none", () => {
    vi.spyOn(CellWriter.prototype, "content").mockReturnValue({ type: "", text: "<v>2" });
    expect(refusalOf(save({ B1: { value: 2 } }))).toMatch(/did not read back as it was meant/);
  });

  it("a neighbour's formula that is lost or differs", () => {
    vi.spyOn(FormulaGroups.prototype, "leave").mockReturnValue();
    expect(refusalOf(save({ A1: { value: 2 } }))).toMatch(/A2 on the sheet "S"/);
  });

  it("a formula that differs", () => {
    vi.spyOn(CellWriter.prototype, "formula").mockReturnValue("<f>B3</f>");
    expect(refusalOf(save({ B1: { value: 2, formula: { text: "B2" } } }))).toMatch(/B1 on the sheet "S"/);
  });

  it("another style, and a style with another format", () => {
    vi.spyOn(StyleSheet.prototype, "resolve").mockReturnValue(1);
    expect(refusalOf(save({ B1: { value: 2, style: { numberFormat: "0.0" } } }))).toMatch(/B1 on the sheet "S"/);
  });

  it("a part that changed unasked", () => {
    vi.spyOn(Outgoing.prototype, "changed", "get").mockReturnValue(["xl/other.xml"]);
    expect(refusalOf(save({ B1: { value: 2 } }))).toMatch(/did not read back as it was meant/);
  });
});
