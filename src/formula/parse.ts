/**
 * A formula's text as a tree, or where it cannot be read: the grammar of ECMA-376 part 1, 18.17.2, and what Excel has
 * added since (`A1#`, `@A1`, `LAMBDA(x,x+1)(3)`; [MS-XLSX] 2.2.2). English spelling, commas between arguments.
 *
 * Only the form is read: whether a sheet, a name or a function exists is somebody else's question.
 */
import { CellError } from "../worksheet/error";
import { isFunctionName, tokens, type Token } from "./tokens";
import type { Constant, Node, Sign } from "./tree";
import { isBoolean, isCell, isColumn, isName, isNumber, isRow } from "./words";

export type FaultKind =
  /** A text, a sheet's name in quotes, or a [ that is not closed. */
  | "not closed"
  /** A ( that is not closed, or a ) that closes nothing. */
  | "brackets"
  /** Nothing stands where a value is needed: =1+ */
  | "value missing"
  /** Two values stand beside each other: =1 2 */
  | "operator missing"
  /** A word that is no number, name or address: =12abc */
  | "word"
  /** {1,2;3}: rows of different length, or something else than constants. */
  | "array"
  | "too deep"
  | "empty";

export interface Fault {
  readonly is: FaultKind;
  /** Characters before it, those of a leading "=" counted. */
  readonly at: number;
}

/** Brackets in brackets; Excel itself stops at 64 functions in functions. */
const DEEPEST = 250;

const LOOSEST = 0;
/** From the loosest to the tightest; those of one row are read from left to right, ^ too (2^3^2 is 64). */
const levels: readonly (readonly Sign[])[] = [["=", "<>", "<=", ">=", "<", ">"], ["&"], ["+", "-"], ["*", "/"], ["^"]];

class Stopped extends Error {
  constructor(readonly fault: Fault) {
    super(fault.is);
  }
}

/** @param formula with or without its leading "=" */
export function read(formula: string): { readonly node: Node; readonly fault: null } | { readonly fault: Fault } {
  const start = formula.startsWith("=") ? 1 : 0;
  try {
    return { node: new Parser(formula.slice(start)).whole(), fault: null };
  } catch (error) {
    if (!(error instanceof Stopped)) throw error;
    return { fault: { ...error.fault, at: error.fault.at + start } };
  }
}

/** The same; what cannot be read is one piece that nobody understands. */
export function parse(formula: string): Node {
  const found = read(formula);
  return found.fault === null ? found.node : { is: "unknown", text: formula.replace(/^=/, "").trim() };
}

class Parser {
  private readonly all: readonly Token[];
  /** Where each token starts; one more for the end. */
  private readonly starts: readonly number[];
  private at = 0;
  private depth = 0;

  constructor(private readonly formula: string) {
    this.all = joined(tokens(formula));
    const starts = [0];
    for (const { text } of this.all) starts.push(starts.at(-1)! + text.length);
    this.starts = starts;
    this.closed();
  }

  whole(): Node {
    this.spaces();
    if (this.at === this.all.length) this.stop("empty");
    const node = this.expression(LOOSEST);
    this.spaces();
    if (this.at < this.all.length) this.stop(this.text === ")" ? "brackets" : "operator missing");
    return node;
  }

