/** The caseload's three tables: their columns bound to places. */
import type { Header } from "./headers";
import { formula, type FormulaTemplate } from "../columns/formula";
import type { SheetDescription, TableColumn } from "./book";
import type { OwnColumn } from "./carried";
import { changeColumns } from "./changes/columns";
import { checkColumns } from "./checks/columns";
import type { CaseloadColumn, OptionalGroup, RowCells, Slots } from "./column";
import { FOOTER, lines } from "./lines";
import { headerRow } from "./layout";
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
  { name: "Tube_In", table: "tubes", header: "Device in" },
  { name: "Tube_Fill", table: "tubes", header: "Fill mL" },
  { name: "Tube_Most", table: "tubes", header: "Most mL" },
  { name: "Check_Key", table: "checks", header: "Key" },
  { name: "Check_Tag", table: "checks", header: "Tag" },
  { name: "Check_On", table: "checks", header: "Checked on" },
  { name: "Check_Out", table: "checks", header: "Out mL" },
  { name: "Check_PutIn", table: "checks", header: "Put in mL" },
  { name: "Check_Device", table: "checks", header: "Device in" },
  { name: "Check_Loss", table: "checks", header: "Loss mL" },
  { name: "Check_State", table: "checks", header: "State" },
  { name: "Check_LowRow", table: "checks", header: "Low in a row" },
  { name: "Check_Measured", table: "checks", header: "Measured" },
  { name: "Check_MeasuredBefore", table: "checks", header: "Measured before" },
  { name: "Check_Left", table: "checks", header: "Left" },
  { name: "Check_Loose", table: "checks", header: "Loose" },
  { name: "Change_Person", table: "changes", header: "Person" },
  { name: "Change_Key", table: "changes", header: "Key" },
  { name: "Change_In", table: "changes", header: "In" },
  { name: "Change_Out", table: "changes", header: "Out" },
  { name: "Change_Fill", table: "changes", header: "Fill mL" },
];

/** A filter button takes this many characters of a header's width, bold letters included. */
const BUTTON = 5;
const longestWord = (header: string): number => Math.max(...header.split(" ").map((word) => word.length));

const BLANK = '""';

function slotsOf(columns: readonly CaseloadColumn[]): Slots {
  const places = new Map(columns.map(({ header }, index) => [header, { header, index }]));
  const cell = (header: Header): FormulaTemplate => {
    const slot = places.get(header);
    return slot ? [slot] : [BLANK];
  };
  return Object.assign(cell, { has: (header: Header) => places.has(header) });
}

export function boundColumns(columns: readonly CaseloadColumn[]): readonly TableColumn[] {
  const slots = slotsOf(columns);
  return columns.map(({ header, width, format, kind, validation, rules, isHidden, group, formula: template }) => ({
    header,
    width: isHidden ? width : Math.max(width, longestWord(header) + BUTTON),
    format,
    kind,
    ...(template && { formula: formula`${template(slots)}` }),
    ...(validation && { validation: validation(slots) }),
    ...(rules && { rules: typeof rules === "function" ? rules(slots) : rules }),
    ...(isHidden && { isHidden }),
    ...(group !== undefined && { group }),
  }));
}

/** Of a column that the clinic has added. */
const OWN_WIDTH = 16;

const titles: { readonly [T in RowsTable]: string } = {
  tubes: "Tubes in use: one row is a device",
  checks: "Balloon checks: one row is a check",
  changes: "Changes: one row is a device that has come out",
};

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
  const withOne: readonly RowCells[] = rows.length > 0 ? rows : [{}];
  return {
    name: sheetNames[table],
    cells: lines(titles[table], isInvented, frozenColumns[table] + 8),
    table: {
      name: tableNames[table],
      top: headerRow,
      left: 0,
      columns: [
        ...boundColumns(columns),
        ...own.map(({ header, format }) => ({ header, format, width: OWN_WIDTH, kind: "typed" as const })),
      ],
      rows: withOne.map((row, r) => [
        ...columns.map(({ header }) => row[header] ?? null),
        ...own.map(({ cells }) => cells[r] ?? null),
      ]),
    },
    frozen: { rows: headerRow + 1, columns: frozenColumns[table] },
    print: { landscape: true, titleRow: headerRow, footer: FOOTER },
  };
}
