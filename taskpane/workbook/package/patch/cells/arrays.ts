/** Arrays and merged cells: where a single cell cannot be changed for itself. */
import { addressOf, contains, parseRange, rangeText, type Range } from "../../addresses";
import { ByRow } from "../../by-row";
import type { ArrayPlace } from "../../sheet/inspect";
import { refuse } from "../../../xlsx/refusal";
import { isPlanned, type PlannedCell, rangeAt, type SheetPlan, touched } from "../plan/plan";

/** A spill that shrank or went: its former cells are emptied. */
interface Emptied {
  readonly was: Range;
  readonly is: Range | undefined;
}

export class Arrays {
  private readonly emptied: Emptied[] = [];
  private readonly emptiedByRow: ByRow<Emptied>;
  /** Ranges of results as they will be: a text in them is a result, not a constant. */
  private readonly results: ByRow<Range>;

  constructor(private readonly plan: SheetPlan) {
    const arrays = this.within();
    const arraysByRow = new ByRow(
      arrays,
      ({ range }) => range.top,
      ({ range }) => range.bottom,
    );
    const firsts = new Map(arrays.map((array) => [addressOf(array.row, array.column), array]));
    const merges = rangesByRow(touched(plan, plan.facts.layout.merges));
    const results = arrays.map(({ range }) => range);
    for (const cells of plan.rows.values()) {
      for (const cell of cells.values()) {
        const array = arraysByRow.at(cell.row).find((one) => contains(one.range, cell.row, cell.column));
        if (array) this.check(cell, array);
        const spill = this.planSpill(cell, firsts);
        if (spill) results.push(spill);
        refuseCovered(plan, cell, merges.at(cell.row));
      }
    }
    this.results = rangesByRow(results);
    this.emptiedByRow = new ByRow(
      this.emptied,
      ({ was }) => was.top,
      ({ was }) => was.bottom,
    );
  }

  isResult(row: number, column: number): boolean {
    return rangeAt(this.results.at(row), row, column) !== undefined;
  }

  isEmptied(row: number, column: number): boolean {
    if (this.emptied.length === 0) return false;
    return this.emptiedByRow
      .at(row)
      .some(({ was, is }) => contains(was, row, column) && !(is && contains(is, row, column)));
  }

  get emptiesCells(): boolean {
    return this.emptied.length > 0;
  }

  /** Arrays of more than one cell that reach into planned rows. */
  private within(): ArrayPlace[] {
    const large = this.plan.facts.arrays.filter(({ range }) => range.top < range.bottom || range.left < range.right);
    const refs = new Set(
      touched(
        this.plan,
        large.map(({ range }) => rangeText(range)),
      ).map(rangeText),
    );
    return large.filter(({ range }) => refs.has(rangeText(range)));
  }

  private check(cell: PlannedCell, array: ArrayPlace): void {
    const isFirst = cell.row === array.row && cell.column === array.column;
    const keeps = cell.value === undefined || (cell.formula !== undefined && "keep" in cell.formula);
    const where = `${addressOf(cell.row, cell.column)} on the sheet "${this.plan.sheet.name}"`;
    if (!array.isDynamic) {
      if (!keeps)
        refuse(
          `The cell ${where} is part of an array formula that fills ${rangeText(array.range)} as one. Change that formula in Excel.`,
        );
      const spill = cell.formula?.spill;
      if (isFirst && spill !== undefined && spill !== rangeText(array.range)) {
        refuse(`The array formula in ${where} fills a fixed range, which cannot change its size. Change it in Excel.`);
      }
    } else if (!isFirst && cell.formula && "text" in cell.formula && !isPlanned(this.plan, array.row, array.column)) {
      refuse(
        `The cell ${where} is filled by the formula in ${addressOf(array.row, array.column)}. Change that formula first.`,
      );
    }
  }

  /** The range that the cell's formula is going to fill. */
  private planSpill(cell: PlannedCell, firsts: ReadonlyMap<string, ArrayPlace>): Range | undefined {
    const spill = cell.formula?.spill;
    const is = spill === undefined ? undefined : spillRange(cell, spill);
    const first = firsts.size === 0 ? undefined : firsts.get(addressOf(cell.row, cell.column));
    const old = first?.isDynamic ? first : undefined;
    if (is) {
      this.plan.claims.push({
        range: is,
        ...(old ? { except: old.range } : {}),
        sentence: `The formula in ${addressOf(cell.row, cell.column)} needs the cells ${rangeText(is)}, but something else is in the way.`,
      });
    }
    if (!old || cell.value === undefined) return is;
    const staysAsItIs = cell.formula !== undefined && "keep" in cell.formula && !is;
    if (!staysAsItIs) this.emptied.push({ was: old.range, is });
    return is;
  }
}

const rangesByRow = (ranges: readonly Range[]): ByRow<Range> =>
  new ByRow(
    ranges,
    ({ top }) => top,
    ({ bottom }) => bottom,
  );

function spillRange(cell: PlannedCell, spill: string): Range {
  const range = parseRange(spill);
  if (!range || range.top !== cell.row || range.left !== cell.column) {
    return refuse(
      `The formula in ${addressOf(cell.row, cell.column)} cannot fill "${spill}", which does not begin there.`,
    );
  }
  return range;
}

function refuseCovered(plan: SheetPlan, cell: PlannedCell, merges: readonly Range[]): void {
  if (cell.value === undefined || cell.value === null || (cell.formula && "keep" in cell.formula)) return;
  const merge = rangeAt(merges, cell.row, cell.column);
  if (!merge || (merge.top === cell.row && merge.left === cell.column)) return;
  refuse(
    `The cell ${addressOf(cell.row, cell.column)} on the sheet "${plan.sheet.name}" lies under the merged cells ` +
      `${rangeText(merge)}, where nobody would see it. Take the merge apart in Excel first.`,
  );
}
