/**
 * Goes through a formula piece by piece and keeps what each of our functions was given. Only the branch that counts is
 * followed. What a piece gives is worked out by the reader of formulas, from the cells as they stand; what the reader does
 * not know is not known, and so is all that stands on it.
 */
import { call, type Answer } from "../../../src/worksheet/call";
import type { Matrix } from "../../../src/worksheet/cell";
import type { SheetFunction } from "../../../src/worksheet/define";
import { CellError, SheetError } from "../../../src/worksheet/error";
import { givesDate } from "../../../src/worksheet/result-kind";
import type { Overview, Value, Workbook } from "../../workbook/port";
import { oursWithoutPrefix } from "../../../src/formula/ours";
import { parse } from "../../../src/formula/parse";
import { NotKnown } from "../../../src/formula/reader/piece";
import { isError, toTruth } from "../../../src/formula/reader/values";
import { partsOf, pieces, type Node } from "../../../src/formula/tree";
import { isDateFormat } from "../list/samples";
import { CellsRead } from "./cells-read";
import type { Cells, Standing } from "./references";
import type { Unit } from "./values";

export type Found =
  | {
      readonly known: true;
      readonly value: Value | Matrix<Value>;
      /** Cells of these columns show dates, by their format; left out where no cells were read. */
      readonly dates?: readonly boolean[];
    }
  /** A fragment: why it was not worked out. */
  | { readonly known: false; readonly because: string };

/** Which cell of a formula's answers is meant: 0 and 0 for the formula's own. */
export interface Offset {
  readonly row: number;
  readonly column: number;
}

/** One of our functions, as it was worked out. */
export interface Call {
  readonly node: Node & { readonly is: "call" };
  readonly definition: SheetFunction;
  readonly given: readonly Found[];
  /** Where the answers fill more than one cell: of each column of arguments, the cell that this answer comes from. */
  readonly at: Offset | null;
  /** Null where an argument is not known. */
  readonly answer: Answer | null;
}

export interface WorkedOut {
  readonly found: Found;
  /** Outermost first; only those that count for this cell. */
  readonly calls: readonly Call[];
  /** What stood in the way, each once. */
  readonly gaps: readonly string[];
}

const value = (one: Value | Matrix<Value>): Found & { readonly known: true } => ({ known: true, value: one });
const unknown = (because: string): Found => ({ known: false, because });

/** One of our functions by its name in a formula. */
export const ourFunction = (name: string, functions: readonly SheetFunction[]): SheetFunction | undefined => {
  const own = oursWithoutPrefix(name);
  return own === undefined ? undefined : functions.find((each) => each.name === own);
};

/** Our functions anywhere in a formula, whether they count for this cell or not. */
export const callsIn = (node: Node, functions: readonly SheetFunction[]): readonly Node[] =>
  pieces(node).filter((piece) => piece.is === "call" && ourFunction(piece.name, functions) !== undefined);

/** What LET names in the formula. */
interface Bound {
  readonly name: string;
  readonly node: Node;
  readonly found: Found;
}

export class Working {
  private readonly calls: Call[] = [];
  private readonly gaps = new Set<string>();
  private bound: readonly Bound[] = [];
  private root: Node | null = null;
  private readonly cells: CellsRead;

  constructor(
    private readonly workbook: Workbook,
    private readonly overview: Overview,
    private readonly functions: readonly SheetFunction[],
    standing: Standing,
    private readonly at: Offset = { row: 0, column: 0 },
  ) {
    this.cells = new CellsRead(workbook, overview, functions, standing);
  }

  async out(node: Node): Promise<WorkedOut> {
    this.root = node;
    const found = await this.work(node);
    return { found, calls: this.calls, gaps: [...this.gaps] };
  }

  /** What a piece stands for. */
  async work(node: Node): Promise<Found> {
    if (node.is === "reference") return this.reference(node.text);
    if (node.is === "name") return this.name(node);
    if (node.is === "unknown") return this.gap(`${node.text} is not understood here`);
    if (node.is !== "call") return this.plain(node);
    const definition = ourFunction(node.name, this.functions);
    if (definition) return this.ours(node, definition);
    switch (node.name.toUpperCase()) {
      case "IF":
        return this.choice(node);
      case "IFERROR":
        return this.unlessError(node);
      case "LET":
        return this.letting(node);
      default:
        return this.plain(node);
    }
  }

  private gap(because: string): Found {
    this.gaps.add(because);
    return unknown(because);
  }

  private async reference(text: string): Promise<Found> {
    const cells = this.cells.meantBy(text);
    if (!cells) return this.gap(`it is not clear which cells ${text} means`);
    const values = await this.cells.values(cells);
    if (!values) return this.gap(tooMany(text));
    return { ...value(isOneCell(cells) ? (values[0]?.[0] ?? null) : values), dates: await this.dates(cells, values) };
  }

  /** By the first cell of each column that holds a number: a header has another format than what stands below it. */
  private async dates({ sheet, area }: Cells, values: Matrix<Value>): Promise<readonly boolean[]> {
    const firsts = Array.from({ length: area.columns }, (_, c) =>
      values.findIndex((row) => typeof row[c] === "number"),
    );
    const rows = new Map<number, readonly string[]>();
    for (const row of new Set(firsts.filter((first) => first >= 0))) {
      const line = { ...area, top: area.top + row, rows: 1 };
      rows.set(row, (await this.workbook.read({ sheet, area: line }, ["formats"])).formats?.[0] ?? []);
    }
    return firsts.map((first, column) => isDateFormat(rows.get(first)?.[column] ?? ""));
  }

