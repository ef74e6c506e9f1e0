/**
 * Finds the plain list (no table) in which somebody stands: its header row, its columns and its last row. Title rows,
 * group headers above and notes below are no part of it. What is found is said, and can be corrected.
 */
import { headerEvidence, type HeaderEvidence } from "./header-evidence";
import type { Rectangle } from "./rectangle";
import { SheetBlock, textOf, type SheetValue } from "./sheet-block";

export interface FoundList {
  /** From the header row to the last data row. */
  readonly area: Rectangle;
  /** First row with data: blank rows may stand under the header. */
  readonly firstRow: number;
  readonly headers: readonly string[];
  /** A row of totals right under the data; no part of the list. */
  readonly totalsRow: number | null;
  /** False: somebody should look before anything is added. */
  readonly sure: boolean;
  /** The selected cell stands in it. */
  readonly holdsSelection: boolean;
  /** "Header in row 6, 120 rows of data, rows 7 to 126." */
  readonly sentence: string;
}

export interface NoList {
  readonly area: null;
  readonly sentence: string;
}

export interface Correction {
  /** Sheet rows counted from 0. */
  readonly headerRow: number;
  readonly lastRow?: number;
}

export interface LookedAt {
  readonly used: Rectangle | null;
  readonly values: readonly (readonly SheetValue[])[];
  readonly merges?: readonly Rectangle[];
  /** The selected cell. */
  readonly at?: { readonly row: number; readonly column: number };
}

/** Rows at the top of a stretch of rows in which a header is looked for. */
const HEADER_WITHIN = 15;
/** So many blank rows may stand inside a list. */
const BLANK_ROWS = 2;
/** A row after a gap belongs to the list when so many of its columns are filled. */
const CONTINUES = 0.4;
/** From here a row is taken for a header, and from here without a doubt. */
const LIKELY = 0.45;
const CERTAIN = 0.75;

/** First word of a row under the data that adds them up. */
const TOTALS =
  /^(?:grand )?(?:totals?|sum|sums|count|average|mean|median|gesamt|summe|anzahl|totaal|totale|somme|suma)\b/iu;

interface List {
  readonly headerRow: number;
  readonly evidence: HeaderEvidence;
  readonly from: number;
  readonly to: number;
  readonly rows: readonly number[];
  readonly totalsRow: number | null;
}

export function findList(looked: LookedAt, correction?: Correction): FoundList | NoList {
  const { used, at } = looked;
  if (!used) return { area: null, sentence: "This sheet is empty." };
  const block = new SheetBlock(used, looked.values, looked.merges);
  if (correction) return corrected(block, correction, at?.column);

  const lists = block.stretches().flatMap(([from, to]) => listsIn(block, from, to));
  const distance = ({ headerRow, from, to, rows }: List): number => {
    if (!at) return 0;
    const beside = Math.max(from - at.column, at.column - (to - 1), 0);
    return beside + Math.max(headerRow - at.row, at.row - rows.at(-1)!, 0);
  };
  const size = ({ from, to, rows }: List): number => (to - from) * rows.length;
  const [nearest] = lists.sort((a, b) => distance(a) - distance(b) || size(b) - size(a));
  if (!nearest) {
    return {
      area: null,
      sentence:
        "No header row was found: no row of column names above rows of data. " +
        "Give each column a name in one row right above the data, then look again.",
    };
  }
  return described(block, nearest, distance(nearest) === 0, lists.length === 1);
}

/** Rows with anything in the columns, in stretches without a blank row. */
function rowStretches(block: SheetBlock, from: number, to: number): number[][] {
  const found: number[][] = [];
  for (let row = block.top; row < block.bottom; row++) {
    if (block.filledIn(row, from, to) === 0) continue;
    const last = found.at(-1);
    if (last && last.at(-1) === row - 1) last.push(row);
    else found.push([row]);
  }
  return found;
}

/** The lists one under the other in these columns, top down. */
function listsIn(block: SheetBlock, from: number, to: number): List[] {
  const stretches = rowStretches(block, from, to);
  const lists: List[] = [];
  stretches.forEach((rows, i) => {
    // A stretch that carries on the list above it is no list of its own.
    const above = lists.at(-1);
    if (above && rows.every((row) => row <= above.rows.at(-1)!)) return;
    const header = headerIn(block, rows, stretches[i + 1], from, to);
    if (!header) return;
    const { row, evidence } = header;
    const list = withRows(block, row, evidence, evidence.from, evidence.to, stretches);
    if (list) lists.push(list);
  });
  return lists;
}

interface Header {
  readonly row: number;
  readonly evidence: HeaderEvidence;
}

