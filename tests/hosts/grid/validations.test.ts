/** Validation rules of a file in the grid: an operator only where numbers are compared (rules.ts says why). */
import type { Sheet } from "hucre/xlsx";
import { expect, test } from "vitest";
import { validations } from "../../../taskpane/workbook/embedded/open/rules";

const sheet = {
  dataValidations: [
    { type: "list", range: "A2:A9", values: ["active", "left"] },
    { type: "custom", range: "B2:B9", formula1: "LEN(B2)<9" },
    { type: "decimal", range: "C2:C9", formula1: "1", formula2: "5" },
    { type: "whole", range: "D2:D9", operator: "greaterThan", formula1: "0" },
  ],
} as unknown as Sheet;

test("words of a list and formulas are not compared with anything", () => {
  const [list, custom, decimal, whole] = validations(sheet, "sheet1");
  expect(list).toMatchObject({ type: "list", formula1: "active,left" });
  expect(list).not.toHaveProperty("operator");
  expect(custom).toMatchObject({ type: "custom", formula1: "=LEN(B2)<9" });
  expect(custom).not.toHaveProperty("operator");
  expect(decimal).toMatchObject({ operator: "between", formula1: "1", formula2: "5" });
  expect(whole).toMatchObject({ operator: "greaterThan" });
});