  private async name(node: Node): Promise<Found> {
    const bound = [...this.bound].reverse().find(({ name }) => name === node.text.toLowerCase());
    if (bound) return bound.found;
    const name = this.overview.names.find((one) => one.name.toLowerCase() === node.text.toLowerCase());
    if (!name) return this.gap(`${node.text} is no name of this workbook`);
    const meant = parse(name.refersTo);
    if (meant.is === "reference") return this.reference(meant.text);
    return name.value === null ? this.plain(node) : value(name.value);
  }

  /** LET gives names to what it works out; they count in what stands behind them. */
  private async letting({ args }: Node & { readonly is: "call" }): Promise<Found> {
    const outer = this.bound;
    const last = args.at(-1);
    for (let i = 0; i + 1 < args.length; i += 2) {
      const node = args[i + 1]!;
      const found = await this.work(node);
      this.bound = [...this.bound, { name: args[i]!.text.toLowerCase(), node, found }];
    }
    const found = last ? await this.work(last) : unknown("");
    this.bound = outer;
    return found;
  }

  private async ours(node: Node & { readonly is: "call" }, definition: SheetFunction): Promise<Found> {
    const place = this.calls.length;
    const given: Found[] = [];
    for (const argument of node.args) given.push(await this.work(argument));
    const isKnown = given.every(({ known }) => known);
    const answer = isKnown ? call(definition, given.map(rawOf)) : null;
    this.calls.splice(place, 0, {
      node,
      definition,
      given,
      at: null,
      answer,
      ...this.oneOf(node, definition, given, answer),
    });
    if (answer === null) return unknown("something that it is given was not worked out here");
    return value(Array.isArray(answer) ? answer.map((row) => row.map(standing)) : standing(answer));
  }

  /** Of a function that answers cell by cell, the one answer that is asked for, and what it was given. */
  private oneOf(node: Node, definition: SheetFunction, given: readonly Found[], answer: Answer | null): Partial<Call> {
    if (node !== this.root || definition.result.shape !== "cell" || !Array.isArray(answer)) return {};
    const { row, column } = this.at;
    const own = answer[row]?.[column];
    if (own === undefined) return {};
    const narrowed = given.map((found, i) => {
      const isEach = definition.order[i]?.param.mode === "each";
      if (!isEach || !found.known || !Array.isArray(found.value)) return found;
      const own = (found.value as Matrix<Value>)[row]?.[column] ?? null;
      return { ...value(own), ...(found.dates && { dates: [found.dates[column] ?? false] }) };
    });
    return { given: narrowed, at: this.at, answer: own };
  }

  /** Only what counts is worked out. Where that is not known, both are looked at, and neither is the answer. */
  private async choice(node: Node & { readonly is: "call" }): Promise<Found> {
    const [test, then, otherwise] = node.args;
    const found = test ? await this.work(test) : unknown("");
    const tested = found.known && !Array.isArray(found.value) ? toTruth(found.value as Value) : undefined;
    if (isError(tested)) return value(tested);
    if (tested === true) return then ? this.work(then) : value(true);
    if (tested === false) return otherwise ? this.work(otherwise) : value(false);
    for (const part of [then, otherwise]) if (part) await this.work(part);
    return this.gap(`which part counts in ${shortened(node.text)}`);
  }

  private async unlessError({ args: [tried, otherwise] }: Node & { readonly is: "call" }): Promise<Found> {
    const first = tried ? await this.work(tried) : unknown("");
    return otherwise && first.known && isError(first.value) ? this.work(otherwise) : first;
  }

  /** By the reader; our functions inside are kept too. */
  private async plain(node: Node): Promise<Found> {
    for (const part of partsOf(node)) if (callsIn(part, this.functions).length > 0) await this.work(part);
    const text = this.withBound(node);
    const missing = await this.cells.fetch(parse(text));
    if (missing !== null) return this.gap(tooMany(missing));
    try {
      return value(this.cells.worth(text));
    } catch (error) {
      if (!(error instanceof NotKnown)) throw error;
      return this.gap(`${shortened(error.message)} is not worked out here`);
    }
  }

  /** The piece, with what LET has named around it as far as it is used. */
  private withBound(node: Node): string {
    const used = new Set(namesIn(node));
    const needed: string[] = [];
    for (const { name, node: meant } of [...this.bound].reverse()) {
      if (!used.has(name)) continue;
      needed.unshift(name, meant.text);
      for (const one of namesIn(meant)) used.add(one);
    }
    return needed.length === 0 ? node.text : `LET(${[...needed, node.text].join(",")})`;
  }
}

const namesIn = (node: Node): readonly string[] =>
  pieces(node).flatMap((piece) => (piece.is === "name" ? [piece.text.toLowerCase()] : []));

const isOneCell = ({ area }: Cells): boolean => area.rows === 1 && area.columns === 1;

const tooMany = (text: string): string => `${text} is too many cells to read here`;

const LONGEST = 60;
const shortened = (text: string): string => (text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text);

const rawOf = (found: Found): unknown => (found.known ? found.value : null);

/** What the numbers of an answer are counted in, column by column. */
export function unitOfAnswer({ definition, given }: Call, column: number): Unit {
  const choices = Object.fromEntries(
    definition.order.map(({ name }, i) => {
      const found = given[i];
      return [name, found?.known ? found.value : undefined];
    }),
  );
  return givesDate(definition, column, choices) ? "date" : definition.result.unit;
}

/** An answer as it would stand in a cell. */
const standing = (answer: Exclude<Answer, unknown[][]>): Value =>
  answer instanceof SheetError ? new CellError(answer.code) : answer;
