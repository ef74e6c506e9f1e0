/**
 * What functions say of themselves, as data of its own. The pane's scripts are built without it (FUNCTIONS_ONLY), so
 * that they stay small however many functions there are; the guide fetches it when it is first shown.
 */
import type { Documentation, Params, RawArgument, SheetFunction } from "../src/worksheet/define";
import { CellError } from "../src/worksheet/error";

/** By the functions' names. Survives JSON: an error in a cell is an object with its code. */
export type DocumentationByName = Readonly<Record<string, Documentation<Params>>>;

export const documentation = (functions: readonly SheetFunction[]): DocumentationByName =>
  Object.fromEntries(functions.flatMap((each) => (each.documentation ? [[each.name, each.documentation]] : [])));

const revivedCell = (cell: unknown): unknown =>
  typeof cell === "object" && cell !== null && "code" in cell ? new CellError(String(cell.code)) : cell;

const revived = (argument: unknown): RawArgument =>
  (Array.isArray(argument)
    ? (argument as unknown[][]).map((row) => row.map(revivedCell))
    : revivedCell(argument)) as RawArgument;

/** Functions with their documentation put back. */
export const withDocumentation = (
  functions: readonly SheetFunction[],
  byName: DocumentationByName,
): readonly SheetFunction[] =>
  functions.map((each) => {
    const said = byName[each.name];
    if (!said) return each;
    const examples = said.examples.map((example) => ({
      ...example,
      args: Object.fromEntries(Object.entries(example.args).map(([name, argument]) => [name, revived(argument)])),
    }));
    return { ...each, documentation: { ...said, examples } };
  });
