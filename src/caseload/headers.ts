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
    ...["Person", "Key", "Status word", "Live", "Rows of the person", "Rows of the key"],
    ...["First of the person", "Held", "End", "Form", "Changer", "Card", "Spare", "Spare there", "Site word"],
    ...["Stoma day", "Device day", "Came", "Seen day", "Status day", "Months old", "Age class"],
    ...["Stoma after device", "Stoma before birth", "Newest tag", "Newest", "Check state", "Check left"],
    ...["Balloon signs", "Kind", "Own months", "Team day", "Due after", "Due by months", "Latest after"],
    ...["Limit day", "Due first", "Change ahead", "Recent", "Of this tube", "Weight change", "Still good"],
    ...["Opening cm", "Length usable", "Fit flat", "Fit long", "Mark moved", "Mark long", "Next check"],
    ...["Check by dates", "Late", "Loose check", "Too early", "Balloon by dates", "Nothing missing"],
    ...["Balloon checked", "Held otherwise", "Found empty", "Gaps of the person", "Gaps of dates"],
    ...["Gaps of birth and booking", "Gaps of person and dates", "Gaps of kind", "Gap of size"],
    ...["Gap of length", "Gaps of shape and size", "Gaps of time and changer", "Gaps of the carer"],
    ...["Gap of turning", "Gaps of device", "Fill state", "Label state", "Gaps of fill", "Gaps of balloon"],
    ...["Gaps of checks", "Weight state", "Gaps of weight", "Gap of readings", "Spare size", "Spare length"],
    ...["Gaps of spare", "Gaps of balloon, weight and spare", "Review since", "Last seen", "Review"],
    ...["Booked late", "Booking", "Booked", "Site state", "Kind open", "What cannot wait", "Nobody trained"],
    ...["Entries", "Spare soon", "Bedside", "Site now", "Dates", "People", "Checks", "Supplies", "Measuring"],
    ...["Away", "First", "Days counted", "To do detail", "Urgency"],
  ],
  checks: [
    ...["Person", "Check day", "First row", "Asked key", "Row", "Came", "Now in", "Past in", "Key", "Tube"],
    ...["Tag", "Past in, any access", "Current", "Sorted by", "In order", "Tag before", "Before"],
    ...["Agreed mL", "Label mL", "Fill then", "Put in, read", "Expected from", "Other fill", "Left", "Look"],
    ...["Nothing missing", "Figures", "Found and left", "Measured", "Measured in order"],
    ...["Measured tag before", "Measured before", "Low", "Low before"],
  ],
  changes: ["Person", "Key"],
} as const satisfies Record<RowsTable, readonly string[]>;

/** A header of a column that people see. */
export type ShownHeader<T extends RowsTable = RowsTable> = (typeof shownHeaders)[T][number];

/** A header of this table, or of any of the three. */
export type Header<T extends RowsTable = RowsTable> = ShownHeader<T> | (typeof hiddenHeaders)[T][number];

/** Cells by header, for rows that are typed or written. */
export type ByHeader<V, T extends RowsTable = RowsTable> = Readonly<Partial<Record<Header<T>, V>>>;