  /** Texts, sheets and brackets end where they should. */
  private closed(): void {
    this.all.forEach(({ kind, text }, at) => {
      const isOpen =
        (kind === "text" && !/^"(?:[^"]|"")*"$/.test(text)) ||
        (kind === "sheet" && !/^'(?:[^']|'')+'$/.test(text)) ||
        (kind === "bracket" && !text.endsWith("]"));
      if (isOpen) this.stop("not closed", at);
    });
  }

  private stop(is: FaultKind, at = this.at): never {
    throw new Stopped({ is, at: this.starts[at]! });
  }

  private get text(): string {
    return this.all[this.at]?.text ?? "";
  }

  private isSpace(at: number): boolean {
    return at < this.all.length && this.all[at]!.text.trim() === "";
  }

  private spaces(): void {
    while (this.isSpace(this.at)) this.at++;
  }

  private since(start: number): string {
    return this.formula.slice(this.starts[start]!, this.starts[this.at]!).trim();
  }

  private expression(level: number): Node {
    const signs = levels[level];
    if (!signs) return this.signed();
    this.spaces();
    const start = this.at;
    let left = this.expression(level + 1);
    for (this.spaces(); signs.includes(this.text as Sign); this.spaces()) {
      const sign = this.text as Sign;
      this.at++;
      const right = this.expression(level + 1);
      left = { is: "operator", sign, parts: [left, right], text: this.since(start) };
    }
    return left;
  }

  /** A sign before a value binds tighter than any operator between two: -2^2 is 4. */
  private signed(): Node {
    this.spaces();
    const start = this.at;
    if (this.text === "-" || this.text === "+" || this.text === "@") {
      const sign = this.text;
      this.at++;
      const part = this.deeper(() => this.signed());
      return { is: "operator", sign, parts: [part], text: this.since(start) };
    }
    let node = this.intersection();
    for (this.spaces(); this.text === "%"; this.spaces()) {
      this.at++;
      node = { is: "operator", sign: "%", parts: [node], text: this.since(start) };
    }
    return node;
  }

  private deeper<T>(inner: () => T): T {
    if (++this.depth > DEEPEST) this.stop("too deep");
    const found = inner();
    this.depth--;
    return found;
  }

  /** A1:C3 B2:D4: a blank between two references. */
  private intersection(): Node {
    const start = this.at;
    let left = this.range();
    while (this.isSpace(this.at) && isReferring(left)) {
      let next = this.at;
      while (this.isSpace(next)) next++;
      if (!this.startsReference(next)) break;
      this.at = next;
      const right = this.range();
      left = { is: "operator", sign: " ", parts: [left, right], text: this.since(start) };
    }
    return left;
  }

  private startsReference(at: number): boolean {
    const token = this.all[at];
    return token !== undefined && (token.text === "(" || ["word", "sheet", "bracket"].includes(token.kind));
  }

  /** A1:INDEX(...): a range whose ends are worked out. Plain ranges are one reference. */
  private range(): Node {
    const start = this.at;
    let left = this.behind();
    while (this.isColonNext() && isReferring(left)) {
      this.spaces();
      this.at++;
      this.spaces();
      const right = this.behind();
      left = { is: "operator", sign: ":", parts: [left, right], text: this.since(start) };
    }
    return left;
  }

  /** Excel takes A1 : B2 as well. */
  private isColonNext(): boolean {
    let next = this.at;
    while (this.isSpace(next)) next++;
    return this.all[next]?.text === ":";
  }

  /** A1#, and a call of what a call gives. */
  private behind(): Node {
    const start = this.at;
    let node = this.operand();
    for (;;) {
      if (this.text === "#" && isReferring(node)) {
        this.at++;
        node = { is: "operator", sign: "#", parts: [node], text: this.since(start) };
      } else if (this.text === "(" && node.is === "call") {
        this.at++;
        const args = this.deeper(() => this.arguments());
        node = { is: "operator", sign: "()", parts: [node, ...args], text: this.since(start) };
      } else return node;
    }
  }

  private operand(): Node {
    const start = this.at;
    const token = this.all[this.at];
    if (!token || token.text === ")" || token.text === ",") this.stop("value missing");
    if (token.text === "(") return this.bracketed(start);
    if (token.text === "{") return this.array(start);
    if (token.text.startsWith("#") && token.text.length > 1) {
      this.at++;
      return { is: "error", code: token.text, text: token.text };
    }
    if (token.kind === "text") {
      this.at++;
      return { is: "text", value: textIn(token), text: token.text };
    }
    if (token.kind === "word" && isFunctionName(this.all, this.at)) return this.call(start);
    if (token.kind === "other") this.stop("value missing");
    return this.word(start);
  }

  /** Inside brackets of its own a comma joins references: (A1:A3,C1). */
  private bracketed(start: number): Node {
    this.at++;
    return this.deeper(() => {
      let inside = this.expression(LOOSEST);
      for (this.spaces(); this.text === "," && isReferring(inside); this.spaces()) {
        this.at++;
        const right = this.expression(LOOSEST);
        inside = { is: "operator", sign: ",", parts: [inside, right], text: this.since(start + 1) };
      }
      if (this.text !== ")") this.stop(this.at < this.all.length ? "operator missing" : "brackets", this.ending(start));
      this.at++;
      return { ...inside, text: this.since(start) };
    });
  }

  /** A bracket that is never closed is shown where it opens. */
  private ending(start: number): number {
    return this.at < this.all.length ? this.at : start;
  }

  private call(start: number): Node {
    const name = this.text;
    this.at++;
    this.spaces();
    this.at++;
    const args = this.deeper(() => this.arguments());
    return { is: "call", name, args, text: this.since(start) };
  }

  /** Behind the opening bracket, to behind the closing one. */
  private arguments(): readonly Node[] {
    const opened = this.at - 1;
    const args: Node[] = [];
    this.spaces();
    if (this.text === ")") {
      this.at++;
      return args;
    }
    for (;;) {
      this.spaces();
      if (this.text === "," || this.text === ")") args.push({ is: "nothing", text: "" });
      else if (this.at === this.all.length) this.stop("brackets", opened);
      else args.push(this.expression(LOOSEST));
      this.spaces();
      const end = this.text;
      if (end !== "," && end !== ")")
        this.stop(this.at < this.all.length ? "operator missing" : "brackets", this.ending(opened));
      this.at++;
      if (end === ")") return args;
    }
  }

  /** A number, TRUE, a name, or cells with all that belongs to them. */
  private word(start: number): Node {
    const first = this.end();
    if (this.text === ":" && first !== null && this.isEnd(this.at + 1)) {
      const isPlain = this.isPlainRange(first);
      if (isPlain) {
        this.at++;
        this.end();
        return { is: "reference", text: this.since(start) };
      }
    }
    const text = this.since(start);
    if (first === "cells" || isCell(text)) return { is: "reference", text };
    if (isNumber(text)) return { is: "number", value: Number(text), text };
    if (isBoolean(text)) return { is: "boolean", value: /^true$/i.test(text), text };
    if (!isName(text)) this.stop("word", start);
    return { is: "name", text };
  }

  /**
   * Sheet!B4, Sheet1:Sheet3!B4, [1]Sheet!B4, Table[Column], [@Column] or a single word.
   * @returns "cells" where it can only mean cells, "word" for a single word
   */
  private end(): "cells" | "word" {
    const start = this.at;
    const sheets = this.sheetsBefore();
    if (sheets > 0) {
      this.at += sheets;
      const isWord = this.all[this.at]?.kind === "word";
      // Sheet1!#REF! is what is left of cells that were deleted
      if (!isWord && !this.text.startsWith("#")) this.stop("value missing");
      this.at++;
      if (isWord && this.all[this.at]?.kind === "bracket") this.at++;
      return "cells";
    }
    if (this.all[start]!.kind === "sheet") this.stop("value missing", start + 1);
    this.at++;
    if (this.all[start]!.kind === "bracket") return "cells";
    if (this.all[this.at]?.kind !== "bracket") return "word";
    this.at++;
    return "cells";
  }

  /** So many tokens say which sheet is meant, the "!" included. */
  private sheetsBefore(): number {
    const kinds = this.all.slice(this.at, this.at + 5).map(({ kind, text }) => (kind === "other" ? text : kind));
    const book = kinds[0] === "bracket" ? 1 : 0;
    if (book === 1 && kinds[1] === "!") return 2;
    const isName = kinds[book] === "word" || kinds[book] === "sheet";
    if (isName && kinds[book + 1] === "!") return book + 2;
    const isSeveral = kinds[book] === "word" && kinds[book + 1] === ":" && kinds[book + 2] === "word";
    return isSeveral && kinds[book + 3] === "!" ? book + 4 : 0;
  }

  private isEnd(at: number): boolean {
    const kind = this.all[at]?.kind;
    return (kind === "word" && !isFunctionName(this.all, at)) || kind === "sheet";
  }

  /** B4:C9, A:C, 3:7, with sheets before them; names for ranges count too (First:Last). */
  private isPlainRange(first: "cells" | "word"): boolean {
    const left = this.all[this.at - 1]!.text;
    const right = this.all[this.at + 1]!;
    if (right.kind === "sheet" || this.all[this.at + 2]?.text === "!") return true;
    if (isRow(left) || isRow(right.text)) return isRow(left) && isRow(right.text);
    const canBeEnd = (word: string): boolean => isCell(word) || isColumn(word) || isName(word);
    return first === "cells" ? canBeEnd(right.text) : canBeEnd(left) && canBeEnd(right.text);
  }

  private array(start: number): Node {
    const rows: Constant[][] = [[]];
    this.at++;
    for (;;) {
      this.spaces();
      const isNegative = this.text === "-";
      if (isNegative || this.text === "+") this.at++;
      const constant = constantOf(this.all[this.at], isNegative);
      if (constant === undefined) this.stop("array");
      rows.at(-1)!.push(constant);
      this.at++;
      this.spaces();
      const end = this.text;
      if (end !== "," && end !== ";" && end !== "}") this.stop("array");
      this.at++;
      if (end === ";") rows.push([]);
      if (end === "}") break;
    }
    if (rows.some(({ length }) => length !== rows[0]!.length)) this.stop("array", start);
    return { is: "array", rows, text: this.since(start) };
  }
}

