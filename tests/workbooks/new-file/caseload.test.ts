/**
 * The ready-made caseload as a file: opened by two programs that did not write it, by our own reader and by the grid,
 * whose engine must give what is stored.
 */
import type ExcelJS from "exceljs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { WorkBook } from "@e965/xlsx";
import type { BookDescription, TableDescription } from "../../../src/caseload/book";
import { caseloadBook } from "../../../src/caseload/index";
import { INVENTED_ON, sheetNames, tableNames } from "../../../src/caseload/names";
import { columnLetters, inTable } from "../../../src/columns/formula";
import { URGENCY } from "../../../src/caseload/urgency";
import { clinicSettings } from "../../../src/settings/index";
import { day } from "../../../src/worksheet/dates";
import { boundNames } from "../../../src/formula/bound-names";
import { toFile } from "../../../taskpane/workbook/embedded/formulas/dialect";
import { tokens } from "../../../taskpane/workbook/embedded/formulas/tokens";
import { heightsOf } from "../../../taskpane/workbook/file/heights";
import { LINE_HEIGHT } from "../../../taskpane/workbook/xlsx/lines";
import { inFile } from "../../../taskpane/workbook/file/formula";
import { writeBook } from "../../../taskpane/workbook/file";
import { isRefusal, openPackage, type OpenedPackage } from "../../../taskpane/workbook/package";
import { plain, startGrid, withoutResults, type InGrid } from "./in-grid";
import { all, byExcelJs, bySheetJs, parsed, partsOf, sheetJsCell } from "./reading";

const AS_OF = day("2026-11-26");
let book: BookDescription;
let bytes: Uint8Array;
let js: ExcelJS.Workbook;
let sheetJs: WorkBook;
let ours: OpenedPackage;
beforeAll(async () => {
  book = caseloadBook({ asOf: AS_OF, groups: ["fit", "plan", "spare"], people: "invented" });
  bytes = await writeBook(book);
  js = await byExcelJs(bytes);
  sheetJs = bySheetJs(bytes);
  const opened = openPackage(bytes);
  if (isRefusal(opened)) throw new Error(opened.refused);
  ours = opened;
  /* ExcelJS lays every rule out cell by cell. */
});

const withTables = () => book.sheets.flatMap(({ name, table }) => (table ? [{ sheet: name, table }] : []));
const tableNamed = (name: string): TableDescription => withTables().find(({ table }) => table.name === name)!.table;
const formulas = (): string[] => [
  ...withTables().flatMap(({ table }) =>
    table.columns.flatMap(({ formula }) => (formula ? [inTable(formula, table.name)] : [])),
  ),
  ...book.sheets.flatMap(({ cells }) => cells.flatMap(({ formula }) => formula ?? [])),
  ...book.names.map(({ refersTo }) => refersTo),
];

