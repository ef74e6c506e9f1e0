/** The look of rows. Most rows look alike from end to end; only where they do not is each cell asked. */
import type { Area } from "../../port";
import { ask, askWithin, isMixed, restore, wear, type Look, type LookChange } from "./look";
import { rangeOf } from "../place";

export interface RowLook {
  readonly whole: Look;
  /** Cell by cell; empty where the whole says it all. */
  readonly cells: readonly Look[];
}

/** What was set, and where. */
export interface DressedRow {
  readonly place: Area;
  readonly change: LookChange;
}

const cellsOf = (row: Area): readonly Area[] =>
  Array.from({ length: row.columns }, (_, c) => ({ ...row, left: row.left + c, columns: 1 }));

/** The looks of rows, all equally wide. Several rows that are alike may be asked as one. */
export async function looksOf(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  rows: readonly Area[],
): Promise<readonly RowLook[]> {
  const asked = rows.map((row) => ask(rangeOf(sheet, row), { columns: row.columns }));
  await context.sync();
  const wholes = asked.map((whole) => whole());
  const within = rows.map((row, i) =>
    isMixed(wholes[i]!) ? cellsOf(row).map((cell) => askWithin(rangeOf(sheet, cell), wholes[i]!)) : [],
  );
  if (within.some((cells) => cells.length > 0)) await context.sync();
  return wholes.map((whole, i) => ({ whole, cells: within[i]!.map((cell) => cell()) }));
}

/** Gives rows these looks, where they differ; the caller syncs. */
export async function dress(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  rows: readonly Area[],
  wanted: readonly RowLook[],
): Promise<readonly DressedRow[]> {
  const present = await looksOf(context, sheet, rows);
  return rows.flatMap((row, i) => {
    const [to, now] = [wanted[i]!, present[i]!];
    if (to.cells.length === 0 && now.cells.length === 0)
      return [{ place: row, change: wear(rangeOf(sheet, row), to.whole, now.whole) }];
    return cellsOf(row).map((place, c) => ({
      place,
      change: wear(rangeOf(sheet, place), to.cells[c] ?? to.whole, now.cells[c] ?? now.whole),
    }));
  });
}

/** Puts back what {@link dress} changed, in rows that stand where they stood; the caller syncs. */
export function undress(sheet: Excel.Worksheet, dressed: readonly DressedRow[]): void {
  for (const { place, change } of [...dressed].reverse()) restore(rangeOf(sheet, place), change);
}
