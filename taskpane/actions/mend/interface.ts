/**
 * Mend: a column of somebody's own list, brought to what formulas can read, once by wording.
 *
 *   const survey = await mend.survey(workbook, { today });     // the list, and what its columns may hold
 *   const reading = readingOf(survey, choices);                // start from survey.proposal
 *   const plan = mend.plan(survey, choices);
 *   const receipt = await workbook.apply(plan.change, progress);
 *   const words = mend.afterwards(plan, receipt);
 *
 * Columns are counted from 0 within the list; rows that people are told are sheet rows, from 1.
 */
import type { KindKey } from "../../../src/settings/kinds";
import type { DateChoices, DateColumn, OrderProof } from "../../../src/mending/dates";
import type { SizeWording } from "../../../src/mending/sizes";
import type { Area, SheetId } from "../../workbook/port";
import type { Planned } from "../action";
import type { KindWord } from "../add-columns/interface";
import type { AsOf, Asked, ListChoice, SurveyedList } from "../list/interface";

export type { Asked };

/** What a column is mended as. */
export type MendAs = "dates" | "sizes" | "kinds";

/** A column that something can be mended in. */
export interface MendableColumn {
  readonly column: number;
  readonly as: MendAs;
  /** Cells that no formula of ours can read as they stand. */
  readonly open: number;
}

export interface MendSurvey {
  readonly lists: readonly ListChoice[];
  readonly list: SurveyedList | null;
  /** What was found, or why nothing was, in a sentence. */
  readonly sentence: string;
  readonly asOf: AsOf;
  readonly dateSystem: 1900 | 1904 | null;
  /** Most open cells first. */
  readonly mendable: readonly MendableColumn[];
  readonly proposal: MendChoices;
}

export interface MendChoices {
  readonly what: { readonly column: number; readonly as: MendAs } | null;
  /** "beside": a new column. "in place": the cells themselves, what stood in them in a new column. */
  readonly put: "beside" | "in place";
  readonly dates: DateChoices;
  /** By a wording's key: what a person says that the size is. */
  readonly sizes: Readonly<Record<string, string>>;
  /** By a word's key. */
  readonly kinds: Readonly<Record<string, KindKey>>;
}

/** A cell to look at. */
export interface MendCell {
  /** "C14" */
  readonly address: string;
  readonly row: number;
  /** What stands there, cut short where it is long. */
  readonly text: string;
}

/** Cells of which the same is to be said. */
export interface CellGroup {
  readonly reason: string;
  readonly cells: readonly MendCell[];
}

/** One way of writing dates, with what becomes of its first cell. */
export interface DateWay {
  readonly example: string;
  readonly cells: number;
  /** The day that the example becomes; null while it waits for an answer. */
  readonly becomes: number | null;
}

export interface DateQuestions {
  readonly ways: readonly DateWay[];
  /** Null where nothing is open in the order of day and month. */
  readonly order: {
    readonly cells: number;
    readonly proof: OrderProof;
    readonly example: string;
    /** The example read with the day first, and with the month first; its century as answered, else the 2000s. */
    readonly dayFirst: number | null;
    readonly monthFirst: number | null;
  } | null;
  /** Null where every year is written in full. */
  readonly century: { readonly cells: number; readonly example: string; readonly years: DateColumn["years"] } | null;
  /** Real dates in which day and month may have been exchanged; empty where none is suspected. */
  readonly exchanged: readonly MendCell[];
}

/** What becomes of the column's cells with these choices. */
export interface MendReading {
  readonly as: MendAs;
  readonly of: number;
  /** Cells that are changed. */
  readonly changed: number;
  /** Cells that stay as they are because nothing has been said about them yet. */
  readonly waiting: number;
  /** Cells that hold what they should. */
  readonly good: number;
  readonly blank: number;
  /** Cells that are not read, by reason. */
  readonly unread: readonly CellGroup[];
  /** Read, but to be looked at. */
  readonly doubts: readonly CellGroup[];
  readonly dates: DateQuestions | null;
  readonly sizes: readonly SizeWording[] | null;
  readonly kinds: readonly KindWord[] | null;
  /** The new value of each row; null where it stays. */
  readonly results: readonly (number | string | null)[];
}

export interface MendPlan extends Planned {
  readonly reading: MendReading;
  readonly put: MendChoices["put"];
  /** The new column. */
  readonly header: string;
  readonly place: { readonly sheet: SheetId; readonly area: Area };
  /** The column that was mended. */
  readonly from: { readonly sheet: SheetId; readonly area: Area; readonly header: string };
}
