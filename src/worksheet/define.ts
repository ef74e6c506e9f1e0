import type { Cell, Matrix } from "./cell";
import type { CellError, ErrorCode, SheetError } from "./error";

/** Which numbers are taken as they stand; each limit has its outermost value where there is none. */
export interface PlainNumbers {
  readonly min: number;
  readonly max: number;
  readonly above: number;
  readonly below: number;
  readonly whole: boolean;
  readonly zeroIsBlank: boolean;
}

/**
 * One argument of a worksheet function: what it means, and how a cell becomes a checked value.
 *
 * - "each": one cell or a range; a range gives one result for every cell.
 * - "range": always the whole block.
 * - "choice": one of a few words.
 *
 * @typeParam T what `compute` gets
 */
export interface Param<T> {
  readonly mode: "each" | "range" | "choice";
  /** A fragment for argument help; units and limits stand in their own fields. */
  readonly help: string;
  readonly unit?: string;
  /** In words: "above 0, at most 60". */
  readonly limits?: string;
  readonly optional: boolean;
  /** What `compute` gets when an optional argument is left out. */
  readonly fallback?: T;
  /** The same in words, where the value itself does not say it: "0.5 mL up to 5 mL, else 1 mL". */
  readonly fallbackHelp?: string;
  /**
   * What `compute` gets for a blank cell of an argument that must be given: where a blank is an answer of its own, such
   * as "not known". Left out: a blank row, or the sentence that the argument is missing.
   */
  readonly ifBlank?: T;
  /** A choice's words, the default first. */
  readonly words?: readonly string[];
  /** Numbers that need not go through `read`, which would give them back unchanged. */
  readonly plain?: PlainNumbers;
  /** One cell that is neither an error nor blank. Gives null when it is to be taken for a blank (0 in a date). */
  readonly read: (cell: Exclude<Cell, null>) => T | null | SheetError;
  /** A whole block, for "range" only; errors in cells have been answered before. */
  readonly readAll?: (cells: Matrix) => T | SheetError;
}

export type Params = Readonly<Record<string, Param<unknown>>>;

/** The named arguments that `compute` gets: checked values, defaults filled in. */
export type Args<P extends Params> = { readonly [K in keyof P]: P[K] extends Param<infer T> ? T : never };

/** How far a number in a function's rule can be relied on; shown in help and reference (catalogue of evidence words). */
export type Evidence =
  "guideline" | "hospital" | "study" | "standard" | "textbook" | "common practice" | "clinic setting";

/** What a function gives. */
export interface ResultInfo {
  /** "cell": one value for one row of arguments. "row": several side by side. "block": a whole table, from ranges. */
  readonly shape: "cell" | "row" | "block";
  readonly kind: "number" | "date" | "text" | "mixed";
  /** A fragment: "Outside diameter". */
  readonly help: string;
  readonly unit?: string;
  /** Words that may stand where a number or date would. */
  readonly words?: readonly string[];
  /** Headings of a row or block, left to right. */
  readonly columns?: readonly string[];
  /** What each of those columns holds, where the kind is "mixed". */
  readonly columnKinds?: readonly ("number" | "date" | "text")[];
  /** The words of a choice with which a mixed result is a date: READCODE's part. */
  readonly dateWith?: { readonly choice: string; readonly words: readonly string[] };
  /** The optional choice that, once given, turns a row into one cell: READPRINT's part. */
  readonly oneCellWith?: string;
  /** What stands there when the argument that the row is about is blank. Never a reassuring word. */
  readonly blank: string;
}

/** What an example shows. Every function shows all of them (tests/examples/registry). */
export type Shows = "published" | "defined" | "range" | "blank" | "bad input" | "boundary" | "use";

/** What an argument may be in an example: as a cell or a range holds it. */
export type RawArgument = Cell | CellError | Matrix<Cell | CellError>;

/** What an example gives. An error may name a part of its sentence. */
export type Given =
  Cell | Matrix<Cell | { readonly error: ErrorCode }> | { readonly error: ErrorCode; readonly says?: string };

