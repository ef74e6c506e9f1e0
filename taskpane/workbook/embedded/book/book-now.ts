import type { Workbook as GridWorkbook } from "@univerjs/core";
import type { SheetId } from "../../port";
import type { OpeningResults } from "../save/sheet-edits";
import type { BookFacts } from "./facts";
import type { SheetReader } from "./sheet-reader";
import type { TableNow } from "./tables";

/** The workbook that stands in the grid (live-book.ts), as those see it who work results out beside the engine. */
export interface BookNow {
  readonly unit: string;
  readonly book: GridWorkbook;
  /** False once the grid is gone. */
  readonly isThere: boolean;
  readonly bookFacts: BookFacts;
  /** Names that are a plain day here and TODAY() in a file, in lower case. */
  readonly namesForToday: ReadonlySet<string>;
  readonly todayNow: number;
  /** Results that differed from the file's right after opening. */
  readonly atOpening: ReadonlyMap<SheetId, OpeningResults>;
  readonly reader: (sheet: SheetId) => SheetReader;
  readonly tables: () => readonly TableNow[];
}