/** Whether it can stand for cells: what joins references asks. */
const isReferring = (node: Node): boolean =>
  ["reference", "name", "call", "error"].includes(node.is) ||
  (node.is === "operator" && [":", " ", ",", "#", "()", "@"].includes(node.sign));

const textIn = ({ text }: Token): string => text.slice(1, -1).replaceAll('""', '"');

/** One figure, text, TRUE or error of an array. */
function constantOf(token: Token | undefined, isNegative: boolean): Constant | undefined {
  if (!token) return undefined;
  if (token.kind === "word" && isNumber(token.text)) return isNegative ? -Number(token.text) : Number(token.text);
  if (isNegative) return undefined;
  if (token.kind === "text") return textIn(token);
  if (token.text.startsWith("#") && token.text.length > 1) return new CellError(token.text);
  return token.kind === "word" && isBoolean(token.text) ? /^true$/i.test(token.text) : undefined;
}

/** "<=" and "<>" are one sign each; 1E-5 is one number. */
function joined(all: readonly Token[]): readonly Token[] {
  const found: Token[] = [];
  for (let at = 0; at < all.length; at++) {
    const [token, next, after] = [all[at]!, all[at + 1], all[at + 2]];
    if (token.kind === "other" && next?.kind === "other" && ["<=", ">=", "<>"].includes(token.text + next.text)) {
      found.push({ kind: "other", text: token.text + next.text });
      at += 1;
    } else if (isCutNumber(token, next) && after?.kind === "word" && /^\d+$/.test(after.text)) {
      found.push({ kind: "word", text: token.text + next!.text + after.text });
      at += 2;
    } else found.push(token);
  }
  return found;
}

const isCutNumber = (token: Token, next: Token | undefined): boolean =>
  token.kind === "word" && /^(?:\d+\.?\d*|\.\d+)[Ee]$/.test(token.text) && (next?.text === "-" || next?.text === "+");
