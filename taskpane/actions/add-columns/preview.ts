/** What each added column would show, row by row, and the rows that get no usable answer. */
import type { FormulaTemplate } from "../../../src/columns/formula";
import type { Dialect, Recipe, RecipeKey, RowCells, RowProblem, Using } from "../../../src/columns/recipes/recipe";
import type { Role } from "../../../src/columns/role";
import { textOf } from "../../../src/columns/sheet-block";
import type { Cell } from "../../../src/worksheet/cell";
import { CellError, SheetError } from "../../../src/worksheet/error";
import type { Value } from "../../workbook/port";
import { asText } from "../../workbook/change/expectations";
import type { Choices, ColumnPreview, RowGroup, WrittenIn } from "./interface";
import type { SurveyedList } from "../list/interface";
import { refreshOf } from "./refresh";
import { count, rowList } from "../../texts/pieces";
import { slotsFor, sourcesFor, type Source } from "./using";

/** An error as it would stand in the cell, for the columns that read it. */
const standing = (answer: Cell | SheetError | CellError): Value =>
  answer instanceof SheetError ? new CellError(answer.code) : answer;

export interface Previewed {
  readonly recipe: Recipe;
  readonly preview: ColumnPreview;
  readonly formula: FormulaTemplate;
  /** Sheet rows without a usable answer. */
  readonly unusable: readonly number[];
  /** What each row will show. */
  readonly results: readonly Value[];
}

/**
 * The previews of all columns; each column is worked out once, for those after it too.
 * @param shown a formula as this list's host would show it
 */
export function previewsOf(
  columns: readonly Recipe[],
  list: SurveyedList,
  choices: Choices,
  using: Using,
  shown: (list: SurveyedList, formula: FormulaTemplate) => string,
): readonly Previewed[] {
  const answers = new Map<RecipeKey, readonly Value[]>();
  return columns.map((recipe) => {
    const cells = cellReader(recipe, list, choices, answers);
    const { answered, written } = answersOf(recipe, list, choices, cells, using);
    answers.set(recipe.key, answered);
    const inUse = { ...using, dialect: written.dialect };
    const formula = recipe.template(slotsFor(recipe, list, choices), inUse);
    const preview = previewOf({ recipe, formula: shown(list, formula), written }, list, cells, answered, inUse);
    return { recipe, formula, results: answered, ...preview };
  });
}

interface Answered {
  /** What each row will show. */
  readonly answered: readonly Value[];
  readonly written: WrittenIn;
}

/** In plain Excel where that gives every row what our function gives; what somebody has chosen goes before. */
function answersOf(
  recipe: Recipe,
  list: SurveyedList,
  { formulas }: Choices,
  cells: (row: number) => RowCells,
  using: Using,
): Answered {
  const by = (dialect: Dialect) => list.rows.map((_, i) => standing(recipe.answer(cells(i), { ...using, dialect })));
  const plain = by("plain");
  if (recipe.functions.length === 0) return { answered: plain, written: { dialect: "plain", rows: [], because: null } };
  const ours = by("ours");
  const missed = list.rows.flatMap((_, i) => (asText(plain[i]!) === asText(ours[i]!) ? [] : [i]));
  const dialect = formulas !== "plain where the same" ? formulas : missed.length === 0 ? "plain" : "ours";
  const because =
    missed.length === 0 ? null : (recipe.problem(cells(missed[0]!), { ...using, dialect: "plain" })?.reason ?? null);
  const rows = missed.map((i) => list.rowNumbers[i]!);
  return { answered: dialect === "plain" ? plain : ours, written: { dialect, rows, because } };
}

/** A row's cells by their roles; those of added columns have been worked out before. */
function cellReader(
  recipe: Recipe,
  list: SurveyedList,
  choices: Choices,
  answers: ReadonlyMap<RecipeKey, readonly Value[]>,
): (row: number) => RowCells {
  const sources = Object.entries(sourcesFor(recipe, choices)) as [Role, Source][];
  return (row) => {
    const cells: { [R in Role]?: Value } = {};
    for (const [role, source] of sources)
      cells[role] = (source.from === "list" ? list.rows[row]![source.column] : answers.get(source.key)?.[row]) ?? null;
    return cells;
  };
}

function previewOf(
  { recipe, formula, written }: { readonly recipe: Recipe } & Pick<ColumnPreview, "formula" | "written">,
  list: SurveyedList,
  cells: (row: number) => RowCells,
  answers: readonly Value[],
  using: Using,
): Pick<Previewed, "preview" | "unusable"> {
  const groups = new Map<string, RowProblem & { readonly rows: number[] }>();
  const shown = new Map<string, number>();
  const unusable: number[] = [];
  list.rows.forEach((row, i) => {
    const number = list.rowNumbers[i]!;
    if (recipe.words.length > 0) {
      const word = textOf(answers[i]!);
      shown.set(word, (shown.get(word) ?? 0) + 1);
    }
    const found = recipe.problem(cells(i), using);
    if (!found) return;
    const isEmpty = row.every((value) => textOf(value).trim() === "");
    const problem = isEmpty ? { ...found, reason: "the row is empty" } : found;
    if (problem.severity !== "doubt") unusable.push(number);
    const key = [problem.severity, problem.shows, problem.reason].join("\n");
    const group = groups.get(key);
    if (group) group.rows.push(number);
    else groups.set(key, { ...problem, rows: [number] });
  });
  return {
    preview: {
      key: recipe.key,
      header: recipe.header,
      filled: list.rows.length - unusable.length,
      of: list.rows.length,
      groups: [...groups.values()].sort(byWeight).map(withSentence),
      counts: countsInOrder(recipe.words, shown),
      formula,
      written,
      refresh: refreshOf(recipe, list, answers),
    },
    unusable,
  };
}

const weight = { "no answer": 0, kind: 0, doubt: 1 } as const;

const byWeight = (
  a: RowProblem & { readonly rows: readonly number[] },
  b: RowProblem & { readonly rows: readonly number[] },
): number => weight[a.severity] - weight[b.severity] || b.rows.length - a.rows.length || a.rows[0]! - b.rows[0]!;

/** "9 rows show "no date": no last change (rows 14, 52 and 60)." */
function withSentence({ severity, shows, reason, rows }: RowProblem & { readonly rows: readonly number[] }): RowGroup {
  const many = count(rows.length, "row");
  const one = rows.length === 1;
  const verb =
    severity === "doubt"
      ? `${one ? "needs" : "need"} a look`
      : shows === ""
        ? `${one ? "stays" : "stay"} blank`
        : `${one ? "shows" : "show"} "${shows}"`;
  const why = reason === shows ? "" : `: ${reason}`;
  return { severity, shows, reason, rows, sentence: `${many} ${verb}${why} (${rowList(rows)}).` };
}

/** Errors first, then the recipe's own order: bad news first. */
function countsInOrder(words: readonly string[], shown: ReadonlyMap<string, number>): ColumnPreview["counts"] {
  const others = [...shown.keys()].filter((word) => !words.includes(word));
  return [...others, ...words].flatMap((word) => {
    const rows = shown.get(word);
    return rows === undefined ? [] : [{ word, rows }];
  });
}
