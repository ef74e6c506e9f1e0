/**
 * A formula as a tree, as far as an explanation needs it. What is not understood (the operators @ and #, other workbooks)
 * becomes a piece of its own that nobody works out: it is never guessed.
 */
import { isFunctionName, tokens, type Token } from "../../workbook/formula/tokens";

export type Node = (
  | { readonly is: "number"; readonly value: number }
  | { readonly is: "text"; readonly value: string }
  | { readonly is: "boolean"; readonly value: boolean }
  | { readonly is: "error"; readonly code: string }
  /** {1.7;2;2.3}: figures and texts written out. */
  | { readonly is: "array"; readonly rows: readonly (readonly (number | string | boolean)[])[] }
  /** An argument left out between two commas. */
  | { readonly is: "nothing" }
  /** Cells, as written: B4, 'Old list'!$B$4:$B$9, [@Size], Caseload[Size]. */
  | { readonly is: "reference" }
  | { readonly is: "name" }
  | { readonly is: "call"; readonly name: string; readonly args: readonly Node[] }
  | { readonly is: "operator"; readonly sign: string; readonly parts: readonly Node[] }
  | { readonly is: "unknown" }
) & {
  /** As it stands in the formula. */
  readonly text: string;
};

const CELL = /^\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6}$/;
const COLUMN = /^\$?[A-Za-z]{1,3}$/;
const ROW = /^\$?[1-9]\d{0,6}$/;
const NUMBER = /^(?:\d+\.?\d*|\.\d+)(?:[Ee]\d+)?$/;

/** From the loosest to the tightest; those of one row are read from left to right. */
const levels: readonly (readonly string[])[] = [
  ["=", "<>", "<=", ">=", "<", ">"],
  ["&"],
  ["+", "-"],
  ["*", "/"],
  ["^"],
];

/** @param formula with or without its leading "=" */
export function parse(formula: string): Node {
  return new Parser(formula.replace(/^=/, "")).whole();
}

class Parser {
  private readonly all: readonly Token[];
  private at = 0;

  constructor(private readonly formula: string) {
    this.all = joined(tokens(formula));
  }

  whole(): Node {
    const node = this.expression(0);
    this.spaces();
    return this.at === this.all.length ? node : { is: "unknown", text: this.formula.trim() };
  }

  private get text(): string {
    return this.all[this.at]?.text ?? "";
  }

  private spaces(): void {
    while (this.at < this.all.length && this.text.trim() === "") this.at++;
  }

  private since(start: number): string {
    return this.all
      .slice(start, this.at)
      .map(({ text }) => text)
      .join("")
      .trim();
  }

  private expression(level: number): Node {
    const signs = levels[level];
    if (!signs) return this.signed();
    this.spaces();
    const start = this.at;
    let left = this.expression(level + 1);
    for (this.spaces(); signs.includes(this.text); this.spaces()) {
      const sign = this.text;
      this.at++;
      const right = this.expression(level + 1);
      left = { is: "operator", sign, parts: [left, right], text: this.since(start) };
    }
    return left;
  }

  private signed(): Node {
    this.spaces();
    const start = this.at;
    if (this.text === "-" || this.text === "+") {
      const sign = this.text;
      this.at++;
      const part = this.signed();
      return { is: "operator", sign, parts: [part], text: this.since(start) };
    }
    const node = this.operand();
    this.spaces();
    if (this.text !== "%") return node;
    this.at++;
    return { is: "operator", sign: "%", parts: [node], text: this.since(start) };
  }

  private operand(): Node {
    const start = this.at;
    const token = this.all[this.at];
    if (!token) return { is: "unknown", text: "" };
    if (token.text === "(") {
      this.at++;
      const inside = this.expression(0);
      this.spaces();
      if (this.text !== ")") return this.unknown(start);
      this.at++;
      return { ...inside, text: this.since(start) };
    }
    if (token.text === "{") return this.array(start);
    if (token.text.startsWith("#") && token.text.length > 1) {
      this.at++;
      return { is: "error", code: token.text, text: token.text };
    }
    if (token.kind === "text") {
      this.at++;
      return { is: "text", value: token.text.slice(1, -1).replaceAll('""', '"'), text: token.text };
    }
    if (token.kind === "word" && isFunctionName(this.all, this.at)) return this.call(start);
    if (token.kind === "other") return this.unknown(start);
    return this.word(start);
  }

