/** What each added column would show, row by row, and the rows that get no usable answer. */
import type { Recipe, RecipeKey, RowCells, RowProblem, Using } from "../../../src/columns/recipes/recipe";
import type { Role } from "../../../src/columns/role";
import { textOf } from "../../../src/columns/sheet-block";
import type { Cell } from "../../../src/worksheet/cell";
import { CellError, SheetError } from "../../../src/worksheet/error";
import type { Value } from "../../workbook/port";
import type { Choices, ColumnPreview, RowGroup } from "./interface";
import type { SurveyedList } from "../list/interface";
import { refreshOf } from "./refresh";
import { count, rowList } from "../../texts/pieces";
import { sourcesFor, type Source } from "./using";

/** An error as it would stand in the cell, for the columns that read it. */
const standing = (answer: Cell | SheetError | CellError): Value =>
  answer instanceof SheetError ? new CellError(answer.code) : answer;

export interface Previewed {
  readonly preview: ColumnPreview;
  /** Sheet rows without a usable answer. */
  readonly unusable: readonly number[];
  /** What each row will show. */
  readonly results: readonly Value[];
}

/** A column to be added, its formula as it will be shown. */
export interface Planned {
  readonly recipe: Recipe;
  readonly formula: string;
}

/** The previews of all columns; each column is worked out once, for those after it too. */
export function previewsOf(
  columns: readonly Planned[],
  list: SurveyedList,
  choices: Choices,
  using: Using,
): readonly Previewed[] {
  const answers = new Map<RecipeKey, readonly Value[]>();
  return columns.map(({ recipe, formula }) => {
    const cells = cellReader(recipe, list, choices, answers);
    const answered = list.rows.map((_, i) => standing(recipe.answer(cells(i), using)));
    answers.set(recipe.key, answered);
    return previewOf({ recipe, formula }, list, cells, answered, using);
  });
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
  { recipe, formula }: Planned,
  list: SurveyedList,
  cells: (row: number) => RowCells,
  answers: readonly Value[],
  using: Using,
): Previewed {
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
      refresh: refreshOf(recipe, list, answers),
    },
    unusable,
    results: answers,
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
