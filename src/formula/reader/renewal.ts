/**
 * A workbook read before, whose rows, formulas or names are other ones: rows that have moved take their results along, and
 * only what else has changed is worked out.
 */
import { adopted } from "./adopted";
import type { Column, Sheet } from "./cells";
import { rowsMoved, unmoved, type Moves } from "./moved-rows";
import type { Changes, Run } from "./run";
import { isSame, type Value } from "./values";

/** What stood in cells before they changed. */
export type Noted = Map<Column, Map<number, Value>>;

/** The first time counts. */
export function note(changes: Noted, column: Column, row: number, before: Value): void {
  const known = changes.get(column);
  if (!known) changes.set(column, new Map([[row, before]]));
  else if (!known.has(row)) known.set(row, before);
}

type ByColumn = ReadonlyMap<Column, readonly Run[]>;

export interface Begun {
  /** By place: what a cell held, and holds no more. */
  readonly changes: Noted;
  /** By row: what a cell held where its row stood before. */
  readonly beside: Noted;
  /** What counts for one run alone: ends of its ranges that have moved. */
  readonly own: ReadonlyMap<Run, ReadonlyMap<Column, Changes>>;
}

export class Renewal {
  private readonly values = new Map<Column, Value[]>();

  /**
   * @param moved sheets whose values are put anew
   * @param formers the runs before
   * @param read the columns that they read
   */
  constructor(
    private readonly moved: readonly Sheet[],
    private readonly formers: ByColumn,
    readonly read: ReadonlySet<Column>,
  ) {}

  put(column: Column, row: number, value: Value): void {
    this.valuesOf(column)[row] = value;
  }

  private valuesOf(column: Column): Value[] {
    let values = this.values.get(column);
    if (!values) this.values.set(column, (values = []));
    return values;
  }

  /** Cells hold what was put, and results where their rows stand now. */
  begun(runs: ByColumn): Begun {
    const moves = new Map(this.moved.map((sheet) => [sheet, this.movesOf(sheet, runs)]));
    const before = new Map(
      this.moved.flatMap((sheet) => Array.from(sheet.all(), (column) => [column, [...column.all]] as const)),
    );
    const valueBefore = (column: Column, row: number): Value => {
      const values = before.get(column);
      return values ? (values[row] ?? null) : column.get(row);
    };
    const own = new Map<Run, ReadonlyMap<Column, Changes>>();
    for (const [column, here] of runs) {
      const from = moves.get(column.sheet) ?? unmoved;
      const stood = before.get(column) ?? column.all;
      const formers = byForm(this.formers.get(column) ?? []);
      for (const run of here) {
        const { keptFrom, changes } = adopted(run, formers.get(run.form) ?? [], from, valueBefore);
        if (changes.size > 0) own.set(run, changes);
        if (!before.has(column) && !this.values.has(column)) continue;
        const values = this.valuesOf(column);
        for (const row of run.rows()) values[row] = stood[keptFrom(row)] ?? null;
      }
    }
    return { ...this.placed(runs, moves, before), own };
  }

  /** By what is typed in columns that were read before and are read now. */
  private movesOf(sheet: Sheet, runs: ByColumn): Moves {
    const columns = [...sheet.all()].flatMap((column) => {
      const isTyped = this.read.has(column) && !this.formers.has(column) && !runs.has(column);
      return isTyped ? [{ before: column.all, now: this.values.get(column) ?? [] }] : [];
    });
    return rowsMoved(columns);
  }

  private placed(
    runs: ByColumn,
    moves: ReadonlyMap<Sheet, Moves>,
    before: ReadonlyMap<Column, readonly (Value | undefined)[]>,
  ): Omit<Begun, "own"> {
    const [changes, beside]: [Noted, Noted] = [new Map(), new Map()];
    const columns = new Set([...this.values.keys(), ...this.moved.flatMap((sheet) => [...sheet.all()])]);
    for (const column of columns) {
      const values = this.values.get(column) ?? [];
      const { from } = moves.get(column.sheet) ?? unmoved;
      const stood = before.get(column) ?? [...column.all];
      const rows = Math.max(values.length, column.last + 1);
      const isWorkedOut = new Uint8Array(rows);
      for (const run of runs.get(column) ?? []) for (const row of run.rows()) isWorkedOut[row] = 1;
      for (const [row, former] of column.replace(values)) note(changes, column, row, former);
      for (let row = 0; row < rows; row++) {
        if (isWorkedOut[row]) continue;
        const former = stood[from(row)] ?? null;
        if (!isSame(former, values[row] ?? null)) note(beside, column, row, former);
      }
    }
    return { changes, beside };
  }
}

function byForm(runs: readonly Run[]): ReadonlyMap<string, readonly Run[]> {
  const found = new Map<string, Run[]>();
  for (const run of runs) {
    const alike = found.get(run.form);
    if (alike) alike.push(run);
    else found.set(run.form, [run]);
  }
  return found;
}
