/** What would be done, from what was found and chosen: a change to be applied, or why there is none. Pure. */
import { inA1, inTable, type FormulaTemplate } from "../../../src/columns/formula";
import { AS_OF } from "../../../src/columns/as-of";
import { looksOf } from "../../../src/columns/looks";
import { recipeNamed } from "../../../src/columns/recipes/index";
import type { Recipe } from "../../../src/columns/recipes/recipe";
import { bottom } from "../../workbook/area";
import type { NewColumn, StateRule, Step, Value } from "../../workbook/port";
import { problem, type Problem } from "../action";
import { besideOf, columnArea, expectationsOf } from "../list/expected";
import type { AddColumnsPlan, Choices, Survey } from "./interface";
import type { PresentColumn, SurveyedList } from "../list/interface";
import { previewsOf, type Previewed } from "./preview";
import { wayText } from "../list/read-list";
import { count, figure, inQuotes, rowList, together } from "../../texts/pieces";
import {
  chosenRecipes,
  kindSourceFor,
  newRecipes,
  numbersFor,
  presentIn,
  refuseColumns,
  refuseLengths,
  refuseNumbers,
  sourcesFor,
  usingFor,
} from "./using";

/** Excel's own limit for the text of a formula. */
const LONGEST_FORMULA = 8192;

export function planColumns(survey: Survey, choices: Choices): AddColumnsPlan | Problem {
  const { list } = survey;
  if (!list) return problem(survey.sentence);
  if (list.obstacles[0]) return list.obstacles[0];
  const chosen = chosenRecipes(choices);
  if (chosen.length === 0) return problem("Tick at least one column.");
  for (const { key } of chosen) {
    const refused = list.recipes.find((recipe) => recipe.key === key)?.refused;
    if (refused) return problem(refused);
  }
  const added = newRecipes(list, choices);
  const unplaced = refuseRoom(list, added.length) ?? refuseColumns(list, choices) ?? refuseLengths(choices);
  if (unplaced !== null) return problem(unplaced);
  const kinds = kindSourceFor(list, choices);
  if (typeof kinds === "string") return problem(kinds);
  const using = usingFor(survey, choices, kinds);
  const numbers = numbersFor(survey, choices, using);
  const refused = refuseNumbers(numbers, using);
  if (refused !== null) return problem(refused);

  const previewed = previewsOf(chosen, list, choices, using, written);
  const worked = previewed.map(({ recipe, formula, results }): Worked => ({
    recipe,
    formula,
    results,
    present: presentIn(list, recipe.key),
  }));
  const long = worked.find(({ formula }) => lengthIn(list, formula) > LONGEST_FORMULA);
  if (long) return problem(tooLong(long.recipe));
  const place = added.length > 0 ? besideOf(list, added.length) : columnArea(list, worked[0]!.present!.column);
  return {
    outcome: "planned",
    change: {
      steps: stepsOf(survey, list, worked),
      expects: expectationsOf(
        list,
        [...columnsRead(choices), ...worked.flatMap(({ present }) => present?.column ?? [])],
        added.length > 0 ? place : null,
      ),
    },
    ...saysOf(survey, list, previewed),
    list: { label: list.label, place: { sheet: list.sheet, area: list.area } },
    columns: previewed.map(({ preview }) => preview),
    numbers,
    lengths: chosen.some(({ needsLengths }) => needsLengths) ? choices.lengths : null,
    place: { sheet: list.sheet, area: place },
  };
}

interface Worked {
  readonly recipe: Recipe;
  readonly formula: FormulaTemplate;
  readonly results: readonly Value[];
  readonly present: PresentColumn | null;
}

function refuseRoom(list: SurveyedList, wanted: number): string | null {
  if (wanted <= list.room) return null;
  const room = `There is room for ${count(list.room, "column")} only`;
  return list.inTheWay.length > 0
    ? `${room}: the cells right of the list are not empty (${wayText(list.inTheWay)}). Tick fewer, or clear or move them first.`
    : `${room}, up to the sheet's last column. Tick fewer, or move the list to the left.`;
}

/** The formula of the first row, as this list's host would show it. */
const written = (list: SurveyedList, formula: FormulaTemplate): string =>
  list.table === null ? inA1(formula, list.area.top + 1, list.area.left) : inTable(formula, list.table);

/** The longest form in which any host writes the formula, with its "=". */
const lengthIn = (list: SurveyedList, formula: FormulaTemplate): number =>
  1 +
  Math.max(
    inA1(formula, bottom(list.area) - 1, list.area.left).length,
    list.table === null ? 0 : inTable(formula, list.table).length,
  );

