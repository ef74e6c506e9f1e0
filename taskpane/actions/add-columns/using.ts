/** What the recipes are given: columns, kinds and numbers as chosen, checked. */
import type { ColumnSlot } from "../../../src/columns/formula";
import { heldByBalloonState } from "../../../src/columns/recipes/balloon";
import { recipeNamed, recipes, takesRole } from "../../../src/columns/recipes/index";
import type { KindSource, Recipe, RecipeKey, Using } from "../../../src/columns/recipes/recipe";
import { roleNamed, type Role } from "../../../src/columns/role";
import { settingNamed, type SettingName } from "../../../src/settings/index";
import { kinds } from "../../../src/settings/kinds";
import { refuseNumber } from "../../../src/settings/setting";
import type { Choices, NumberUsed, Survey } from "./interface";
import type { PresentColumn, SurveyedList } from "../list/interface";
import { spellingsInList } from "./kind-words";
import { inQuotes, together } from "../../texts/pieces";
import { twoCalled } from "../list/sentences";

/** A role of the list: one of its own columns, or one that is being added. */
export type Source =
  { readonly from: "list"; readonly column: number } | { readonly from: "added"; readonly key: RecipeKey };
export type Sources = { readonly [R in Role]?: Source };

export const chosenRecipes = (choices: Choices): readonly Recipe[] =>
  recipes.filter((recipe) => choices.recipes.includes(recipe.key));

/** Where a column of ours stands already; null where it would be new. */
export const presentIn = (list: SurveyedList, key: RecipeKey): PresentColumn | null =>
  list.recipes.find((recipe) => recipe.key === key)?.present ?? null;

/** Those of the chosen columns that are not there yet. */
export const newRecipes = (list: SurveyedList, choices: Choices): readonly Recipe[] =>
  chosenRecipes(choices).filter(({ key }) => presentIn(list, key) === null);

const added = Object.entries(takesRole) as [RecipeKey, Role][];

/** Where a recipe's roles come from; a column that is being added goes before one of the list's own. */
export function sourcesFor(recipe: Recipe, choices: Choices): Sources {
  const found: { [R in Role]?: Source } = {};
  const roles = [
    ...recipe.needs.map(({ role }) => role).filter((role) => role !== "kind"),
    ...(usesKindColumn(recipe, choices) ? ["kind" as const] : []),
  ];
  for (const role of roles) {
    const own = added.find(([key, taken]) => taken === role && choices.recipes.includes(key) && key !== recipe.key);
    const column = choices.columns[role] ?? null;
    if (own) found[role] = { from: "added", key: own[0] };
    else if (column !== null) found[role] = { from: "list", column };
  }
  return found;
}

/** Kinds as the recipe must have them, or has them where the list says them. */
const usesKinds = (recipe: Recipe, { kinds: choice, columns }: Choices): boolean =>
  recipe.needsKinds ||
  (recipe.needs.some(({ role }) => role === "kind") &&
    (choice.from === "everyone" || typeof columns.kind === "number"));

const usesKindColumn = (recipe: Recipe, choices: Choices): boolean =>
  choices.kinds.from === "words" && usesKinds(recipe, choices);

/** A sentence where the columns cannot be used as chosen; null where they can. */
export function refuseColumns(list: SurveyedList, choices: Choices): string | null {
  const taken = new Map<number, Role>();
  for (const recipe of chosenRecipes(choices)) {
    const sources = sourcesFor(recipe, choices);
    for (const { role, optional } of recipe.needs)
      if (!optional && !sources[role])
        return `${inQuotes(recipe.header)} needs a column: say which one holds ${inQuotes(roleNamed(role).label)} (${roleNamed(role).help}).`;
    if (usesKindColumn(recipe, choices) && !sources.kind)
      return `${inQuotes(recipe.header)} needs the kind of tube: say which column holds it, or say one kind for everyone on this list.`;
    for (const [role, source] of Object.entries(sources) as [Role, Source][]) {
      if (source.from === "added") continue;
      const column = list.columns[source.column];
      if (!column) return "A chosen column is no longer there. Look again.";
      if (column.sharesHeader) return twoCalled(column.header);
      const written = list.recipes.find((one) => one.present?.column === source.column);
      if (written && choices.recipes.includes(written.key))
        return `Column ${inQuotes(column.header)} is about to be written anew, so ${inQuotes(roleNamed(role).label)} cannot be read from it. Choose another column.`;
      const other = taken.get(source.column);
      if (other !== undefined && other !== role)
        return `Column ${inQuotes(column.header)} is chosen for ${inQuotes(roleNamed(other).label)} and for ${inQuotes(roleNamed(role).label)}. Choose another for one of them.`;
      taken.set(source.column, role);
    }
  }
  return null;
}

