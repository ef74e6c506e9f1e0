/** The caseload's three tables: their columns bound to places. */
import type { Header } from "./headers";
import { formula, type FormulaTemplate } from "../columns/formula";
import type { SheetDescription, TableColumn } from "./book";
import type { OwnColumn } from "./carried";
import { changeColumns } from "./changes/columns";
import { checkColumns } from "./checks/columns";
import type { CaseloadColumn, OptionalGroup, RowCells, Slots } from "./column";
import { FOOTER, listLine } from "./lines";
import { listHeaderRow } from "./layout";
import { sheetNames, tableNames, type RowsTable } from "./names";
import { tubeColumns } from "./tubes/columns";

export type { RowsTable } from "./names";

const allColumns = { tubes: tubeColumns, checks: checkColumns, changes: changeColumns };

export const columnsOf = (table: RowsTable, groups: readonly OptionalGroup[]): readonly CaseloadColumn[] =>
  allColumns[table].filter(({ onlyWith }) => onlyWith === undefined || groups.includes(onlyWith));

/** Names that stand for whole columns, so that formulas of one table read another however long it grows. */
export const columnNames: readonly { readonly name: string; readonly table: RowsTable; readonly header: Header }[] = [
  { name: "Tube_Person", table: "tubes", header: "Person" },
  { name: "Tube_Key", table: "tubes", header: "Key" },
  { name: "Tube_PersonRows", table: "tubes", header: "Rows of the person" },
  { name: "Tube_KeyRows", table: "tubes", header: "Rows of the key" },
  { name: "Tube_Came", table: "tubes", header: "Came" },
  { name: "Tube_Fill", table: "tubes", header: "Fill mL" },
  { name: "Tube_Most", table: "tubes", header: "Most mL" },
  { name: "Check_Day", table: "checks", header: "Check day" },
  { name: "Check_On", table: "checks", header: "Checked on" },
  { name: "Check_Out", table: "checks", header: "Out mL" },
  { name: "Check_PutIn", table: "checks", header: "Put in mL" },
  { name: "Check_PutRead", table: "checks", header: "Put in, read" },
  { name: "Check_Device", table: "checks", header: "Device in" },
  { name: "Check_Loss", table: "checks", header: "Loss mL" },
  { name: "Check_State", table: "checks", header: "State" },
  { name: "Check_Left", table: "checks", header: "Left" },
  { name: "Check_LowRow", table: "checks", header: "Low in a row" },
  { name: "Check_SortedBy", table: "checks", header: "Sorted by" },
  { name: "Check_InOrder", table: "checks", header: "In order" },
  { name: "Check_Measured", table: "checks", header: "Measured" },
  { name: "Check_MeasuredInOrder", table: "checks", header: "Measured in order" },
  { name: "Check_Low", table: "checks", header: "Low" },
  { name: "Check_LowBefore", table: "checks", header: "Low before" },
  { name: "Change_Person", table: "changes", header: "Person" },
  { name: "Change_Key", table: "changes", header: "Key" },
  { name: "Change_In", table: "changes", header: "In" },
  { name: "Change_Out", table: "changes", header: "Out" },
  { name: "Change_Fill", table: "changes", header: "Fill mL" },
];

/** Header cells: a row counts from there, wherever its sheet begins. */
export const headerNames: readonly { readonly name: string; readonly table: RowsTable; readonly header: Header }[] = [
  { name: "Tube_Top", table: "tubes", header: "ID" },
  { name: "Check_Top", table: "checks", header: "ID" },
];

/** A filter button takes this many characters of a header's width, bold letters included. */
const BUTTON = 5;
/** Bold letters beside the digits that widths are counted in. */
const BOLD = 1.1;
const longestWord = (header: string): number => Math.max(...header.split(" ").map((word) => word.length));

