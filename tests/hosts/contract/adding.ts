/** Adding columns to a table and to a plain list. */
import { describe, expect, it } from "vitest";
import { formula, inA1 } from "../../../src/columns/formula";
import { parseArea } from "../../../taskpane/workbook/area";
import type { FormulaColumn, Overview } from "../../../taskpane/workbook/port";
import { addTo, apply, at, doubled, due, expectFormula, expectRefused, kept, needing, type Contract } from "./kit";
import { CLINIC, FILTERED } from "./workbooks";

export function checkAdding(contract: Contract): void {
  const { name, open, lacks } = contract;
  const needs = needing(contract);

  describe(`${name}: add columns to a table`, () => {
    needs("tables")("writes header, formulas and format; totals row and all else stay", async () => {
      const host = await open(CLINIC);
      const { workbook } = host;
      const before = await kept(workbook);
      const receipt = await apply(workbook, addTo("Tubes", [due, doubled]));
      expect(receipt).toMatchObject({ outcome: "done" });
      const overview = await workbook.overview();
      expect(overview.tables[0]).toMatchObject({ area: parseArea("A3:H9"), hasTotals: true });
      expect(overview.tables[0]!.columns.slice(6)).toEqual(["Change due", "Doubled"]);
      const block = await workbook.read(await at(workbook, "Tubes in use", "G3:H9"), ["values", "formulas", "formats"]);
      expect(block.values![0]).toEqual(["Change due", "Doubled"]);
      for (let row = 1; row <= 5; row++) {
        expectFormula(block.formulas![row]![0]!, due.formula, "Tubes", 2 + row, 0);
        expectFormula(block.formulas![row]![1]!, doubled.formula, "Tubes", 2 + row, 0);
        expect(block.formats![row]).toEqual(["d mmm yyyy", "0.0"]);
      }
      expect(block.formulas![6]).toEqual([null, null]);
      expect(block.values![6]).toEqual([null, null]);
      const after = await kept(workbook, { sheet: "Tubes in use", area: parseArea("G3:H8")! });
      expect(after).toEqual(before);
      expect(receipt.done).toEqual([
        {
          step: addTo("Tubes", [due, doubled]).steps[0],
          place: { sheet: overview.sheets[0]!.id, area: parseArea("G3:H9") },
          changed: true,
        },
      ]);
    });

    needs("tables")("takes odd column names, and columns that refer to new ones", async () => {
      const { workbook } = await open(CLINIC);
      const odd: FormulaColumn = {
        header: "All [new] #1",
        formula: formula`${{ header: "Tube #", index: 0 }}&${{ header: "Notes [x]", index: 2 }}&${{ header: "It's", index: 3 }}&${{ header: "Line\nbreak", index: 4 }}`,
        format: "General",
      };
      const next: FormulaColumn = {
        header: "Next",
        formula: formula`LEN(${{ header: odd.header, index: 6 }})`,
        format: "0",
      };
      const receipt = await apply(workbook, addTo("Tubes", [odd, next]));
      expect(receipt.outcome).toBe("done");
      const { formulas } = await workbook.read(await at(workbook, "Tubes in use", "G4:H8"), ["formulas"]);
      formulas!.forEach((row, i) => {
        expectFormula(row[0]!, odd.formula, "Tubes", 3 + i, 0);
        expectFormula(row[1]!, next.formula, "Tubes", 3 + i, 0);
      });
      expect((await workbook.overview()).tables[0]!.columns.slice(6)).toEqual(["All [new] #1", "Next"]);
    });

    needs("tables", "filters")("writes into rows that a filter hides, and leaves them hidden", async () => {
      const { workbook } = await open(FILTERED);
      const half: FormulaColumn = {
        header: "Half",
        formula: formula`${{ header: "Size", index: 1 }}/2`,
        format: "0.0",
      };
      expect((await apply(workbook, addTo("Table1", [half]))).outcome).toBe("done");
      const block = await workbook.read({ table: "Table1" }, ["formulas", "formats", "hidden"]);
      for (let row = 1; row <= 4; row++) {
        expectFormula(block.formulas![row]![2]!, half.formula, "Table1", row, 0);
        expect(block.formats![row]![2]).toBe("0.0");
      }
      expect(block.hidden).toEqual([false, false, true, false, true]);
    });

    needs("tables", "styles")("gives the new header the look of its neighbour", async () => {
      const host = await open(CLINIC);
      await apply(host.workbook, addTo("Tubes", [due]));
      expect(await host.isBold!("Tubes in use", "G3")).toBe(true);
      expect(await host.isBold!("Tubes in use", "G4")).toBe(false);
    });

    needs("tables")("takes two steps of one change in turn", async () => {
      const { workbook } = await open(CLINIC);
      const one = addTo("Tubes", [due]).steps[0]!;
      const two = addTo("Tubes", [doubled]).steps[0]!;
      const receipt = await apply(workbook, { steps: [one, two], expects: [] });
      expect(receipt.outcome).toBe("done");
      expect((await workbook.overview()).tables[0]!.columns.slice(6)).toEqual(["Change due", "Doubled"]);
    });
  });

  describe(`${name}: add columns to a plain list`, () => {
    const list = (workbook: Overview) => ({ list: { sheet: workbook.sheets[1]!.id, area: parseArea("A2:C6")! } });
    const german: FormulaColumn = {
      header: "Nächster",
      formula: formula`${{ header: "Letzter Wechsel", index: 1 }}+90`,
      format: "d mmm yyyy",
    };

    it("writes header, one formula a row and format; all else stays", async () => {
      const host = await open(CLINIC);
      const { workbook } = host;
      const before = await kept(workbook);
      const steps = [{ kind: "addColumns" as const, to: list(await workbook.overview()), columns: [german] }];
      expect((await apply(workbook, { steps, expects: [] })).outcome).toBe("done");
      const block = await workbook.read(await at(workbook, "Übersicht", "D2:D6"), ["values", "formulas", "formats"]);
      expect(block.values![0]).toEqual(["Nächster"]);
      for (let row = 1; row <= 4; row++) {
        expect(block.formulas![row]![0]).toBe("=" + inA1(german.formula, 1 + row, 0));
        expect(block.formats![row]![0]).toBe("d mmm yyyy");
      }
      expect(await kept(workbook, { sheet: "Übersicht", area: parseArea("D2:D6")! })).toEqual(before);
      if (!lacks.includes("styles")) expect(await host.isBold!("Übersicht", "D2")).toBe(true);
    });

    it("refuses a list without a row below the header", async () => {
      const { workbook } = await open(CLINIC);
      const to = { list: { sheet: (await workbook.overview()).sheets[1]!.id, area: parseArea("A2:C2")! } };
      await expectRefused(workbook, { steps: [{ kind: "addColumns", to, columns: [german] }], expects: [] }, /row/);
    });

    it("takes the columns back", async () => {
      const { workbook } = await open(CLINIC);
      const before = await kept(workbook);
      const steps = [{ kind: "addColumns" as const, to: list(await workbook.overview()), columns: [german] }];
      const receipt = await apply(workbook, { steps, expects: [] });
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });
  });
}
