/** The functions of this add-in as the reader calls them. */
import { NAMESPACE } from "../ours";
import { call } from "../../worksheet/call";
import type { SheetFunction } from "../../worksheet/define";
import { CellError, SheetError } from "../../worksheet/error";
import { Block, type Any } from "./cells";
import type { OurFunction } from "./compile";
import type { Node } from "../tree";
import { VALUE } from "./values";

const asGiven = (found: Any): unknown => {
  if (!(found instanceof Block)) return found;
  return found.isOneCell ? found.at(0, 0) : found.matrix();
};

function ourFunction(definition: SheetFunction): OurFunction {
  const { order, result } = definition;
  const choice = order.findIndex(({ name }) => name === result.oneCellWith);
  return {
    takesMany: (at) => order[at]?.param.mode === "range",
    givesOne: (args: readonly Node[]) =>
      result.shape === "cell" || (choice >= 0 && choice < args.length && args[choice]!.is !== "nothing"),
    work: (args) => {
      const answer = call(definition, args.map(asGiven));
      if (answer instanceof SheetError) return new CellError(answer.code);
      return Array.isArray(answer) ? VALUE : answer;
    },
  };
}

/** By the names that formulas call them by, in capitals. */
export function ourFunctions(functions: readonly SheetFunction[]): (name: string) => OurFunction | undefined {
  const known = new Map(functions.map((one) => [`${NAMESPACE}.${one.name}`, ourFunction(one)]));
  return (name) => known.get(name);
}
