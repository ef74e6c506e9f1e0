/** Values into some cells of a column that is there, and columns of values beside a list: each as it is, and back. */
import { describe, expect, it } from "vitest";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Change, ValuesColumn } from "../../../taskpane/workbook/port";
import type { Cell } from "../../../src/worksheet/cell";
import { addTo, apply, at, expectRefused, kept, needing, type Contract } from "./kit";
import { CLINIC, FILTERED } from "./workbooks";

const change = (column: number, values: readonly (Cell | undefined)[], format?: string): Change => ({
  steps: [{ kind: "changeColumn", to: { table: "Tubes" }, column, values, ...(format !== undefined && { format }) }],
  expects: [],
});
const none = undefined;
/** Texts that a host would like to make something else of. */
const TRICKY: readonly Cell[] = ["3/4/24", "1E5", "=A1+1", null, "007"];
const asTyped: ValuesColumn = { header: "Last change, as typed", format: "General", values: TRICKY };

export function checkChanging(contract: Contract): void {
  const { name, open } = contract;
  const needs = needing(contract);

  describe(`${name}: values into a column`, () => {
    needs("tables")("in a table: only the cells that are named, with their format; and back", async () => {
      const { workbook } = await open(CLINIC);
      const before = await kept(workbook);
      const receipt = await apply(workbook, change(1, [none, none, none, 46154, none], "d mmm yyyy"));
      expect(receipt).toMatchObject({ outcome: "done", done: [{ changed: true }] });
      const after = await kept(workbook);
      expect(after.get("Tubes in use!B7")).toEqual({ value: 46154, formula: null, format: "d mmm yyyy" });
      after.set("Tubes in use!B7", before.get("Tubes in use!B7")!);
      expect(after).toEqual(before);
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("tables")("texts stay texts, and a format that is not named stays", async () => {
      const { workbook } = await open(CLINIC);
      const before = await kept(workbook);
      const receipt = await apply(workbook, change(1, ["3/4/24", "=A1", none, "1E5", none]));
      expect(receipt.outcome).toBe("done");
      const { values, formulas } = await workbook.read(await at(workbook, "Tubes in use", "B4:B8"), [
        "values",
        "formulas",
      ]);
      expect([values![0]![0], values![1]![0], values![3]![0]]).toEqual(["3/4/24", "=A1", "1E5"]);
      expect(formulas!.flat()).toEqual([null, null, null, null, null]);
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("tables")("over formulas, where they are to give way; and the formulas back", async () => {
      const { workbook } = await open(CLINIC);
      const before = await kept(workbook);
      const [step] = change(2, [none, none, none, "as it was", none]).steps;
      const over: Change = { steps: [{ ...step!, overFormulas: true } as Change["steps"][number]], expects: [] };
      expect(before.get("Tubes in use!C7")!.formula).not.toBeNull();
      const receipt = await apply(workbook, over);
      expect(receipt.outcome).toBe("done");
      expect((await kept(workbook)).get("Tubes in use!C7")).toMatchObject({ value: "as it was", formula: null });
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    it("in a plain list", async () => {
      const { workbook } = await open(CLINIC);
      const before = await kept(workbook);
      const { sheet } = (await at(workbook, "Übersicht", "A1")) as { sheet: string };
      const list = { sheet, area: parseArea("A2:C6")! };
      const values = [14, 16.5, none, "n/k"];
      const receipt = await apply(workbook, {
        steps: [{ kind: "changeColumn", to: { list }, column: 2, values }],
        expects: [],
      });
      expect(receipt.outcome).toBe("done");
      const now = await workbook.read(await at(workbook, "Übersicht", "C3:C6"), ["values"]);
      expect(now.values!.flat()).toEqual([14, 16.5, null, "n/k"]);
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("tables", "filters")("in rows that a filter hides", async () => {
      const { workbook } = await open(FILTERED);
      const values = [none, 99, none, 98];
      const receipt = await apply(workbook, {
        steps: [{ kind: "changeColumn", to: { table: "Table1" }, column: 1, values }],
        expects: [],
      });
      expect(receipt.outcome).toBe("done");
      const block = await workbook.read({ table: "Table1" }, ["values", "hidden"]);
      expect(block.values!.slice(1).map((row) => row[1])).toEqual([10, 99, 14, 98]);
      expect(block.hidden).toEqual([false, false, true, false, true]);
    });

    needs("tables")("asks before it gives back cells that somebody has changed since", async () => {
      const host = await open(CLINIC);
      const { workbook } = host;
      const before = await kept(workbook);
      const receipt = await apply(workbook, change(1, [none, none, none, 46154, none], "d mmm yyyy"));
      await host.type("Tubes in use", "B7", 46155);
      expect(await workbook.takeBack(receipt)).toMatchObject({ outcome: "differs", cells: ["B7"] });
      expect(await workbook.takeBack(receipt, { force: true })).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("tables")("gives nothing back where the rows stand in another order", async () => {
      const host = await open(CLINIC);
      const { workbook } = host;
      const receipt = await apply(workbook, change(1, [none, none, none, 46154, none]));
      await host.type("Tubes in use", "A7", "somebody else");
      expect(await workbook.takeBack(receipt, { force: true })).toMatchObject({
        outcome: "failed",
        sentence: expect.stringMatching(/sorted or changed/),
      });
    });

    needs("tables")("not over a formula, and not where the rows are others", async () => {
      const { workbook } = await open(CLINIC);
      await expectRefused(workbook, change(2, [none, none, none, "x", none]), /C7 holds a formula/);
      await expectRefused(workbook, change(1, ["x"]), /more rows or fewer/);
    });
  });

  describe(`${name}: a column of values`, () => {
    needs("tables")("beside a table: every text as it is, and back", async () => {
      const { workbook } = await open(CLINIC);
      const before = await kept(workbook);
      const receipt = await apply(workbook, addTo("Tubes", [asTyped]));
      expect(receipt.outcome).toBe("done");
      const { values, formulas } = await workbook.read(await at(workbook, "Tubes in use", "G3:G9"), [
        "values",
        "formulas",
      ]);
      expect(values!.flat()).toEqual([asTyped.header, ...TRICKY, null]);
      expect(formulas!.flat().every((text) => text === null)).toBe(true);
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("tables")("together with the column whose texts it keeps, and both back", async () => {
      const { workbook } = await open(CLINIC);
      const before = await kept(workbook);
      const [add] = addTo("Tubes", [asTyped]).steps;
      const [into] = change(1, [none, none, none, 46154, none], "d mmm yyyy").steps;
      const receipt = await apply(workbook, { steps: [add!, into!], expects: [] });
      expect(receipt.outcome).toBe("done");
      const row = await workbook.read(await at(workbook, "Tubes in use", "A7:G7"), ["values"]);
      expect([row.values![0]![1], row.values![0]![6]]).toEqual([46154, null]);
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("tables")("asks before it removes values that somebody has changed since", async () => {
      const host = await open(CLINIC);
      const { workbook } = host;
      const before = await kept(workbook);
      const receipt = await apply(workbook, addTo("Tubes", [asTyped]));
      await host.type("Tubes in use", "G5", "mine");
      expect(await workbook.takeBack(receipt)).toMatchObject({ outcome: "differs", cells: ["G5"] });
      expect(await workbook.takeBack(receipt, { force: true })).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("tables")("not where the rows are others", async () => {
      const { workbook } = await open(CLINIC);
      await expectRefused(workbook, addTo("Tubes", [{ ...asTyped, values: ["x"] }]), /more rows or fewer/);
    });
  });
}
