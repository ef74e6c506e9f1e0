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
import type { RecipeGroup, RecipeKey, RowProblem } from "../../../src/columns/recipes/recipe";
import type { Role } from "../../../src/columns/role";
import type { Area, Place, SheetId, Value } from "../../workbook/port";
import type { Planned, Problem } from "../action";
import type { SheetNumbers } from "./sheet-numbers";
import type { ShownDates } from "../list/shown-dates";

/** Which list is meant. Left out: the one in which the selection stands, or the nearest. */
export interface Wish {
  /** The key of a list in `survey.lists`. */
  readonly list?: string;
  /** Somebody's correction of a plain list: sheet rows from 1. Only with `list`. */
  readonly headerRow?: number;
  readonly lastRow?: number;
}

/** What the pane tells the survey. */
export interface Asked extends Wish {
  /** Today as a day number (1 = 1 January 1900); used where the workbook has no name As_of. */
  readonly today: number;
}

/** One list that could be chosen: a table, or the plain list of a sheet. */
export interface ListChoice {
  readonly key: string;
  /** "table Caseload on sheet Adults", "list on sheet Adults". */
  readonly label: string;
}

/** Something to know that does not stand in the way. */
export interface Notice {
  readonly sentence: string;
}

export interface ColumnSurvey {
  readonly index: number;
  readonly header: string;
  /** "D". */
  readonly letters: string;
  /** A few values as a person would see them, to recognise the column by. */
  readonly samples: readonly string[];
  /** Cells that hold something. */
  readonly filled: number;
  /** Another column has the same header: it cannot be used until one is renamed. */
  readonly sharesHeader: boolean;
  /** Made by this add-in before. */
  readonly isOurs: boolean;
}

export interface Guess {
  readonly column: number;
  /** A fragment: "header 'Last change'; 38 of 40 values are dates". */
  readonly because: string;
}

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

/** Whether a column can be added to this list, before anything is chosen. */
export interface RecipeSurvey {
  readonly key: RecipeKey;
  readonly label: string;
  readonly header: string;
  readonly help: string;
  /** What it needs. A kind that must be said is left out: see `needsKinds`. */
  readonly needs: readonly { readonly role: Role; readonly optional: boolean }[];
  readonly needsKinds: boolean;
  /** Shown where it is chosen: how a wrong reading could hurt. */
  readonly caution: string | null;
  readonly group: RecipeGroup;
  /** The lengths in stock must be said. */
  readonly needsLengths: boolean;
  /** Why it cannot be had here (somebody's own column of that name; 1904); null where it can. */
  readonly refused: string | null;
  /** Added by us before: ticked, it is written anew instead of a second time. */
  readonly present: PresentColumn | null;
}

/** A column of ours that stands in the list already. */
export interface PresentColumn {
  /** Counted from 0 within the list. */
  readonly column: number;
  readonly header: string;
  readonly letters: string;
  /** Sheet rows from 1 in which something else than our formula stands. */
  readonly typed: readonly number[];
  /** Our formula as it stands in the first row that has it. */
  readonly formula: string;
}

export interface SurveyedList {
  readonly key: string;
  readonly label: string;
  readonly in: "table" | "sheet";
  /** The table's name; null for a plain list. */
  readonly table: string | null;
  readonly sheet: SheetId;
  readonly sheetName: string;
  /** From the header row to the last data row (a totals row is left out). */
  readonly area: Area;
  /** Sheet rows from 1, as people see them. */
  readonly headerRow: number;
  readonly firstRow: number;
  readonly lastRow: number;
  /** How it was found and how sure that is, for plain lists: "header in row 6; 120 rows, to row 126". */
  readonly found: { readonly sentence: string; readonly sure: boolean };
  readonly columns: readonly ColumnSurvey[];
  readonly guesses: { readonly [R in Role]?: Guess };
  readonly recipes: readonly RecipeSurvey[];
  /** Nothing can be added while one of these stands. */
  readonly obstacles: readonly Problem[];
  readonly notices: readonly Notice[];
  /** Every row below the header as it stands, blank ones included; for `kindWords` and `plan`. */
  readonly rows: readonly (readonly Value[])[];
  /** Sheet row (from 1) of each of `rows`. */
  readonly rowNumbers: readonly number[];
  /** Numbers that their cells show as dates where the column is not taken for dates. */
  readonly shownDates: ShownDates;
  /** How many cells to the right of the list are empty over its whole height, at most the number of recipes. */
  readonly room: number;
  /** What was read to the right of the list stands here, as addresses ("H5"), nearest first. */
  readonly inTheWay: readonly string[];
  readonly hasTotals: boolean;
  /** The cells of the header row as they stand: a text in a cell merged upwards is blank here. */
  readonly headerTexts: readonly string[];
  /** The row under a plain list holds nothing in the list's columns. */
  readonly isEmptyBelow: boolean;
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

/** The day that the states count from. */
export interface AsOf {
  readonly day: number;
  /** "name": the workbook has the name As_of. "today": it will be put in as =TODAY(). */
  readonly from: "name" | "today";
  /** The workbook uses the name As_of for something that is no date; null where all is well. */
  readonly refused: string | null;
}

/** How the kind of each row is known. */
export type KindChoice =
  /** Words not in the record are not known. */
  | { readonly from: "words"; readonly words: Readonly<Record<string, KindKey>> }
  /** Said by a person, never assumed. */
  | { readonly from: "everyone"; readonly kind: KindKey };

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
  /** What becomes of a column that stands there already; null for a new one. */
  readonly refresh: RefreshPreview | null;
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
  readonly columns: readonly ColumnPreview[];
  readonly numbers: readonly NumberUsed[];
  /** Where the lengths in stock are used: these, as they stand in the formula. */
  readonly lengths: readonly number[] | null;
  /** Columns of the list from `list.area.left`; where the new ones will stand. */
  readonly place: { readonly sheet: SheetId; readonly area: Area };
}
