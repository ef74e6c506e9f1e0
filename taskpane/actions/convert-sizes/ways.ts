/** The two ways in which sizes go, each with the column of ours that does it. */
import { frFromMm } from "../../../src/columns/recipes/fr-from-mm";
import type { Recipe, Using } from "../../../src/columns/recipes/recipe";
import { sizeMm } from "../../../src/columns/recipes/size-mm";
import type { Role } from "../../../src/columns/role";
import type { Way } from "./interface";

interface WayFacts {
  readonly recipe: Recipe;
  /** What the converted column means to that recipe. */
  readonly role: Role;
  readonly functionName: string;
  /** What a cell should hold: "a French size". */
  readonly what: string;
}

export const ways: { readonly [W in Way]: WayFacts } = {
  toMm: { recipe: sizeMm, role: "size", functionName: "FRTOMM", what: "a French size" },
  toFr: { recipe: frFromMm, role: "diameter", functionName: "MMTOFR", what: "a diameter in mm" },
};

/** What recipes are given besides a row's cells; sizes need neither kinds nor numbers nor a day. */
export const noSettings: Using = {
  kinds: { from: "words", words: new Map() },
  value: () => Number.NaN,
  written: () => "",
  lengths: [],
  asOf: Number.NaN,
};
