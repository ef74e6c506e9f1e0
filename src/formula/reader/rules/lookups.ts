/** What looks things up in columns of cells: through indexes, and telling what was looked for. */
import type { Constant, Node } from "../../tree";
import { Block, type Any } from "../cells";
import { NotKnown, type Here, type Work } from "../piece";
import { criterionOf, fits, looseKey, matchOf, type Criterion } from "../criteria";
import { compared, isError, NA, NUM, REF, toNumber, VALUE, type Value } from "../values";
import type { NumberOrder } from "../column-index";
import { ANY_NUMBER, type Compiler, type Rule } from "./rule";

/** A range of one column, the same for every row. */
function columnOf(node: Node, compiler: Compiler): Block {
  const block = compiler.range(node);
  if (block.columns !== 1) throw new NotKnown(node.text);
  return block;
}

interface Asked {
  readonly within: Block;
  readonly sought: Work<Value>;
}

function askedIn(args: readonly Node[], compiler: Compiler): readonly Asked[] {
  if (args.length % 2 !== 0) throw new NotKnown("criteria come in pairs");
  const all: Asked[] = [];
  for (let i = 0; i < args.length; i += 2)
    all.push({ within: columnOf(args[i]!, compiler), sought: compiler.value(args[i + 1]!) });
  return all;
}

/** Rows, counted from the ranges' first, that fit all criteria. */
function* fitting(asked: readonly Asked[], others: readonly Block[], here: Here): Generator<number> {
  const criteria = asked.map(({ sought }) => criterionOf(sought(here)));
  const by = criteria.findIndex((one) => one.by === "key");
  const { rows } = asked[0]!.within;
  watch(asked, others, criteria[by], by, here);
  const isFitting = (row: number): boolean =>
    criteria.every((one, i) => i === by || fits(one, asked[i]!.within.column.get(asked[i]!.within.top + row)));
  for (const row of candidates(asked[by]?.within, criteria[by], rows)) if (isFitting(row)) yield row;
}

function* candidates(within: Block | undefined, criterion: Criterion | undefined, rows: number): Generator<number> {
  if (!within || criterion?.by !== "key") {
    for (let row = 0; row < rows; row++) yield row;
    return;
  }
  const { column, top, bottom } = within;
  for (const row of column.byLooseKey().with(criterion.key)) if (row >= top && row <= bottom) yield row - top;
  // empty cells behind the last filled one are in no index
  if (fits(criterion, null)) for (let row = Math.max(top, column.last + 1); row <= bottom; row++) yield row - top;
}

/** A key that is looked for stands for all columns beside it; without one every change counts. */
function watch(
  asked: readonly Asked[],
  others: readonly Block[],
  criterion: Criterion | undefined,
  by: number,
  { row, watcher }: Here,
): void {
  const columns = [...asked.map(({ within }) => within), ...others];
  if (criterion?.by !== "key") {
    for (const { column } of columns) watcher.whole(column);
    return;
  }
  const key = asked[by]!.within;
  watcher.keyed(row, key.column, criterion.key);
  for (const other of columns)
    if (other !== key) {
      if (other.top === key.top) watcher.via(other.column, key.column);
      else watcher.whole(other.column);
    }
}

const sameRows = (blocks: readonly Block[]): boolean => blocks.every(({ rows }) => rows === blocks[0]!.rows);

const COUNTIFS: Rule = {
  least: 2,
  most: ANY_NUMBER,
  bind: (args, compiler) => {
    const asked = askedIn(args, compiler);
    if (!sameRows(asked.map(({ within }) => within))) return () => VALUE;
    return (here) => {
      const rows = fitting(asked, [], here);
      let count = 0;
      while (!rows.next().done) count++;
      return count;
    };
  },
};

const extreme = (isBetter: (one: number, other: number) => boolean): Rule => ({
  least: 3,
  most: ANY_NUMBER,
  bind: ([range, ...args], compiler) => {
    const values = columnOf(range!, compiler);
    const asked = askedIn(args, compiler);
    if (!sameRows([values, ...asked.map(({ within }) => within)])) return () => VALUE;
    return (here) => {
      let best: number | undefined;
      for (const row of fitting(asked, [values], here)) {
        const value = values.column.get(values.top + row);
        if (isError(value)) return value;
        if (typeof value === "number" && (best === undefined || isBetter(value, best))) best = value;
      }
      return best ?? 0;
    };
  },
});

/**
 * The row of the last value that is not larger, in a column of rising values: found by halving, as Excel does it (its help
 * on MATCH and LOOKUP). Only values of the same kind count; undefined where there is none.
 */
function lastNotLarger({ column, top, bottom }: Block, value: Value): number | undefined {
  const isAlike = (row: number): boolean => typeof column.get(row) === typeof value && !isError(column.get(row));
  let [low, high] = [top, bottom];
  let found: number | undefined;
  while (low <= high) {
    const middle = (low + high) >> 1;
    let row = middle;
    while (row <= high && !isAlike(row)) row++;
    if (row > high) high = middle - 1;
    else if (compared(column.get(row), value) <= 0) {
      found = row;
      low = row + 1;
    } else high = middle - 1;
  }
  return found;
}

/** A blank is looked for as 0. */
const soughtIn = (value: Value): Value => value ?? 0;

function matchRising(sought: Node, range: Node, compiler: Compiler): Work {
  const asked = compiler.value(sought);
  const within = columnOf(range, compiler);
  return (here) => {
    const value = soughtIn(asked(here));
    if (isError(value)) return value;
    here.watcher.whole(within.column);
    const row = lastNotLarger(within, value);
    return row === undefined ? NA : row - within.top + 1;
  };
}