/** A sentence where the lengths in stock are needed and not said. */
export const refuseLengths = (choices: Choices): string | null => {
  const asking = chosenRecipes(choices).find(({ needsLengths }) => needsLengths);
  return asking && choices.lengths.length === 0
    ? `${inQuotes(asking.header)} needs the lengths that you stock: type them, in cm.`
    : null;
};

/** How kinds are known; or a sentence. */
export function kindSourceFor(list: SurveyedList, choices: Choices): KindSource | string {
  const { kinds: choice, columns } = choices;
  if (!chosenRecipes(choices).some((recipe) => usesKinds(recipe, choices))) return { from: "words", words: new Map() };
  if (choice.from === "everyone")
    return choice.kind === "not known" ? "Say which kind of tube everyone on this list has." : choice;
  const words = spellingsInList(list, columns.kind!, choice.words);
  return words.size > 0
    ? { from: "words", words }
    : "No kind of tube has been said yet. Say for at least one word of your list which kind it means.";
}

/** Numbers of the settings sheet where it holds them, otherwise as said in the pane. */
export function usingFor({ numbers, asOf }: Survey, choices: Choices, source: KindSource): Using {
  const value = (name: SettingName): number =>
    isHeld(name)
      ? settingNamed(name).default
      : (numbers[name]?.value ?? choices.numbers[name] ?? settingNamed(name).default);
  const written = (name: SettingName): string => {
    const sheet = numbers[name];
    return sheet && sheet.value !== null && !isHeld(name) ? sheet.name : String(value(name));
  };
  return { kinds: source, value, written, asOf: asOf.day, lengths: choices.lengths };
}

const isHeld = (name: SettingName): boolean => heldByBalloonState.includes(name);

/** Every number that the chosen columns use with these kinds. */
export function numbersFor({ numbers }: Survey, choices: Choices, using: Using): readonly NumberUsed[] {
  const names = chosenRecipes(choices).flatMap((recipe) => recipe.settings(using.kinds));
  return [...new Set(names)].map((name): NumberUsed => {
    const setting = settingNamed(name);
    const value = using.value(name);
    const sheet = numbers[name];
    if (!isHeld(name))
      return { setting, value, from: sheet && sheet.value !== null ? "sheet" : "here", remark: sheet?.refused ?? null };
    const differs = sheet && sheet.value !== value;
    const remark = differs ? `The settings sheet says something else (${sheet.value ?? "not readable"}).` : null;
    return { setting, value, from: "function", remark };
  });
}

/** Limits that must not lie below one another. */
const ASCENDING: readonly (readonly [low: SettingName, high: SettingName])[] = [
  ["Tract_Low", "Tract_High"],
  ["Play_Least", "Play_Most"],
  ["Slack_Least", "Slack_Most"],
];

/** A sentence where a number is outside of what is allowed, or a limit lies before its interval. */
export function refuseNumbers(numbers: readonly NumberUsed[], using: Using): string | null {
  for (const { setting, value } of numbers) {
    const refused = refuseNumber(setting, value);
    if (refused !== null) return refused;
  }
  const used = new Set(numbers.map(({ setting }) => setting.name));
  const crossed = ASCENDING.find(
    ([low, high]) => used.has(low) && used.has(high) && using.value(low) > using.value(high),
  );
  if (crossed) {
    const [low, high] = crossed.map((name) => inQuotes(settingNamed(name).label));
    return `${low!} is above ${high!}. Change one of the two numbers.`;
  }
  const turned = kinds.filter(
    ({ due, latest }) =>
      due !== null && latest !== null && (used.has(due) || used.has(latest)) && using.value(latest) < using.value(due),
  );
  return turned.length === 0
    ? null
    : `The limit lies before the change is due: ${together(turned.map(({ label }) => label))}. Change one of the two numbers.`;
}

/** The slots of a template: the list's own columns, then the added ones in their order. */
export function slotsFor(recipe: Recipe, list: SurveyedList, choices: Choices): { readonly [R in Role]?: ColumnSlot } {
  const order = newRecipes(list, choices).map(({ key }) => key);
  const slot = (source: Source): ColumnSlot =>
    source.from === "list"
      ? { header: list.columns[source.column]!.header, index: source.column }
      : {
          header: presentIn(list, source.key)?.header ?? recipeNamed(source.key).header,
          index: presentIn(list, source.key)?.column ?? list.columns.length + order.indexOf(source.key),
          isAdded: true,
        };
  const sources = Object.entries(sourcesFor(recipe, choices)) as [Role, Source][];
  return Object.fromEntries(sources.map(([role, source]) => [role, slot(source)]));
}
