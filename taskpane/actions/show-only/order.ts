/** The list in the order of urgency: for the caseload's list of tubes, which has a key for it. */
import { sortKey, TO_DO } from "../../../src/caseload/sort-key";
import { showOnly as words } from "../../texts/show-only";
import type { Sorted } from "../../workbook/port";
import type { Afterwards } from "../action";
import type { SurveyedList } from "../list/interface";

/** The table and the column to sort it by; null where the list has none. */
export function urgencyOrder({ table, columns }: SurveyedList): { readonly table: string; readonly by: string } | null {
  const by = table === null ? null : sortKey(table, TO_DO);
  const has = (wanted: string) => columns.some(({ header }) => header === wanted);
  return table !== null && by !== null && has(by) && has(TO_DO) ? { table, by } : null;
}

export const afterSorting = (sorted: Sorted): Afterwards => ({
  outcome: sorted.outcome === "sorted" ? "done" : "refused",
  sentences: [sorted.outcome === "sorted" ? words.order.done(sorted.rows) : sorted.sentence],
  where: null,
  canTakeBack: false,
});
