/** What a person types into a cell, before the grid makes something of it. */
import type { ICellData } from "@univerjs/core";
import { AFTER_CELL_EDIT, SheetInterceptorService } from "@univerjs/sheets";
import type { Engine } from "./engine";
import { mayBeStructured, structuredToA1 } from "./formulas/structured";
import type { DayFirst } from "./interface";
import { geometryNow } from "./tables";
import { typedDate } from "./typedDate";
import type { GridWorkbookPort } from "./workbook";

export interface TypingRules {
  readonly workbook: GridWorkbookPort;
  readonly dayFirst: () => DayFirst;
  readonly say: (sentence: string) => void;
  readonly hush: () => void;
}

/** Before the grid's own reading of numbers and dates, which has the priority 0. */
const FIRST = 1000;

const TEXT_FORMAT = "@";
const DATE_FORMAT = "d mmm yyyy";
/** Codes with a day or a year in them, outside quotes and brackets. */
const looksLikeDate = (pattern: string): boolean => /[dy]/i.test(pattern.replace(/"[^"]*"|\[[^\]]*\]|\\./g, ""));

export function watchTyping(engine: Engine, rules: TypingRules): void {
  const { workbook, say } = rules;
  engine.injector.get(SheetInterceptorService).writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    id: "gastrostomy.typing",
    priority: FIRST,
    handler: (cell, context, next) => {
      if (!cell) return next(cell);
      rules.hush();
      const { row, col, worksheet, subUnitId } = context;
      const before = (): ICellData => ({ ...worksheet.getCellRaw(row, col) });
      if (typeof cell.f === "string") return next(withA1(cell, subUnitId, row, col));
      const typed = cell.p?.body?.dataStream.replace(/\r\n$/, "") ?? cell.v;
      const pattern = workbook.reader(subUnitId).format(row, col);
      if (typeof typed !== "string" || pattern === TEXT_FORMAT || typed.startsWith("'")) return next(cell);
      const date = typedDate(typed, rules.dayFirst());
      if (date.kind === "other") return next(cell);
      if (date.kind === "refused") {
        say(date.sentence);
        return next(before());
      }
      const style = worksheet.getComposedCellStyle(row, col);
      const format = looksLikeDate(pattern)
        ? {}
        : { s: { ...style, n: { pattern: date.time ? `${DATE_FORMAT} h:mm` : DATE_FORMAT } } };
      return next({ ...cell, ...format, p: null, v: date.serial, t: 2 });
    },
  });

  function withA1(cell: ICellData, sheet: string, row: number, column: number): ICellData {
    const tables = workbook.tables().map(geometryNow);
    const text = cell.f!.replace(/^=/, "");
    if (!mayBeStructured(text, tables)) return cell;
    const sheetName = workbook.book.getSheetBySheetId(sheet)!.getName();
    const written = structuredToA1(text, tables, { sheetName, row, column });
    if (written === undefined) {
      say(`The column named in =${text} was not found. Check its spelling.`);
      return cell;
    }
    return { ...cell, f: `=${written}` };
  }
}
