/**
 * The library's face as source text: every worksheet function with the types and the help of its definition. The
 * compiler cannot make comments out of data, and units belong where an editor shows them, so the text is generated.
 */
import { argumentHelp } from "../metadata";
import type { Param, SheetFunction } from "../../src/worksheet/define";
import { capitalised, labelOf, libraryName } from "./names";

const comment = (indent: string, lines: readonly string[]): string =>
  lines.length === 1
    ? `${indent}/** ${lines[0]} */`
    : [`${indent}/**`, ...lines.map((line) => `${indent} * ${line}`.trimEnd()), `${indent} */`].join("\n");

const oneOf = (words: readonly string[]): string => words.map((word) => JSON.stringify(word)).join(" | ");

/** What one cell of an argument may be. */
function given({ limits, unit, words }: Param<unknown>): string {
  if (words) return oneOf(words);
  if (unit === "date") return "Day";
  // What has a unit or limits is a number; it may come as text, as in a cell: "4,5 mL", "14 Fr".
  return unit !== undefined || limits !== undefined ? "number | string" : "number | string | boolean";
}

function argument({ name, param, isSubject }: SheetFunction["order"][number]): string {
  const mayBeBlank = param.optional || isSubject || param.ifBlank !== undefined;
  const type =
    param.mode === "range" ? `Cells<${given(param)} | null>` : `${given(param)}${mayBeBlank ? " | null" : ""}`;
  const blank = param.ifBlank === undefined ? "" : ` null: ${String(param.ifBlank)}.`;
  return `${comment("  ", [`${argumentHelp(param)}.${blank}`])}\n  readonly ${name}${param.optional ? "?" : ""}: ${type};`;
}

/** What one cell of a result may be, null aside. */
function cell({ result }: SheetFunction): string {
  const kind = { number: "number", date: "DayNumber", text: "string", mixed: "number | string" }[result.kind];
  return [kind, ...(result.words ? [oneOf(result.words)] : [])].join(" | ");
}

function value(definition: SheetFunction): string {
  const { result, subject } = definition;
  const one = cell(definition);
  // Sentences are given whatever is blank; words have one for blanks, too.
  const neverBlank = result.kind === "text" && (subject.length === 0 || result.blank !== "");
  const orNull = neverBlank ? one : `${one} | null`;
  if (result.shape === "cell") return orNull;
  const row = `readonly [${(result.columns ?? []).map((heading) => `${labelOf(heading)}: ${orNull}`).join(", ")}]`;
  if (result.shape === "block") return `readonly (${row})[] | null`;
  return result.oneCellWith === undefined ? row : `${row} | ${orNull}`;
}

function gives({ result, subject }: SheetFunction): string {
  const facts = [
    result.unit,
    result.columns && result.columns.length > 1 ? result.columns.join(", ") : undefined,
    result.kind === "date" ? "as a day number" : undefined,
    subject.length > 0
      ? `${result.blank === "" ? "null" : `"${result.blank}"`} when ${subject.join(" or ")} is blank`
      : undefined,
  ].filter((fact) => fact !== undefined);
  return `@returns ${[result.help, ...facts].join("; ")}; or a SheetError with its sentence.`;
}

function one(definition: SheetFunction): string {
  const { name, order, summary, documentation } = definition;
  const called = libraryName(name);
  const type = `${capitalised(called)}Arguments`;
  return `/** Arguments of \`${called}\`. */
export interface ${type} {
${order.map(argument).join("\n")}
}

${comment("", [summary, "", ...documentation!.cautions.map((each) => `- ${each}`), "", gives(definition)])}
export const ${called}: NamedFunction<${type}, ${value(definition)}> = named("${name}");
`;
}

export const librarySource = (definitions: readonly SheetFunction[]): string => `/**
 * The worksheet functions for programs, with named arguments (docs/library.md).
 * Written by \`npm run generate\` from the functions' own files in src/.
 */
import { named, type Cells, type Day, type DayNumber, type NamedFunction } from "../library/named";

export { functions } from "../../src/index";
export { call, type Answer } from "../../src/worksheet/call";
export type { Cell, Matrix } from "../../src/worksheet/cell";
export { dayOfText, isoText } from "../../src/worksheet/dates";
export type { Documentation, Example, Param, ResultInfo, SheetFunction } from "../../src/worksheet/define";
export { SheetError, type ErrorCode } from "../../src/worksheet/error";
export type { Cells, Day, DayNumber, NamedFunction };

${definitions.map(one).join("\n")}`;
