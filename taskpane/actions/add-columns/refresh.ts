/** What becomes of a column of ours that is written anew. */
import type { Recipe } from "../../../src/columns/recipes/recipe";
import { asText } from "../../workbook/change/expectations";
import type { Value } from "../../workbook/port";
import type { RefreshPreview } from "./interface";
import type { SurveyedList } from "../list/interface";
import { count, figure, inQuotes, rowList } from "../../texts/pieces";
import { presentIn } from "./using";

export function refreshOf(recipe: Recipe, list: SurveyedList, answers: readonly Value[]): RefreshPreview | null {
  const present = presentIn(list, recipe.key);
  if (!present) return null;
  const { column, header, typed } = present;
  const now = (row: number): Value => list.rows[row]?.[column] ?? null;
  const changing = list.rowNumbers.filter((_, row) => !showsTheSame(now(row), answers[row] ?? null));
  return { header, changing, typed, sentences: sentencesOf(header, changing, typed, list.rows.length) };
}

/** Two engines may differ in the last of sixteen digits; nobody sees that. */
const showsTheSame = (one: Value, other: Value): boolean =>
  typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(one))
    : asText(one) === asText(other);

function sentencesOf(
  header: string,
  changing: readonly number[],
  typed: readonly number[],
  of: number,
): readonly string[] {
  const name = inQuotes(header);
  const over =
    typed.length === 0
      ? []
      : [
          `${name}: in ${count(typed.length, "row")} somebody has typed over the formula (${rowList(typed)}). The formula takes the place of what they typed.`,
        ];
  const differs =
    changing.length === 0
      ? `${name}: every row goes on showing what it shows now.`
      : `${name}: ${count(changing.length, "row")} of ${figure(of)} will show something else than now (${rowList(changing)}).`;
  return [...over, differs];
}
