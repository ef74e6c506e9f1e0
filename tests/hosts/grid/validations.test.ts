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
    { type: "date", range: "E2:E9", formula1: "Day_Birth", formula2: "As_of+0.99999" },
    { type: "date", range: "F2:F9", formula1: "40000", formula2: "46000" },
  ],
} as unknown as Sheet;

test("words of a list and formulas are not compared with anything", () => {
  const [list, custom, decimal, whole, worked, fixed] = validations(sheet, "sheet1");
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