describe("the caseload as a file", () => {
  it("has its five sheets in order, and the words of long lists out of sight", () => {
    expect(js.worksheets.filter(({ state }) => state === "visible").map(({ name }) => name)).toEqual(
      Object.values(sheetNames),
    );
    expect(js.worksheets.filter(({ state }) => state !== "visible").map(({ name }) => name)).toEqual(["Lists"]);
  });

  it("opens on its list, and the list begins with what is most urgent", () => {
    const workbook = partsOf(bytes).get("xl/workbook.xml")!;
    const tab = Object.values(sheetNames).indexOf(sheetNames.tubes);
    expect(workbook).toContain(`activeTab="${tab}"`);
    const selected = [...partsOf(bytes)].filter(([, xml]) => xml.includes('tabSelected="1"')).map(([name]) => name);
    expect(selected).toEqual([`xl/worksheets/sheet${tab + 1}.xml`]);
    const { columns, rows } = tableNamed(tableNames.tubes);
    const urgency = rows.map((row) => row[columns.findIndex(({ header }) => header === URGENCY)] as number);
    expect(urgency).toEqual([...urgency].sort((one, other) => one - other));
    expect(new Set(urgency).size).toBeGreaterThan(10);
  });

  it("begins each list under one line and a header of two lines at most", () => {
    for (const { table, frozen, name } of book.sheets) {
      if (!table) continue;
      expect([table.top, frozen!.rows], name).toEqual([2, 3]);
      const heights = heightsOf(book.sheets.find((one) => one.name === name)!, (i) => table.columns[i]!.width);
      const held = [0, 1, 2].reduce((sum, row) => sum + (heights.get(row) ?? LINE_HEIGHT), 0);
      /* 35% of the 610 pixels that a grid has in a window of 1280 x 800, in points. */
      expect(held, name).toBeLessThanOrEqual((0.35 * 610 * 3) / 4);
    }
  });

  it("holds no formula that is longer than Excel takes, as the file spells it", () => {
    const longest = [...partsOf(bytes)].flatMap(([, xml]) => [...xml.matchAll(/<f[ >][^<]*</g)].map(([f]) => f.length));
    /* Microsoft, "Excel specifications and limits": 8,192 characters; the tags counted in here make it stricter. */
    expect(longest.length).toBeGreaterThan(1000);
    expect(Math.max(...longest)).toBeLessThan(8192);
  });

  it("is well-formed XML in every part", () => {
    for (const [name, xml] of partsOf(bytes)) expect(() => parsed(xml), name).not.toThrow();
  });

  it("has its tables, with every column and row", () => {
    const described = withTables().map(({ table }) => [table.name, table.columns.length, table.rows.length]);
    const found = ours.tables.map(({ name, columns, ref }) => {
      const [, top, bottom] = /^[A-Z]+(\d+):[A-Z]+(\d+)$/.exec(ref)!.map(Number) as [number, number, number];
      return [name, columns.length, bottom - top];
    });
    expect(found).toEqual(described);
    for (const name of [tableNames.tubes, tableNames.checks, tableNames.changes]) {
      expect(described.map(([one]) => one)).toContain(name);
    }
  });

  it("writes every formula as the grid's dialect does, which knows its engine's whole list of newer functions", () => {
    const written = formulas();
    expect(written.length).toBeGreaterThan(30);
    for (const formula of written) expect(inFile(formula)).toBe(toFile(formula));
  });

  it("gives no name in LET that Excel takes for a cell", () => {
    const names = formulas().flatMap((formula) => [...boundNames(tokens(formula))]);
    expect(names.filter((name) => /^(?:[A-Z]{1,3}\d+|R|C|R\d*C\d*)$/.test(name))).toEqual([]);
  });

  it("has every setting, today and the mark of invention under its name", () => {
    const names = new Map(ours.definedNames.map(({ name, text }) => [name, text]));
    expect(names.get("As_of")).toBe("TODAY()");
    for (const { name } of clinicSettings) {
      expect(names.get(name), name).toMatch(/^(?:'[^']+'|\w+)!\$[A-Z]+\$\d+$/);
    }
    const [, column, row] = /\$([A-Z]+)\$(\d+)$/.exec(names.get(INVENTED_ON)!)!;
    const sheet = names.get(INVENTED_ON)!.replace(/^'?([^'!]+)'?!.*$/, "$1");
    expect(sheetJsCell(sheetJs, sheet, `${column}${row}`)?.v).toBe(AS_OF);
  });

  it("names nothing in its formulas that is not there", () => {
    const known = new Set(ours.definedNames.map(({ name }) => name.toLowerCase()));
    const tables = new Set(ours.tables.map(({ name }) => name.toLowerCase()));
    const unknown = formulas().flatMap((formula) => {
      const pieces = tokens(formula);
      const bound = boundNames(pieces);
      return pieces.flatMap(({ kind, text }, at) => {
        const next = pieces[at + 1]?.text ?? "";
        const isName = kind === "word" && /^[A-Za-z_]/.test(text) && !next.startsWith("(") && !next.startsWith("!");
        const isCell = /^\$?[A-Z]{1,3}\$?\d+$|^\$?[A-Z]{1,3}$|^(?:TRUE|FALSE)$/i.test(text);
        if (!isName || isCell || bound.has(text.toUpperCase())) return [];
        return next.startsWith("[") ? (tables.has(text.toLowerCase()) ? [] : [text]) : known.has(text.toLowerCase()) ? [] : [text];
      });
    });
    expect(unknown).toEqual([]);
  });

  it("stores a result beside every formula", () => {
    for (const { name } of ours.sheets) {
      const without = [...ours.cells(name)].filter(({ formula, value }) => formula && value === null);
      expect(without.map(({ ref }) => `${name} ${ref}`)).toEqual([]);
    }
  });

  it("keeps identifiers and lots texts", () => {
    const { top, left, columns, rows } = tableNamed(tableNames.tubes);
    for (const header of ["ID", "Lot", "Spare lot", "Item"]) {
      const column = columns.findIndex((one) => one.header === header);
      expect(columns[column]?.format, header).toBe("@");
      rows.forEach((row, r) => {
        const cell = js.getWorksheet(sheetNames.tubes)!.getCell(top + 2 + r, left + column + 1);
        expect(cell.numFmt).toBe("@");
        expect(cell.value, `${header} in row ${r}`).toBe(row[column] === "" ? null : row[column]);
      });
    }
    const lots = tableNamed(tableNames.tubes).rows.map((row) => row[columns.findIndex(({ header }) => header === "Lot")]);
    expect(lots).toEqual(expect.arrayContaining(["03-04", "1E5"]));
  });

  it("lets nothing typed become a formula", () => {
    for (const { sheet, table } of withTables()) {
      table.rows.forEach((row, r) =>
        row.forEach((value, c) => {
          if (table.columns[c]?.formula || typeof value !== "string" || value === "") return;
          const cell = js.getWorksheet(sheet)!.getCell(table.top + 2 + r, table.left + c + 1);
          expect(cell.formula, `${sheet} ${cell.address}`).toBeUndefined();
          expect(cell.value).toBe(value);
        }),
      );
    }
  });

  it("has a rule for every described one, each far below the last row", () => {
    for (const [index, { table, cells }] of book.sheets.entries()) {
      const sheet = parsed(partsOf(bytes).get(`xl/worksheets/sheet${index + 1}.xml`)!);
      const described = [...(table?.columns ?? []), ...cells].filter(({ validation }) => validation);
      expect(all(sheet, "dataValidation")).toHaveLength(described.length);
      const coloured = (table?.columns ?? []).flatMap(({ rules }) => rules ?? []);
      expect(all(sheet, "cfRule")).toHaveLength(coloured.length);
    }
  });

  it("freezes the states beside the identifier, and prints with header rows", () => {
    for (const { name, frozen, print } of book.sheets) {
      const sheet = js.getWorksheet(name)!;
      if (frozen) {
        expect(sheet.views[0]).toMatchObject({ state: "frozen", xSplit: frozen.columns, ySplit: frozen.rows });
      }
      if (print?.titleRow !== undefined) {
        expect(sheet.pageSetup.printTitlesRow).toBe(`${print.titleRow + 1}:${print.titleRow + 1}`);
      }
    }
    expect(book.sheets.find(({ name }) => name === sheetNames.tubes)?.frozen?.columns).toBeGreaterThan(1);
  });
});

