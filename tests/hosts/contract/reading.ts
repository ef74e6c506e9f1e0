/** What is told of a workbook, and what is read from it. */
import { describe, expect, it } from "vitest";
import { CellError } from "../../../src/worksheet/error";
import { parseArea } from "../../../taskpane/workbook/area";
import { at, needing, type Contract } from "./kit";
import { CLINIC, FILTERED } from "./workbooks";

export function checkReading(contract: Contract): void {
  const { name, open } = contract;
  const needs = needing(contract);

  describe(`${name}: overview`, () => {
    needs("tables")("tells sheets, tables and names", async () => {
      const { workbook } = await open(CLINIC);
      const overview = await workbook.overview();
      expect(overview.sheets.map((sheet) => sheet.name)).toEqual(["Tubes in use", "Übersicht", "Locked"]);
      expect(overview.sheets.every((sheet) => sheet.kind === "worksheet" && !sheet.hidden)).toBe(true);
      expect(overview.sheets[1]!.used).toEqual(parseArea("A1:C6"));
      expect(overview.sheets[0]!.used).toEqual(parseArea("A1:L9"));
      expect(overview.tables).toEqual([
        {
          name: "Tubes",
          sheet: overview.sheets[0]!.id,
          area: parseArea("A3:F9"),
          columns: ["Tube #", "Last change", "Notes [x]", "It's", "Line\nbreak", "Size"],
          hasHeader: true,
          hasTotals: true,
          isFiltered: false,
        },
      ]);
      expect(overview.names).toEqual([{ name: "Interval", refersTo: "=3", value: 3 }]);
      expect(new Set(overview.sheets.map((sheet) => sheet.id)).size).toBe(3);
    });

    needs("protection")("tells which sheets are protected", async () => {
      const { workbook } = await open(CLINIC);
      expect((await workbook.overview()).sheets.map((sheet) => sheet.isProtected)).toEqual([false, false, true]);
    });

    needs("selection")("tells what is selected", async () => {
      const { workbook } = await open(CLINIC);
      const overview = await workbook.overview();
      expect(overview.selection).toEqual({ sheet: overview.sheets[0]!.id, area: parseArea("B5") });
    });

    needs("date system")("tells a workbook whose days count from 1904", async () => {
      const { workbook } = await open({ ...CLINIC, dateSystem: 1904 });
      expect((await workbook.overview()).dateSystem).toBe(1904);
    });

    it("tells an empty sheet", async () => {
      const { workbook } = await open({ sheets: [{ name: "Empty" }] });
      expect((await workbook.overview()).sheets[0]!.used).toBeNull();
    });

    needs("filters")("tells that a filter hides rows", async () => {
      const { workbook } = await open(FILTERED);
      expect((await workbook.overview()).tables[0]!.isFiltered).toBe(true);
    });
  });

  describe(`${name}: read`, () => {
    it("gives numbers, texts, truth values, errors and blanks as they are", async () => {
      const { workbook } = await open(CLINIC);
      const place = await at(workbook, "Tubes in use", "A4:F8");
      const { values } = await workbook.read(place, ["values"]);
      expect(values).toEqual([
        ["007", 46000, "well", true, 1.5, 14],
        ["008", 46011.5, null, false, 2, 16],
        ["009", new CellError("#N/A"), "text date", true, null, 12],
        ["010", "12 May", "", null, 0, 18],
        ["011", 45990, "x", false, -3, 20],
      ]);
    });

    it("gives formulas, null where there is none", async () => {
      const { workbook } = await open(CLINIC);
      const { formulas } = await workbook.read(await at(workbook, "Tubes in use", "C7:E9"), ["formulas"]);
      expect(formulas).toEqual([
        ['=""', null, null],
        [null, null, null],
        [null, null, "=SUM(E4:E8)"],
      ]);
    });

    it("gives number formats", async () => {
      const { workbook } = await open(CLINIC);
      const { formats } = await workbook.read(await at(workbook, "Tubes in use", "A4:B4"), ["formats"]);
      expect(formats).toEqual([["General", "dd/mm/yyyy"]]);
    });

    needs("merges")("gives merged areas that touch the place", async () => {
      const { workbook } = await open(CLINIC);
      expect((await workbook.read(await at(workbook, "Übersicht", "B1:B9"), ["merges"])).merges).toEqual([
        parseArea("A1:C1"),
      ]);
      expect((await workbook.read(await at(workbook, "Übersicht", "A2:C9"), ["merges"])).merges).toEqual([]);
    });

    it("gives rows hidden by hand", async () => {
      const { workbook } = await open(CLINIC);
      const { hidden } = await workbook.read(await at(workbook, "Übersicht", "A3:C6"), ["hidden"]);
      expect(hidden).toEqual([false, false, true, false]);
    });

    needs("filters", "tables")("gives rows hidden by a filter, and a table by its name", async () => {
      const { workbook } = await open(FILTERED);
      const block = await workbook.read({ table: "Table1" }, ["hidden"]);
      expect(block.area).toEqual(parseArea("A1:B5"));
      expect(block.hidden).toEqual([false, false, true, false, true]);
      expect(block.values).toBeUndefined();
    });
  });
}
