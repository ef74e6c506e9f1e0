/**
 * The object that Excel reads from functions.json. A fixture printed by Microsoft's own generator witnesses the format
 * (tests/hosts/fixtures).
 */
import type { Param, SheetFunction } from "../src/worksheet/define";

/** Replaced by the build's own address; the development server's stands here. */
const DEVELOPMENT_URL = "https://localhost:3000/";

/** What an argument's help says in Excel: help, unit, limits, and what happens when it is left out. */
export function argumentHelp({ help, unit, limits, optional, fallback, fallbackHelp, mode }: Param<unknown>): string {
  const facts = [
    mode === "choice" ? undefined : unit,
    limits,
    optional ? `left out: ${fallbackHelp ?? String(fallback)}` : undefined,
  ].filter((fact) => fact !== undefined);
  return facts.length > 0 ? `${help} (${facts.join("; ")})` : help;
}

export interface Metadata {
  readonly allowCustomDataForDataTypeAny: boolean;
  readonly functions: readonly object[];
  readonly enums: readonly object[];
}

export function metadata(definitions: readonly SheetFunction[]): Metadata {
  const enums = new Map<string, object>();
  const enumId = (definition: SheetFunction, name: string, words: readonly string[]): string => {
    const id = `${definition.name}_${name.toUpperCase()}`;
    enums.set(id, {
      id,
      type: "string",
      values: words.map((word) => ({ name: word, stringValue: word, tooltip: word })),
    });
    return id;
  };
  return {
    /* Errors come along with data types. With `allowErrorForDataTypeAny` beside it Excel 2021 stops (office-js 4385). */
    allowCustomDataForDataTypeAny: true,
    functions: definitions.map((definition) => ({
      description: definition.summary,
      helpUrl: `${DEVELOPMENT_URL}reference.html#${definition.name.toLowerCase()}`,
      id: definition.name,
      name: definition.name,
      parameters: definition.order.map(({ name, param }) => ({
        description: argumentHelp(param),
        ...(param.mode === "choice" ? {} : { dimensionality: "matrix" }),
        name,
        ...(param.optional && { optional: true }),
        type: param.mode === "choice" ? "string" : "any",
        ...(param.mode === "choice" && { customEnumId: enumId(definition, name, param.words!) }),
      })),
      result: { dimensionality: "matrix" },
    })),
    enums: [...enums.values()],
  };
}
