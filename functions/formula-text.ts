/** Examples as people type them: formulas and results as text. */
import type { Example, Given, Params, RawArgument, SheetFunction } from "../src/worksheet/define";
import { CellError } from "../src/worksheet/error";
import { isoText } from "../src/worksheet/dates";

export const NAMESPACE = "TUBE";

const constant = (value: unknown): string => {
  if (value === null || value === undefined) return "";
  if (value instanceof CellError) return value.code;
  if (typeof value === "string") return `"${value.replaceAll('"', '""')}"`;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return String(value);
};

/** An argument as a formula writes it; a block as an array constant, where a blank can only be "". */
export const argumentText = (raw: RawArgument | undefined): string =>
  Array.isArray(raw)
    ? `{${raw.map((row) => row.map((cell: unknown) => (cell === null ? '""' : constant(cell))).join(",")).join(";")}}`
    : constant(raw);

/** Arguments of an example in order; those behind the last one given are left out. */
export function exampleArguments(definition: SheetFunction, example: Example<Params>): (RawArgument | undefined)[] {
  const all = definition.order.map(({ name }) => example.args[name]);
  while (all.length > 0 && all.at(-1) === undefined) all.pop();
  return all;
}

/** `=TUBE.CHANGEDUE("2026-02-11", 12, "weeks")` */
export const exampleFormula = (definition: SheetFunction, example: Example<Params>): string =>
  `=${NAMESPACE}.${definition.name}(${exampleArguments(definition, example).map(argumentText).join(", ")})`;

/** `CHANGEDUE(lastchange, interval, [unit], [closed])` */
export const usage = (definition: SheetFunction): string =>
  `${NAMESPACE}.${definition.name}(${definition.order.map(({ name, param }) => (param.optional ? `[${name}]` : name)).join(", ")})`;

/** A result for people: dates as dates, errors by their code, a blank as what it shows. */
export function givenText(definition: SheetFunction, given: Given): string {
  const one = (value: unknown): string => {
    if (typeof value === "object" && value !== null) return (value as { error: string }).error;
    if (value === "") return "(blank)";
    return definition.result.kind === "date" && typeof value === "number" ? isoText(value) : String(value);
  };
  if (Array.isArray(given)) return given.map((row) => row.map(one).join(", ")).join("; ");
  const says = typeof given === "object" && given !== null && "says" in given ? ` ${given.says}` : "";
  return one(given) + says;
}
