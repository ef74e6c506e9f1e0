/** What was written, and where it stands now. */
import type { Area, Value } from "../port";
import type { Target } from "./target";

export interface Written {
  readonly target: Target;
  /** False where nothing had to be done. */
  readonly changed: boolean;
  /** Row by row, as the host tells them; a name's is its one `refersTo`. */
  readonly formulas: readonly (readonly (string | null)[])[];
  /**
   * What rows and named cells held when the whole change was done (not only this step: a later one may have changed the
   * same row); formulas as of the same moment. Where cells of a column were changed: what told its rows apart. Left out
   * for other kinds.
   */
  readonly values?: readonly (readonly Value[])[];
}

/** Where something written stands now, and the cells in which it differs. */
export interface Standing<W extends Written = Written> {
  readonly written: W;
  /** New columns only, header to totals row; the rows; the cell; for removed rows the data rows left; null for a name. */
  readonly area: Area | null;
  readonly differing: readonly string[];
}
