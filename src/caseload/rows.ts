/** Rows of the caseload's tables as they are typed, without the columns that are worked out. */
import type { Cell } from "../worksheet/cell";

/** By header; a header that is left out is a blank cell. */
export type CaseloadRow = Readonly<Record<string, Cell>>;

export interface CaseloadRows {
  readonly tubes: readonly CaseloadRow[];
  readonly checks: readonly CaseloadRow[];
  readonly changes: readonly CaseloadRow[];
}
