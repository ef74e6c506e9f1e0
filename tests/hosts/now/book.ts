/**
 * A small caseload in memory, its people invented. Headers are those of the shared template; columns that a test does
 * not need can be left out, moved or added.
 */
import { sheetNames, tableNames } from "../../../src/caseload/names";
import type { Cell } from "../../../src/worksheet/cell";
import { areaAddress } from "../../../taskpane/workbook/area";
import type {
  CellDescription,
  SheetDescription,
  WorkbookDescription,
} from "../../../taskpane/workbook/fake/description";

export type RowOf = Readonly<Record<string, Cell | CellDescription>>;

export const headers = {
  tubes: [
    ...[
      "ID",
      "To do",
      "Status",
      "Change due",
      "At the latest",
      "Days left",
      "Change",
      "Booked for",
      "Tract",
      "Balloon",
    ],
    ...["Missing or contradictory", "Born", "Age", "Weight kg", "Weighed on", "Access", "Stoma made", "Placed by"],
    ...["Slow healing", "Held by", "Known from", "Shape", "Size Fr", "Size mm", "Length cm", "Device in", "First tube"],
    ...["Lot", "Item", "Fill mL", "Most mL", "Checked by", "Last check", "Out mL", "Put in mL", "Loss mL", "Check due"],
    ...[
      "Lying cm",
      "Sitting cm",
      "Measured on",
      "Weight then kg",
      "Mark then cm",
      "Mark now cm",
      "Play mm",
      "Fit",
      "Mark",
    ],
    ...["Own interval months", "Date set by placing team", "Changed by", "Trained for tube out", "Own tube-out plan"],
    ...["Cannot wait", "Turning", "Spare at home", "Spare Fr", "Spare cm", "Spare lot", "Spare expires", "Site"],
    ...["Site seen on", "Notes"],
  ],
  checks: [
    ...["ID", "Access", "Checked on", "Out mL", "Looked", "Put in mL", "Water", "By", "How known", "Note", "Device in"],
    ...["Days since fill", "Expected mL", "Loss mL", "Loss mL a week", "State", "Low in a row"],
  ],
  changes: [
    ...["ID", "Access", "Held by", "Shape", "Size Fr", "Length cm", "Fill mL", "Lot", "In", "Out", "Reason", "Where"],
    ...[
      "Unplanned visit",
      "Nights",
      "Hours out",
      "Changed by",
      "Position confirmed by",
      "pH",
      "New held by",
      "New shape",
    ],
    ...["New size Fr", "New length cm", "New lot", "New fill put in", "Note", "Days in place", "Failed", "Unplanned"],
  ],
} as const;

export interface Parts {
  readonly tubes?: readonly RowOf[];
  readonly checks?: readonly RowOf[];
  readonly changes?: readonly RowOf[];
  /** Value by name; a name that is not given is not there. */
  readonly names?: Readonly<Record<string, Cell>>;
  readonly columns?: Partial<Readonly<Record<keyof typeof headers, readonly string[]>>>;
}

function sheet(key: keyof typeof headers, rows: readonly RowOf[], columns: readonly string[]): SheetDescription {
  const area = { top: 3, left: 0, rows: Math.max(rows.length, 1) + 1, columns: columns.length };
  return {
    name: sheetNames[key],
    rows: [["Invented"], [], [], [...columns], ...rows.map((row) => columns.map((header) => row[header] ?? null))],
    tables: [{ name: tableNames[key], area: areaAddress(area) }],
  };
}

export const caseloadBook = ({
  tubes = [],
  checks = [],
  changes = [],
  names = {},
  columns = {},
}: Parts): WorkbookDescription => ({
  title: "Invented caseload.xlsx",
  dateSystem: 1900,
  sheets: [
    { name: sheetNames.readFirst, rows: [["Invented people"]] },
    sheet("tubes", tubes, columns.tubes ?? headers.tubes),
    sheet("checks", checks, columns.checks ?? headers.checks),
    sheet("changes", changes, columns.changes ?? headers.changes),
    { name: sheetNames.settings, rows: Object.entries(names).map(([name, value]) => [name, value]) },
  ],
  names: Object.entries(names).map(([name, value], row) => ({
    name,
    refersTo: `='${sheetNames.settings}'!$B$${row + 1}`,
    value,
  })),
});
