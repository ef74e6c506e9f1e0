import { atTheLatest } from "./at-the-latest";
import { balloon } from "./balloon";
import { change } from "./change";
import { changeDue } from "./change-due";
import type { Recipe, RecipeKey } from "./recipe";
import { sizeMm } from "./size-mm";

/** Columns that can be added, in the order in which they are added: each may stand on those before it. */
export const recipes: readonly Recipe[] = [changeDue, atTheLatest, change, sizeMm, balloon];

const byKey = new Map(recipes.map((recipe) => [recipe.key, recipe]));

export const recipeNamed = (key: RecipeKey): Recipe => byKey.get(key)!;

/** The role of the list that an added column takes, for the columns after it. */
export const takesRole = { changeDue: "due", atTheLatest: "latest" } as const;
