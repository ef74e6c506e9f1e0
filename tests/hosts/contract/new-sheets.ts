/** A sheet that comes in, with what stands in it, and goes again. */
import { describe, expect, it } from "vitest";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Change, NewSheet } from "../../../taskpane/workbook/port";
import { apply, at, expectRefused, kept, type Contract } from "./kit";
import { CLINIC } from "./workbooks";

const NOTES: NewSheet = {
  name: "Kept beside",
  cells: [
    [{ value: "What was not brought", look: "title" }],
    [
      { value: "Row", look: "header" },
      { value: "Entry", look: "header" },
    ],
    [4, "03-04"],
    [7, "=A1"],
    [
      { value: 46_000, format: "d mmm yyyy" },
      { value: 11, formula: "=A3+A4" },
    ],
    [],
    [true, null],
  ],
  widths: [12, 40],
  held: { rows: 2, columns: 0 },
  print: { landscape: true, titleRow: 1, footer: "Invented & checked" },
};

const adding = (sheet: NewSheet): Change => ({ steps: [{ kind: "addSheet", sheet }], expects: [] });

export function checkNewSheets({ name, open }: Contract): void {
  describe(`${name}: a sheet that is added`, () => {
    it("stands behind the last one, holds what was meant, and goes again", async () => {
      const { workbook } = await open(CLINIC);
      const before = { cells: await kept(workbook), sheets: (await workbook.overview()).sheets };
      const receipt = await apply(workbook, adding(NOTES));
      expect(receipt.outcome).toBe("done");
      const { sheets, selection } = await workbook.overview();
      expect(sheets.map((sheet) => sheet.name)).toEqual([...before.sheets.map((sheet) => sheet.name), "Kept beside"]);
      expect(sheets.at(-1)).toMatchObject({ kind: "worksheet", hidden: false, isProtected: false });
      expect(sheets.at(-1)!.used).toEqual(parseArea("A1:B7"));
      expect(receipt.done[0]).toMatchObject({ changed: true, place: { sheet: sheets.at(-1)!.id } });
      expect(selection?.sheet).not.toBe(sheets.at(-1)!.id);
      const place = await at(workbook, "Kept beside", "A1:B7");
      const { values, formulas, formats } = await workbook.read(place, ["values", "formulas", "formats"]);
      expect(values!.map(([first, second]) => [first, second])).toEqual([
        ["What was not brought", null],
        ["Row", "Entry"],
        [4, "03-04"],
        [7, "=A1"],
        [46_000, expect.anything()],
        [null, null],
        [true, null],
      ]);
      expect(formulas!.flat().filter((text) => text !== null)).toEqual(["=A3+A4"]);
      expect(formats![4]![0]).toBe("d mmm yyyy");
      const others = new Map([...(await kept(workbook))].filter(([cell]) => !cell.startsWith("Kept beside!")));
      expect(others).toEqual(before.cells);
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect((await workbook.overview()).sheets).toEqual(before.sheets);
      expect(await kept(workbook)).toEqual(before.cells);
    });

    it("may be hidden, and hold nothing", async () => {
      const { workbook } = await open(CLINIC);
      const receipt = await apply(workbook, adding({ name: "Behind", isHidden: true, cells: [] }));
      expect(receipt.outcome).toBe("done");
      expect((await workbook.overview()).sheets.at(-1)).toMatchObject({ name: "Behind", hidden: true, used: null });
    });

    it("is not removed over somebody's work: an entry, another name, a reader elsewhere", async () => {
      const host = await open(CLINIC);
      const { workbook } = host;
      const receipt = await apply(workbook, adding(NOTES));
      await host.type("Kept beside", "C9", "mine");
      expect(await workbook.takeBack(receipt)).toMatchObject({ outcome: "differs", cells: ["Kept beside!C9"] });
      await host.type("Kept beside", "C9", null);
      await host.type("Kept beside", "A3", 5);
      expect(await workbook.takeBack(receipt)).toMatchObject({ outcome: "differs", cells: ["Kept beside!A3"] });
      await host.type("Kept beside", "A3", 4);
      await host.type("Übersicht", "F9", "='Kept beside'!A3*2");
      expect(await workbook.takeBack(receipt)).toMatchObject({ outcome: "differs", cells: ["Übersicht!F9"] });
      expect(await workbook.takeBack(receipt, { force: true })).toEqual({ outcome: "taken back" });
      expect((await workbook.overview()).sheets.map((sheet) => sheet.name)).not.toContain("Kept beside");
    });

    it("may be read by a later step of the same change, and goes with it", async () => {
      const { workbook } = await open(CLINIC);
      const before = await kept(workbook);
      const { sheets } = await workbook.overview();
      const sheet = sheets.find((one) => one.name === "Übersicht")!.id;
      const reading = { kind: "writeFormula", sheet, row: 7, column: 0, formula: "='Kept beside'!A3*2" } as const;
      const receipt = await apply(workbook, { ...adding(NOTES), steps: [...adding(NOTES).steps, reading] });
      expect(receipt.outcome).toBe("done");
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    it.each([
      ["übersicht", /already/],
      ["x".repeat(32), /31/],
      ["May/June", /cannot name/],
      ["'quoted'", /cannot name/],
      ["History", /cannot name/],
      ["", /name/],
    ])("is refused under the name %s", async (sheet, says) => {
      const { workbook } = await open(CLINIC);
      await expectRefused(workbook, adding({ name: sheet, cells: [] }), says);
    });

    it("is refused with a formula that is none, or that reads a sheet that is not there", async () => {
      const { workbook } = await open(CLINIC);
      const holding = (formula: string) => adding({ name: "New", cells: [[{ formula }]] });
      await expectRefused(workbook, holding("=SUM(("), /no formula/);
      await expectRefused(workbook, holding("=Nowhere!A1"), /Nowhere/);
    });
  });
}
