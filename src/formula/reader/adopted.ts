/**
 * A run of formulas that takes over what former runs have worked out: theirs are the same formulas, perhaps in other rows,
 * over ranges that may have grown with their lists.
 */
import type { Column } from "./cells";
import { unmoved, type Moves } from "./moved-rows";
import type { Read } from "./compile";
import type { Changes, Run } from "./run";
import type { Value } from "./values";

/** As far as two runs say the same, apart from how far their ranges go. */
function isAlike(before: Run, now: Run): boolean {
  const [old, own] = [before.compiled, now.compiled];
  if (before.form !== now.form || old.reads.length !== own.reads.length) return false;
  if (old.hangsOn.meanings !== own.hangsOn.meanings) return false;
  return old.reads.every((read, i) => readsTheSame(read, before.top, own.reads[i]!, now.top));
}

function readsTheSame(before: Read, top: number, now: Read, topNow: number): boolean {
  if (before.sheet !== now.sheet || before.isWatched !== now.isWatched) return false;
  const lines = (["left", "right", "top", "bottom"] as const).map(
    (side) => [before.area[side], now.area[side]] as const,
  );
  return lines.every(([old, own], side) => {
    if (old.isFixed !== own.isFixed) return false;
    if (side < 2) return old.at === own.at;
    if (!old.isFixed) return old.at - top === own.at - topNow;
    // where a range ends is looked at by itself
    return side === 3 || old.at === own.at;
  });
}

const rowsOf = ({ area: { top, bottom } }: Read): number => bottom.at - top.at;

/** Which ranges have as many rows as which others: COUNTIFS asks that. */
const pattern = (reads: readonly Read[]): string => {
  const counts = reads.filter(({ isWatched }) => isWatched).map(rowsOf);
  return counts.map((count) => counts.indexOf(count)).join();
};

/**
 * Cells that ranges have gained or lost, with what stood there as the former range saw it; undefined where that may change
 * any row.
 * @param valueBefore what stood in a cell before anything changed
 */
function endsMoved(
  before: Run,
  now: Run,
  valueBefore: (column: Column, row: number) => Value,
): ReadonlyMap<Column, Changes> | undefined {
  const [old, own] = [before.compiled.reads, now.compiled.reads];
  const moved = old.flatMap((read, i) =>
    read.area.bottom.isFixed && read.area.bottom.at !== own[i]!.area.bottom.at ? [[read, own[i]!] as const] : [],
  );
  const changes = new Map<Column, Map<number, Value>>();
  if (moved.length === 0) return changes;
  if (now.compiled.hangsOn.extent || pattern(old) !== pattern(own)) return undefined;
  for (const [read, after] of moved) {
    if (!read.isWatched) return undefined;
    const [first, last] = [read.area.bottom.at, after.area.bottom.at];
    for (let at = read.area.left.at; at <= read.area.right.at; at++) {
      const column = read.sheet.column(at);
      let cells = changes.get(column);
      if (!cells) changes.set(column, (cells = new Map()));
      for (let row = Math.min(first, last) + 1; row <= Math.max(first, last); row++)
        cells.set(row, last > first ? null : valueBefore(column, row));
    }
  }
  return changes;
}

/** What stands in a run's cells before it is worked out, and which other changes count for it. */
export interface Adopted {
  /** The former row whose result a row keeps; -1: it is worked out. */
  readonly keptFrom: (row: number) => number;
  readonly changes: ReadonlyMap<Column, Changes>;
}

/** @param formers of the same column and form */
export function adopted(
  now: Run,
  formers: readonly Run[],
  moves: Moves,
  valueBefore: (column: Column, row: number) => Value,
): Adopted {
  const changes = new Map<Column, Map<number, Value>>();
  const alike: Run[] = [];
  for (const before of formers) {
    const ends = isAlike(before, now) ? endsMoved(before, now, valueBefore) : undefined;
    if (!ends) continue;
    for (const [column, cells] of ends) changes.set(column, new Map([...(changes.get(column) ?? []), ...cells]));
    alike.push(before);
  }
  const isStanding = moves === unmoved;
  const [only] = alike;
  for (const before of alike) now.adopt(before, isStanding && alike.length === 1 ? undefined : moves.to);
  const { hangsOnPlace } = now;
  const keptFrom = (row: number): number => {
    const at = moves.from(row);
    return at >= 0 && (at === row || !hangsOnPlace) && alike.some((before) => before.holds(at)) ? at : -1;
  };
  const isTheSame = isStanding && only?.covers(now) === true;
  now.fresh = isTheSame ? [] : [...now.rows()].filter((row) => keptFrom(row) < 0);
  return { keptFrom, changes };
}
