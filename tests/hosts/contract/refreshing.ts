/** A column that is there already gets one formula in every row, and its former cells back. */
import { describe, expect, it } from "vitest";
import { formula, type FormulaTemplate } from "../../../src/columns/formula";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Area, Change, Value } from "../../../taskpane/workbook/port";
import { addTo, apply, at, due, expectFormula, expectRefused, kept, needing, type Contract } from "./kit";
import { CLINIC, FILTERED } from "./workbooks";

const size = { header: "Size", index: 5 };
const halved: FormulaTemplate = formula`IF(${size}="","",${size}/2)`;
const refresh = (column: number, template: FormulaTemplate, results?: readonly Value[]): Change => ({
  steps: [{ kind: "refreshColumn", to: { table: "Tubes" }, column, formula: template, ...(results && { results }) }],
  expects: [],
});

export function checkRefreshing(contract: Contract): void {
  const { name, open } = contract;
  const needs = needing(contract);

  describe(`${name}: write a column anew`, () => {
    needs("tables")("in a table: values, errors and formulas of every row, nothing else; and back", async () => {
      const { workbook } = await open(CLINIC);
      const before = await kept(workbook);
      const notes = await at(workbook, "Tubes in use", "C4:C8");
      // The column "Notes [x]": a text, a blank, a text, a formula, a text.
      const receipt = await apply(workbook, refresh(2, halved));
      expect(receipt).toMatchObject({ outcome: "done", done: [{ changed: true, place: notes }] });
      const { formulas } = await workbook.read(notes, ["formulas"]);
      formulas!.forEach((row, r) => expectFormula(row[0]!, halved, "Tubes", 3 + r, 0));
      const elsewhere = await kept(workbook, { sheet: "Tubes in use", area: parseArea("C4:C8")! });
      for (const address of ["C3", "C9", "B4", "F4", "E9", "L5"])
        expect(elsewhere.get(`Tubes in use!${address}`)).toEqual(before.get(`Tubes in use!${address}`));
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("tables")("that was added before, with another formula, beside one that is new", async () => {
      const { workbook } = await open(CLINIC);
      await apply(workbook, addTo("Tubes", [due]));
      const before = await kept(workbook);
      const later = formula`${{ header: "Last change", index: 1 }}+30`;
      const onIt = formula`LEN(${{ header: due.header, index: 6, isAdded: true }})`;
      const [step] = refresh(6, later).steps;
      const [add] = addTo("Tubes", [{ header: "Length of it", formula: onIt, format: "0" }]).steps;
      const receipt = await apply(workbook, { steps: [step!, add!], expects: [] });
      expect(receipt.outcome).toBe("done");
      const { formulas } = await workbook.read(await at(workbook, "Tubes in use", "G4:H8"), ["formulas"]);
      formulas!.forEach((row, r) => {
        expectFormula(row[0]!, later, "Tubes", 3 + r, 0);
        expectFormula(row[1]!, onIt, "Tubes", 3 + r, 0);
      });
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    it("in a plain list, hidden rows too", async () => {
      const { workbook } = await open(CLINIC);
      const before = await kept(workbook);
      const { sheet } = (await at(workbook, "Übersicht", "A1")) as { sheet: string };
      const template = formula`${{ header: "Letzter Wechsel", index: 1 }}+90`;
      const list = { sheet, area: parseArea("A2:C6")! };
      const change: Change = {
        steps: [{ kind: "refreshColumn", to: { list }, column: 2, formula: template }],
        expects: [],
      };
      const receipt = await apply(workbook, change);
      expect(receipt.outcome).toBe("done");
      const { formulas } = await workbook.read(await at(workbook, "Übersicht", "C2:C6"), ["formulas"]);
      expect(formulas!.map(([text]) => text)).toEqual([null, "=B3+90", "=B4+90", "=B5+90", "=B6+90"]);
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("tables", "filters")("in rows that a filter hides", async () => {
      const { workbook } = await open(FILTERED);
      const [table] = (await workbook.overview()).tables;
      const template = formula`${{ header: "Size", index: 1 }}/2`;
      const change: Change = {
        steps: [{ kind: "refreshColumn", to: { table: "Table1" }, column: 0, formula: template }],
        expects: [],
      };
      const receipt = await apply(workbook, change);
      expect(receipt.outcome).toBe("done");
      const { area } = receipt.done[0]!.place!;
      const { formulas } = await workbook.read({ sheet: table!.sheet, area }, ["formulas"]);
      formulas!.forEach((row, r) => expectFormula(row[0]!, template, "Table1", 1 + r, 0));
      expect((await workbook.overview()).tables[0]!.isFiltered).toBe(true);
    });

    needs("tables")("asks before it gives cells back that somebody has changed since", async () => {
      const host = await open(CLINIC);
      const { workbook } = host;
      const before = await kept(workbook);
      const receipt = await apply(workbook, refresh(2, halved));
      await host.type("Tubes in use", "C5", "mine");
      expect(await workbook.takeBack(receipt)).toMatchObject({ outcome: "differs", cells: ["C5"] });
      expect(await workbook.takeBack(receipt, { force: true })).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("tables")("enters formulas again, where formulas stand, and nothing else; and back", async () => {
      const { workbook } = await open(CLINIC);
      const before = await kept(workbook);
      const { sheet, area } = (await at(workbook, "Tubes in use", "C6:C7")) as { sheet: string; area: Area };
      const again = (formulas: readonly (string | null)[]): Change => ({
        steps: [{ kind: "reenterFormulas", sheet, column: area.left, row: area.top, formulas }],
        expects: [],
      });
      const receipt = await apply(workbook, again([null, "=1+41"]));
      expect(receipt).toMatchObject({ outcome: "done", done: [{ changed: true }] });
      const after = await kept(workbook);
      expect(after.get("Tubes in use!C7")).toMatchObject({ formula: "=1+41" });
      after.set("Tubes in use!C7", before.get("Tubes in use!C7")!);
      expect(after).toEqual(before);
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
      await expectRefused(workbook, again(["=1+41", null]), /C6 holds no formula/);
      await expectRefused(workbook, again([null, "=1+"]), /C?.*/);
    });

    it("not where there is no such table or column", async () => {
      const { workbook } = await open(CLINIC);
      const to = (list: Change["steps"][number]): Change => ({ steps: [list], expects: [] });
      await expectRefused(
        workbook,
        to({ kind: "refreshColumn", to: { table: "Gone" }, column: 0, formula: halved }),
        /no longer there/,
      );
      const { sheet } = (await at(workbook, "Übersicht", "A1")) as { sheet: string };
      const list = { sheet, area: parseArea("A2:C6")! };
      await expectRefused(
        workbook,
        to({ kind: "refreshColumn", to: { list }, column: 3, formula: halved }),
        /no longer there/,
      );
    });
  });
}
