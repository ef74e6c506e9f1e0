/** The workbooks the contract suite asks every host to open. All people and numbers in them are invented. */
import type { SheetDescription, WorkbookDescription } from "../../../taskpane/workbook/fake/description";

const day = (serial: number) => ({ value: serial, format: "dd/mm/yyyy" });
const heading = (value: string) => ({ value, bold: true });

/** Title rows above, a table of five people with odd column names and a totals row, a remark far to the right. */
export const TUBES: SheetDescription = {
  name: "Tubes in use",
  rows: [
    ["Invented for tests"],
    [],
    ["Tube #", "Last change", "Notes [x]", "It's", "Line\nbreak", "Size"].map(heading),
    ["007", day(46000), "well", true, 1.5, 14],
    ["008", day(46011.5), null, false, 2, 16],
    ["009", { error: "#N/A" }, "text date", true, null, 12],
    ["010", "12 May", { formula: '=""', value: "" }, null, 0, 18],
    ["011", day(45990), "x", false, -3, 20],
    [{ value: "Total" }, null, null, null, { formula: "=SUM(E4:E8)", value: 0.5 }, { value: 5 }],
  ],
  cells: { L5: "a remark that stays" },
  tables: [{ name: "Tubes", area: "A3:F9", hasTotals: true }],
};

/** A list without a table: a merged title, one header row, four rows, one hidden by hand. */
export const LIST: SheetDescription = {
  name: "Übersicht",
  rows: [
    [{ value: "Erfundene Liste", bold: true }],
    ["Kennung", "Letzter Wechsel", "Größe"].map(heading),
    ["A1", day(46001), 14],
    ["A2", day(46002), 16],
    ["A3", day(46003), null],
    ["A4", day(46004), 18],
  ],
  merges: ["A1:C1"],
  hiddenRows: [5],
};

export const PROTECTED: SheetDescription = {
  name: "Locked",
  isProtected: true,
  rows: [
    ["Who", "When"],
    ["B1", 46000],
  ],
};

export const CLINIC: WorkbookDescription = {
  title: "Invented clinic.xlsx",
  sheets: [TUBES, LIST, PROTECTED],
  names: [{ name: "Interval", refersTo: "=3", value: 3 }],
  selection: { sheet: "Tubes in use", area: "B5" },
};

/** A table without a totals row, two rows of it hidden by its filter. */
export const FILTERED: WorkbookDescription = {
  sheets: [
    {
      name: "Sheet1",
      rows: [["Id", "Size"].map(heading), ["C1", 10], ["C2", 12], ["C3", 14], ["C4", 16]],
      tables: [{ name: "Table1", area: "A1:B5", filteredRows: [3, 5] }],
    },
  ],
};

/** As {@link FILTERED} without the filter, with more put beside or around the table. */
export const beside = (more: Partial<SheetDescription>): WorkbookDescription => ({
  sheets: [
    {
      name: "Sheet1",
      rows: [
        ["Id", "Size"],
        ["C1", 10],
        ["C2", 12],
        ["C3", 14],
      ],
      tables: [{ name: "Table1", area: "A1:B4" }],
      ...more,
    },
  ],
});

export const LONG_ROWS = 2_500;

/** A long table, for progress and stop. */
export const LONG: WorkbookDescription = {
  sheets: [
    {
      name: "Long",
      rows: [["Id", "Size"], ...Array.from({ length: LONG_ROWS }, (_, i) => [`L${i + 1}`, 10 + (i % 9)])],
      tables: [{ name: "Long", area: `A1:B${LONG_ROWS + 1}` }],
    },
  ],
};

/** Two tables that work together, one above which nothing else stands below it; a sheet with single cells that have names. */
export const PEOPLE: WorkbookDescription = {
  sheets: [
    {
      name: "People",
      rows: [
        ["Invented for tests"],
        [],
        ["Id", "Size", "Seen", "Note"].map(heading),
        ["007", 14, day(46000), "well"],
        ["008", 16, day(46011), null],
        ["009", 12, day(46020), "x"],
        ["010", 18, null, "y"],
      ],
      cells: { K20: "a remark that stays" },
      tables: [{ name: "People", area: "A3:D7" }],
    },
    {
      name: "Visits",
      rows: [["Id", "On", "Said"].map(heading), [null, null, null]],
      tables: [{ name: "Visits", area: "A1:C2" }],
    },
    {
      name: "Clinic's settings",
      rows: [
        ["Setting", "Value"],
        ["Limit", 14],
        ["Twice that", { formula: "=B2*2", value: 28 }],
        ["Word", "due soon"],
      ],
    },
  ],
  names: [
    { name: "Limit", refersTo: "='Clinic''s settings'!$B$2", value: 14 },
    { name: "Limit_twice", refersTo: "='Clinic''s settings'!$B$3", value: 28 },
    { name: "Word", refersTo: "='Clinic''s settings'!$B$4", value: "due soon" },
    { name: "Limits", refersTo: "='Clinic''s settings'!$B$2:$B$3", value: null },
    { name: "Seven", refersTo: "=7", value: 7 },
  ],
};
