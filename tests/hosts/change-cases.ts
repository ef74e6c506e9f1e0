/**
 * What the column "Change" must say, case by case, typed by hand from its rule (design: "Change" in the ready-made
 * caseload; bad news first, nothing missing or contradictory reads as reassuring). Every engine that works out the
 * formula is held to this one table: the core's own rule, and the embedded grid.
 */
import { day } from "../../src/worksheet/dates";

/** A cell of a case: a value, or a formula (with "=") that gives an error. */
export type CaseCell = number | string | boolean | null;

export interface ChangeCase {
  readonly why: string;
  readonly due: CaseCell;
  readonly latest: CaseCell;
  readonly last: CaseCell;
  readonly gives: string;
}

/** The day that counts as today in all cases. */
export const CASES_AS_OF = day("2026-06-01");

const d = day;
const ERROR = "=NA()";

const cases: readonly (readonly [why: string, due: CaseCell, latest: CaseCell, last: CaseCell, gives: string])[] = [
  ["due long ago, limit gone by", d("2026-01-10"), d("2026-04-10"), d("2025-10-10"), "past limit"],
  ["limit was yesterday", d("2026-05-20"), d("2026-05-31"), d("2026-02-20"), "past limit"],
  ["limit is today: not yet past", d("2026-05-20"), d("2026-06-01"), d("2026-02-20"), "overdue"],
  ["due yesterday", d("2026-05-31"), d("2026-08-31"), d("2026-02-28"), "overdue"],
  ["due today", d("2026-06-01"), d("2026-09-01"), d("2026-03-01"), "due soon"],
  ["due today, a time of day beside it", d("2026-06-01") + 0.5, d("2026-09-01"), d("2026-03-01"), "due soon"],
  ["due on the last day of soon", d("2026-06-15"), d("2026-09-15"), d("2026-03-15"), "due soon"],
  ["the same with a time of day", d("2026-06-15") + 0.9, d("2026-09-15"), d("2026-03-15"), "due soon"],
  ["due a day after soon", d("2026-06-16"), d("2026-09-16"), d("2026-03-16"), "later"],
  ["no limit known", d("2026-06-16"), null, d("2026-03-16"), "later"],
  ["no last change mapped or entered", d("2026-06-16"), d("2026-09-16"), null, "later"],
  ["limit before the due date and soon", d("2026-09-16"), d("2026-06-10"), d("2026-03-16"), "due soon"],
  ["limit before the due date and gone by", d("2026-09-16"), d("2026-05-10"), d("2026-03-16"), "past limit"],
  ["limit given as 0 by a link to a blank", d("2026-06-16"), 0, d("2026-03-16"), "later"],
  ["due given as 0 by a link to a blank", 0, null, null, "no date"],
  ["nothing at all", null, null, null, "no date"],
  ["due is spaces", "   ", null, d("2026-03-16"), "no date"],
  ["no date, said in the due column", "no date", "no date", null, "no date"],
  ["kind not known", "kind not known", "kind not known", d("2026-03-16"), "kind not known"],
  ["the same in capitals and spaces", " Kind not  known ", null, d("2026-03-16"), "kind not known"],
  ["no routine change, limit far off", "no set change", d("2027-06-01"), d("2025-06-01"), "no set change"],
  ["no routine change, limit gone by", "no set change", d("2026-05-31"), d("2024-05-31"), "past limit"],
  ["no routine change, no limit", "no set change", "no set change", d("2025-06-01"), "no set change"],
  ["due is another text", "see letter", null, d("2026-03-16"), "no date"],
  ["due is an ISO text: not a date in this column", "2026-01-10", null, d("2025-10-10"), "no date"],
  ["due is TRUE", true, null, null, "no date"],
  ["due is an error", ERROR, d("2026-09-16"), d("2026-03-16"), "check date"],
  ["limit is an error", d("2026-06-16"), ERROR, d("2026-03-16"), "check date"],
  ["last change is an error", d("2026-06-16"), d("2026-09-16"), ERROR, "check date"],
  ["last change tomorrow", d("2026-09-02"), d("2026-12-02"), d("2026-06-02"), "check date"],
  ["last change today", d("2026-09-01"), d("2026-12-01"), d("2026-06-01"), "later"],
  ["last change today at noon", d("2026-09-01"), d("2026-12-01"), d("2026-06-01") + 0.5, "later"],
  ["last change tomorrow as ISO text", d("2026-09-02"), d("2026-12-02"), "2026-06-02", "check date"],
  ["the same with spaces and a time", d("2026-09-02"), d("2026-12-02"), " 2026-06-02T09:00 ", "check date"],
  ["last change in 2052 as ISO text", d("2052-06-04"), d("2052-09-04"), "2052-03-04", "check date"],
  ["last change in the past as ISO text", d("2026-06-16"), d("2026-09-16"), "2026-03-16", "later"],
  ["last change today as ISO text", d("2026-09-01"), d("2026-12-01"), "2026-06-01", "later"],
  ["last change in the future, limit gone by", d("2026-05-02"), d("2026-05-20"), d("2026-06-02"), "check date"],
  ["last change a text that nobody can read", d("2026-09-01"), d("2026-12-01"), "see letter", "check date"],
  ["last change day first, overdue all the same", d("2026-05-01"), d("2026-12-01"), "01/02/2026", "overdue"],
  ["last change typed as 20260514", d("2026-08-14"), null, 20260514, "check date"],
  ["due exactly 60 months away", d("2031-06-01"), null, null, "later"],
  ["due 60 months and a day away", d("2031-06-02"), null, null, "check date"],
  ["limit 60 months and a day away", d("2026-07-01"), d("2031-06-02"), null, "check date"],
  ["due is 14: a size in the wrong column", 14, null, null, "check date"],
  ["due is negative", -3, null, null, "check date"],
  ["due in 1926", d("1926-05-01"), null, null, "overdue"],
  ["limit is an unread text", d("2026-09-16"), "2026-05-01", d("2026-03-16"), "check date"],
  ["limit is an unread text, overdue all the same", d("2026-05-16"), "May", d("2026-03-16"), "overdue"],
  ["limit says kind not known", d("2026-09-16"), "kind not known", d("2026-03-16"), "later"],
  ["a star in the due column matches nothing", "*", null, null, "no date"],
  ["stars in the limit match nothing", d("2026-09-16"), "*", null, "check date"],
  ["question marks in place of dashes", d("2026-09-16"), null, "2027?01?03", "check date"],
];

export const changeCases: readonly ChangeCase[] = cases.map(([why, due, latest, last, gives]) => ({
  why,
  due,
  latest,
  last,
  gives,
}));
