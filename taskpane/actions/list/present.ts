/** Which columns of a list were added by us before, also under another header. */
import { recipeNamed, recipes } from "../../../src/columns/recipes/index";
import type { RecipeKey } from "../../../src/columns/recipes/recipe";
import { recipesOf } from "./our-formula";

export interface ColumnFormulas {
  readonly index: number;
  readonly header: string;
  /** Of a few rows; null where a cell holds none. */
  readonly formulas: readonly (string | null)[];
}

export interface Present {
  readonly columns: ReadonlyMap<RecipeKey, number>;
  /** Ours, but their header does not tell any more which of two they are. */
  readonly unclear: readonly number[];
}

const sameHeader = (header: string, key: RecipeKey): boolean =>
  header.trim().toLowerCase() === recipeNamed(key).header.toLowerCase();

/** What at least half of a column's formulas may belong to. */
function candidatesOf({ formulas }: ColumnFormulas): readonly RecipeKey[] {
  const filled = formulas.filter((formula): formula is string => formula !== null);
  const found = filled.flatMap((formula) => recipesOf(formula));
  return recipes.map(({ key }) => key).filter((key) => found.filter((one) => one === key).length * 2 > filled.length);
}

export function presentColumns(columns: readonly ColumnFormulas[]): Present {
  const ours = columns
    .map((column) => ({ ...column, keys: candidatesOf(column) }))
    .filter(({ keys }) => keys.length > 0);
  const found = new Map<RecipeKey, number>();
  for (const { index, header, keys } of ours)
    for (const key of keys) if (sameHeader(header, key) && !found.has(key)) found.set(key, index);
  const renamed = ours.filter(({ index }) => ![...found.values()].includes(index));
  const unclear: number[] = [];
  for (const { index, keys } of renamed) {
    const open = keys.filter((key) => !found.has(key));
    const rivals = renamed.filter((other) => open.some((key) => other.keys.includes(key)));
    if (open.length === 1 && (keys.length === 1 || rivals.length === 1)) found.set(open[0]!, index);
    else if (open.length > 0) unclear.push(index);
  }
  return { columns: found, unclear };
}
