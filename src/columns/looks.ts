/** Which cells of a column are coloured, by what they show: its words, and days that have passed. */
import { asksOf, type Asks } from "./asks";
import type { Recipe, RecipeKey } from "./recipes/recipe";
import { BALLOON_NOT_KNOWN, CHECK_DATE, KIND_NOT_KNOWN, NO_DATE, NO_SETTING } from "./state-words";

/** What is quiet looks like any other cell. */
export type Coloured = Exclude<Asks, "quiet">;

export type CellLook = { readonly asks: Coloured } & (
  { readonly reads: string } | /** A day before today. */ { readonly isPast: true }
);

/** What a day asks for once it has passed, as the word beside it does: overdue, past limit, check late. */
const past: { readonly [K in RecipeKey]?: Coloured } = { changeDue: "act", atTheLatest: "act", checkDue: "soon" };

/** What may stand in place of a day. */
const INSTEAD = [NO_DATE, KIND_NOT_KNOWN, CHECK_DATE, BALLOON_NOT_KNOWN, NO_SETTING];

export function looksOf({ key, words }: Recipe): readonly CellLook[] {
  const asks = past[key];
  if (words.length === 0 && asks === undefined) return [];
  const shown = words.length > 0 ? [...words, NO_SETTING] : INSTEAD;
  const coloured = [...new Set(shown)].flatMap((reads): CellLook[] => {
    const asked = asksOf(reads);
    return asked === "quiet" ? [] : [{ asks: asked, reads }];
  });
  return asks === undefined ? coloured : [...coloured, { asks, isPast: true }];
}
