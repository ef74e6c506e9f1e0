/**
 * The headers of the caseload's three tables, in the order of their columns. They are types: whoever reads, writes or names
 * a column by a header that is none of these does not compile, where a misspelt one would read as a blank for ever.
 * Stored in people's workbooks: never renamed. tests/laws/headers holds the columns to them.
 */
import type { RowsTable } from "./names";

const tubes = [
  ...["ID", "To do", "Status", "Change due", "At the latest", "Days left", "Change", "Booked for", "Tract", "Balloon"],
  ...["Missing or contradictory"],
  ...["Born", "Age", "Weight kg", "Weighed on"],
  ...["Access", "Stoma made", "Placed by", "Slow healing"],
  ...["Held by", "Known from", "Shape", "Size Fr", "Size mm", "Length cm", "Device in", "First tube", "Lot", "Item"],
  ...["Fill mL", "Most mL", "Checked by", "Last check", "Out mL", "Put in mL", "Loss mL", "Check due"],
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
  ...["Cannot wait", "Turning"],
  ...["Spare at home", "Spare Fr", "Spare cm", "Spare lot", "Spare expires", "Site", "Site seen on", "Notes"],
  ...["Status since"],
] as const;

const checks = [
  ...["ID", "Access", "Checked on", "Out mL", "Looked", "Put in mL", "Water", "By", "How known", "Note"],
  ...["Device in", "Days since fill", "Expected mL", "Loss mL", "Loss mL a week", "State", "Low in a row"],
] as const;

const changes = [
  ...["ID", "Access", "Held by", "Shape", "Size Fr", "Length cm", "Fill mL", "Lot", "In", "Out"],
  ...["Reason", "Where", "Unplanned visit", "Nights", "Hours out", "Changed by", "Position confirmed by", "pH"],
  ...["New held by", "New shape", "New size Fr", "New length cm", "New lot", "New fill put in mL", "Note"],
  ...["Days in place", "Failed", "Unplanned"],
] as const;

/** Columns that people see. */
export const shownHeaders = { tubes, checks, changes } as const satisfies Record<RowsTable, readonly string[]>;

/** Columns for formulas: they stand last, hidden. */
export const hiddenHeaders = {
  tubes: [
    ...["Person", "Key", "Live", "Newest", "Gaps of person and dates", "Gaps of device"],
    ...["Gaps of balloon, weight and spare", "Age class", "Review", "Due first", "Booking", "Booked", "Bedside"],
    ...["Site now", "Dates", "People", "Checks", "Supplies", "Measuring", "Away", "Urgency"],
  ],
  checks: [
    ...["Person", "Key", "Tube", "Tag", "Before", "Label mL", "Measured", "Measured before", "Loose", "Agreed mL"],
    ...["Left"],
  ],
  changes: ["Person", "Key"],
} as const satisfies Record<RowsTable, readonly string[]>;

/** A header of a column that people see. */
export type ShownHeader<T extends RowsTable = RowsTable> = (typeof shownHeaders)[T][number];

/** A header of this table, or of any of the three. */
export type Header<T extends RowsTable = RowsTable> = ShownHeader<T> | (typeof hiddenHeaders)[T][number];

/** Cells by header, for rows that are typed or written. */
export type ByHeader<V, T extends RowsTable = RowsTable> = Readonly<Partial<Record<Header<T>, V>>>;
