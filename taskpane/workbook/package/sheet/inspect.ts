/** Goes through a whole worksheet once at opening: checks every cell, and keeps what saving will need. */
import { parseRange, type Range, rangeText } from "../addresses";
import { LAST_COLUMN, LAST_ROW } from "../limits";
import type { ColumnLayout, FilterState, PackageCell, RowLayout, SheetLayout } from "../opened";
import { readFilter } from "../parts/tables";
import { isTrue, wholeNumber } from "../parts/values";
import type { XmlElement } from "../xml/element";
import type { XmlSource } from "../xml/encoding";
import { damaged } from "../xml/damaged";
import { type CellSurroundings, GroupTexts, readCell, type SharedFormula } from "./cells";
import type { SheetChild } from "./tokens";
import { SheetWalk } from "./walk";

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
  readonly groups: ReadonlyMap<number, SharedFormula>;
  readonly arrays: readonly ArrayPlace[];
  /** What stands beside the rows. */
  readonly children: readonly SheetChild[];
}

/** Cells that one formula fills: a spilling array, an {=old} one, or a what-if data table. */
export interface ArrayPlace {
  readonly row: number;
  readonly column: number;
  readonly range: Range;
  readonly kind: "array" | "dataTable";
  readonly isDynamic: boolean;
}

export function inspectSheet(
  source: XmlSource,
  outside: Omit<CellSurroundings, "groups">,
  styleCount: number,
  onCell: (cell: PackageCell) => void,
): SheetFacts {
  const walk = new SheetWalk(source);
  const groups = new Map<number, SharedFormula>();
  const around = { ...outside, groups };
  const texts = new GroupTexts(groups);
  const rows = new Map<number, RowLayout>();
  const arrays: ArrayPlace[] = [];
  const used = { top: LAST_ROW + 1, left: LAST_COLUMN + 1, bottom: 0, right: 0 };
  for (const row of walk.rows()) {
    if (row.isHidden || row.height !== undefined || row.styleIndex !== undefined) {
      rows.set(row.number, {
        isHidden: row.isHidden,
        ...(row.height === undefined ? {} : { height: row.height }),
        ...(row.styleIndex === undefined ? {} : { styleIndex: row.styleIndex }),
      });
    }
    for (const token of row.cells) {
      const { formula } = token;
      if (
        formula?.type === "shared" &&
        formula.group !== undefined &&
        formula.text !== "" &&
        !groups.has(formula.group)
      ) {
        groups.set(formula.group, { row: token.row, column: token.column, text: formula.text });
      }
      const cell = readCell(token, around, texts);
      if (cell.styleIndex >= styleCount)
        damaged(around.partName, token.start, "a cell names a style that is not there");
      onCell(cell);
      const array = arrayPlace(cell);
      if (array) arrays.push(array);
      if (token.row < used.top) used.top = token.row;
      if (token.row > used.bottom) used.bottom = token.row;
      if (token.column < used.left) used.left = token.column;
      if (token.column > used.right) used.right = token.column;
    }
  }
  const protection = walk.child("sheetProtection");
  const isProtected = isTrue(protection?.get("sheet"));
  const dimension = walk.child("dimension")?.get("ref");
  const filter = walk.child("autoFilter");
  return {
    isProtected,
    allowsFiltering: !isProtected || !isTrue(protection?.get("autoFilter"), true),
    allowsFormattingRows: !isProtected || !isTrue(protection?.get("formatRows"), true),
    allowsFormattingColumns: !isProtected || !isTrue(protection?.get("formatColumns"), true),
    ...(dimension === undefined ? {} : { dimension }),
    ...(used.bottom === 0 ? {} : { usedRange: rangeText(used) }),
    ...(filter ? { filter: readFilter(filter) } : {}),
    layout: { merges: mergesOf(walk.child("mergeCells")), rows, columns: columnsOf(walk.child("cols")) },
    groups,
    arrays,
    children: walk.children,
  };
}

function arrayPlace(cell: PackageCell): ArrayPlace | undefined {
  const { formula } = cell;
  if (!formula || (formula.kind !== "array" && formula.kind !== "dataTable")) return undefined;
  const own = { top: cell.row, bottom: cell.row, left: cell.column, right: cell.column };
  const range = (formula.ref === undefined ? undefined : parseRange(formula.ref)) ?? own;
  return { row: cell.row, column: cell.column, range, kind: formula.kind, isDynamic: formula.isDynamic };
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
