/**
 * Works a formula out again from the cells that it reads, and keeps what each of our functions was given. Only the branch
 * that counts is followed. What is not understood is not known, and so is all that stands on it.
 */
import { call, type Answer } from "../../../src/worksheet/call";
import type { Matrix } from "../../../src/worksheet/cell";
import type { SheetFunction } from "../../../src/worksheet/define";
import { CellError, SheetError } from "../../../src/worksheet/error";
import { givesDate } from "../../../src/worksheet/result-kind";
import type { Overview, Value, Workbook } from "../../workbook/port";
import { parse } from "../../../src/formula/parse";
import { pieces, type Node } from "../../../src/formula/tree";
import { isDateFormat } from "../list/samples";
import { isError, operators, plainFunctions, truth } from "./plain-functions";
import { cellsOf, type Cells, type Standing } from "./references";
import type { Unit } from "./values";

/** So many cells are read for one explanation; more would keep people waiting. */
const MOST_CELLS = 200_000;
/** Names may stand on names. */
const DEEPEST = 8;

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

const PREFIX = /^(?:TUBE\.|_xldudf_TUBE_)/i;

/** One of our functions by its name in a formula. */
export const ourFunction = (name: string, functions: readonly SheetFunction[]): SheetFunction | undefined =>
  PREFIX.test(name) ? functions.find((each) => each.name === name.replace(PREFIX, "").toUpperCase()) : undefined;

/** Our functions anywhere in a formula, whether they count for this cell or not. */
export const callsIn = (node: Node, functions: readonly SheetFunction[]): readonly Node[] =>
  pieces(node).filter((piece) => piece.is === "call" && ourFunction(piece.name, functions) !== undefined);

export class Working {
  private readonly calls: Call[] = [];
  private readonly gaps = new Set<string>();
  private readonly blocks = new Map<string, Promise<Found>>();
  private readonly bound = new Map<string, Found>();
  private depth = 0;
  private root: Node | null = null;

  constructor(
    private readonly workbook: Workbook,
    private readonly overview: Overview,
    private readonly functions: readonly SheetFunction[],
    private readonly standing: Standing,
    private readonly at: Offset = { row: 0, column: 0 },
  ) {}

  async out(node: Node): Promise<WorkedOut> {
    this.root = node;
    const found = await this.work(node);
    return { found, calls: this.calls, gaps: [...this.gaps] };
  }

  /** What a piece stands for. */
  async work(node: Node): Promise<Found> {
    switch (node.is) {
      case "number":
      case "text":
      case "boolean":
        return value(node.value);
      case "array":
        return value(node.rows);
      case "nothing":
        return value(null);
      case "error":
        return value(new CellError(node.code));
      case "reference":
        return this.reference(node.text);
      case "name":
        return this.name(node.text);
      case "operator":
        return this.plain(operators[node.sign], node.text, node.parts);
      case "call":
        return this.called(node);
      case "unknown":
        return this.gap(`${node.text} is not understood here`);
    }
  }

  private gap(because: string): Found {
    this.gaps.add(because);
    return unknown(because);
  }

  private reference(text: string): Promise<Found> {
    const before = this.blocks.get(text);
    if (before) return before;
    const cells = cellsOf(text, this.standing, this.overview);
    const found = cells
      ? this.read(cells, text)
      : Promise.resolve(this.gap(`it is not clear which cells ${text} means`));
    this.blocks.set(text, found);
    return found;
  }

  private async read({ sheet, area }: Cells, text: string): Promise<Found> {
    if (area.rows * area.columns > MOST_CELLS) return this.gap(`${text} is too many cells to read here`);
    const { values = [] } = await this.workbook.read({ sheet, area }, ["values"]);
    const isOne = area.rows === 1 && area.columns === 1;
    return { ...value(isOne ? (values[0]?.[0] ?? null) : values), dates: await this.dates({ sheet, area }, values) };
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

  /** LET gives names to what it works out; they count in what stands behind them. */
  private async letting(node: Node & { readonly is: "call" }): Promise<Found> {
    const last = node.args.at(-1);
    for (let i = 0; i + 1 < node.args.length; i += 2)
      this.bound.set(node.args[i]!.text.toLowerCase(), await this.work(node.args[i + 1]!));
    return last ? this.work(last) : unknown("");
  }

  private async name(text: string): Promise<Found> {
    const bound = this.bound.get(text.toLowerCase());
    if (bound) return bound;
    const name = this.overview.names.find((one) => one.name.toLowerCase() === text.toLowerCase());
    if (!name) return this.gap(`${text} is no name of this workbook`);
    const meant = parse(name.refersTo);
    if (name.value !== null) {
      const cells = meant.is === "reference" ? cellsOf(meant.text, this.standing, this.overview) : null;
      const isOne = cells !== null && cells.area.rows === 1 && cells.area.columns === 1;
      return { ...value(name.value), ...(isOne && { dates: await this.dates(cells, [[name.value]]) }) };
    }
    if (meant.is !== "reference" && meant.is !== "name" && meant.is !== "number")
      return this.gap(`the name ${name.name} is not worked out here`);
    if (this.depth >= DEEPEST) return this.gap(`the name ${name.name} leads in a circle`);
    this.depth++;
    const found = await this.work(meant);
    this.depth--;
    return found;
  }

  private async called(node: Node & { readonly is: "call" }): Promise<Found> {
    const name = node.name.toUpperCase();
    const definition = ourFunction(name, this.functions);
    if (definition) return this.ours(node, definition);
    if (name === "IF") return this.choice(node);
    if (name === "LET") return this.letting(node);
    if (name === "IFERROR") {
      const first = await this.work(node.args[0]!);
      return first.known && isError(first.value as Value) ? this.work(node.args[1]!) : first;
    }
    return this.plain(plainFunctions[name], node.text, node.args, `${name} is not worked out here`);
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
    const tested = found.known && !Array.isArray(found.value) ? (found.value as Value) : undefined;
    if (tested !== undefined && isError(tested)) return value(tested);
    const isTrue = tested === undefined ? undefined : truth(tested);
    if (isTrue === true) return then ? this.work(then) : value(true);
    if (isTrue === false) return otherwise ? this.work(otherwise) : value(false);
    for (const part of [then, otherwise]) if (part) await this.work(part);
    return this.gap(`which part counts in ${shortened(node.text)}`);
  }

  private async plain(
    work: ((...values: Value[]) => Value | undefined) | undefined,
    text: string,
    parts: readonly Node[],
    cannot = `${shortened(text)} is not worked out here`,
  ): Promise<Found> {
    const found: Found[] = [];
    for (const part of parts) found.push(await this.work(part));
    if (!work) return this.gap(cannot);
    const values: Value[] = [];
    for (const one of found) {
      if (!one.known) return one;
      if (Array.isArray(one.value)) return this.gap(cannot);
      values.push(one.value as Value);
    }
    const answer = work(...values);
    return answer === undefined ? this.gap(cannot) : value(answer);
  }
}

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
