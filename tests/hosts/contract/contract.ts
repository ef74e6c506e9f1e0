/**
 * What every host must do behind the port, whatever it is: the fake, Excel, the grid, a file. A host that lacks a
 * thing altogether (a grid has no chart sheets) says so, and those checks are shown as skipped.
 */
import { afterEach, describe, expect, it } from "vitest";
import { cellAddress, formula, inA1, inTable, type FormulaTemplate } from "../../../src/columns/formula";
import { CellError } from "../../../src/worksheet/error";
import type { Cell } from "../../../src/worksheet/cell";
import type { WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import type {
  Area,
  Change,
  NewColumn,
  Overview,
  Place,
  Progress,
  Receipt,
  Value,
  Workbook,
} from "../../../taskpane/workbook/port";
import { parseArea } from "../../../taskpane/workbook/area";
import { beside, CLINIC, FILTERED, LONG, LONG_ROWS } from "./workbooks";

/** One opened workbook. */
export interface ContractHost {
  readonly workbook: Workbook;
  /** What a person types into a cell, behind the pane's back; "=..." is a formula, null empties the cell. */
  type(sheet: string, address: string, typed: Cell): void | Promise<void>;
  /** Is the cell's text bold? */
  isBold?(sheet: string, address: string): boolean | Promise<boolean>;
  close?(): void | Promise<void>;
}

/** What a host may lack. */
export type Lack =
  | "tables"
  | "chart sheets"
  | "filters"
  | "merges"
  | "protection"
  | "spills"
  | "date system"
  | "styles"
  | "change events"
  | "selection";

/** A plain copy of what a place holds, by address: for "nothing else has changed". */
interface Kept {
  readonly value: Value;
  readonly formula: string | null;
  readonly format: string;
}

const size = { header: "Size", index: 5 };
const doubled: NewColumn = { header: "Doubled", formula: formula`IF(${size}="","",${size}*2)`, format: "0.0" };
const due: NewColumn = {
  header: "Change due",
  formula: formula`${{ header: "Last change", index: 1 }}+90`,
  format: "d mmm yyyy",
};

export function describeContract(
  name: string,
  makeHost: (description: WorkbookDescription) => Promise<ContractHost>,
  lacks: readonly Lack[] = [],
): void {
  const opened: ContractHost[] = [];
  const open = async (description: WorkbookDescription): Promise<ContractHost> => {
    const host = await makeHost(description);
    opened.push(host);
    return host;
  };
  afterEach(async () => {
    for (const host of opened.splice(0)) await host.close?.();
  });
  const needs = (...things: Lack[]) => it.skipIf(things.some((thing) => lacks.includes(thing)));

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
      const odd: NewColumn = {
        header: "All [new] #1",
        formula: formula`${{ header: "Tube #", index: 0 }}&${{ header: "Notes [x]", index: 2 }}&${{ header: "It's", index: 3 }}&${{ header: "Line\nbreak", index: 4 }}`,
        format: "General",
      };
      const next: NewColumn = {
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
      const half: NewColumn = {
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
    const german: NewColumn = {
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

  describe(`${name}: refuses with a sentence and changes nothing`, () => {
    const half: NewColumn = { header: "Half", formula: formula`${{ header: "Size", index: 1 }}/2`, format: "0.0" };

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
      const other: NewColumn = { ...half, header: "Other" };
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

  describe(`${name}: progress and stop`, () => {
    const both = addTo("Long", [
      { header: "Half", formula: formula`${{ header: "Size", index: 1 }}/2`, format: "0.0" },
      { header: "Third", formula: formula`${{ header: "Size", index: 1 }}/3`, format: "0.0" },
    ]);

    needs("tables")("tells progress that only grows, and finishes", async () => {
      const { workbook } = await open(LONG);
      const told: [number, number][] = [];
      const watch = {
        report: (done: number, of: number) => told.push([done, of]),
        signal: new AbortController().signal,
      };
      expect((await workbook.apply(both, watch)).outcome).toBe("done");
      expect(told.length).toBeGreaterThan(2);
      expect(told[0]![0]).toBe(0);
      expect(told.at(-1)![0]).toBe(told.at(-1)![1]);
      for (let i = 1; i < told.length; i++) {
        expect(told[i]![0]).toBeGreaterThanOrEqual(told[i - 1]![0]);
        expect(told[i]![1]).toBe(told[0]![1]);
      }
      const { formulas } = await workbook.read({ table: "Long" }, ["formulas"]);
      expect(formulas!.filter((row) => row[2] !== null && row[3] !== null).length).toBe(LONG_ROWS);
    });

    needs("tables")("takes everything back when stopped half-way", async () => {
      const { workbook } = await open(LONG);
      const before = await kept(workbook);
      const overview = await workbook.overview();
      const stop = new AbortController();
      let halfway = false;
      const report = (done: number, of: number) => {
        if (done > 0 && done < of) {
          halfway = true;
          stop.abort();
        }
      };
      const steps = [{ kind: "defineName" as const, name: "Limit_days", refersTo: "=14" }, ...both.steps];
      const receipt = await workbook.apply({ steps, expects: [] }, { report, signal: stop.signal });
      expect(halfway).toBe(true);
      expect(receipt).toMatchObject({ outcome: "stopped", done: [] });
      expect(receipt.sentence).not.toBe("");
      expect(await kept(workbook)).toEqual(before);
      const after = await workbook.overview();
      expect(after.tables).toEqual(overview.tables);
      expect(after.names).toEqual(overview.names);
    });
  });

  describe(`${name}: taking back`, () => {
    needs("tables")("restores the table exactly", async () => {
      const host = await open(CLINIC);
      const { workbook } = host;
      const before = await kept(workbook);
      const overview = await workbook.overview();
      const receipt = await apply(workbook, {
        steps: [{ kind: "defineName", name: "As_of", refersTo: "=TODAY()" }, ...addTo("Tubes", [due, doubled]).steps],
        expects: [],
      });
      expect(receipt.outcome).toBe("done");
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
      const after = await workbook.overview();
      expect(after.tables).toEqual(overview.tables);
      expect(after.names).toEqual(overview.names);
      const left = await workbook.read(await at(workbook, "Tubes in use", "G3:H9"), ["values", "formats"]);
      expect(left.formats!.flat().every((format) => format === "General")).toBe(true);
      if (!lacks.includes("styles")) expect(await host.isBold!("Tubes in use", "G3")).toBe(false);
    });

    needs("tables")("names the cells edited meanwhile and touches nothing, then removes when asked again", async () => {
      const host = await open(CLINIC);
      const { workbook } = host;
      const before = await kept(workbook);
      const receipt = await apply(workbook, addTo("Tubes", [due, doubled]));
      await host.type("Tubes in use", "H5", 99);
      const edited = await kept(workbook);
      const outcome = await workbook.takeBack(receipt);
      expect(outcome).toMatchObject({ outcome: "differs", cells: ["H5"] });
      if (outcome.outcome === "differs") expect(outcome.sentence).toContain("H5");
      expect(await kept(workbook)).toEqual(edited);
      expect(await workbook.takeBack(receipt, { force: true })).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("tables")("fails with a sentence when a new column was renamed", async () => {
      const host = await open(CLINIC);
      const receipt = await apply(host.workbook, addTo("Tubes", [due]));
      await host.type("Tubes in use", "G3", "Mine now");
      const now = await kept(host.workbook);
      expect(await host.workbook.takeBack(receipt, { force: true })).toMatchObject({
        outcome: "failed",
        sentence: expect.stringContaining("Tubes"),
      });
      expect(await kept(host.workbook)).toEqual(now);
    });

    needs("tables")("happens once only", async () => {
      const { workbook } = await open(CLINIC);
      const receipt = await apply(workbook, addTo("Tubes", [due]));
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await workbook.takeBack(receipt)).toMatchObject({ outcome: "failed" });
    });
  });

  describe(`${name}: reveal and change events`, () => {
    needs("selection")("selects and shows a place", async () => {
      const { workbook } = await open(CLINIC);
      const place = (await at(workbook, "Übersicht", "B3:C4")) as { sheet: string; area: Area };
      await workbook.reveal(place);
      expect((await workbook.overview()).selection).toEqual(place);
    });

    needs("change events")("tells of edits until told to stop", async () => {
      const host = await open(CLINIC);
      let told = 0;
      const stop = host.workbook.onChange(() => told++);
      await settled();
      await host.type("Übersicht", "A3", "edited");
      await settled();
      expect(told).toBeGreaterThan(0);
      stop();
      await settled();
      told = 0;
      await host.type("Übersicht", "A3", "edited again");
      await settled();
      expect(told).toBe(0);
    });
  });
}

const addTo = (table: string, columns: readonly NewColumn[]): Change => ({
  steps: [{ kind: "addColumns", to: { table }, columns }],
  expects: [],
});

const watch = (): Progress => ({ report: () => undefined, signal: new AbortController().signal });

const apply = (workbook: Workbook, change: Change): Promise<Receipt> => workbook.apply(change, watch());

/** Long enough for a host that gathers several changes before it tells of them. */
const settled = () => new Promise((done) => setTimeout(done, 600));

async function at(workbook: Workbook, sheet: string, address: string): Promise<Place> {
  const { sheets } = await workbook.overview();
  return { sheet: sheets.find((one) => one.name === sheet)!.id, area: parseArea(address)! };
}

/** A table's formula may be told in structured form, long or short, or in A1 form. */
function expectFormula(
  told: string | null | undefined,
  template: FormulaTemplate,
  table: string,
  row: number,
  left: number,
): void {
  const long = "=" + inTable(template, table);
  const short = long.replaceAll(`${table}[[#This Row],[`, "[@[");
  const spelled = (told ?? "").replace(/\[@([^[\]]+)\]/g, "[@[$1]]");
  expect([long, short, "=" + inA1(template, row, left)]).toContain(spelled);
}

/** Every cell that holds something, by sheet and address, but those of one area. */
async function kept(workbook: Workbook, but?: { sheet: string; area: Area }): Promise<Map<string, Kept>> {
  const cells = new Map<string, Kept>();
  for (const sheet of (await workbook.overview()).sheets) {
    if (!sheet.used) continue;
    const block = await workbook.read({ sheet: sheet.id, area: sheet.used }, ["values", "formulas", "formats"]);
    block.values!.forEach((row, r) =>
      row.forEach((value, c) => {
        const formulaText = block.formulas![r]![c]!;
        if (value === null && formulaText === null) return;
        const [y, x] = [block.area.top + r, block.area.left + c];
        const { area } = but ?? {};
        const isMeant =
          but?.sheet === sheet.name &&
          area &&
          y >= area.top &&
          y < area.top + area.rows &&
          x >= area.left &&
          x < area.left + area.columns;
        if (isMeant) return;
        cells.set(`${sheet.name}!${cellAddress(y, x)}`, {
          value,
          formula: formulaText,
          format: block.formats![r]![c]!,
        });
      }),
    );
  }
  return cells;
}

async function expectRefused(workbook: Workbook, change: Change, says: RegExp): Promise<void> {
  const before = await kept(workbook);
  const overview = await workbook.overview();
  const receipt = await apply(workbook, change);
  expect(receipt).toMatchObject({ outcome: "refused", done: [] });
  expect(receipt.sentence).toMatch(says);
  expect(await kept(workbook)).toEqual(before);
  const after = await workbook.overview();
  expect({ tables: after.tables, names: after.names }).toEqual({ tables: overview.tables, names: overview.names });
}
