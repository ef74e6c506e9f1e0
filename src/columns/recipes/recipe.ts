/** A column that can be added to somebody's own list: one object in one file. */
import type { SettingName } from "../../settings/index";
import type { KindKey } from "../../settings/kinds";
import type { Cell } from "../../worksheet/cell";
import type { CellError, SheetError } from "../../worksheet/error";
import type { ColumnSlot, FormulaTemplate } from "../formula";
import type { Role } from "../role";

/** What a column is about; the headings on screen, in this order. */
export const recipeGroups = ["Change", "Opening", "Size", "Balloon", "Fit"] as const;
export type RecipeGroup = (typeof recipeGroups)[number];

export type RecipeKey =
  | "changeDue"
  | "atTheLatest"
  | "change"
  | "tract"
  | "balloonLoss"
  | "balloon"
  | "checkDue"
  | "sizeMm"
  | "frFromMm"
  | "fit"
  | "lengthToOrder"
  | "play"
  | "mark";

/** How the kinds of a list are known. Words are keyed as `wordKey` makes them; a word left out is not known. */
export type KindSource =
  | { readonly from: "words"; readonly words: ReadonlyMap<string, KindKey> }
  /** Somebody has said so of everyone on the list. */
  | { readonly from: "everyone"; readonly kind: KindKey };

/** How a column's formula is written: with Excel's own functions alone, or with ours. Both say the same of plain cells. */
export type Dialect = "plain" | "ours";

/** All that a recipe may know beside a row's own cells. */
export interface Using {
  /** Left out: ours. */
  readonly dialect?: Dialect;
  readonly kinds: KindSource;
  /** The number in use, which may differ from the setting's default. */
  readonly value: (name: SettingName) => number;
  /** How a formula writes that number: plain, or the name of the settings sheet's cell that holds it. */
  readonly written: (name: SettingName) => string;
  /** The day that counts as today, as a day number. */
  readonly asOf: number;
  /** Lengths of low-profile tubes in stock, cm, ascending; somebody's own list, never assumed. */
  readonly lengths?: readonly number[];
}

/** A row's cells by what they mean. A role that no column has is undefined. */
export type RowCells = { readonly [R in Role]?: Cell | CellError };

export type Slots = { readonly [R in Role]?: ColumnSlot };

export interface RowProblem {
  /**
   * - "no answer": nothing usable will stand there.
   * - "kind": what is missing is the kind.
   * - "doubt": there is an answer, but somebody should look.
   */
  readonly severity: "no answer" | "kind" | "doubt";
  /** What the cell will show: a word, an error code, or "" for a blank. */
  readonly shows: string;
  /** A fragment: why. Rows with the same reason are listed together. */
  readonly reason: string;
  /** The function's own, where it is its sentence. */
  readonly error?: SheetError;
}

export interface Need {
  readonly role: Role;
  /** The column can be made without it, and is better with it. */
  readonly optional: boolean;
}

export interface Recipe {
  readonly key: RecipeKey;
  readonly group: RecipeGroup;
  readonly header: string;
  readonly label: string;
  readonly help: string;
  /** What somebody must know who reads this column; shown when it is chosen. Only where a wrong reading could hurt. */
  readonly caution?: string;
  readonly needs: readonly Need[];
  /** The kind of every row must be said: by a mapped column or for everyone. One that is used where kept stands in `needs`. */
  readonly needsKinds: boolean;
  /** The lengths in stock must be said. */
  readonly needsLengths?: boolean;
  /** Worksheet functions in its formula, where it is written with ours; none: Excel's own say it all. */
  readonly functions: readonly string[];
  /** Settings it uses with these kinds. */
  readonly settings: (kinds: KindSource) => readonly SettingName[];
  /** Counts from today: the formula stands on the name As_of. */
  readonly usesAsOf: boolean;
  /** Gives or reads dates, so it is refused where days are counted from 1904. */
  readonly usesDates: boolean;
  /** A number format in Excel's own English codes. */
  readonly format: string;
  /** The words it can show, bad news first; empty for columns of dates and numbers. */
  readonly words: readonly string[];
  /** The formula of every row. Slots of the roles in `needs`; those that no column has are undefined. */
  readonly template: (slots: Slots, using: Using) => FormulaTemplate;
  /** Formulas that earlier versions wrote for this column: still ours, and written anew when it is refreshed. */
  readonly earlier?: Recipe["template"];
  /** What the formula gives for a row, worked out without a grid, for the preview. */
  readonly answer: (row: RowCells, using: Using) => Cell | SheetError | CellError;
  /** Why no usable answer is to be expected; null where one is. */
  readonly problem: (row: RowCells, using: Using) => RowProblem | null;
}
