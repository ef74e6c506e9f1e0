/** Invented workbooks that bring the pane into each of its states. Nobody stands behind any row. */
import type { Cell } from "../../../src/worksheet/cell";
import type { CellDescription, WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import { caseload } from "./caseload";

/** 1 June 2026: the pages' today. */
export const TODAY = 46174;

const date = (daysAgo: number): CellDescription => ({ value: TODAY - daysAgo, format: "d mmm yyyy" });

const headers = ["Identifier", "Kind of tube", "Size", "Last change", "Water put in", "Water out", "Notes"];

const kinds = [
  "Balloon button",
  "Balloon button",
  "balloon G-tube",
  "Bumper PEG, adult",
  "GJ",
  "RIG",
  "Balloon button",
  "Winged",
];
const sizes: readonly Cell[] = ["14 Fr", "14FR x 2.3 cm", 16, "CH 15", "12", "14-16 Fr", "4.7 mm", "18 Fr"];

function person(i: number): (Cell | CellDescription)[] {
  const hasDate = i % 13 !== 5;
  return [
    `D-${String(i + 1).padStart(3, "0")}`,
    i % 17 === 9 ? null : (kinds[i % kinds.length] ?? null),
    sizes[i % sizes.length] ?? null,
    hasDate ? date(((i * 37) % 260) + 3) : i % 2 === 0 ? "see letter" : null,
    i % 4 === 3 ? null : 5,
    i % 4 === 3 ? null : [4.8, 4.2, 2.4, 5, 0][i % 5]!,
    i % 6 === 0 ? "call first" : null,
  ];
}

const people = (count: number) => Array.from({ length: count }, (_, i) => person(i));

const inTable: WorkbookDescription = {
  title: "Clinic list (invented).xlsx",
  dateSystem: 1900,
  sheets: [
    {
      name: "Adults",
      rows: [headers, ...people(64)],
      tables: [{ name: "Caseload", area: "A1:G65" }],
    },
    { name: "Elsewhere", rows: [["Notes"], ["Nothing to see"]] },
  ],
  selection: { sheet: "Adults", area: "D5" },
};

export const scenarios: Readonly<Record<string, WorkbookDescription>> = {
  caseload: caseload(TODAY),
  table: inTable,
  plain: {
    title: "Plain list (invented).xlsx",
    dateSystem: 1900,
    sheets: [
      {
        name: "Community",
        rows: [["Tubes in the community"], ["Invented example"], [], headers, ...people(30)],
      },
    ],
    selection: { sheet: "Community", area: "B9" },
  },
  empty: {
    title: "New workbook",
    dateSystem: 1900,
    sheets: [{ name: "Sheet1" }],
    selection: { sheet: "Sheet1", area: "A1" },
  },
  protected: { ...inTable, sheets: inTable.sheets.map((sheet) => ({ ...sheet, isProtected: true })) },
  full: {
    ...inTable,
    sheets: inTable.sheets.map((sheet, i) =>
      i === 0 ? { ...sheet, cells: { H9: "a note beside the table" } } : sheet,
    ),
  },
};