/** A worked case: printed in the reference, run as a test, written into the self-checking workbook. */
export interface Example<P extends Params> {
  readonly shows: Shows;
  readonly args: { readonly [K in keyof P]?: RawArgument };
  readonly gives: Given;
  /** Half of the last printed digit where the source is rounded; otherwise left out: exact to 1e-12 relative. */
  readonly within?: number;
  /** Where the expected value comes from; never from our own output. */
  readonly source: string;
}

/** All that is said about a function beyond what it does. Not part of functions.js. */
export interface Documentation<P extends Params> {
  /** Whole sentences: what it is for and how it decides. */
  readonly details: string;
  readonly cautions: readonly string[];
  readonly evidence: Evidence;
  /** Published sources of its rule. */
  readonly sources: readonly string[];
  readonly examples: readonly Example<P>[];
}

export type Family =
  "Sizes" | "Device" | "Balloon" | "Schedule" | "Fit" | "Wear" | "Service" | "Supplies" | "Feed and water" | "Words";

export interface Definition<P extends Params> {
  /** Capitals and digits only, at least three; stored in workbooks for ever. */
  readonly name: string;
  readonly family: Family;
  /** One sentence. */
  readonly summary: string;
  /** In the order in which a person types them. */
  readonly params: P;
  /** The arguments that a row is about: one of them blank gives `result.blank`. */
  readonly subject: readonly (keyof P & string)[];
  readonly result: ResultInfo;
  /**
   * One row. The object of arguments is used again for the next row: take it apart, never keep it.
   * A row or block is given as arrays.
   */
  readonly compute: (args: Args<P>) => Cell | SheetError | readonly Row[] | Row;
}

/** One row of a result; a cell of it may be an error by itself. */
export type Row = readonly (Cell | SheetError)[];

/**
 * The arguments of the row that is being worked out: written by place, read by name.
 *
 * One loop serves all functions, so a write by name is looked up anew for every row; a getter is not, because each
 * function's `compute` meets only its own (measured: a third of a column's time).
 */
export interface RowOfArguments {
  /** In the order of the arguments. */
  readonly values: unknown[];
  /** What `compute` gets. */
  readonly args: Record<string, unknown>;
  /** The same for a long column: only arguments that vary from row to row are read anew, the others stand there as they are. */
  readonly argsWith: (isVarying: (place: number) => boolean) => Record<string, unknown>;
}

function rowOf(names: readonly string[]): RowOfArguments {
  const values: unknown[] = names.map(() => undefined);
  const getters = names.map((_, i) => ({ enumerable: true, get: () => values[i] }));
  const argsWith: RowOfArguments["argsWith"] = (isVarying) => {
    const args: Record<string, unknown> = {};
    names.forEach((name, i) => {
      if (isVarying(i)) Object.defineProperty(args, name, getters[i]!);
      else args[name] = values[i];
    });
    return args;
  };
  return { values, args: argsWith(() => true), argsWith };
}

/** A function as hosts, pages and tests see it, its arguments' types forgotten. */
export interface SheetFunction {
  readonly name: string;
  readonly family: Family;
  readonly summary: string;
  readonly params: Params;
  /** Names and arguments in order; the same facts as `params`, ready for a loop. */
  readonly order: readonly { readonly name: string; readonly param: Param<unknown>; readonly isSubject: boolean }[];
  readonly subject: readonly string[];
  readonly result: ResultInfo;
  readonly row: RowOfArguments;
  readonly compute: (args: Record<string, unknown>) => Cell | SheetError | readonly Row[] | Row;
  /** Undefined in functions.js. */
  readonly documentation: Documentation<Params> | undefined;
}

/**
 * A worksheet function is one object in one file; everything else is derived from it. Types tie `compute` and the
 * examples to `params`: a misspelt argument is a compile error.
 */
export function define<const P extends Params>(
  definition: Definition<P>,
  documentation: Documentation<NoInfer<P>> | false,
): SheetFunction {
  const order = Object.entries(definition.params).map(([name, param]) => ({
    name,
    param,
    isSubject: definition.subject.includes(name),
  }));
  return {
    ...definition,
    order,
    row: rowOf(order.map(({ name }) => name)),
    compute: definition.compute as SheetFunction["compute"],
    documentation: (documentation || undefined) as Documentation<Params> | undefined,
  };
}