describe("Tubes in use on paper", () => {
  const sheet = () => js.getWorksheet(sheetNames.tubes)!;
  const missing = () => tableNamed(tableNames.tubes).columns.findIndex(({ header }) => header === LAST);
  const LAST = "Missing or contradictory";

  it("is one page wide, across, as far as Missing or contradictory; rows added later are printed too", () => {
    expect(sheet().pageSetup).toMatchObject({ orientation: "landscape", fitToWidth: 1, fitToHeight: 0 });
    const area = sheetJs.Workbook?.Names?.find(({ Name }) => Name === "_xlnm.Print_Area");
    const last = columnLetters(missing());
    expect(area?.Ref).toBe(`'${sheetNames.tubes}'!$A:$${last}`);
  });
});

describe("the caseload in the grid", () => {
  let there: InGrid;
  beforeAll(() => {
    there = startGrid(AS_OF);
  });
  afterAll(() => there.engine.univer.dispose());

  const body = async (name: string) => {
    const { tables } = await there.grid.workbook.overview();
    const { sheet, area } = tables.find((table) => table.name === name)!;
    const rows = { ...area, top: area.top + 1, rows: area.rows - 1 };
    return (await there.grid.workbook.read({ sheet, area: rows }, ["values"])).values!;
  };

  it("opens without a remark, with all tables and names, and is saved byte for byte", async () => {
    expect(await there.grid.open(bytes, "Caseload.xlsx")).toEqual({
      outcome: "opened",
      name: "Caseload.xlsx",
      remarks: [],
    });
    const { tables, names } = await there.grid.workbook.overview();
    expect(tables.map(({ name }) => name)).toEqual(ours.tables.map(({ name }) => name));
    expect(names.length).toBe(book.names.length);
    const saved = await there.grid.save();
    expect(saved).toMatchObject({ outcome: "saved", report: [] });
    if (saved.outcome === "saved") expect(Buffer.compare(saved.bytes, bytes)).toBe(0);
  });

  it("has its engine give what is stored in every computed column", async () => {
    const opened = await there.grid.open(withoutResults(bytes), "Caseload.xlsx");
    expect(opened.outcome).toBe("opened");
    /* Cells without a result are worked out at opening; a second request would only break into the first. */
    const differences = async () => {
      const found: string[] = [];
      for (const { table } of withTables()) {
        const now = await body(table.name);
        table.rows.forEach((row, r) =>
          row.forEach((value, c) => {
            if (!table.columns[c]!.formula) return;
            const [expected, given] = [plain(value), plain(now[r]?.[c])];
            const isNear =
              typeof expected === "number" && typeof given === "number"
                ? Math.abs(expected - given) <= 1e-9 * Math.max(1, Math.abs(expected))
                : expected === given;
            if (!isNear) found.push(`${table.columns[c]!.header} of row ${r}: stored ${expected}, worked out ${given}`);
          }),
        );
      }
      return found;
    };
    await expect.poll(differences, { interval: 1000 }).toEqual([]);
  });
});