const tooLong = (recipe: Recipe): string =>
  recipe.needsKinds || recipe.needs.some(({ role }) => role === "kind")
    ? `There are too many different words for the kind of tube: the formula of ${inQuotes(recipe.header)} would be longer than Excel allows. Write the kinds more alike, or leave rare words as not known.`
    : `The formula of ${inQuotes(recipe.header)} would be longer than Excel allows. Give the columns it reads shorter names.`;

/** The name first, then what is there already, then what is new: a formula may read what stands before it. */
function stepsOf(survey: Survey, list: SurveyedList, worked: readonly Worked[]): readonly Step[] {
  const needsName = survey.asOf.from === "today" && worked.some(({ recipe }) => recipe.usesAsOf);
  const name: Step = { kind: "defineName", name: AS_OF, refersTo: "=TODAY()" };
  const to = list.table === null ? { list: { sheet: list.sheet, area: list.area } } : { table: list.table };
  const today = survey.asOf.from === "name" || needsName ? AS_OF : "TODAY()";
  const refreshed = worked.flatMap(({ formula, results, present }): Step[] =>
    present ? [{ kind: "refreshColumn", to, column: present.column, formula, results }] : [],
  );
  const columns = worked.flatMap(({ recipe, formula, results, present }): NewColumn[] =>
    present ? [] : [{ header: recipe.header, formula, format: recipe.format, results, rules: rulesOf(recipe, today) }],
  );
  return [
    ...(needsName ? [name] : []),
    ...refreshed,
    ...(columns.length > 0 ? [{ kind: "addColumns" as const, to, columns }] : []),
  ];
}

const rulesOf = (recipe: Recipe, today: string): readonly StateRule[] =>
  looksOf(recipe).map((look) =>
    "reads" in look ? { state: look.asks, reads: look.reads } : { state: look.asks, before: today },
  );

/** Columns of the list from which the chosen ones are worked out. */
const columnsRead = (choices: Choices): readonly number[] =>
  chosenRecipes(choices).flatMap((recipe) =>
    Object.values(sourcesFor(recipe, choices)).flatMap((source) => (source.from === "list" ? [source.column] : [])),
  );

/** The preview in sentences; what is not usable comes first, and rows without an answer are never left out. */
function saysOf(
  survey: Survey,
  list: SurveyedList,
  previewed: readonly Previewed[],
): Pick<AddColumnsPlan, "says" | "routine"> {
  const rows = [...new Set(previewed.flatMap(({ unusable }) => unusable))].sort((a, b) => a - b);
  const each = previewed.flatMap(({ preview, unusable }) =>
    unusable.length === 0 ? [] : [`${preview.header}: ${figure(unusable.length)}`],
  );
  const doubts = previewed.flatMap(({ preview: { header, groups } }) => {
    const doubtful = groups.filter(({ severity }) => severity === "doubt").flatMap((group) => group.rows);
    return doubtful.length === 0 ? [] : [`${header}: ${count(doubtful.length, "answer")} to look at.`];
  });
  const of = count(list.rows.length, "row");
  /* Columns that miss the same number of rows miss the same ones, as far as anybody can see: said once. */
  const isSame = previewed.every(({ unusable }) => unusable.length === rows.length);
  const first =
    rows.length === 0
      ? `No row of ${of} is left without an answer.`
      : `${figure(rows.length)} of ${of} get no usable answer${isSame ? "" : " in at least one column"} (${rowList(rows)}).${isSame ? "" : ` By column: ${each.join("; ")}.`}`;
  const before = [...list.columns].reverse().find(({ header }) => header.trim() !== "");
  const beside = before ? ` to the right of ${inQuotes(before.header)}` : "";
  const counting = previewed.filter(({ preview: { key } }) => recipeNamed(key).usesAsOf);
  const name =
    survey.asOf.from === "today" && counting.length > 0
      ? [
          `Puts in today’s date, under the name ${AS_OF}; ${together(counting.map(({ preview }) => inQuotes(preview.header)))} ${counting.length === 1 ? "counts" : "count"} from it.`,
        ]
      : [];
  const added = previewed.filter(({ preview }) => preview.refresh === null).map(({ preview }) => preview.header);
  const adds =
    added.length === 0
      ? []
      : [
          `Adds ${count(added.length, "column")} (${together(added)})${beside} in the ${list.label}: ${of}, nothing overwritten.`,
        ];
  const refreshed = previewed.flatMap(({ preview: { refresh } }) => (refresh ? [refresh.header] : []));
  const refreshes =
    refreshed.length === 0
      ? []
      : [`Writes ${count(refreshed.length, "column")} anew (${together(refreshed)}) in the ${list.label}: ${of}.`];
  const routine = [...adds, ...name];
  const says = [
    first,
    ...previewed.flatMap(({ preview: { refresh } }) => refresh?.sentences ?? []),
    ...doubts,
    ...refreshes,
    ...routine,
  ];
  return { says, routine };
}
