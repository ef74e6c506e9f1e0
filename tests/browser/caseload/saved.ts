/** A saved caseload as programs read it that did not write it: one for tables and names, one for cells. */
import { utils, type CellObject } from "@e965/xlsx";
import { caseloadBook } from "../../../src/caseload/index";
import { sheetNames } from "../../../src/caseload/names";
import { all, byExcelJs, bySheetJs, parsed, partsOf, type Element } from "../../workbooks/new-file/reading";

export interface SavedTable {
  readonly sheet: string;
  readonly headers: readonly string[];
  /** "A3:BM6" */
  readonly area: string;
  readonly rows: number;
  /** By header, in the row of the table counted from 0. */
  cell(row: number, header: string): CellObject | undefined;
}

export interface SavedCaseload {
  readonly tables: ReadonlyMap<string, SavedTable>;
  readonly names: readonly string[];
  /** The cell that a name stands for. */
  named(name: string): CellObject | undefined;
  /** Validations and colour rules of each sheet that has a table. */
  readonly rules: Readonly<Record<string, readonly [validations: number, colours: number]>>;
}

export async function savedCaseload(bytes: Uint8Array): Promise<SavedCaseload> {
  const byTables = await byExcelJs(bytes);
  const byCells = bySheetJs(bytes);
  const parts = partsOf(bytes);
  const tables = new Map<string, SavedTable>();
  const rules: Record<string, readonly [number, number]> = {};
  for (const sheet of byTables.worksheets) {
    for (const { table } of sheet.getTables() as unknown as readonly { readonly table: TableOfExcelJs }[]) {
      const { s, e } = utils.decode_range(table.tableRef);
      const headers = headersOf(parts, table.name);
      tables.set(table.name, {
        sheet: sheet.name,
        headers,
        area: table.tableRef,
        rows: e.r - s.r,
        cell: (row, header) =>
          byCells.Sheets[sheet.name]![utils.encode_cell({ r: s.r + 1 + row, c: s.c + headers.indexOf(header) })] as
            CellObject | undefined,
      });
      const xml = parsed(parts.get(`xl/worksheets/sheet${sheet.id}.xml`)!);
      rules[sheet.name] = [all(xml, "dataValidation").length, all(xml, "cfRule").length];
    }
  }
  const names = byCells.Workbook!.Names!;
  return {
    tables,
    rules,
    names: names.map(({ Name }) => Name),
    named: (name) => {
      const [sheet, cell] = names.find(({ Name }) => Name === name)!.Ref.split("!") as [string, string];
      return byCells.Sheets[sheet.replaceAll("'", "")]![cell.replaceAll("$", "")] as CellObject | undefined;
    },
  };
}

interface TableOfExcelJs {
  readonly name: string;
  readonly tableRef: string;
}

const tablesIn = (parts: ReadonlyMap<string, string>): readonly Element[] =>
  [...parts].flatMap(([name, xml]) => (name.startsWith("xl/tables/") ? [parsed(xml)] : []));

/** From the part itself: ExcelJS loses the columns behind one with a formula. */
const headersOf = (parts: ReadonlyMap<string, string>, table: string): readonly string[] =>
  all(
    tablesIn(parts).find(({ attributes }) => attributes["displayName"] === table)!,
    "tableColumn",
  ).map(({ attributes }) => attributes["name"]!);

/** How the ready-made caseload is built: what must still be there after a week of work. */
/** The row, as people count, in which an invented person stands on a day: the most urgent come first. */
export function rowOfInvented(id: string, asOf: number): number {
  const book = caseloadBook({ asOf, people: "invented", groups: ["fit", "plan", "spare"] });
  const { top, columns, rows } = book.sheets.find(({ name }) => name === sheetNames.tubes)!.table!;
  const at = columns.findIndex(({ header }) => header === "ID");
  return top + 2 + rows.findIndex((row) => row[at] === id);
}

export function builtAs() {
  const { sheets, names } = caseloadBook({ asOf: 46_352, people: "none", groups: ["fit", "plan", "spare"] });
  return {
    names: names.map(({ name }) => name),
    tables: sheets.flatMap(({ name: sheet, table, cells }) =>
      table
        ? [
            {
              sheet,
              name: table.name,
              headers: table.columns.map(({ header }) => header),
              computed: table.columns.flatMap(({ formula, header }) => (formula ? [header] : [])),
              rules: [
                [...table.columns, ...cells].filter(({ validation }) => validation).length,
                table.columns.flatMap(({ rules }) => rules ?? []).length,
              ] as const,
            },
          ]
        : [],
    ),
  };
}

/** What a sheet of a saved file hides, and by which filters: the table's, or the sheet's own. */
export function shownIn(bytes: Uint8Array, sheetName: string, tableName: string | null) {
  const parts = partsOf(bytes);
  const xml = (name: string) => parsed(parts.get(name)!);
  const sheets = all(xml("xl/workbook.xml"), "sheet");
  const links = all(xml("xl/_rels/workbook.xml.rels"), "Relationship");
  const id = sheets.find(({ attributes }) => attributes["name"] === sheetName)!.attributes["r:id"];
  const target = links.find(({ attributes }) => attributes["Id"] === id)!.attributes["Target"]!;
  const sheet = xml(`xl/${target.replace(/^\/?(?:xl\/)?/, "")}`);
  const table = tablesIn(parts).find(({ attributes }) => attributes["displayName"] === tableName);
  const headers = table ? headersOf(parts, tableName!) : [];
  return {
    /** Row numbers as people see them. */
    hidden: all(sheet, "row").flatMap(({ attributes }) =>
      ["1", "true"].includes(attributes["hidden"] ?? "") ? [Number(attributes["r"])] : [],
    ),
    filters: all(table ?? sheet, "filterColumn").map((filter) => {
      const column = Number(filter.attributes["colId"]);
      return {
        column,
        header: headers[column],
        keeps: all(filter, "filter").map(({ attributes }) => attributes["val"] ?? ""),
      };
    }),
  };
}
