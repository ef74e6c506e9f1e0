import type { Workbook } from "../../workbook/port";
import { recipes, takesRole } from "../../../src/columns/recipes/index";
import type { RecipeKey } from "../../../src/columns/recipes/recipe";
import { balloonRoles } from "../../../src/columns/recipes/not-a-balloon";
import { roles, type Role } from "../../../src/columns/role";
import { asOfIn, staleDay } from "../list/as-of";
import { candidatesIn, locate } from "../list/find";
import type { Choices, Survey } from "./interface";
import type { Asked, SurveyedList } from "../list/interface";
import { guessedKinds } from "./kind-words";
import { readBack } from "./read-back";
import { readList } from "../list/read-list";
import { count } from "../../texts/pieces";
import { sheetLengths, sheetNumbers, type SheetNumbers } from "./sheet-numbers";

const nothing: Choices = {
  recipes: [],
  columns: {},
  kinds: { from: "words", words: {} },
  numbers: {},
  lengths: [],
  formulas: "plain where the same",
};

const DAYS_FROM_1904 =
  "This workbook counts its days from 1904 (a setting of older Macs). Columns with dates cannot be added to it: " +
  "copy the list into a new workbook.";

/** Where to start: what columns of ours were made with, else guesses; nothing ticked. */
function proposalFor(list: SurveyedList, numbers: SheetNumbers, lengths: readonly number[]): Choices {
  const ours = new Map(
    list.recipes.map(({ key, present }) => [(takesRole as { readonly [K in RecipeKey]?: Role })[key], present]),
  );
  const columns = Object.fromEntries(
    roles.map(({ key }) => [key, list.guesses[key]?.column ?? ours.get(key)?.column ?? null]),
  );
  const formulas = list.recipes.flatMap(({ key, present }) => (present ? [[key, present.formula] as const] : []));
  const before = readBack(list, new Map(formulas), numbers);
  const said: Partial<Record<Role, number | null>> = { ...columns, ...before.columns };
  for (const sign of before.signs) {
    const free = balloonRoles.find((role) => (said[role] ?? null) === null);
    if (free && !balloonRoles.some((role) => said[role] === sign)) said[free] = sign;
  }
  return {
    ...nothing,
    columns: said,
    kinds: before.kinds ?? guessedKinds(list, before.columns?.kind ?? list.guesses.kind?.column ?? null),
    numbers: before.numbers ?? list.remembered?.numbers ?? {},
    lengths: [lengths, before.lengths ?? [], list.remembered?.lengths ?? []].find((some) => some.length > 0) ?? [],
  };
}

export async function surveyWorkbook(workbook: Workbook, asked: Asked): Promise<Survey> {
  const overview = await workbook.overview();
  const asOf = asOfIn(overview, asked.today);
  const lists = candidatesIn(overview).map(({ choice }) => choice);
  const { list: located, sentence } = await locate(workbook, overview, asked);
  const common = { lists, asOf, dateSystem: overview.dateSystem, numbers: sheetNumbers(overview) };
  if (!located) return { ...common, list: null, sentence, proposal: nothing };
  const read = await readList(workbook, overview, located, asOf);
  const stale = recipes.some((recipe) => recipe.usesAsOf) ? staleDay(asOf, asked.today) : null;
  const more = [...(overview.dateSystem === 1904 ? [DAYS_FROM_1904] : []), ...(stale === null ? [] : [stale])];
  const list = { ...read, notices: [...read.notices, ...more.map((said) => ({ sentence: said }))] };
  return {
    ...common,
    list,
    sentence: `${sentence} ${count(list.rows.length, "row")}.`,
    proposal: proposalFor(list, common.numbers, sheetLengths(overview)),
  };
}
