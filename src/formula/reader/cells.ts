/** Cells by sheet and column, blocks of them, and the indexes that make looking them up quick. */
import { KeyIndex, NumberOrder } from "./column-index";
import { LAST_ROW } from "../words";
import { looseKey, strictKey } from "./criteria";
import { isSame, type Value } from "./values";

/** So many changes at once are many. */
const MANY = 200;

export class Column {
  /** By row; holes are empty cells. */
  private readonly values: Value[] = [];
  private loose: KeyIndex | undefined;
  private strict: KeyIndex | undefined;
  private readonly orders = new Map<string, { top: number; bottom: number; order: NumberOrder }>();

  constructor(
    readonly sheet: Sheet,
    readonly at: number,
  ) {}

  get(row: number): Value {
    return this.values[row] ?? null;
  }

  /** @returns what stood there before */
  set(row: number, value: Value): Value {
    const before = this.get(row);
    this.values[row] = value;
    this.loose?.change(row, before, value);
    this.strict?.change(row, before, value);
    for (const { top, bottom, order } of this.orders.values())
      if (row >= top && row <= bottom) order.change(before, value);
    return before;
  }

  /** As COUNTIFS files values. */
  byLooseKey(): KeyIndex {
    return (this.loose ??= new KeyIndex(this.entries(0, this.values.length - 1), looseKey));
  }

  /** As MATCH files them. */
  byStrictKey(): KeyIndex {
    return (this.strict ??= new KeyIndex(this.entries(0, this.values.length - 1), strictKey));
  }

  order(top: number, bottom: number): NumberOrder {
    const key = `${top}:${bottom}`;
    let known = this.orders.get(key);
    if (!known) {
      const entries = this.entries(top, Math.min(bottom, this.last));
      this.orders.set(key, (known = { top, bottom, order: new NumberOrder(entries) }));
    }
    return known.order;
  }

  /** Its values, by row; holes are empty cells. */
  get all(): readonly (Value | undefined)[] {
    return this.values;
  }

  /**
   * Other values in place of all.
   * @returns what stood before in the cells that hold something else now
   */
  replace(values: readonly (Value | undefined)[]): ReadonlyMap<number, Value> {
    const changed = new Map<number, Value>();
    const length = Math.max(values.length, this.values.length);
    for (let row = 0; row < length; row++) {
      const before = this.get(row);
      if (!isSame(before, values[row] ?? null)) changed.set(row, before);
    }
    if (changed.size > MANY) {
      // to build an index anew costs less than so many changes of it
      this.loose = this.strict = undefined;
      this.orders.clear();
    }
    for (const row of changed.keys()) this.set(row, values[row] ?? null);
    return changed;
  }

  *entries(top: number, bottom: number): Generator<readonly [row: number, value: Value]> {
    for (let row = top; row <= bottom; row++) yield [row, this.get(row)];
  }

  /** Rows behind this one are empty. */
  get last(): number {
    return this.values.length - 1;
  }
}

export class Sheet {
  private readonly columns = new Map<number, Column>();

  constructor(readonly name: string) {}

  all(): Iterable<Column> {
    return this.columns.values();
  }

  column(at: number): Column {
    let column = this.columns.get(at);
    if (!column) this.columns.set(at, (column = new Column(this, at)));
    return column;
  }
}

/** A rectangle of cells; what a reference stands for. */
export class Block {
  constructor(
    readonly sheet: Sheet,
    readonly top: number,
    readonly left: number,
    readonly bottom: number,
    readonly right: number,
  ) {}

  get rows(): number {
    return this.bottom - this.top + 1;
  }
  get columns(): number {
    return this.right - this.left + 1;
  }
  get isOneCell(): boolean {
    return this.rows === 1 && this.columns === 1;
  }
  /** The one column of a block that is no wider. */
  get column(): Column {
    return this.sheet.column(this.left);
  }

  private get rowsWithCells(): number {
    return this.rows === LAST_ROW ? this.filled : this.rows;
  }

  /** Row by row; of whole columns as far as there are any. */
  matrix(): readonly (readonly Value[])[] {
    return Array.from({ length: this.rowsWithCells }, (_, row) =>
      Array.from({ length: this.columns }, (_, column) => this.at(row, column)),
    );
  }

  private get filled(): number {
    let last = -1;
    for (let at = this.left; at <= this.right; at++) last = Math.max(last, this.sheet.column(at).last);
    return last + 1;
  }

  at(row: number, column: number): Value {
    return this.sheet.column(this.left + column).get(this.top + row);
  }

  /** Of whole columns (A:C) as far as there are any. */
  *values(): Generator<Value> {
    for (let row = 0; row < this.rowsWithCells; row++)
      for (let column = 0; column < this.columns; column++) yield this.at(row, column);
  }
}

/** What a piece of a formula can stand for: a value, cells, or rows of values. */
export type Any = Value | Block | readonly (readonly Value[])[];