/** The least width at which a header takes two lines: a taller one would stand above every list in place of a row. */
function twoLines(header: string): number {
  const words = header.split(" ");
  const broken = words.map((_, i) => Math.max(words.slice(0, i).join(" ").length, words.slice(i).join(" ").length));
  return Math.ceil(Math.min(...broken) * BOLD) + BUTTON - 2;
}

const BLANK = '""';

const everyHeader: ReadonlySet<string> = new Set(
  Object.values(allColumns).flatMap((columns) => columns.map(({ header }) => header)),
);

/** A header that no column can have is misspelt. */
function slotsOf(columns: readonly CaseloadColumn[]): Slots {
  const places = new Map(columns.map(({ header }, index) => [header, { header, index }]));
  const cell = (header: Header): FormulaTemplate => {
    const slot = places.get(header);
    if (!slot && !everyHeader.has(header)) throw new Error(`There is no column ${header}`);
    return slot ? [slot] : [BLANK];
  };
  return Object.assign(cell, { has: (header: Header) => places.has(header) });
}

export function boundColumns(columns: readonly CaseloadColumn[]): readonly TableColumn[] {
  const slots = slotsOf(columns);
  return columns.map(
    ({ header, width, format, kind, validation, rules, isHidden, isByAddress, group, formula: template }) => ({
      header,
      width: isHidden ? width : Math.max(width, longestWord(header) + BUTTON, twoLines(header)),
      format,
      kind,
      ...(template && { formula: formula`${template(slots)}` }),
      ...(validation && { validation: validation(slots) }),
      ...(rules && { rules: typeof rules === "function" ? rules(slots) : rules }),
      ...(isHidden && { isHidden }),
      ...(isByAddress && { isByAddress }),
      ...(group !== undefined && { group }),
    }),
  );
}

/** Of a column that the clinic has added. */
const OWN_WIDTH = 16;

/** The list goes to paper as far as the states of its rows: all sixty columns on one page could not be read. */
const LAST_PRINTED: Header<"tubes"> = "Missing or contradictory";

const titles: { readonly [T in RowsTable]: string } = {
  tubes: "Tubes in use",
  checks: "Balloon checks",
  changes: "Changes",
};

/** Characters that the longest of these names takes in large letters. */
const TITLE_WIDTH = 30;

/** How many of the first columns the name takes. */
function underTitle(columns: readonly TableColumn[]): number {
  let used = 0;
  return columns.findIndex(({ width, isHidden }) => (used += isHidden ? 0 : width) >= TITLE_WIDTH) + 1;
}

/** Identifier and To do stay in sight; more frozen columns would leave no room beside the pane. */
const frozenColumns: { readonly [T in RowsTable]: number } = { tubes: 2, checks: 1, changes: 1 };

export function tableSheet(
  table: RowsTable,
  rows: readonly RowCells[],
  groups: readonly OptionalGroup[],
  isInvented: boolean,
  own: readonly OwnColumn[] = [],
): SheetDescription {
  const columns = columnsOf(table, groups);
  const bound = boundColumns(columns);
  const withOne: readonly RowCells[] = rows.length > 0 ? rows : [{}];
  return {
    name: sheetNames[table],
    cells: listLine(titles[table], isInvented, underTitle(bound)),
    table: {
      name: tableNames[table],
      top: listHeaderRow,
      left: 0,
      columns: [
        ...bound,
        ...own.map(({ header, format }) => ({ header, format, width: OWN_WIDTH, kind: "typed" as const })),
      ],
      rows: withOne.map((row, r) => [
        ...columns.map(({ header }) => row[header] ?? null),
        ...own.map(({ cells }) => cells[r] ?? null),
      ]),
    },
    frozen: { rows: listHeaderRow + 1, columns: frozenColumns[table] },
    print: {
      landscape: true,
      titleRow: listHeaderRow,
      footer: FOOTER,
      ...(table === "tubes" && { columns: columns.findIndex(({ header }) => header === LAST_PRINTED) + 1 }),
    },
  };
}
