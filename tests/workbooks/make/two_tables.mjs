// Writes the workbook that two_tables.py describes on standard input, with ExcelJS.
import { readFileSync } from "node:fs";

// ExcelJS and its zip writer stamp the hour of writing; the same workbook should be the same file.
const RealDate = Date;
const MADE = RealDate.UTC(2026, 5, 1, 9);
globalThis.Date = class extends RealDate {
  constructor(...given) {
    super(...(given.length ? given : [MADE]));
  }
  static now() {
    return MADE;
  }
};

const { default: ExcelJS } = await import("exceljs");
const asked = JSON.parse(readFileSync(0, "utf8"));
const value = (cell) => (cell && cell.day ? new Date(cell.day) : cell);

const book = new ExcelJS.Workbook();
book.creator = "Invented";
book.description = asked.invented;
book.created = book.modified = new Date();
const page = book.addWorksheet(asked.sheet, { views: [{ state: "frozen", ySplit: asked.header }] });
page.getCell("A1").value = asked.invented;
page.getCell("A2").value = {
  richText: [
    { text: "Two lists on one page: " },
    { text: "adults", font: { bold: true, color: { argb: "FFC00000" } } },
    { text: " left, children right" },
  ],
};

const addTable = (name, ref, list) => {
  const columns = list.heads.map((head) => ({ name: head, filterButton: true }));
  page.addTable({ name, ref, headerRow: true, columns, rows: list.rows.map((row) => row.map(value)) });
};
addTable("Adults", `A${asked.header}`, asked.left);
addTable("Children", `H${asked.header}`, asked.right);
addTable("Spares", `A${asked.belowHeader}`, asked.below);
for (const letter of ["D", "K"]) page.getColumn(letter).numFmt = "dd/mm/yyyy";
page.getColumn("D").width = 18;

const first = asked.header + 1;
page.getCell(`A${first}`).value = { text: asked.left.rows[0][0], hyperlink: "#'Workings'!A1", tooltip: "Workings" };
page.getCell("H2").value = { text: "Write to the team", hyperlink: "mailto:nobody@example.invalid" };
page.getCell(`B${first}`).note = { texts: [{ font: { bold: true }, text: "Invented: " }, { text: "kind read from the box" }] };
page.getCell(`I${first}`).dataValidation = { type: "list", allowBlank: true, formulae: ['"balloon,GJ,PEG"'] };
page.addConditionalFormatting({
  ref: `F${first}:F${first + asked.left.rows.length - 1}`,
  rules: [{ type: "cellIs", operator: "lessThan", formulae: [4], priority: 1, style: { font: { bold: true } } }],
});

const workings = book.addWorksheet("Workings");
workings.addRow(["Put in", "Out", "Loss (one shared formula)"]);
for (let row = 2; row <= 12; row++) {
  workings.getCell(`A${row}`).value = 5;
  workings.getCell(`B${row}`).value = 5 - row / 10;
  const loss = Math.round(row) / 10;
  workings.getCell(`C${row}`).value =
    row === 2
      ? { formula: `A2-B2`, result: loss, shareType: "shared", ref: "C2:C12" }
      : { sharedFormula: "C2", result: loss };
}
workings.getCell("E2").value = { formula: "COUNTA(Adults[Kind?])", result: asked.left.rows.filter((row) => row[1] !== null).length };
workings.getCell("E3").value = { formula: "COUNT(Adults[Tube''s fill, mL])", result: asked.left.rows.filter((row) => typeof row[4] === "number").length };
workings.getCell("E4").value = { formula: "COUNTA(Children[Type '[of tube']])", result: asked.right.rows.filter((row) => row[1] !== null).length };

await book.xlsx.writeFile(asked.file);
