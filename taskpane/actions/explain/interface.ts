/**
 * Explain this cell: what the pane gets.
 *
 *   const said = await explainCell(workbook, functions, locale);
 *
 * Functions come with their documentation, which the pane fetches when it is first needed.
 */
import type { Area, Place, SheetId } from "../../workbook/port";

/** A cell, a name or a figure that something was worked out from. */
export interface Given {
  /** The argument's name, or what was read: "size", "B4". */
  readonly name: string;
  /** What it means; "" where nothing more is known. */
  readonly help: string;
  /** "14 Fr", "3 Mar 2026", "blank", "not worked out here". */
  readonly value: string;
  /** "cell B4, column "Size" in this row", "written in the formula"; "" where that is said already. */
  readonly from: string;
  /** The error speaks of this one. */
  readonly isAtFault: boolean;
}

/** One of our functions in the formula. */
export interface CallExplained {
  /** As it stands in the formula. */
  readonly formula: string;
  /** "TUBE.FRTOMM" */
  readonly name: string;
  readonly summary: string;
  readonly given: readonly Given[];
  /** What it gives, or the sentence of its error. */
  readonly result: string;
  readonly isError: boolean;
  readonly cautions: readonly string[];
}

/** A column of ours, known by its header. */
export interface ColumnExplained {
  readonly header: string;
  readonly kind: "typed" | "list" | "computed";
  readonly help: string;
  readonly caution: string | null;
  /** The words that it can show, bad news first, or that can be chosen; empty for dates and figures. */
  readonly words: readonly string[];
}

export interface Explanation {
  readonly place: { readonly sheet: SheetId; readonly area: Area };
  /** "C5 on 'Adults'" */
  readonly where: string;
  /** The answer in one sentence: what stands there, or why it is an error. */
  readonly headline: string;
  readonly isError: boolean;
  /** What else must be known; what was not worked out comes first. */
  readonly notes: readonly string[];
  /** With "="; null where the cell holds none. */
  readonly formula: string | null;
  readonly column: ColumnExplained | null;
  /** Outermost first. */
  readonly calls: readonly CallExplained[];
  /** What the rest of the formula reads. */
  readonly reads: readonly Given[];
}

/** Nothing to explain: no cell is selected, or it is empty. */
export interface NothingToExplain {
  readonly sentence: string;
}

export type Explained = Explanation | NothingToExplain;

export const isExplanation = (said: Explained): said is Explanation => "headline" in said;

export type { Place };
