/** A formula as a tree. */
import type { CellError } from "../worksheet/error";

export type Constant = number | string | boolean | CellError;

export type Node = (
  | { readonly is: "number"; readonly value: number }
  | { readonly is: "text"; readonly value: string }
  | { readonly is: "boolean"; readonly value: boolean }
  | { readonly is: "error"; readonly code: string }
  /** {1.7;2;2.3}: constants written out, row by row; all rows are of one length. */
  | { readonly is: "array"; readonly rows: readonly (readonly Constant[])[] }
  /** An argument left out between two commas. */
  | { readonly is: "nothing" }
  /** Cells, as written: B4, 'Old list'!$B$4:$B$9, [@Size], Caseload[Size], [1]Sheet1!A1, Sheet1:Sheet3!A1, A:C. */
  | { readonly is: "reference" }
  | { readonly is: "name" }
  | { readonly is: "call"; readonly name: string; readonly args: readonly Node[] }
  | { readonly is: "operator"; readonly sign: Sign; readonly parts: readonly Node[] }
  /** A formula that cannot be read; nobody guesses what it means. */
  | { readonly is: "unknown" }
) & {
  /** As it stands in the formula. */
  readonly text: string;
};

export type Call = Node & { readonly is: "call" };

/**
 * One part: + - @ before it, % # behind it. Two: the others; a blank is the intersection, a comma the union.
 * "()" calls its first part with the others, as in LAMBDA(x,x+1)(3).
 */
export type Sign =
  | ("=" | "<>" | "<=" | ">=" | "<" | ">" | "&" | "+" | "-" | "*" | "/" | "^")
  | ("%" | "@" | "#")
  | (":" | " " | "," | "()");

/** Its own parts, without theirs. */
export const partsOf = (node: Node): readonly Node[] =>
  node.is === "call" ? node.args : node.is === "operator" ? node.parts : [];

/** Every piece of the tree, outermost first. Without calling itself: 1+1+… is as deep as it is long. */
export function pieces(node: Node): readonly Node[] {
  const found: Node[] = [];
  const waiting: Node[] = [node];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    found.push(next);
    waiting.push(...[...partsOf(next)].reverse());
  }
  return found;
}
