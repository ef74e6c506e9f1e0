/** Calls a worksheet function by its name, as a host does. */
import { functions } from "../../src/index";
import { call, type Answer } from "../../src/worksheet/call";

export const tube = (name: string, ...args: readonly unknown[]): Answer => {
  const definition = functions.find((f) => f.name === name);
  if (!definition) throw new Error(`no function ${name}`);
  return call(definition, args);
};

/** A column of cells. */
export const column = (values: Iterable<unknown>): unknown[][] => Array.from(values, (value) => [value]);
