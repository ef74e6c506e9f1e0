/** Whole rows of a table taken out. */
import { describe, expect } from "vitest";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Change } from "../../../taskpane/workbook/port";
import { apply, at, expectFormula, expectRefused, kept, needing, type Contract } from "./kit";
import { append, twice, withFormulas } from "./rows";
import { CLINIC, FILTERED } from "./workbooks";

const remove = (table: string, ...rows: number[]): Change => ({
  steps: [{ kind: "removeRows", table, rows }],
  expects: [],
});

export function checkRemoving(contract: Contract): void {
  const { name, open } = contract;
  const needs = needing(contract);

  describe(`${name}: remove rows of a table`, () => {
    needs("rows")("moves those below up with their formulas and shortens the table", async () => {
      const { workbook } = await withFormulas(contract);
      const before = await kept(workbook);
      const { tables } = await workbook.overview();
      const receipt = await apply(workbook, remove("People", 2, 0));
      expect(receipt).toMatchObject({ outcome: "done", done: [{ place: null }] });
      expect((await workbook.overview()).tables[0]!.area).toEqual(parseArea("A3:E5"));
      const block = await workbook.read(await at(workbook, "People", "A4:E7"), ["values", "formulas", "formats"]);
      expect(block.values!.map((row) => row.slice(0, 4))).toEqual([
        ["008", 16, 46011, null],
        ["010", 18, null, "y"],
        [null, null, null, null],
        [null, null, null, null],
      ]);
      expectFormula(block.formulas![0]![4], twice.formula, "People", 3, 0);
      expectFormula(block.formulas![1]![4], twice.formula, "People", 4, 0);
      expect(
        block
          .formulas!.slice(2)
          .flat()
          .every((text) => text === null),
      ).toBe(true);
      expect(block.formats![0]![2]).toBe("dd/mm/yyyy");
      expect(await kept(workbook, { sheet: "People", area: parseArea("A4:E7")! })).toEqual(
        new Map([...before].filter(([address]) => !/^People![A-E][4-7]$/.test(address))),
      );
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
      expect((await workbook.overview()).tables).toEqual(tables);
    });

    needs("rows")("empties the last one left and keeps its formulas", async () => {
      const { workbook } = await withFormulas(contract);
      const before = await kept(workbook);
      const receipt = await apply(workbook, remove("People", 0, 1, 2, 3));
      expect(receipt.outcome).toBe("done");
      expect((await workbook.overview()).tables[0]!.area).toEqual(parseArea("A3:E4"));
      const block = await workbook.read(await at(workbook, "People", "A4:E4"), ["values", "formulas"]);
      expect(block.values![0]!.slice(0, 4)).toEqual([null, null, null, null]);
      expectFormula(block.formulas![0]![4], twice.formula, "People", 3, 0);
      const added = await apply(workbook, append("People", { Id: "011" }));
      expect(added.done[0]!.place).toMatchObject({ area: parseArea("A4:E4") });
      expect(await workbook.takeBack(receipt)).toMatchObject({ outcome: "differs", cells: ["A4"] });
      expect(await workbook.takeBack(added)).toEqual({ outcome: "taken back" });
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("rows")("puts them back where they were although rows were added since", async () => {
      const { workbook } = await withFormulas(contract);
      const receipt = await apply(workbook, remove("People", 1));
      await apply(workbook, append("People", { Id: "011" }));
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      const block = await workbook.read({ table: "People" }, ["values", "formulas"]);
      expect(block.values!.slice(1).map((row) => row[0])).toEqual(["007", "008", "009", "010", "011"]);
      for (let row = 1; row <= 5; row++) expectFormula(block.formulas![row]![4], twice.formula, "People", 2 + row, 0);
    });

    needs("rows")("is refused for a row that is not there and above a totals row", async () => {
      const { workbook } = await withFormulas(contract);
      await expectRefused(workbook, remove("People", 1, 4), /row 5/);
      await expectRefused(workbook, remove("Nobody", 1), /Nobody/);
      const totals = await open(CLINIC);
      await expectRefused(totals.workbook, remove("Tubes", 0), /totals/);
    });

    needs("rows", "filters")("is refused while a filter hides rows", async () => {
      const { workbook } = await open(FILTERED);
      await expectRefused(workbook, remove("Table1", 0), /filter/i);
    });
  });
}
