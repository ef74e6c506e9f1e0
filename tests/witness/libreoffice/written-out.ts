/** Formulas as another engine can read them: calls of our own functions are left to somebody else. */
import { parse } from "../../../src/formula/parse";
import type { Node } from "../../../src/formula/tree";

export interface Help {
  /** A cell that holds what the call of one of our functions gives. */
  readonly resultOf: (call: Node & { readonly is: "call" }) => string;
}

const OURS = /^TUBE\./i;

export const callsOurs = (formula: string): boolean => /\bTUBE\./i.test(formula);

export const writtenOut = (formula: string, help: Help): string => written(parse(formula), help);

function written(node: Node, help: Help): string {
  switch (node.is) {
    case "unknown":
      throw new Error(`Cannot be read: ${node.text}`);
    case "operator": {
      const [one, other] = node.parts.map((part) => written(part, help));
      if (node.sign === "%") return `(${one}%)`;
      return other === undefined ? `(${node.sign}${one})` : `(${one}${node.sign}${other})`;
    }
    case "call":
      if (OURS.test(node.name)) return help.resultOf(node);
      return `${node.name}(${node.args.map((arg) => written(arg, help)).join(",")})`;
    default:
      return node.text;
  }
}
