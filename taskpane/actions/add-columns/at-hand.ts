/** Which columns can be had with one tick: nothing that they need is left for a person to find. */
import { takesRole } from "../../../src/columns/recipes/index";
import type { RecipeKey } from "../../../src/columns/recipes/recipe";
import type { Role } from "../../../src/columns/role";
import type { RecipeSurvey, SurveyedList } from "../list/interface";

const standsIn = Object.entries(takesRole) as [RecipeKey, Role][];

/** Keys of those whose needed columns were all guessed, or come in with another one of these; and those there already. */
export function atHand({ recipes, guesses }: SurveyedList): ReadonlySet<RecipeKey> {
  const found = new Set<RecipeKey>();
  const isThere = (role: Role): boolean =>
    guesses[role] !== undefined || standsIn.some(([key, taken]) => taken === role && found.has(key));
  const isAtHand = ({ refused, present, needs, needsKinds, needsLengths }: RecipeSurvey): boolean =>
    refused === null &&
    (present !== null ||
      (!needsLengths &&
        needs.every(({ role, optional }) => optional || isThere(role)) &&
        (!needsKinds || isThere("kind"))));
  /* In their order: each may stand on those before it. */
  for (const recipe of recipes) if (isAtHand(recipe)) found.add(recipe.key);
  return found;
}
