/** Goes through a whole worksheet once at opening: checks every cell, and keeps what showing and saving will need. */
import { parseRange, type Range, rangeText } from "../addresses";
import { LAST_COLUMN, LAST_ROW } from "../../xlsx/limits";
import type { ColumnLayout, FilterState, RowLayout, SheetLayout } from "../contents";
import { readFilter } from "../parts/tables";
import { isTrue, wholeNumber } from "../parts/values";
import type { XmlElement } from "../../xlsx/xml/element";
import type { XmlBytes } from "../../xlsx/xml/encoding";
import { damaged } from "../../xlsx/xml/damaged";
import { type CellSurroundings, storedFormula, typeOf, valueOf } from "./cells";
import { RowScanner } from "./scan";
import { CellStore, StoreBuilder, type StoredFormula } from "./store";
import type { RowToken } from "./tokens";
import { childElement, type RowTaker, type SheetFrame, SheetWalk } from "./walk";

export interface SheetFacts {
  readonly isProtected: boolean;
  /** What a protected sheet allows all the same. */
  readonly allowsFiltering: boolean;
  readonly allowsFormattingRows: boolean;
  readonly allowsFormattingColumns: boolean;
  readonly dimension?: string;
  readonly usedRange?: string;
  readonly filter?: FilterState;
  readonly layout: SheetLayout;
  readonly store: CellStore;
  readonly arrays: readonly ArrayPlace[];
  /** The part, and what stands in it beside the rows. */
  readonly frame: SheetFrame;
}

/** Cells that one formula fills: a spilling array, an {=old} one, or a what-if data table. */
export interface ArrayPlace {
  readonly row: number;
  readonly column: number;
  readonly range: Range;
  readonly kind: "array" | "dataTable";
  readonly isDynamic: boolean;
}

/**
 * @param counted told how many cells a row has: it may refuse
 * @param isScanned false: every row is read by the rules of XML, to compare with
 * @returns gives the bytes read so far now and then
 */
export function* inspectSheet(
  part: XmlBytes,
  around: CellSurroundings,
  styleCount: number,
  counted: (cells: number) => void,
  isScanned = true,
): Generator<number, SheetFacts, void> {
  const inspection = new Inspection(part, around, styleCount, counted, isScanned);
  const frame = yield* new SheetWalk(part).run(inspection);
  const { used, rows, arrays, store } = inspection;
  const child = (local: string): XmlElement | undefined => childElement(frame, local);
  const protection = child("sheetProtection");
  const isProtected = isTrue(protection?.get("sheet"));
  const dimension = child("dimension")?.get("ref");
  const filter = child("autoFilter");
  return {
    isProtected,
    allowsFiltering: !isProtected || !isTrue(protection?.get("autoFilter"), true),
    allowsFormattingRows: !isProtected || !isTrue(protection?.get("formatRows"), true),
    allowsFormattingColumns: !isProtected || !isTrue(protection?.get("formatColumns"), true),
    ...(dimension === undefined ? {} : { dimension }),
    ...(used.bottom === 0 ? {} : { usedRange: rangeText(used) }),
    ...(filter ? { filter: readFilter(filter) } : {}),
    layout: { merges: mergesOf(child("mergeCells")), rows, columns: columnsOf(child("cols")) },
    store: new CellStore(store.build(), around.strings),
    arrays,
    frame,
  };
}

class Inspection implements RowTaker {
  readonly rows = new Map<number, RowLayout>();
  readonly used = { top: LAST_ROW + 1, left: LAST_COLUMN + 1, bottom: 0, right: 0 };
  readonly arrays: ArrayPlace[] = [];
  readonly store = new StoreBuilder();
  private readonly scanner: RowScanner;
  private scannedArrays = 0;

  constructor(
    part: XmlBytes,
    private readonly around: CellSurroundings,
    private readonly styleCount: number,
    private readonly counted: (cells: number) => void,
    private readonly isScanned: boolean,
  ) {
    const { partName, strings, dynamicMarks } = around;
    const known = { strings: strings.length, styles: styleCount, marks: dynamicMarks };
    this.scanner = new RowScanner(part.bytes, partName, this.store, known);
  }

  get number(): number {
    return this.scanner.row.number;
  }

  scan(start: number, last: number): number {
    const { scanner } = this;
    const before = this.store.count;
    const end = this.isScanned ? scanner.scan(start, last) : -1;
    if (end < 0) {
      scanner.arrays.length = this.scannedArrays;
      return -1;
    }
    const layout = scanner.layout();
    if (layout) this.rows.set(this.number, layout);
    for (; this.scannedArrays < scanner.arrays.length; this.scannedArrays++) {
      const { row, column, place } = scanner.arrays[this.scannedArrays]!;
      this.noteArray(row, column, this.store.formulaAt(place));
    }
    if (this.store.count > before) this.reach(this.number, scanner.left, scanner.right);
    this.counted(this.store.count - before);
    return end;
  }

  take(row: RowToken, start: number, end: number): void {
    const { around, store } = this;
    if (row.isHidden || row.height !== undefined || row.styleIndex !== undefined) {
      this.rows.set(row.number, {
        isHidden: row.isHidden,
        ...(row.height === undefined ? {} : { height: row.height }),
        ...(row.styleIndex === undefined ? {} : { styleIndex: row.styleIndex }),
      });
    }
    store.beginRow(row.number, start, row.hasNumber);
    for (const token of row.cells) {
      const stored = token.formula && storedFormula(token, token.formula, around);
      const value = valueOf(token, around);
      if (token.styleIndex >= this.styleCount)
        damaged(around.partName, start + token.start, "a cell names a style that is not there");
      const formula = stored ? store.formula(stored, token.row, token.column) : 0;
      if (stored) this.noteArray(token.row, token.column, stored);
      store.addValue(token.column, token.styleIndex, typeOf(value, token.type), value, formula);
    }
    store.endRow(end);
    const { cells } = row;
    if (cells.length > 0) this.reach(row.number, cells[0]!.column, cells.at(-1)!.column);
    this.counted(cells.length);
  }

  private reach(row: number, left: number, right: number): void {
    const { used } = this;
    if (row < used.top) used.top = row;
    if (row > used.bottom) used.bottom = row;
    if (left < used.left) used.left = left;
    if (right > used.right) used.right = right;
  }

  private noteArray(row: number, column: number, { kind, ref, isDynamic }: StoredFormula): void {
    if (kind !== "array" && kind !== "dataTable") return;
    const own = { top: row, bottom: row, left: column, right: column };
    const range = (ref === undefined ? undefined : parseRange(ref)) ?? own;
    this.arrays.push({ row, column, range, kind, isDynamic });
  }
}

function mergesOf(element: XmlElement | undefined): string[] {
  return (element?.all("mergeCell") ?? []).map((one) => one.get("ref") ?? "").filter((ref) => ref !== "");
}

function columnsOf(element: XmlElement | undefined): ColumnLayout[] {
  return (element?.all("col") ?? []).map((column) => {
    const width = column.get("width");
    const style = column.get("style");
    return {
      first: wholeNumber(column.get("min"), 1),
      last: Math.min(wholeNumber(column.get("max"), 1), LAST_COLUMN),
      ...(width === undefined ? {} : { width: Number(width) }),
      isHidden: isTrue(column.get("hidden")),
      ...(style === undefined ? {} : { styleIndex: wholeNumber(style, 0) }),
    };
  });
}
