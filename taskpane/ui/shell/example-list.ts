/**
 * A small invented list to try the page with. Nobody stands behind it: identifiers, dates and volumes were made up to
 * show what real lists look like, with mixed kinds, sizes typed in many ways, and gaps.
 */
export const exampleTitle = "Invented example: no real person stands behind any row";

export const exampleHeaders = [
  "Identifier",
  "Kind of tube",
  "Size",
  "Last change",
  "Water put in",
  "Water out",
  "Notes",
];

export interface ExampleRow {
  readonly identifier: string;
  readonly kind: string | null;
  readonly size: string | number | null;
  /** Days before today. */
  readonly lastChange: number | null;
  readonly putIn: number | null;
  readonly out: number | null;
  readonly notes?: string;
}

export const exampleRows: readonly ExampleRow[] = [
  { identifier: "D-001", kind: "Balloon button", size: "14 Fr", lastChange: 40, putIn: 5, out: 4.8 },
  { identifier: "D-002", kind: "balloon button", size: "14FR x 2.3 cm", lastChange: 86, putIn: 5, out: 4.2 },
  { identifier: "D-003", kind: "Balloon G-tube", size: 16, lastChange: 131, putIn: 5, out: 2.4, notes: "call first" },
  { identifier: "D-004", kind: "Bumper PEG, adult", size: "CH 15", lastChange: 410, putIn: null, out: null },
  { identifier: "D-005", kind: "GJ", size: "18 Fr", lastChange: 75, putIn: 7, out: 7 },
  {
    identifier: "D-006",
    kind: "Balloon button",
    size: "12",
    lastChange: null,
    putIn: 4,
    out: null,
    notes: "date not found",
  },
  { identifier: "D-007", kind: "RIG", size: "14 Fr", lastChange: 95, putIn: 5, out: 4.9, notes: "how is it held?" },
  { identifier: "D-008", kind: "Balloon button", size: "14 Fr", lastChange: 201, putIn: 5, out: 0 },
  { identifier: "D-009", kind: "Winged", size: "16F", lastChange: 30, putIn: null, out: null },
  { identifier: "D-010", kind: "Bumper PEG, adult", size: "15-20 Fr", lastChange: 800, putIn: null, out: null },
  { identifier: "D-011", kind: null, size: "14 Fr", lastChange: 60, putIn: 5, out: 5 },
  {
    identifier: "D-012",
    kind: "Balloon G-tube",
    size: "4.7 mm",
    lastChange: null,
    putIn: 5,
    out: 5.2,
    notes: "date: see letter",
  },
];
