/**
 * Convert sizes: what the pane gets and gives.
 *
 *   const survey = await convertSizes.survey(workbook, { today });      // the list, the selected cells, what was guessed
 *   const plan = convertSizes.plan(survey, choices);                    // start from survey.proposal
 *   const cells = spillCells(survey, choices);                          // where one formula would fill down
 *   const plan = convertSizes.plan(survey, choices, cells && (await roomFor(workbook, cells)));
 *   const receipt = await workbook.apply(plan.change, progress);
 *   const words = convertSizes.afterwards(plan, receipt);
 *
 * Columns are counted from 0 within the list; rows that people are told are sheet rows, from 1.
 */
import type { Area, Overview, SheetId, Value } from "../../workbook/port";
import type { Planned } from "../action";
import type { Asked, ListChoice, SurveyedList } from "../list/interface";

export type { Asked };

/** "toMm": French to millimetres. */
export type Way = "toMm" | "toFr";

/** One column of cells that hold sizes. */
export interface SizeCells {
  readonly sheet: SheetId;
  readonly area: Area;
  readonly values: readonly Value[];
  /** By place among the values: numbers that their cells show as dates. */
  readonly shownDates: ReadonlyMap<number, string>;
}

export interface SizesSurvey {
  readonly lists: readonly ListChoice[];
  readonly list: SurveyedList | null;
  /** What was found, or why nothing was, in a sentence. */
  readonly sentence: string;
  /** Selected cells of one column that are not just a list's whole column; null where there are none. */
  readonly selected: SizeCells | null;
  readonly book: Pick<Overview, "sheets" | "tables">;
  readonly proposal: Choices;
}

/** Cells where a formula would fill down. */
export interface SpillCells {
  readonly sheet: SheetId;
  readonly area: Area;
}

/** Such cells, and what stands in them now. */
export interface Room extends SpillCells {
  /** As addresses; empty where all is free. */
  readonly inTheWay: readonly string[];
}

export interface Choices {
  readonly way: Way;
  readonly from: { readonly of: "column"; readonly column: number | null } | { readonly of: "selected" };
  /** "beside": a new column of the list, one formula a row. "spill": one formula that fills down from a cell. */
  readonly put: "beside" | "spill";
  /** The first cell of a spill, "H2"; only read where `put` is "spill". */
  readonly start: string;
}

/** A cell to look at. */
export interface SizeCell {
  /** "C14" */
  readonly address: string;
  /** The sheet row, from 1. */
  readonly row: number;
  /** What stands there, as a person would know it again. */
  readonly text: string;
}

/** Cells that share a reason. */
export interface SizeGroup {
  /** In plain words: "G means gauge; write Fr". */
  readonly reason: string;
  readonly cells: readonly SizeCell[];
}

/** What becomes of each cell. */
export interface Reading {
  readonly of: number;
  /** Read, doubtful ones included. */
  readonly read: number;
  readonly blank: number;
  readonly notRead: number;
  readonly doubtful: number;
  /** Not read, most cells first. */
  readonly unread: readonly SizeGroup[];
  /** Read, but somebody should look. */
  readonly doubts: readonly SizeGroup[];
}

export interface SizesPlan extends Planned {
  readonly reading: Reading;
  /** Where the sizes stand. */
  readonly source: { readonly sheet: SheetId; readonly area: Area };
  /** Where the answers will stand. */
  readonly place: { readonly sheet: SheetId; readonly area: Area };
  /** The formula as it will stand in the first cell, with "=". */
  readonly formula: string;
  /** Of the new column; null for a spill. */
  readonly header: string | null;
}
