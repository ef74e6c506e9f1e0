/** Validation rules of a file in the grid: an operator only where numbers are compared (rules.ts says why). */
import { DataValidationErrorStyle } from "@univerjs/core";
import type { Sheet } from "hucre/xlsx";
import { expect, test } from "vitest";
import { validations } from "../../../taskpane/workbook/embedded/open/rules";

const sheet = {
  dataValidations: [
    { type: "list", range: "A2:A9", values: ["active", "left"] },
    { type: "custom", range: "B2:B9", formula1: "LEN(B2)<9" },
    { type: "decimal", range: "C2:C9", formula1: "1", formula2: "5" },
    { type: "whole", range: "D2:D9", operator: "greaterThan", formula1: "0" },
    { type: "date", range: "E2:E9", formula1: "Day_Birth", formula2: "As_of+0.99999" },
    { type: "date", range: "F2:F9", formula1: "40000", formula2: "46000" },
  ],
} as unknown as Sheet;

const DRAWN = { rows: 200, columns: 26 };

const one = (rule: object, isFrom1904 = false) =>
  validations({ dataValidations: [rule] } as unknown as Sheet, "sheet1", DRAWN, isFrom1904)[0]!;

test("a rule for a whole sheet is one for what is drawn of it, and for rows to come", () => {
  const { ranges } = one({ type: "list", range: "A1:XFD1048576 B30000:B40000 AC1:AD9", values: ["a"] });
  expect(ranges).toEqual([{ startRow: 0, endRow: 10_003, startColumn: 0, endColumn: 25 }]);
});

test("rules that ask the same of one cell each are one rule; those that ask something else are not", () => {
  const rules = [1, 2, 3].flatMap((row) => [
    { type: "custom", range: `B${row}`, formula1: `LEN(A${row})<9` },
    { type: "list", range: `C${row}`, values: ["a"] },
    { type: "custom", range: `D${row}`, formula1: "LEN(A1)<9" },
  ]);
  const found = validations({ dataValidations: rules } as unknown as Sheet, "sheet1", DRAWN);
  const rows = (start: number, end: number, column: number) => ({
    ...{ startRow: start, endRow: end, startColumn: column, endColumn: column },
  });
  expect(found.map(({ formula1, ranges }) => [formula1, ranges])).toEqual([
    ["=LEN(A1)<9", [rows(0, 2, 1)]],
    ["a", [rows(0, 2, 2)]],
    ["=LEN(A1)<9", [rows(0, 0, 3)]],
    ["=LEN(A1)<9", [rows(1, 1, 3)]],
    ["=LEN(A1)<9", [rows(2, 2, 3)]],
  ]);
});

test("what a rule asks of a date is said in days, never in day numbers", () => {
  const rule = { type: "date", range: "A1", formula1: "45292", formula2: "As_of" };
  expect(one(rule).error).toBe("The file asks for a date from 2024-01-01 to As_of here.");
  expect(one({ ...rule, operator: "lessThan", formula1: "43830" }, true).error).toBe(
    "The file asks for a date before 2024-01-01 here.",
  );
  expect(one({ ...rule, showErrorMessage: true, errorMessage: "No." })).toMatchObject({ error: "No." });
});

test("a rule that shows no message stops nobody", () => {
  const rule = { type: "whole", range: "A1", formula1: "1", formula2: "9" };
  expect(one(rule).errorStyle).toBe(DataValidationErrorStyle.INFO);
  expect(one({ ...rule, showErrorMessage: true }).errorStyle).toBe(DataValidationErrorStyle.STOP);
});

test("words of a list and formulas are not compared with anything", () => {
  const [list, custom, decimal, whole, worked, fixed] = validations(sheet, "sheet1", DRAWN);
  expect(list).toMatchObject({ type: "list", formula1: "active,left" });
  expect(list).not.toHaveProperty("operator");
  expect(custom).toMatchObject({ type: "custom", formula1: "=LEN(B2)<9" });
  expect(custom).not.toHaveProperty("operator");
  expect(decimal).toMatchObject({ operator: "between", formula1: "1", formula2: "5" });
  expect(whole).toMatchObject({ operator: "greaterThan" });
  // the grid's own date rule would take the text "3/4/24" for a date, where the ends are worked out
  expect(worked).toMatchObject({ type: "decimal", formula1: "=Day_Birth", formula2: "=As_of+0.99999" });
  expect(fixed).toMatchObject({ type: "date", formula1: "40000", formula2: "46000" });
});
