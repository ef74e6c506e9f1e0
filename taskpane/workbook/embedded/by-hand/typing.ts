/** What a person types into a cell, before the grid makes something of it. */
import { CanceledError, ICommandService, type ICellData } from "@univerjs/core";
import { AFTER_CELL_EDIT, SetRangeValuesCommand, SheetInterceptorService } from "@univerjs/sheets";
import type { Engine } from "../engine";
import { enteredFormula, notEntered } from "./entered-formula";
import { mayBeStructured, structuredToA1 } from "../formulas/structured";
import type { Asks, DayFirst } from "../interface";
import { geometryNow } from "../book/tables";
import { typedDate } from "./typed-date";
import type { GridWorkbookPort } from "../book/workbook";

export interface TypingRules {
  readonly workbook: GridWorkbookPort;
  readonly dayFirst: () => DayFirst;
  readonly say: (sentence: string, asks?: Asks) => void;
  readonly hush: () => void;
}

/** Before the grid's own reading of numbers and dates, which has the priority 0. */
const FIRST = 1000;

const TEXT_FORMAT = "@";
const DATE_FORMAT = "d mmm yyyy";
/** Codes with a day or a year in them, outside quotes and brackets. */
export const looksLikeDate = (pattern: string): boolean => /[dy]/i.test(pattern.replace(/"[^"]*"|\[[^\]]*\]|\\./g, ""));

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
      if (typeof cell.f === "string") {
        const entered = formulaOf(cell, subUnitId, row, col);
        return next(entered ?? before());
      }
      const typed = cell.p?.body?.dataStream.replace(/\r\n$/, "") ?? cell.v;
      const pattern = workbook.reader(subUnitId).format(row, col);
      if (typeof typed !== "string" || pattern === TEXT_FORMAT || typed.startsWith("'")) return next(cell);
      const date = typedDate(typed, rules.dayFirst());
      if (date.kind === "other") return next(cell);
      if (date.kind === "refused") {
        say(notEntered(date.sentence), date.asks);
        return next(before());
      }
      const style = worksheet.getComposedCellStyle(row, col);
      const format = looksLikeDate(pattern)
        ? {}
        : { s: { ...style, n: { pattern: date.time ? `${DATE_FORMAT} h:mm` : DATE_FORMAT } } };
      return next({ ...cell, ...format, p: null, v: date.serial, t: 2 });
    },
  });

  // whatever enters a formula in another way than through the editor: replacing a part of it, say
  engine.injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id !== SetRangeValuesCommand.id || workbook.isAtWork) return;
    const sheets = workbook.sheetNames();
    for (const cell of formulasIn((params as { value?: unknown } | undefined)?.value)) {
      const entered = enteredFormula(cell.f, sheets);
      if ("refused" in entered) {
        say(notEntered(entered.refused));
        throw new CanceledError();
      }
      cell.f = entered.text;
    }
  });

  /** As the engine reads it; undefined where it is none, which has been said then. */
  function formulaOf(cell: ICellData, sheet: string, row: number, column: number): ICellData | undefined {
    const entered = enteredFormula(cell.f!, workbook.sheetNames());
    if ("refused" in entered) {
      say(notEntered(entered.refused));
      return undefined;
    }
    const tables = workbook.tables().map(geometryNow);
    const text = entered.text.replace(/^=/, "");
    if (!mayBeStructured(text, tables)) return { ...cell, f: entered.text };
    const sheetName = workbook.book.getSheetBySheetId(sheet)!.getName();
    const written = structuredToA1(text, tables, { sheetName, row, column });
    if (written === undefined) {
      say(notEntered(`The column named in =${text} was not found. Check its spelling.`));
      return undefined;
    }
    return { ...cell, f: `=${written}` };
  }
}

/** Of one cell, or of cells in rows, however they are kept. */
function formulasIn(value: unknown): { f: string }[] {
  if (typeof value !== "object" || value === null) return [];
  const { f } = value as ICellData;
  if (typeof f === "string") return f.startsWith("=") ? [value as { f: string }] : [];
  if ("v" in value || "p" in value || "s" in value) return [];
  return Object.values(value).flatMap(formulasIn);
}
