/**
 * Which description of a caseload a workbook was set up by. The number stands on the sheet Clinic settings under a name; a
 * new one is given whenever released workbooks would lack a column, a setting or a rule that stands here.
 */
import type { RowsTable } from "./names";

/** The description as it stands here. */
export const SCHEMA = 2;

/** A name in people's workbooks. Never renamed. */
export const SCHEMA_NAME = "Caseload_Schema";
export const SCHEMA_LABEL = "Number of this caseload's description";

/** Of workbooks that have no such name: those that 0.1.0 set up. */
export const FIRST_SCHEMA = 1;

/** What a caseload of that number says that those before it do not. */
export const news: readonly { readonly schema: number; readonly says: readonly string[] }[] = [
  {
    schema: 2,
    says: [
      "To do names what can happen at the bedside first: an empty balloon stands before a date that is over.",
      "What a check leaves in the balloon counts: left empty, above the label, not the agreed fill, put in not known.",
      "The site is read: tight or stuck, infected, leaking and overgrown are words of To do.",
      "On hold and in hospital are asked about after the clinic's own days: new column Status since.",
      "The lists can be sorted by To do, the most urgent row first.",
      "Formulas that run in Excel 2019 and LibreOffice too.",
    ],
  },
];

/** Hidden columns of formulas that released workbooks have and this description may not: nothing of anybody's own. */
export const formerHidden: { readonly [T in RowsTable]: readonly string[] } = {
  tubes: [
    ...["Person", "Key", "Live", "Newest", "Gaps of person and dates", "Gaps of device"],
    "Gaps of balloon, weight and spare",
  ],
  checks: ["Person", "Key", "Tube", "Tag", "Before", "Label mL", "Measured", "Measured before", "Loose"],
  changes: ["Person", "Key"],
};
