/**
 * Formulas as an older engine can read them: LET written out, calls of our own functions left to somebody else.
 *
 * LibreOffice knows LET since 24.8 only. A name that LET binds stands for its value wherever it is read, so putting the
 * value in its place means the same; a long value that is read often goes into a cell of its own instead, because
 * LibreOffice reads no formula of more than 8,192 pieces.
 */
import { parse } from "../../../src/formula/parse";
import type { Node } from "../../../src/formula/tree";

/** A cell beside the formula, in the same row, and how a formula refers to it. */
export type Beside = (text: string) => string;

export interface Help {
  /** A cell that works out this formula. */
  readonly cellFor: Beside;
  /** A cell that holds what the call of one of our functions gives. */
  readonly resultOf: (call: Node & { readonly is: "call" }) => string;
}

/** Characters; what is shorter is put in the place of its name. */
const SHORT = 160;

const OURS = /^TUBE\./i;

export const callsOurs = (formula: string): boolean => /\bTUBE\./i.test(formula);

interface Bound {
  readonly text: string;
  readonly mayBeBlank: boolean;
}
type Names = ReadonlyMap<string, Bound>;

export const writtenOut = (formula: string, help: Help): string => written(parse(formula), new Map(), help);

function written(node: Node, names: Names, help: Help): string {
  switch (node.is) {
    case "unknown":
      throw new Error(`Cannot be read: ${node.text}`);
    case "name":
      return names.get(node.text.toLowerCase())?.text ?? node.text;
    case "operator": {
      const [one, other] = node.parts.map((part) => written(part, names, help));
      if (node.sign === "%") return `(${one}%)`;
      return other === undefined ? `(${node.sign}${one})` : `(${one}${node.sign}${other})`;
    }
    case "call": {
      if (node.name.toUpperCase() === "LET") return letWritten(node.args, names, help);
      if (OURS.test(node.name)) return help.resultOf(node);
      return `${node.name}(${node.args.map((arg) => written(arg, names, help)).join(",")})`;
    }
    default:
      return node.text;
  }
}

function letWritten(args: readonly Node[], outer: Names, help: Help): string {
  const names = new Map(outer);
  for (let i = 0; i + 1 < args.length; i += 2) {
    const value = args[i + 1]!;
    const text = written(value, names, help);
    const isBlankable = mayBeBlank(value, names);
    // a cell that holds a blank reads as 0 in the next one: such a value keeps its own reference
    const isApart = !isBlankable && text.length > SHORT;
    names.set(args[i]!.text.toLowerCase(), {
      text: isApart ? help.cellFor(text) : text,
      mayBeBlank: isBlankable,
    });
  }
  return written(args.at(-1)!, names, help);
}

/** Whether a formula can give a reference to an empty cell. */
function mayBeBlank(node: Node, names: Names): boolean {
  if (node.is === "reference") return true;
  if (node.is === "name") return names.get(node.text.toLowerCase())?.mayBeBlank ?? true;
  if (node.is !== "call") return false;
  const name = node.name.toUpperCase();
  if (name === "INDEX") return true;
  if (name === "LET") return true;
  if (name === "IF" || name === "CHOOSE")
    return node.args.slice(1).some((arg) => arg.text !== isNumberOf(node.args[0]!) && mayBeBlank(arg, names));
  return name === "IFERROR" && node.args.some((arg) => mayBeBlank(arg, names));
}

/** In IF(ISNUMBER(x),x,...) the x is no blank. */
const isNumberOf = (test: Node): string | undefined =>
  test.is === "call" && test.name.toUpperCase() === "ISNUMBER" ? test.args[0]!.text : undefined;
