/**
 * Bring an older caseload up to date: a new workbook by the present description, with everything that the clinic has
 * entered. The old one is not touched, so there is nothing to take back: whoever prefers it goes on with it.
 *
 *   if (isOlder(overview)) …
 *   const maker = await setUp.load();
 *   const older = await maker.surveyOlder(workbook);
 *   show(previewOfOlder(older));
 *   await openNew(maker.describeAnew(older, today), name);
 */
import type { Carried } from "../../../src/caseload/carried";
import type { OptionalGroup } from "../../../src/caseload/column";
import type { RowsTable } from "../../../src/caseload/names";
import type { ClinicSettingName } from "../../../src/settings/index";

/** What a new workbook does not take, cell by cell or by name: told before anything is made. */
export interface Left {
  /** Typed where the caseload has a formula: worked out there. */
  readonly typedOver: readonly string[];
  /** Errors: blank there. */
  readonly errors: readonly string[];
  /** Columns of the clinic's own that hold formulas. */
  readonly ownFormulas: readonly string[];
  /** Formulas of the clinic's own in typed columns: their value is taken as it stands. */
  readonly fixed: readonly string[];
  readonly sheets: readonly string[];
}

export interface OlderCaseload {
  readonly schema: number;
  readonly groups: readonly OptionalGroup[];
  readonly carried: Carried;
  /** Headers that people see, and that the older one does not have. */
  readonly newColumns: { readonly [T in RowsTable]: readonly string[] };
  readonly newSettings: readonly ClinicSettingName[];
  readonly left: Left;
}
