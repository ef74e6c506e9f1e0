import { atTheLatest } from "./at-the-latest";
import { balloon } from "./balloon";
import { balloonLoss } from "./balloon-loss";
import { change } from "./change";
import { changeDue } from "./change-due";
import { checkDue } from "./check-due";
import { fit } from "./fit";
import { frFromMm } from "./fr-from-mm";
import { lengthToOrder } from "./length-to-order";
import { mark } from "./mark";
import { play } from "./play";
import type { Recipe, RecipeKey } from "./recipe";
import { sizeMm } from "./size-mm";
import { tract } from "./tract";

/** Columns that can be added, in the order in which they are added: each may stand on those before it. */
export const recipes: readonly Recipe[] = [
  ...[changeDue, atTheLatest, change, tract],
  ...[sizeMm, frFromMm],
  ...[balloonLoss, balloon, checkDue],
  ...[fit, lengthToOrder, play, mark],
];

const byKey = new Map(recipes.map((recipe) => [recipe.key, recipe]));

export const recipeNamed = (key: RecipeKey): Recipe => byKey.get(key)!;

/** The role of the list that an added column takes, for the columns after it. */
export const takesRole = { changeDue: "due", atTheLatest: "latest" } as const;
