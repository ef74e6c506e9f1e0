/** A new file with every feature in the embedded grid: what is there, what the engine makes of it, what saving does. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import "@univerjs/sheets-data-validation/facade";
import "@univerjs/sheets-conditional-formatting/facade";
import { formula } from "../../../src/columns/formula";
import { writeBook } from "../../../taskpane/workbook/file";
import { AS_OF, COMMA_LIST, everything, LONG_LIST } from "./book";
import { plain, startGrid, withoutResults, type InGrid } from "./in-grid";

const LIST = "Nina's list";
const table = everything.sheets[1]!.table!;
let bytes: Uint8Array;
let there: InGrid;
beforeAll(async () => {
  bytes = await writeBook(everything);
  there = startGrid(AS_OF);
});
afterAll(() => there.engine.univer.dispose());

async function open(file: Uint8Array): Promise<void> {
  const opened = await there.grid.open(file, "invented.xlsx");
  expect(opened).toEqual({ outcome: "opened", name: "invented.xlsx", remarks: [] });
}

const sheetNamed = (name: string) => there.engine.api.getActiveWorkbook()!.getSheetByName(name)!;

describe("a new file in the grid", () => {
  it("opens with its sheets, table, columns and names", async () => {
    await open(bytes);
    const { sheets, tables, names } = await there.grid.workbook.overview();
    expect(sheets.map(({ name, hidden }) => [name, hidden])).toEqual([
      ["Read first", false],
      [LIST, false],
      ["Settings", false],
      ["Lists", true],
    ]);
    expect(tables).toHaveLength(1);
    expect(tables[0]).toMatchObject({
      name: "Invented_list",
      columns: table.columns.map(({ header }) => header),
      area: { top: 3, left: 0, rows: 6, columns: 13 },
    });
    expect(names.map(({ name, value }) => [name, value])).toEqual(
      expect.arrayContaining([
        ["As_of", AS_OF],
        ["Most_days", 365],
      ]),
    );
  });

  it("has what may be entered, words from the hidden sheet too", async () => {
    await open(bytes);
    const rule = (address: string) => sheetNamed(LIST).getRange(address).getDataValidation();
    expect(rule("D5")?.rule).toMatchObject({ type: "decimal", formula1: "5", formula2: "30", errorStyle: 1 });
    expect(rule("A150")?.rule).toMatchObject({ type: "custom", formula1: "=COUNTIF(All_IDs,A5)=1" });
    expect(rule("I5")?.rule).toMatchObject({ type: "list", formula1: "='Lists'!$A$1:$A$3" });
    expect(COMMA_LIST.map((_, row) => sheetNamed("Lists").getRange(row, 0).getRawValue())).toEqual(COMMA_LIST);
    expect(LONG_LIST.map((_, row) => sheetNamed("Lists").getRange(row, 1).getRawValue())).toEqual(LONG_LIST);
  });

  it("has words in colour", async () => {
    await open(bytes);
    const rules = sheetNamed(LIST).getConditionalFormattingRules();
    const asked = (value: string, more: object) => expect.objectContaining({ ...more, value }) as unknown;
    const told = rules.map(({ ranges, rule }) => [ranges[0]!.startRow, ranges[0]!.endRow, rule]);
    /* words of the cell itself are rules of the grid's own, all others formulas */
    expect(told).toEqual(
      [
        asked("no date", { subType: "text", operator: "equal" }),
        asked("past limit", { subType: "text", operator: "equal" }),
        asked("overdue ", { subType: "text", operator: "beginsWith" }),
        asked("=AND(ISNUMBER(C5),As_of-C5>Most_days)", { subType: "formula" }),
        asked('=EXACT(A5,"D-002")', { subType: "formula" }),
      ].map((rule) => [4, 10_003, rule]),
    );
  });

  it("gives by its engine what is stored in the file", async () => {
    await open(withoutResults(bytes));
    const { tables } = await there.grid.workbook.overview();
    const { sheet, area } = tables[0]!;
    there.engine.api.getFormula().executeCalculation();
    const read = async () => {
      const body = { ...area, top: area.top + 1, rows: area.rows - 1 };
      const { values } = await there.grid.workbook.read({ sheet, area: body }, ["values"]);
      return values!.map((row) => row.map(plain));
    };
    const expected = table.rows.map((row) => row.map(plain));
    const near = expected.map((row) =>
      row.map((value) => (typeof value === "number" ? (expect.closeTo(value, 9) as unknown) : value)),
    );
    await expect.poll(read).toEqual(near);
  });

  it("works LET out by the engine in a workbook opened later, too", async () => {
    const status = { header: "Status", index: 0 };
    const word = formula`LET(status,LOWER(TRIM(${status})),IF(EXACT(status,"left"),"gone","here"))`;
    const plainColumn = { width: 9, format: "General" } as const;
    const columns = [
      { ...plainColumn, header: "Status", kind: "typed" },
      { ...plainColumn, header: "Word", kind: "computed", formula: word },
    ] as const;
    const rows = [
      ["left ", null],
      ["active", null],
    ];
    const book = { sheets: [{ name: "S", cells: [], table: { name: "T", top: 0, left: 0, columns, rows } }], names: [] };
    const file = await writeBook(book);
    for (const time of ["first", "second"]) {
      await open(file);
      const words = () => [1, 2].map((row) => sheetNamed("S").getRange(row, 1).getRawValue());
      await expect.poll(words, { message: time }).toEqual(["gone", "here"]);
    }
  });

  it("is saved byte for byte as it was made when nobody changed it", async () => {
    await open(bytes);
    const saved = await there.grid.save();
    expect(saved).toMatchObject({ outcome: "saved", report: [] });
    if (saved.outcome === "saved") expect(Buffer.compare(saved.bytes, bytes)).toBe(0);
  });
});
