/** Something that cannot be right in a row of somebody's own list. */
import type { RowCells } from "../columns/recipes/recipe";
import type { Role } from "../columns/role";
import type { KindKey } from "../settings/kinds";

/** What is known of a row beside its cells. */
export interface Known {
  /** Today as a day number. */
  readonly asOf: number;
  /** The kind that the row's word means; null where the word does not say, or there is none. */
  readonly kind: KindKey | null;
}

export interface RowRule {
  /** Columns that it reads: a list without one of them is not asked. */
  readonly reads: readonly [Role, ...Role[]];
  /** The column of the cell to look at. */
  readonly at: Role;
  /** A short fragment: what cannot be right; null where nothing is found. */
  readonly finds: (row: RowCells, known: Known) => string | null;
}
