/** What a row's rules see beyond their own row: today, the settings, the other rows and tables. */
import type { SheetValue } from "../columns/sheet-block";
import type { ClinicSettingName } from "../settings/index";
import type { RowCells } from "./column";

export interface Tables {
  readonly tubes: readonly RowCells[];
  readonly checks: readonly RowCells[];
  readonly changes: readonly RowCells[];
}

/** A line of the settings sheet's table of reasons for a change. */
export interface ReasonCells {
  readonly word: SheetValue;
  readonly failed: SheetValue;
  readonly unplanned: SheetValue;
}

export interface Sight extends Tables {
  readonly asOf: number;
  /** What stands in the setting's cell. */
  readonly setting: (name: ClinicSettingName) => SheetValue;
  /** A setting as a number; a blank or a text counts as 0, as in a formula that has been asked first. */
  readonly number: (name: ClinicSettingName) => number;
  /** Whether all numbers of a family can be used (src/caseload/ready.ts). */
  readonly isReady: (family: Family) => boolean;
  /** Whether a column of Tubes in use was not left out. */
  readonly has: (header: string) => boolean;
  readonly reasons: readonly ReasonCells[];
  /** Rows by the text of one of their columns, in rising order. */
  readonly rowsWith: (table: keyof Tables, header: string, value: SheetValue) => readonly number[];
}

export type Family = "change" | "balloon" | "opening" | "fit" | "entries" | "review";
