/**
 * Where the grid (0.25.1) does the same work over and over on each repaint: a text that could be taken for a number or a
 * date gets a mark in its corner, and to know whether it could, every text in sight is read anew as a date, a time and a
 * number, after each edit and each step of scrolling: half of what asking for the cells costs (measured). What a text
 * could be taken for does not change, so it is read once.
 * tests/hosts/grid/number-marks.test.ts says whether a new version still needs this.
 */
import { getNumfmtParseValueFilter, isRealNum } from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";

/** More than a screen shows and a person scrolls by; then it begins again. */
const KEPT = 20_000;

type Next = (cell: unknown) => unknown;
type Handler = (cell: unknown, place: { readonly rawData?: { readonly v?: unknown } | null }, next: Next) => unknown;

/** The grid does not hand out what sets the mark: it is known by the name of the setting that turns the mark off. */
const setsMark = (handler: unknown): handler is Handler => String(handler).includes("disableForceStringMark");

/** @param read whether a text could be taken for a number or a date */
export function readOnce(handler: Handler, read: (text: string) => boolean): Handler {
  const plain = new Set<string>();
  return (cell, place, next) => {
    const text = place.rawData?.v;
    if (typeof text !== "string") return handler(cell, place, next);
    if (plain.has(text)) return next(cell);
    if (read(text)) return handler(cell, place, next);
    if (plain.size >= KEPT) plain.clear();
    plain.add(text);
    return next(cell);
  };
}

const couldBeNumber = (text: string): boolean => isRealNum(text) || getNumfmtParseValueFilter(text) !== null;

let isHastened = false;

/** Before the grid starts: it asks for its marks with its first workbook. */
export function hastenMarks(): void {
  if (isHastened) return;
  isHastened = true;
  const service = SheetInterceptorService.prototype;
  const { intercept } = service;
  service.intercept = function (this: SheetInterceptorService, point, interceptor) {
    const { handler } = interceptor as { handler?: unknown };
    const isMark = (point as unknown) === INTERCEPTOR_POINT.CELL_CONTENT && setsMark(handler);
    const hastened = isMark ? { ...interceptor, handler: readOnce(handler, couldBeNumber) } : interceptor;
    return intercept.call(this, point, hastened as typeof interceptor);
  };
}
