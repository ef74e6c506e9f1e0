/** Rows of the caseload's tables as they are typed, without the columns that are worked out. */
import type { Cell } from "../worksheet/cell";
import type { ByHeader } from "./headers";
import type { RowsTable } from "./names";

/** By header; a header that is left out is a blank cell. */
export type CaseloadRow<T extends RowsTable = RowsTable> = ByHeader<Cell, T>;

export type CaseloadRows = { readonly [T in RowsTable]: readonly CaseloadRow<T>[] };
