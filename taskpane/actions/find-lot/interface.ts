/**
 * Find a lot: what the pane gets and gives.
 *
 *   const survey = await surveyLots(workbook, asked);          // every column with lots, row by row
 *   const found = findLots(survey, ["B2291"]);                 // whose devices, what is similar, what cannot be ruled out
 *   const receipt = await workbook.apply(showFound(found, list), progress);
 */
import type { LotCell, WhyOpen } from "../../../src/lots/find";
import type { Likeness } from "../../../src/lots/similar";
import type { Area, SheetId, Value } from "../../workbook/port";

/** What a device of a column of lots is: in use, at home as a spare, out; written in a change only; on somebody's own list. */
export const groups = ["in use", "spare", "past", "put in", "list"] as const;
export type LotGroup = (typeof groups)[number];

/** A list whose rows can be shown and gone to. */
export interface LotList {
  readonly key: string;
  readonly name: string;
  /** Null for a plain list. */
  readonly table: string | null;
  readonly sheet: SheetId;
  readonly area: Area;
  readonly headers: readonly string[];
  readonly headerTexts: readonly string[];
  readonly dataRows: number;
  /** The column that says whose row it is; null where there is none. */
  readonly identifier: number | null;
}

export interface LotRow {
  readonly group: LotGroup;
  readonly list: LotList;
  /** The column that holds its lot, from 0 within the list. */
  readonly column: number;
  /** From 0 below the header. */
  readonly row: number;
  readonly sheetRow: number;
  readonly id: string;
  /** As it stands in the cell of the identifier. */
  readonly idValue: Value;
  readonly cell: LotCell;
  /** The lot as the cell shows it. */
  readonly lot: string;
  /** Which device, in a few words. */
  readonly about: string;
}

/** A column that could hold lots too. */
export interface OtherColumn {
  readonly key: string;
  readonly label: string;
}

export interface LotSurvey {
  /** Round which the years of labels are read. */
  readonly year: number;
  readonly rows: readonly LotRow[];
  /** What was looked in: "Lot and Spare lot in Tubes in use". */
  readonly lookedIn: readonly string[];
  readonly others: readonly OtherColumn[];
  readonly isCaseload: boolean;
}

export interface Similar {
  readonly lot: string;
  readonly why: Likeness;
  readonly rows: readonly LotRow[];
}

export interface FoundLots {
  readonly lots: readonly string[];
  readonly found: readonly LotRow[];
  /** By lot, the most frequent first. */
  readonly similar: readonly Similar[];
  /** Cannot be ruled out. */
  readonly open: readonly (LotRow & { readonly why: WhyOpen })[];
  /** Rows that were looked at. */
  readonly looked: number;
}
