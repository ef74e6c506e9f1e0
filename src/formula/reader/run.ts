/** Cells of a column that share a formula, and what each of them has looked up. */
import type { Column, Sheet } from "./cells";
import type { Compiled, Read } from "./compile";
import { looseKey, type Key } from "./criteria";
import type { Value } from "./values";
import type { Watcher } from "./watch";

/** What stood in the cells of a column before they changed. */
export type Changes = ReadonlyMap<number, Value>;

export class Run implements Watcher {
  /** Rows where something else was typed over the formula. */
  readonly overtyped = new Set<number>();
  /** Rows to be worked out whatever has changed. */
  fresh: Iterable<number> = [];
  private keys = new Map<Column, Map<Key, Set<number>>>();
  private vias = new Map<Column, Set<Column>>();
  private places = new Map<Column, Map<number, Set<number>>>();
  private wholes = new Set<Column>();
  private readonly columns: ReadonlySet<Column>;

  constructor(
    readonly sheet: Sheet,
    readonly column: Column,
    readonly top: number,
    readonly bottom: number,
    readonly compiled: Compiled,
    /** The same for runs that say the same (relativeForm). */
    readonly form: string,
  ) {
    this.columns = new Set(Array.from(this.reach(), (one) => one.column));
  }

  /** @param row of the sheet */
  work(row: number): Value {
    return this.compiled.work({ row, named: new Array<undefined>(this.compiled.names) as never[], watcher: this });
  }

  *rows(): Generator<number> {
    for (let row = this.top; row <= this.bottom; row++) if (!this.overtyped.has(row)) yield row;
  }

  holds(row: number): boolean {
    return row >= this.top && row <= this.bottom && !this.overtyped.has(row);
  }

  /** All rows that another one holds. */
  covers({ top, bottom, overtyped }: Run): boolean {
    if (top < this.top || bottom > this.bottom) return false;
    return [...this.overtyped].every((row) => row < top || row > bottom || overtyped.has(row));
  }

  /**
   * What rows of a run before have looked up, which gives the same now.
   * @param to where its rows stand now, -1 for nowhere; left out: where they stood, all of them
   */
  adopt(before: Run, to?: (row: number) => number): void {
    if (!to) {
      ({ keys: this.keys, vias: this.vias, places: this.places, wholes: this.wholes } = before);
      return;
    }
    for (const [column, keys] of before.keys)
      for (const [key, rows] of keys)
        for (const row of rows) {
          const now = to(row);
          if (now >= 0) this.keyed(now, column, key);
        }
    for (const [column, bys] of before.vias) for (const by of bys) this.via(column, by);
    for (const [column, places] of before.places)
      for (const [at, rows] of places)
        for (const row of rows) {
          const now = to(row);
          if (now >= 0) this.cell(now, column, at);
        }
    for (const column of before.wholes) this.whole(column);
  }

  keyed(row: number, column: Column, key: Key): void {
    filed(
      filed(this.keys, column, () => new Map<Key, Set<number>>()),
      key,
      () => new Set<number>(),
    ).add(row);
  }

  via(column: Column, by: Column): void {
    filed(this.vias, column, () => new Set<Column>()).add(by);
  }

  cell(row: number, column: Column, at: number): void {
    filed(
      filed(this.places, column, () => new Map<number, Set<number>>()),
      at,
      () => new Set<number>(),
    ).add(row);
  }

  whole(column: Column): void {
    this.wholes.add(column);
  }

  /**
   * Rows that may give something else now.
   * @param beside what has changed in the row that a cell stands in, where rows have moved and took their cells along
   */
  touched(changes: ReadonlyMap<Column, Changes>, beside = changes): ReadonlySet<number> {
    const found = new Set<number>();
    const add = (rows: Iterable<number>) => {
      for (const row of rows) if (this.holds(row)) found.add(row);
    };
    for (const column of this.columns) {
      const inRow = (this.isBeside(column) ? beside : changes).get(column);
      if (inRow) add(this.besides(column, inRow));
      const changed = changes.get(column);
      if (!changed) continue;
      if (this.wholes.has(column) || this.readsAnywhere(column, changed)) return new Set(this.rows());
      for (const [at, before] of changed) {
        const keys = this.keys.get(column);
        add(keys?.get(looseKey(before)) ?? []);
        add(keys?.get(looseKey(column.get(at))) ?? []);
        add(this.places.get(column)?.get(at) ?? []);
        for (const by of this.vias.get(column) ?? []) add(this.keys.get(by)?.get(looseKey(by.get(at))) ?? []);
      }
    }
    return found;
  }

  /** Every row reads the cell of its own row there, and no other that moves with it. */
  private isBeside(column: Column): boolean {
    return column.sheet === this.sheet && !this.readsOf(column).some((read) => this.isElsewhere(read));
  }

  private isElsewhere({ sheet, area: { top, bottom } }: Read): boolean {
    if (top.isFixed && bottom.isFixed) return false;
    return sheet !== this.sheet || top.isFixed || bottom.isFixed || top.at !== this.top || bottom.at !== this.top;
  }

  /** What a row gives hangs on where it stands. */
  get hangsOnPlace(): boolean {
    const { hangsOn, reads } = this.compiled;
    return hangsOn.place || reads.some((read) => this.isElsewhere(read));
  }

  /** A cell that every row reads: today, a setting. */
  private readsAnywhere(column: Column, changed: Changes): boolean {
    return this.readsOf(column).some(({ area: { top, bottom } }) => {
      if (!top.isFixed && !bottom.isFixed) return false;
      if (!top.isFixed || !bottom.isFixed) return true;
      return [...changed.keys()].some((row) => row >= top.at && row <= bottom.at);
    });
  }

  /** Rows that read a changed cell beside them, or so many rows off. */
  private *besides(column: Column, changed: Changes): Generator<number> {
    for (const { area } of this.readsOf(column)) {
      if (area.top.isFixed) continue;
      const [from, to] = [area.top.at - this.top, area.bottom.at - this.top];
      for (const row of changed.keys()) for (let offset = from; offset <= to; offset++) yield row - offset;
    }
  }

  private readsOf(column: Column) {
    return this.compiled.reads.filter(
      ({ sheet, area: { left, right }, isWatched }) =>
        !isWatched && sheet === column.sheet && column.at >= left.at && column.at <= right.at,
    );
  }

  /** Which rows of which columns it reads, all its cells together. */
  *reach(): Generator<{ readonly column: Column; readonly first: number; readonly last: number }> {
    for (const { sheet, area } of this.compiled.reads) {
      const last = area.bottom.isFixed ? area.bottom.at : area.bottom.at + (this.bottom - this.top);
      for (let at = area.left.at; at <= area.right.at; at++)
        yield { column: sheet.column(at), first: area.top.at, last };
    }
  }
}

function filed<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  let found = map.get(key);
  if (found === undefined) map.set(key, (found = make()));
  return found;
}
