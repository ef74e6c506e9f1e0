/** What each added column would show, row by row, and the rows that get no usable answer. */
import type { Recipe, RowCells, RowProblem, Using } from "../../../src/columns/recipes/recipe";
import { recipeNamed } from "../../../src/columns/recipes/index";
import type { Role } from "../../../src/columns/role";
import { textOf } from "../../../src/columns/sheet-block";
import type { Cell } from "../../../src/worksheet/cell";
import { CellError, SheetError } from "../../../src/worksheet/error";
import type { Value } from "../../workbook/port";
import type { Choices, ColumnPreview, RowGroup, SurveyedList } from "./interface";
import { count, rowList } from "./sentences";
import { sourcesFor, type Source } from "./using";

/** An error as it would stand in the cell, for the columns that read it. */
const standing = (answer: Cell | SheetError | CellError): Value =>
  answer instanceof SheetError ? new CellError(answer.code) : answer;

/** A row's cells by their roles; those of added columns are worked out. */
function cellsOf(recipe: Recipe, row: readonly Value[], choices: Choices, using: Using): RowCells {
  const cells: { [R in Role]?: Value } = {};
  for (const [role, source] of Object.entries(sourcesFor(recipe, choices)) as [Role, Source][]) {
    if (source.from === "list") cells[role] = row[source.column] ?? null;
    else {
      const before = recipeNamed(source.key);
      cells[role] = standing(before.answer(cellsOf(before, row, choices, using), using));
    }
  }
  return cells;
}

export interface Previewed {
  readonly preview: ColumnPreview;
  /** Sheet rows without a usable answer. */
  readonly unusable: readonly number[];
}

export function previewOf(
  recipe: Recipe,
  list: SurveyedList,
  choices: Choices,
  using: Using,
  formula: string,
): Previewed {
  const groups = new Map<string, RowProblem & { readonly rows: number[] }>();
  const shown = new Map<string, number>();
  const unusable: number[] = [];
  list.rows.forEach((row, i) => {
    const number = list.rowNumbers[i]!;
    const cells = cellsOf(recipe, row, choices, using);
    if (recipe.words.length > 0) {
      const answer = recipe.answer(cells, using);
      const word = answer instanceof SheetError || answer instanceof CellError ? answer.code : textOf(answer);
      shown.set(word, (shown.get(word) ?? 0) + 1);
    }
    const found = recipe.problem(cells, using);
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
  return { severity, shows, reason, rows, sentence: `${many} ${verb}: ${reason} (${rowList(rows)}).` };
}

/** Errors first, then the recipe's own order: bad news first. */
function countsInOrder(words: readonly string[], shown: ReadonlyMap<string, number>): ColumnPreview["counts"] {
  const others = [...shown.keys()].filter((word) => !words.includes(word));
  return [...others, ...words].flatMap((word) => {
    const rows = shown.get(word);
    return rows === undefined ? [] : [{ word, rows }];
  });
}
