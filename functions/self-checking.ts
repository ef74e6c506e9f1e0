/**
 * A workbook that grades itself: every worked example as a real formula, beside what its source says. One cell says
 * TRUE. Anybody can open it, in Excel or on the page, and believe the functions or not.
 */
import type { Cell } from "../src/worksheet/cell";
import type { Example, Params, SheetFunction } from "../src/worksheet/define";
import { NAMESPACE } from "../src/formula/ours";
import { argumentText, exampleArguments } from "./formula-text";

export interface Check {
  readonly name: string;
  /** Without "=", as typed. */
  readonly formula: string;
  /** A value, or the code of an error as text. */
  readonly expected: Exclude<Cell, null>;
  readonly isError: boolean;
  readonly within: number | null;
  readonly source: string;
}

/** ERROR.TYPE's numbers (ECMA-376 part 1, 18.17.7.116). */
const ERROR_TYPE = { "#VALUE!": 3, "#N/A": 7 } as const;

const oneCell = (expected: unknown): Pick<Check, "expected" | "isError"> =>
  typeof expected === "object" && expected !== null
    ? { expected: (expected as { error: string }).error, isError: true }
    : { expected: (expected ?? "") as Exclude<Cell, null>, isError: false };

function checksOf(definition: SheetFunction, example: Example<Params>): Check[] {
  const call = `${NAMESPACE}.${definition.name}(${exampleArguments(definition, example).map(argumentText).join(",")})`;
  const fill = (formula: string, expected: unknown): Check => {
    const value = oneCell(expected);
    const within =
      typeof value.expected === "number" ? (example.within ?? 1e-12 * Math.max(1, Math.abs(value.expected))) : null;
    return { name: definition.name, formula, ...value, within, source: example.source };
  };
  if (!Array.isArray(example.gives)) return [fill(call, example.gives)];
  return example.gives.flatMap((row: readonly unknown[], r: number) =>
    row.map((cell, c) => fill(`INDEX(${call},${r + 1},${c + 1})`, cell)),
  );
}

/** One check a row; an example that gives a block gives one row for each of its cells. */
export const checks = (definitions: readonly SheetFunction[]): Check[] =>
  definitions.flatMap((definition) =>
    definition.documentation!.examples.flatMap((example) => checksOf(definition, example)),
  );

/** The formula that compares one row, for sheet row `row` counted from 1: B formula, C expected, D within. */
export function agreement({ expected, isError }: Check, row: number): string {
  if (isError)
    return `IF(ISERROR(B${row}),ERROR.TYPE(B${row})=${ERROR_TYPE[expected as keyof typeof ERROR_TYPE]},FALSE)`;
  if (typeof expected === "number") return `IF(ISNUMBER(B${row}),ABS(B${row}-C${row})<=D${row},FALSE)`;
  return `IF(ISERROR(B${row}),FALSE,EXACT(B${row},C${row}))`;
}