  private call(start: number): Node {
    const name = this.text;
    this.at++;
    this.spaces();
    this.at++;
    const args: Node[] = [];
    this.spaces();
    if (this.text === ")") {
      this.at++;
      return { is: "call", name, args, text: this.since(start) };
    }
    for (;;) {
      this.spaces();
      if (this.text === "," || this.text === ")") args.push({ is: "nothing", text: "" });
      else args.push(this.expression(0));
      this.spaces();
      const end = this.text;
      if (end !== "," && end !== ")") return this.unknown(start);
      this.at++;
      if (end === ")") return { is: "call", name, args, text: this.since(start) };
    }
  }

  /** A number, TRUE, a name, or cells with all that belongs to them. */
  private word(start: number): Node {
    this.reference();
    if (this.text === ":") {
      this.at++;
      this.reference();
    }
    const isSpilled = this.text === "#";
    if (isSpilled) this.at++;
    const text = this.since(start);
    if (isSpilled) return { is: "unknown", text };
    if (/[[\]:!]/.test(text) || CELL.test(text)) return { is: "reference", text };
    if (NUMBER.test(text)) return { is: "number", value: Number(text), text };
    if (/^(?:TRUE|FALSE)$/i.test(text)) return { is: "boolean", value: /^true$/i.test(text), text };
    return { is: "name", text };
  }

  /** Sheet!B4, Table[Column], [@Column] or a single word. */
  private reference(): void {
    this.at++;
    if (this.text === "!") this.at += 2;
    if (this.all[this.at]?.kind === "bracket") this.at++;
  }

  private array(start: number): Node {
    const rows: (number | string | boolean)[][] = [[]];
    for (this.at++; this.text !== "}"; this.at++) {
      this.spaces();
      const isNegative = this.text === "-";
      if (isNegative) this.at++;
      const constant = constantOf(this.all[this.at], isNegative);
      if (constant === undefined) return this.unknown(start);
      rows.at(-1)!.push(constant);
      this.at++;
      this.spaces();
      if (this.text === ";") rows.push([]);
      else if (this.text === "}") break;
      else if (this.text !== ",") return this.unknown(start);
    }
    this.at++;
    return { is: "array", rows, text: this.since(start) };
  }

  /** All the rest of the formula: whoever cannot read a piece cannot tell where it ends. */
  private unknown(start: number): Node {
    this.at = this.all.length;
    return { is: "unknown", text: this.since(start) };
  }
}

/** One figure, text or TRUE of an array. */
function constantOf(token: Token | undefined, isNegative: boolean): number | string | boolean | undefined {
  if (token?.kind === "text" && !isNegative) return token.text.slice(1, -1).replaceAll('""', '"');
  if (token?.kind !== "word") return undefined;
  if (NUMBER.test(token.text)) return isNegative ? -Number(token.text) : Number(token.text);
  return /^(?:TRUE|FALSE)$/i.test(token.text) ? /^true$/i.test(token.text) : undefined;
}

/** "<=" and "<>" are one sign each. */
function joined(all: readonly Token[]): readonly Token[] {
  const found: Token[] = [];
  for (const token of all) {
    const last = found.at(-1);
    if (last?.kind === "other" && token.kind === "other" && ["<=", ">=", "<>"].includes(last.text + token.text))
      found[found.length - 1] = { kind: "other", text: last.text + token.text };
    else found.push(token);
  }
  return found;
}

/** A:C and 3:7. */
export const isWholeLines = (reference: string): boolean => {
  const halves = reference.slice(reference.lastIndexOf("!") + 1).split(":");
  return halves.length === 2 && (halves.every((half) => COLUMN.test(half)) || halves.every((half) => ROW.test(half)));
};

/** Every piece of the tree, outermost first. */
export function pieces(node: Node): readonly Node[] {
  const inner = node.is === "call" ? node.args : node.is === "operator" ? node.parts : [];
  return [node, ...inner.flatMap(pieces)];
}
