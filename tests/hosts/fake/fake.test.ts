import { describe, expect, it } from "vitest";
import { formula } from "../../../src/columns/formula";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { describeContract } from "../contract/contract";
import { LONG } from "../contract/workbooks";

describeContract("fake", async (description) => {
  const workbook = fakeWorkbook(description);
  return {
    workbook,
    type: (sheet, address, typed) => workbook.type(sheet, address, typed),
    isBold: (sheet, address) => workbook.isBold(sheet, address),
  };
});

describe("the fake", () => {
  it("calculates when told how, and can be slow", async () => {
    const seen: number[] = [];
    const workbook = fakeWorkbook(LONG, {
      calculate: (text, row) => (text.startsWith("=") ? row : undefined),
      between: (done) => void seen.push(done),
      rowsPerBlock: 1_000,
    });
    const columns = [{ header: "Row", formula: formula`ROW()`, format: "0" }];
    const watch = { report: () => undefined, signal: new AbortController().signal };
    await workbook.apply({ steps: [{ kind: "addColumns", to: { table: "Long" }, columns }], expects: [] }, watch);
    expect(seen).toEqual([0, 1_000, 2_000, 2_500]);
    const { values } = await workbook.read({ table: "Long" }, ["values"]);
    expect(values!.at(-1)!.at(-1)).toBe(2_500);
  });
});
