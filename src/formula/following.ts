/**
 * References to whole columns of a table follow when its rows become more or fewer, as spreadsheets let them. The engine
 * knows them as A1 only (structured.ts says why), and so would go on reading the rows of before.
 */
import { readArea } from "./areas";
import type { TableGeometry } from "./structured";
import { tokens, untokened, type Token } from "./tokens";

const sheetOf = (token: Token | undefined): string | undefined =>
  token?.kind === "sheet"
    ? token.text.slice(1, -1).replaceAll("''", "'")
    : token?.kind === "word"
      ? token.text
      : undefined;

interface Found {
  /** The token that holds the last corner. */
  readonly at: number;
  readonly top: number;
  readonly bottom: number;
  readonly isFixed: boolean;
}

/** Ranges like $A$2:$B$9 on the table's sheet and within its columns. */
function* rangesIn(all: readonly Token[], sheetName: string, table: TableGeometry): Generator<Found> {
  for (let at = 2; at < all.length; at++) {
    if (all[at - 1]!.text !== ":" || all[at]!.kind !== "word" || all[at - 2]!.kind !== "word") continue;
    const [from, to] = [all[at - 2]!.text, all[at]!.text];
    const area = readArea(`${from}:${to}`);
    // A:C has the rows of the whole sheet, and nothing that could follow
    if (!area || !/\d$/.test(from)) continue;
    const named = all[at - 3]?.text === "!" ? sheetOf(all[at - 4]) : sheetName;
    if (named?.toLowerCase() !== table.sheetName.toLowerCase()) continue;
    if (area.left.at < table.left || area.right.at >= table.left + table.columns.length) continue;
    yield { at, top: area.top.at, bottom: area.bottom.at, isFixed: area.top.isFixed && area.bottom.isFixed };
  }
}

const firstRow = (table: TableGeometry): number => table.top + table.headerRows;
const lastRow = (table: TableGeometry): number => table.bottom - table.totalsRows;

/** Cheap, for the many that hold none. */
const mayFollow = (formula: string, table: TableGeometry): boolean =>
  formula.includes(":") && formula.includes(String(lastRow(table) + 1));

/**
 * @param formula grid spelling
 * @param sheetName the sheet it stands on; "" for a name
 * @param isShared a group of cells lives on this text: only rows that are fixed ($) mean the same for all of them
 */
export function followed(
  formula: string,
  sheetName: string,
  before: TableGeometry,
  after: TableGeometry,
  isShared = false,
): string {
  if (!mayFollow(formula, before)) return formula;
  const all = tokens(formula);
  let isChanged = false;
  for (const { at, top, bottom, isFixed } of rangesIn(all, sheetName, before)) {
    const isWhole = bottom === lastRow(before) && (top === firstRow(before) || top === before.top);
    if (!isWhole || (isShared && !isFixed)) continue;
    all[at] = { kind: "word", text: all[at]!.text.replace(/\d+$/, String(lastRow(after) + 1)) };
    isChanged = true;
  }
  return isChanged ? untokened(all) : formula;
}

/** Whether a formula reads some rows of a table, not whole columns of it: it would come to read other people's rows. */
export function readsSomeRows(formula: string, sheetName: string, table: TableGeometry): boolean {
  const all = tokens(formula);
  const parts = new Set<number>();
  for (const { at, top, bottom } of rangesIn(all, sheetName, table)) {
    parts.add(at).add(at - 2);
    const touches = bottom >= firstRow(table) && top <= lastRow(table);
    if (touches && !(top <= firstRow(table) && bottom >= lastRow(table))) return true;
  }
  return all.some((token, at) => {
    if (token.kind !== "word" || parts.has(at) || all[at + 1]?.text === "(") return false;
    const area = readArea(token.text);
    const named = all[at - 1]?.text === "!" ? sheetOf(all[at - 2]) : sheetName;
    if (!area || named?.toLowerCase() !== table.sheetName.toLowerCase()) return false;
    const isInside = area.left.at >= table.left && area.left.at < table.left + table.columns.length;
    return isInside && area.top.at >= firstRow(table) && area.top.at <= lastRow(table);
  });
}
