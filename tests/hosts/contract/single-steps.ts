/** Steps that touch one cell or one name. */
import { describe, expect, it } from "vitest";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Area, Change } from "../../../taskpane/workbook/port";
import { apply, at, expectRefused, kept, needing, type Contract } from "./kit";
import { CLINIC } from "./workbooks";

export function checkSingleSteps(contract: Contract): void {
  const { name, open } = contract;
  const needs = needing(contract);

  describe(`${name}: one formula in one cell`, () => {
    const write = (sheet: string, formulaText: string, format?: string) => ({
      steps: [
        { kind: "writeFormula" as const, sheet, row: 7, column: 0, formula: formulaText, ...(format && { format }) },
      ],
      expects: [],
    });

    it("is written into an empty cell with its format, and taken back", async () => {
      const { workbook } = await open(CLINIC);
      const before = await kept(workbook);
      const place = (await at(workbook, "Übersicht", "A8")) as { sheet: string; area: Area };
      const receipt = await apply(workbook, write(place.sheet, "=C3*2", "0.0"));
      expect(receipt.outcome).toBe("done");
      expect(receipt.done[0]!.place).toEqual(place);
      const block = await workbook.read(place, ["formulas", "formats"]);
      expect(block).toMatchObject({ formulas: [["=C3*2"]], formats: [["0.0"]] });
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect((await workbook.read(place, ["formulas", "formats"])).formats).toEqual([["General"]]);
      expect(await kept(workbook)).toEqual(before);
    });

    it("is refused where the cell is not empty", async () => {
      const host = await open(CLINIC);
      await host.type("Übersicht", "A8", 5);
      const { sheet } = (await at(host.workbook, "Übersicht", "A8")) as { sheet: string };
      await expectRefused(host.workbook, write(sheet, "=1+1"), /A8/);
    });

    needs("spills")("spills where there is room, and is refused where there is none", async () => {
      const results = { "=SEQUENCE(3)": [[1], [2], [3]] };
      const host = await open({ ...CLINIC, results });
      const { workbook } = host;
      const before = await kept(workbook);
      const { sheet } = (await at(workbook, "Übersicht", "A8")) as { sheet: string };
      const receipt = await apply(workbook, write(sheet, "=SEQUENCE(3)"));
      expect(receipt).toMatchObject({ outcome: "done", done: [{ place: { area: parseArea("A8:A10") } }] });
      expect((await workbook.read({ sheet, area: parseArea("A8:A10")! }, ["values"])).values).toEqual([[1], [2], [3]]);
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
      await host.type("Übersicht", "A9", "mine");
      await expectRefused(workbook, write(sheet, "=SEQUENCE(3)"), /not empty/);
    });
  });

  describe(`${name}: names`, () => {
    const define = (name: string, refersTo: string): Change => ({
      steps: [{ kind: "defineName", name, refersTo }],
      expects: [],
    });

    it("are made, and taken back", async () => {
      const { workbook } = await open(CLINIC);
      const receipt = await apply(workbook, define("Limit_days", "=14"));
      expect(receipt).toMatchObject({ outcome: "done", done: [{ place: null, changed: true }] });
      const made = (await workbook.overview()).names.find((one) => one.name === "Limit_days");
      expect(made).toMatchObject({ refersTo: "=14" });
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect((await workbook.overview()).names.map((one) => one.name)).toEqual(["Interval"]);
    });

    it("that stand already are left alone, then and at taking back", async () => {
      const { workbook } = await open(CLINIC);
      const receipt = await apply(workbook, define("interval", "=6"));
      expect(receipt).toMatchObject({ outcome: "done", done: [{ changed: false }] });
      expect((await workbook.overview()).names).toEqual([{ name: "Interval", refersTo: "=3", value: 3 }]);
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect((await workbook.overview()).names).toEqual([{ name: "Interval", refersTo: "=3", value: 3 }]);
    });

    it("that other cells have come to use stay at taking back", async () => {
      const host = await open(CLINIC);
      const receipt = await apply(host.workbook, define("Limit_days", "=14"));
      await host.type("Übersicht", "F9", "=Limit_days*2");
      expect(await host.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect((await host.workbook.overview()).names.map((one) => one.name).sort()).toEqual(["Interval", "Limit_days"]);
    });

    it("that cannot be names are refused", async () => {
      const { workbook } = await open(CLINIC);
      await expectRefused(workbook, define("Two words", "=1"), /Two words/);
    });
  });
}
