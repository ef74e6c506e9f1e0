/** Areas by the rows that they cover, for asking row after row: thousands of them cost no more than those that are there. */
export class ByRow<T> {
  private readonly sorted: readonly T[];
  private active: T[] = [];
  private next = 0;
  private row = -1;

  /** @param top and @param bottom the first and last row of one of them */
  constructor(
    all: readonly T[],
    private readonly top: (one: T) => number,
    private readonly bottom: (one: T) => number,
  ) {
    this.sorted = [...all].sort((one, other) => top(one) - top(other));
  }

  /** Those that cover the row. Cheap where it is asked for rows from the top down. */
  at(row: number): readonly T[] {
    if (row === this.row) return this.active;
    if (row < this.row) {
      this.active = [];
      this.next = 0;
    }
    this.row = row;
    if (this.active.length > 0) this.active = this.active.filter((one) => this.bottom(one) >= row);
    for (; this.next < this.sorted.length; this.next++) {
      const one = this.sorted[this.next] as T;
      if (this.top(one) > row) break;
      if (this.bottom(one) >= row) this.active.push(one);
    }
    return this.active;
  }
}