/** The first row that holds it, or the last of rising values that is not larger. */
const MATCH: Rule = {
  least: 3,
  most: 3,
  bind: ([sought, range, kind], compiler) => {
    if (kind!.is === "number" && kind!.value === 1) return matchRising(sought!, range!, compiler);
    if (kind!.is !== "number" || kind!.value !== 0) throw new NotKnown("MATCH among falling values");
    const asked = compiler.value(sought!);
    const within = columnOf(range!, compiler);
    const { column, top, bottom } = within;
    return (here) => {
      const value = asked(here);
      if (isError(value)) return value;
      const criterion = matchOf(value);
      if (!criterion) return NA;
      if (criterion.by === "key") {
        here.watcher.keyed(here.row, column, looseKey(value ?? 0));
        for (const row of column.byStrictKey().with(criterion.key))
          if (row >= top && row <= bottom) return row - top + 1;
        return NA;
      }
      here.watcher.whole(column);
      for (let row = top; row <= bottom; row++) if (criterion.fits(column.get(row))) return row - top + 1;
      return NA;
    };
  },
};

/** Among rising figures that are written out: {-3;-2;-1}. */
function lookupWritten(sought: Node, figures: readonly Constant[], compiler: Compiler): Work {
  const asked = compiler.value(sought);
  if (!figures.every((figure, i) => typeof figure === "number" && (i === 0 || figure >= (figures[i - 1] as number))))
    throw new NotKnown("LOOKUP among what is not rising");
  return (here) => {
    const value = soughtIn(asked(here));
    if (isError(value)) return value;
    if (typeof value !== "number") return NA;
    return (figures as readonly number[]).filter((figure) => figure <= value).at(-1) ?? NA;
  };
}

/** The last of rising values that is not larger, or what stands beside it in another column of as many rows. */
const LOOKUP: Rule = {
  least: 2,
  most: 3,
  bind: ([sought, range, results], compiler) => {
    if (range!.is === "array" && !results && range!.rows.every(({ length }) => length === 1))
      return lookupWritten(sought!, range!.rows.flat(), compiler);
    const asked = compiler.value(sought!);
    const within = columnOf(range!, compiler);
    const from = results ? columnOf(results, compiler) : within;
    if (from.rows !== within.rows) throw new NotKnown("LOOKUP in columns that are not alike");
    return (here) => {
      const value = soughtIn(asked(here));
      if (isError(value)) return value;
      here.watcher.whole(within.column);
      here.watcher.whole(from.column);
      const row = lastNotLarger(within, value);
      return row === undefined ? NA : from.column.get(row - within.top + from.top);
    };
  },
};

/** A cell of a range: it stays a cell, so that an empty one is told from 0. */
const INDEX: Rule = {
  least: 2,
  most: 3,
  bind: ([range, row, column], compiler) => {
    const block = compiler.range(range!);
    const [down, across] = [compiler.value(row!), column ? compiler.value(column) : undefined];
    return (here): Any => {
      const [r, c] = [toNumber(down(here)), across ? toNumber(across(here)) : 1];
      if (isError(r)) return r;
      if (isError(c)) return c;
      // INDEX(row,3) counts along the row
      const isAlong = !across && block.rows === 1 && block.columns > 1;
      const [y, x] = isAlong ? [1, Math.trunc(r)] : [Math.trunc(r), Math.trunc(c)];
      // 0 means the whole row or column, which does not go into one cell
      if (y <= 0 || x <= 0) return VALUE;
      if (x > block.columns) return REF;
      const [at, left] = [block.top + y - 1, block.left + x - 1];
      // behind the last one too: the range may grow
      here.watcher.cell(here.row, block.sheet.column(left), at);
      if (y > block.rows) return REF;
      return new Block(block.sheet, at, left, at, left);
    };
  },
};

const inOrder = (nth: (order: NumberOrder, k: number) => number | undefined): Rule => ({
  least: 2,
  most: 2,
  bind: ([range, which], compiler) => {
    const { column, top, bottom } = columnOf(range!, compiler);
    const place = compiler.value(which!);
    return (here) => {
      const k = toNumber(place(here));
      if (isError(k)) return k;
      here.watcher.whole(column);
      const order = column.order(top, bottom);
      return order.fault ?? nth(order, Math.ceil(k)) ?? NUM;
    };
  },
});

const RANK: Rule = {
  least: 2,
  most: 2,
  bind: ([sought, range], compiler) => {
    const asked = compiler.value(sought!);
    const { column, top, bottom } = columnOf(range!, compiler);
    return (here) => {
      const value = toNumber(asked(here));
      if (isError(value)) return value;
      here.watcher.whole(column);
      const order = column.order(top, bottom);
      return order.fault ?? order.rank(value) ?? NA;
    };
  },
};

/** Its own row, or the first one of a range. */
const ROW: Rule = {
  least: 0,
  most: 1,
  bind: ([range], compiler) => {
    if (!range) {
      compiler.hangsOn.place = true;
      return (here) => here.row + 1;
    }
    const { top } = compiler.range(range);
    return () => top + 1;
  },
};

const ROWS: Rule = {
  least: 1,
  most: 1,
  bind: ([range], compiler) => {
    const { rows } = compiler.range(range!);
    compiler.hangsOn.extent = true;
    return () => rows;
  },
};

export const lookups = {
  COUNTIFS,
  COUNTIF: { ...COUNTIFS, most: 2 } as Rule,
  MAXIFS: extreme((one, other) => one > other),
  MINIFS: extreme((one, other) => one < other),
  MATCH,
  INDEX,
  LOOKUP,
  LARGE: inOrder((order, k) => order.large(k)),
  SMALL: inOrder((order, k) => order.small(k)),
  "RANK.EQ": RANK,
  RANK,
  ROW,
  ROWS,
};
