/** Where a change is refused: with a sentence, and with nothing changed. */
import { describe, expect, it } from "vitest";
import { formula } from "../../../src/columns/formula";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Area, FormulaColumn } from "../../../taskpane/workbook/port";
import { addTo, apply, at, due, expectRefused, needing, type Contract } from "./kit";
import { beside, CLINIC } from "./workbooks";

export function checkRefusals(contract: Contract): void {
  const { name, open } = contract;
  const needs = needing(contract);

  describe(`${name}: refuses with a sentence and changes nothing`, () => {
    const half: FormulaColumn = { header: "Half", formula: formula`${{ header: "Size", index: 1 }}/2`, format: "0.0" };

    needs("tables")("when the table is no longer as it was planned", async () => {
      const { workbook } = await open(CLINIC);
      const columns = ["Tube #", "Last change", "Notes [x]", "It's", "Line\nbreak", "Size"];
      const steps = addTo("Tubes", [due]).steps;
      const expected = { kind: "table" as const, table: "Tubes", columns, dataRows: 5 };
      await expectRefused(workbook, { steps, expects: [{ ...expected, dataRows: 4 }] }, /5 rows/);
      await expectRefused(workbook, { steps, expects: [{ ...expected, columns: ["Tube #"] }] }, /columns/);
      await expectRefused(workbook, { steps, expects: [{ ...expected, table: "Renamed" }] }, /Renamed/);
      await expectRefused(workbook, addTo("Renamed", [due]), /Renamed/);
      expect((await apply(workbook, { steps, expects: [expected] })).outcome).toBe("done");
    });

    it("when texts or empty cells are no longer as they were planned", async () => {
      const host = await open(CLINIC);
      const { workbook } = host;
      const { sheet } = (await at(workbook, "Übersicht", "A1")) as { sheet: string };
      const texts = {
        kind: "texts" as const,
        sheet,
        area: parseArea("A2:C3")!,
        texts: [
          ["Kennung", "Letzter Wechsel", "Größe"],
          ["A1", "46001", "14"],
        ],
      };
      const empty = { kind: "empty" as const, sheet, area: parseArea("E2:E6")! };
      const steps = [{ kind: "writeFormula" as const, sheet, row: 8, column: 0, formula: "=1+1" }];
      await host.type("Übersicht", "B2", "Renamed");
      await expectRefused(workbook, { steps, expects: [texts] }, /B2/);
      await host.type("Übersicht", "B2", "Letzter Wechsel");
      await host.type("Übersicht", "E4", "x");
      await expectRefused(workbook, { steps, expects: [texts, empty] }, /E4/);
      await host.type("Übersicht", "E4", null);
      expect((await apply(workbook, { steps, expects: [texts, empty] })).outcome).toBe("done");
    });

    needs("tables")("when the cells to the right are not empty", async () => {
      const value = await open(beside({ cells: { C3: "mine" } }));
      await expectRefused(value.workbook, addTo("Table1", [half]), /C3/);
      const hiddenFormula = await open(beside({ cells: { C4: { formula: '=""', value: "" } } }));
      await expectRefused(hiddenFormula.workbook, addTo("Table1", [half]), /C4/);
    });

    needs("tables", "merges")("when cells to the right are merged", async () => {
      const { workbook } = await open(beside({ merges: ["C2:D2"] }));
      await expectRefused(workbook, addTo("Table1", [half]), /merged/i);
    });

    needs("tables")("when another table stands in the way", async () => {
      const { workbook } = await open(
        beside({
          cells: { C3: "Other", C4: 1 },
          tables: [
            { name: "Table1", area: "A1:B4" },
            { name: "Table2", area: "C3:C4" },
          ],
        }),
      );
      await expectRefused(workbook, addTo("Table1", [half]), /Table2/);
    });

    needs("tables", "spills")("when a spill fills the cells to the right", async () => {
      const { workbook } = await open(beside({ cells: { C6: { formula: "=A1:A2", value: "" } }, spills: ["C6:C7"] }));
      expect((await apply(workbook, addTo("Table1", [half]))).outcome).toBe("done");
      const filled = await open(
        beside({ cells: { D2: { formula: "=SEQUENCE(2,2)", value: 1 }, E2: 2, D3: 3, E3: 4 }, spills: ["D2:E3"] }),
      );
      const other: FormulaColumn = { ...half, header: "Other" };
      await expectRefused(filled.workbook, addTo("Table1", [half, other]), /D2|D3/);
    });

    needs("tables")("when the table ends at the sheet's last column", async () => {
      const { workbook } = await open({
        sheets: [
          {
            name: "Sheet1",
            cells: { XFC1: "Id", XFD1: "Size", XFC2: "C1", XFD2: 10 },
            tables: [{ name: "Table1", area: "XFC1:XFD2" }],
          },
        ],
      });
      await expectRefused(workbook, addTo("Table1", [half]), /last column/);
    });

    needs("tables")("when a column of that name is there, or two new ones share a name", async () => {
      const { workbook } = await open(beside({}));
      await expectRefused(workbook, addTo("Table1", [{ ...half, header: "SIZE" }]), /SIZE/);
      await expectRefused(workbook, addTo("Table1", [half, { ...half, header: "half" }]), /half/);
    });

    needs("protection")("when the sheet is protected", async () => {
      const { workbook } = await open(CLINIC);
      const place = (await at(workbook, "Locked", "A1:B2")) as { sheet: string; area: Area };
      const steps = [{ kind: "addColumns" as const, to: { list: place }, columns: [half] }];
      await expectRefused(workbook, { steps, expects: [] }, /protected/);
      const write = [{ kind: "writeFormula" as const, sheet: place.sheet, row: 8, column: 8, formula: "=1" }];
      await expectRefused(workbook, { steps: write, expects: [] }, /protected/);
    });

    needs("chart sheets")("when the sheet is a chart", async () => {
      const { workbook } = await open({ sheets: [...beside({}).sheets, { name: "Chart1", kind: "chart sheet" }] });
      const chart = (await workbook.overview()).sheets[1]!;
      expect(chart).toMatchObject({ kind: "chart sheet", used: null });
      const write = [{ kind: "writeFormula" as const, sheet: chart.id, row: 0, column: 0, formula: "=1" }];
      await expectRefused(workbook, { steps: write, expects: [] }, /chart/);
    });
  });
}