/** The header row of a stretch of rows: the last of the rows at its top that look like one. */
function headerIn(
  block: SheetBlock,
  rows: readonly number[],
  next: readonly number[] | undefined,
  from: number,
  to: number,
) {
  const candidates: (Header & { readonly value: number })[] = [];
  for (const [i, row] of rows.slice(0, HEADER_WITHIN).entries()) {
    const below = rows.slice(i + 1);
    const isLast = below.length === 0;
    const nearNext = isLast && next && next[0]! - row - 1 <= BLANK_ROWS ? next : undefined;
    const evidence = headerEvidence(block, row, from, to, nearNext ?? below);
    if (!evidence || evidence.share < 0.5) continue;
    // One text alone is a title, unless there is only one column.
    if (evidence.to - evidence.from < 2 && to - from > 1) continue;
    candidates.push({ row, evidence, value: evidence.score * evidence.share });
  }
  const best = candidates.reduce((most, one) => Math.max(most, one.value), 0);
  if (best < LIKELY) return null;
  // Two full rows of texts: the names are in the lower one. A row further down is one of the data.
  const good = candidates.filter((one) => one.value >= Math.max(LIKELY, 0.85 * best));
  let chosen = good[0]!;
  for (const one of good) if (one.row === chosen.row + 1) chosen = one;
  return chosen;
}

/** Takes the rows below a header together, over short gaps, as long as they look like rows of this list. */
function withRows(
  block: SheetBlock,
  headerRow: number,
  evidence: HeaderEvidence,
  from: number,
  to: number,
  stretches: readonly (readonly number[])[],
): List | null {
  const width = to - from;
  const rows: number[] = [];
  let previous = headerRow;
  for (let row = headerRow + 1; row < block.bottom; row++) {
    const filled = block.filledIn(row, from, to);
    if (filled === 0) continue;
    const gap = row - previous - 1;
    if (gap > BLANK_ROWS) break;
    if (gap > 0 && rows.length > 0) {
      if (filled < Math.max(2, CONTINUES * width)) break;
      const own = stretches.findIndex((stretch) => stretch[0] === row);
      if (own >= 0 && headerIn(block, stretches[own]!, stretches[own + 1], from, to)) break;
    }
    rows.push(row);
    previous = row;
  }
  const totalsRow = rows.length > 1 && isTotals(block, rows.at(-1)!, from, to) ? rows.pop()! : null;
  return rows.length === 0 ? null : { headerRow, evidence, from, to, rows, totalsRow };
}

function isTotals(block: SheetBlock, row: number, from: number, to: number): boolean {
  for (let column = from; column < to; column++) {
    if (block.isFilled(row, column)) {
      const first = block.at(row, column);
      return typeof first === "string" && TOTALS.test(first.trim());
    }
  }
  return false;
}

function described(block: SheetBlock, list: List, isInside: boolean, isOnly: boolean): FoundList {
  const { headerRow, from, to, rows, totalsRow, evidence } = list;
  const last = rows.at(-1)!;
  const isCertain = evidence.score * evidence.share >= CERTAIN;
  const isMeant = isInside || isOnly;
  const where = isMeant ? "" : " This is the list nearest to the selected cell.";
  const doubt = isCertain ? "" : " Please look whether that row holds the column names.";
  const blanks = last - rows[0]! + 1 - rows.length;
  const gaps = blanks === 0 ? "" : ` ${blanks === 1 ? "1 blank row" : `${blanks} blank rows`} in between.`;
  const totals = totalsRow === null ? "" : ` The totals in row ${totalsRow + 1} are left out.`;
  return {
    area: { top: headerRow, left: from, rows: last - headerRow + 1, columns: to - from },
    firstRow: rows[0]!,
    headers: Array.from({ length: to - from }, (_, i) => textOf(block.headAt(headerRow, from + i))),
    totalsRow,
    sure: isMeant && isCertain,
    holdsSelection: isInside,
    sentence: `Header in row ${headerRow + 1}, data in rows ${rows[0]! + 1} to ${last + 1}.${gaps}${totals}${where}${doubt}`,
  };
}

/** The list as somebody says it is; only its columns are still looked for. */
function corrected(block: SheetBlock, { headerRow, lastRow }: Correction, column?: number): FoundList | NoList {
  const named = Array.from({ length: block.right - block.left }, (_, i) => block.left + i).filter(
    (each) => textOf(block.headAt(headerRow, each)).trim() !== "",
  );
  if (named.length === 0) return { area: null, sentence: `Row ${headerRow + 1} holds no column names.` };
  const start = column !== undefined && named.includes(column) ? column : named[0]!;
  let [from, to] = [start, start + 1];
  while (named.includes(from - 1)) from -= 1;
  while (named.includes(to)) to += 1;
  const below = Array.from({ length: Math.max(0, block.bottom - headerRow - 1) }, (_, i) => headerRow + 1 + i);
  const evidence = headerEvidence(block, headerRow, from, to, below) ?? { from, to, score: 0, share: 0 };
  const found = withRows(block, headerRow, evidence, from, to, []);
  const rows =
    lastRow === undefined
      ? (found?.rows ?? [])
      : below.filter((row) => row <= lastRow && block.filledIn(row, from, to) > 0);
  if (rows.length === 0) return { area: null, sentence: `There are no rows of data below row ${headerRow + 1}.` };
  const last = Math.min(lastRow ?? rows.at(-1)!, block.bottom - 1);
  const list: List = {
    headerRow,
    evidence,
    from,
    to,
    rows,
    totalsRow: lastRow === undefined ? found!.totalsRow : null,
  };
  return {
    ...described(block, list, true, true),
    area: { top: headerRow, left: from, rows: last - headerRow + 1, columns: to - from },
    sure: true,
    sentence: `Header in row ${headerRow + 1}, data in rows ${rows[0]! + 1} to ${last + 1}, as you said.`,
  };
}
