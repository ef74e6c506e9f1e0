/** What is known of the workbook in the grid beyond what the grid itself holds. */
import type { OpenedWorkbook } from "../../package";
import type { SheetId } from "../../port";
import type { Readers } from "../formulas/readable";
import type { TableGeometry } from "../formulas/structured";
import type { OriginStyle } from "../open/styles";

export interface SheetFacts {
  readonly id: SheetId;
  /** As in the file; sheets of a file keep their names (by-hand/guard.ts). */
  readonly name: string;
  readonly kind: "worksheet" | "chart sheet";
  readonly isHidden: boolean;
  readonly isProtected: boolean;
  /** Protected or not. */
  readonly allowsFiltering?: boolean;
  /** The sheet's own filter was on at opening and hid these rows (from 0). */
  readonly filteredRows?: readonly number[];
}

export interface TableFacts {
  /** The grid's table; a table without a header row has none, and stays as it is. */
  readonly gridId: string | null;
  readonly name: string;
  readonly sheet: SheetId;
  /** Where it stood at opening. */
  readonly geometry: TableGeometry;
  /** A filter of this table was on at opening and hid these rows (from 0). */
  readonly filteredRows: readonly number[];
}

export interface BookFacts {
  readonly title: string;
  readonly dateSystem: 1900 | 1904;
  /** The sheet that was in front when the file was written; undefined where it cannot be shown. */
  readonly activeSheet?: SheetId;
  /** In the order of the tabs, chart sheets included. */
  readonly sheets: readonly SheetFacts[];
  readonly tables: readonly TableFacts[];
  /** Names the engine cannot work out: told, never touched. "=" in front. */
  readonly darkNames: readonly { readonly name: string; readonly refersTo: string }[];
  /** Names that are a plain day in the grid and TODAY() in the file, in lower case. */
  readonly todayNames: ReadonlySet<string>;
  /** Cells of a sheet whose formula only the file holds, by row and column. */
  readonly keptAsValue: ReadonlyMap<SheetId, readonly (readonly [row: number, column: number])[]>;
  /** Null for a workbook that was not opened from a file. */
  readonly file: {
    readonly opened: OpenedWorkbook;
    readonly readers: Readers;
    /** By style index, as painted at opening. */
    readonly styles: Readonly<Record<string, OriginStyle>>;
  } | null;
}
