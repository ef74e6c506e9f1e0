/**
 * Somebody's own list, as every job on it sees it: which lists there are, what stands in one, what could be added.
 *
 * Columns are counted from 0 within the list; rows named in sentences and `rows` are sheet rows as people see them,
 * from 1.
 */
import type { RecipeGroup, RecipeKey } from "../../../src/columns/recipes/recipe";
import type { Remembered } from "../../../src/columns/remembered";
import type { Role } from "../../../src/columns/role";
import type { Area, SheetId, Value } from "../../workbook/port";
import type { Problem } from "../action";
import type { ShownDates } from "./shown-dates";

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
  /** What was said of it before goes first. */
  readonly guesses: { readonly [R in Role]?: Guess };
  /** What the workbook keeps of this list; null where it keeps nothing. */
  readonly remembered: Remembered | null;
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

/** The day that the states count from. */
export interface AsOf {
  readonly day: number;
  /** "name": the workbook has the name As_of. "today": it will be put in as =TODAY(). */
  readonly from: "name" | "today";
  /** The workbook uses the name As_of for something that is no date; null where all is well. */
  readonly refused: string | null;
}
