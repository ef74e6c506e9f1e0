/** Where a value stands in a column of cells: found at once however long the column is, and kept right while cells change. */
import type { Key } from "./criteria";
import type { CellError } from "../../worksheet/error";
import { isError, type Value } from "./values";

/** Rows by what they hold. */
export class KeyIndex {
  private readonly rows = new Map<Key, number[]>();

  constructor(
    values: Iterable<readonly [row: number, value: Value]>,
    private readonly keyOf: (value: Value) => Key | null,
  ) {
    for (const [row, value] of values) this.add(row, value);
  }

  /** In rising order. */
  with(key: Key): readonly number[] {
    return this.rows.get(key) ?? [];
  }

  change(row: number, before: Value, after: Value): void {
    const key = this.keyOf(before);
    const rows = key === null ? undefined : this.rows.get(key);
    if (rows) rows.splice(placeOf(rows, row), 1);
    this.add(row, after);
  }

  private add(row: number, value: Value): void {
    const key = this.keyOf(value);
    if (key === null) return;
    const rows = this.rows.get(key);
    if (!rows) this.rows.set(key, [row]);
    else if (rows.length === 0 || rows.at(-1)! < row) rows.push(row);
    else rows.splice(placeOf(rows, row), 0, row);
  }
}

/** The numbers of a column, the largest first. */
export class NumberOrder {
  private readonly falling: number[];
  private readonly faults: CellError[];

  constructor(entries: Iterable<readonly [row: number, value: Value]>) {
    const values = Array.from(entries, ([, value]) => value);
    this.falling = values.filter((value) => typeof value === "number").sort((one, other) => other - one);
    this.faults = values.filter(isError);
  }

  /** An error among the cells answers for all of them. */
  get fault(): CellError | undefined {
    return this.faults[0];
  }

  /** The k-th largest, counted from 1; undefined where there are not so many. */
  large(k: number): number | undefined {
    return this.falling[k - 1];
  }

  /** The k-th least, counted from 1; undefined where there are not so many. */
  small(k: number): number | undefined {
    return this.falling[this.falling.length - k];
  }

  /** How many are larger, and 1; undefined for a number that is not there. */
  rank(value: number): number | undefined {
    const place = this.placeOf(value);
    return this.falling[place] === value ? place + 1 : undefined;
  }

  change(before: Value, after: Value): void {
    if (typeof before === "number") this.falling.splice(this.placeOf(before), 1);
    if (typeof after === "number") this.falling.splice(this.placeOf(after), 0, after);
    if (isError(before)) this.faults.splice(this.faults.indexOf(before), 1);
    if (isError(after)) this.faults.push(after);
  }

  private placeOf(value: number): number {
    return firstWhere(this.falling.length, (at) => this.falling[at]! <= value);
  }
}

/** The first place where it is so, of those that stay so behind it; `length` where it is nowhere so. */
export function firstWhere(length: number, isSo: (at: number) => boolean): number {
  let [low, high] = [0, length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isSo(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

const placeOf = (rows: readonly number[], row: number): number => firstWhere(rows.length, (at) => rows[at]! >= row);
