/** Rows of a table in the order of a column. */
import { describe, expect } from "vitest";
import type { WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import { kept, needing, type Contract } from "./kit";

/** By hand: places 2, blank, 1, 2; the first of two alike stays first, the blank goes last. */
const LIST: WorkbookDescription = {
  sheets: [
    {
      name: "People",
      rows: [
        ["a line above"],
        ["Id", "Place", "Twice", "Note"],
        ["007", 2, { formula: "=B3*2", value: 4 }, "first of two"],
        ["03-04", null, { formula: "=B4*2", value: 0 }, null],
        ["1E5", 1, { formula: "=B5*2", value: 2 }, "x"],
        ["010", 2, { formula: "=B6*2", value: 4 }, "second of two"],
        [],
        ["below", 9, null, "stays"],
      ],
      tables: [{ name: "People", area: "A2:D6" }],
    },
  ],
};

export function checkSorting(contract: Contract): void {
  const { name, open } = contract;
  const needs = needing(contract);

  describe(`${name}: rows in order`, () => {
    needs("tables")(
      "of a column of numbers, rising, each row whole with its formula, and nothing else moved",
      async () => {
        const { workbook } = await open(LIST);
        const [table] = (await workbook.overview()).tables;
        const but = { sheet: "People", area: table!.area };
        const before = await kept(workbook, but);
        expect(await workbook.sort("People", "Place")).toEqual({ outcome: "sorted", rows: 4 });
        const { values, formulas } = await workbook.read({ table: "People" }, ["values", "formulas"]);
        expect(values!.map(([id, place, , note]) => [id, place, note])).toEqual([
          ["Id", "Place", "Note"],
          ["1E5", 1, "x"],
          ["007", 2, "first of two"],
          ["010", 2, "second of two"],
          ["03-04", null, null],
        ]);
        expect(formulas!.slice(1).map((row) => row[2])).toEqual(["=B3*2", "=B4*2", "=B5*2", "=B6*2"]);
        expect(await kept(workbook, but)).toEqual(before);
      },
    );

    needs("tables")("is refused without its column or its table, and nothing is touched", async () => {
      const { workbook } = await open(LIST);
      const before = await kept(workbook);
      expect(await workbook.sort("People", "Colour")).toMatchObject({
        outcome: "refused",
        sentence: expect.stringMatching(/"Colour"/),
      });
      expect(await workbook.sort("Nobody", "Place")).toMatchObject({
        outcome: "refused",
        sentence: expect.stringMatching(/no longer there/),
      });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("tables", "protection")("is refused on a protected sheet", async () => {
      const { workbook } = await open({ sheets: [{ ...LIST.sheets[0]!, isProtected: true }] });
      expect(await workbook.sort("People", "Place")).toMatchObject({
        outcome: "refused",
        sentence: expect.stringMatching(/protected/),
      });
    });

    needs("tables", "showing rows")("is refused while rows are hidden by a filter: they would stay", async () => {
      const { workbook } = await open(LIST);
      const watch = { report: () => undefined, signal: new AbortController().signal };
      const of = { table: "People" };
      await workbook.apply(
        { steps: [{ kind: "showRows", of, criteria: [{ column: 1, keeps: [2] }] }], expects: [] },
        watch,
      );
      expect(await workbook.sort("People", "Place")).toMatchObject({
        outcome: "refused",
        sentence: expect.stringMatching(/filter/),
      });
    });
  });
}
