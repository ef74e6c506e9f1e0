/**
 * Add columns: what the pane gets and gives.
 *
 *   const survey = await addColumns.survey(workbook, { today });        // what is there, what was guessed
 *   const plan = addColumns.plan(survey, choices);                      // start from survey.proposal
 *   const receipt = await workbook.apply(plan.change, progress);
 *   const words = addColumns.afterwards(plan, receipt);
 *
 * Columns are counted from 0 within the list; rows named in sentences and `rows` are sheet rows as people see them,
 * from 1.
 */
import type { SettingName } from "../../../src/settings/index";
import type { KindKey } from "../../../src/settings/kinds";
import type { Setting } from "../../../src/settings/setting";
import type { Dialect, RecipeKey, RowProblem } from "../../../src/columns/recipes/recipe";
import type { Role } from "../../../src/columns/role";
import type { Area, Place, SheetId } from "../../workbook/port";
import type { Planned } from "../action";
import type { AsOf, ListChoice, SurveyedList } from "../list/interface";
import type { SheetNumbers } from "./sheet-numbers";

/** One way in which a kind of tube is written in the list, and in how many rows. */
export interface KindWord {
  /** Identity of the word: letter case and outer spaces do not count. */
  readonly key: string;
  /** As first written in the list. */
  readonly word: string;
  readonly rows: readonly number[];
  /** Null: no guess, which is better than a wrong one. */
  readonly guess: KindKey | null;
  /** Why this one cannot be given a kind (too long, a line break in it); null where it can. */
  readonly refused: string | null;
}

export interface Survey {
  /** Everything that could be chosen; empty where there is no list at all. */
  readonly lists: readonly ListChoice[];
  /** The chosen or found one; null where there is none. */
  readonly list: SurveyedList | null;
  /** What was found, or why nothing was, in a sentence. */
  readonly sentence: string;
  readonly asOf: AsOf;
  readonly dateSystem: 1900 | 1904 | null;
  /** Numbers that the workbook holds under the names of settings. */
  readonly numbers: SheetNumbers;
  /** Where to start: guesses put in, nothing ticked. */
  readonly proposal: Choices;
}

/** How the kind of each row is known. */
export type KindChoice =
  /** Words not in the record are not known. */
  | { readonly from: "words"; readonly words: Readonly<Record<string, KindKey>> }
  /** Said by a person, never assumed. */
  | { readonly from: "everyone"; readonly kind: KindKey };

/** Which formulas are written: Excel's own wherever they say the same of every row, or one sort for all columns. */
export type FormulaChoice = "plain where the same" | Dialect;

export interface Choices {
  /** Ticked columns; they are added in the order of `list.recipes`, whatever the order here. */
  readonly recipes: readonly RecipeKey[];
  /** Which column of the list is what; null or left out: none. */
  readonly columns: { readonly [R in Role]?: number | null };
  readonly kinds: KindChoice;
  /** Numbers that differ from their settings' defaults; those that stand on a settings sheet are changed there. */
  readonly numbers: { readonly [N in SettingName]?: number };
  /** Lengths of low-profile tubes in stock, cm, ascending; empty until somebody has said them. */
  readonly lengths: readonly number[];
  readonly formulas: FormulaChoice;
}

/** Rows that share a reason. */
export interface RowGroup {
  readonly severity: RowProblem["severity"];
  /** What those cells will show. */
  readonly shows: string;
  readonly reason: string;
  readonly rows: readonly number[];
  /** "9 rows have no last change (rows 14, 52, 60 and 6 more): no date". */
  readonly sentence: string;
}

export interface ColumnPreview {
  readonly key: RecipeKey;
  readonly header: string;
  /** Rows with a usable answer. */
  readonly filled: number;
  readonly of: number;
  /** Unusable first, most rows first; then doubts. */
  readonly groups: readonly RowGroup[];
  /** How many rows would show each word, bad news first; empty for columns of dates and numbers. */
  readonly counts: readonly { readonly word: string; readonly rows: number }[];
  /** The formula as it will stand in the first row, without a leading "=". */
  readonly formula: string;
  readonly written: WrittenIn;
  /** What becomes of a column that stands there already; null for a new one. */
  readonly refresh: RefreshPreview | null;
}

/** How a column's formula is written, and why. */
export interface WrittenIn {
  readonly dialect: Dialect;
  /** Rows that only our function reads; of a plain formula they get an error. */
  readonly rows: readonly number[];
  /** What stands there, a fragment: "water out is a text". Null where there is no such row. */
  readonly because: string | null;
}

export interface RefreshPreview {
  /** As it stands; it may have been renamed. */
  readonly header: string;
  /** Rows that will show something else than now. */
  readonly changing: readonly number[];
  /** Rows in which somebody has typed over the formula: what they typed goes. */
  readonly typed: readonly number[];
  /** What that means, sentence by sentence; what goes comes first. */
  readonly sentences: readonly string[];
}

export interface NumberUsed {
  readonly setting: Setting<SettingName>;
  readonly value: number;
  /**
   * - "here": shown, to be changed, written into the formulas.
   * - "sheet": stands on the workbook's settings sheet; formulas point to it.
   * - "function": part of the worksheet function.
   */
  readonly from: "here" | "sheet" | "function";
  /** Why what stands on the settings sheet is not used; null where there is nothing to say. */
  readonly remark: string | null;
}

export interface AddColumnsPlan extends Planned {
  readonly list: { readonly label: string; readonly place: Place };
  /** Those of `says` that the press says too: they may stand one press away. */
  readonly routine: readonly string[];
  readonly columns: readonly ColumnPreview[];
  readonly numbers: readonly NumberUsed[];
  /** Where the lengths in stock are used: these, as they stand in the formula. */
  readonly lengths: readonly number[] | null;
  /** Columns of the list from `list.area.left`; where the new ones will stand. */
  readonly place: { readonly sheet: SheetId; readonly area: Area };
}
