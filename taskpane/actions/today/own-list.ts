/**
 * The day at a glance on somebody's own list: what the columns say that this add-in has added there, and nothing more.
 * Reads, and writes nothing. A row for which a column gives an error or nothing counts as missing: silence is no good news.
 */
import { asksOf, type Asks } from "../../../src/columns/asks";
import { looksOf } from "../../../src/columns/looks";
import { recipeNamed } from "../../../src/columns/recipes/index";
import type { RecipeKey } from "../../../src/columns/recipes/recipe";
import { textOf } from "../../../src/columns/sheet-block";
import { CellError } from "../../../src/worksheet/error";
import { shortDate } from "../../../src/words/date-in-words";
import type { Value, Workbook } from "../../workbook/port";
import { addColumns } from "../add-columns";
import type { PresentColumn, SurveyedList } from "../list/interface";
import type { TodayRow } from "./index";

export type OwnRow = Pick<TodayRow, "id" | "says" | "place"> & { readonly asks: Asks };

export interface OwnDay {
  readonly is: "own list";
  /** Where the list stands: "table Caseload on sheet Adults". */
  readonly label: string;
  /** Headers of the columns that were read. */
  readonly read: readonly string[];
  /** Rows with anything in them, the most urgent first. */
  readonly rows: readonly OwnRow[];
  readonly counts: Readonly<Record<Asks, number>>;
}

/** From the most urgent down. Where one column asks for a call and another lacks an entry, the row is called about. */
const order: readonly Asks[] = ["act", "soon", "missing", "quiet"];

interface Told {
  readonly key: RecipeKey;
  readonly present: PresentColumn;
}

/** @returns null where no list holds a column of ours that tells of a state */
export async function readOwnDay(workbook: Workbook, today: number): Promise<OwnDay | null> {
  const { list, asOf } = await addColumns.survey(workbook, { today });
  if (!list) return null;
  const told = columnsThatTell(list);
  if (told.length === 0) return null;
  const ours = new Set(list.recipes.flatMap(({ present }) => present?.column ?? []));
  const rows = list.rows.flatMap((row, i): OwnRow[] => {
    if (row.every((value, column) => ours.has(column) || textOf(value).trim() === "")) return [];
    const says = told.map(({ key, present }) => sayingOf(key, row[present.column] ?? null, asOf.day, present.header));
    const asks = order.find((one) => says.some((saying) => saying.asks === one))!;
    const loud = says.filter((saying) => saying.asks !== "quiet").map(({ word }) => word);
    const area = { ...list.area, top: list.rowNumbers[i]! - 1, rows: 1 };
    return [
      {
        id: textOf(row[0] ?? null).trim(),
        says: (loud.length > 0 ? loud : says.map(({ word }) => word)).join(", "),
        asks,
        place: { sheet: list.sheet, area },
      },
    ];
  });
  const counts = Object.fromEntries(order.map((one) => [one, rows.filter(({ asks }) => asks === one).length]));
  return {
    is: "own list",
    label: list.label,
    read: told.map(({ present }) => present.header),
    rows: [...rows].sort((one, other) => order.indexOf(one.asks) - order.indexOf(other.asks)),
    counts: counts as OwnDay["counts"],
  };
}

/** *Change* says in words what its two dates say. */
function columnsThatTell({ recipes }: SurveyedList): readonly Told[] {
  const told = recipes.flatMap(({ key, present }) =>
    present && looksOf(recipeNamed(key)).length > 0 ? [{ key, present }] : [],
  );
  const hasChange = told.some(({ key }) => key === "change");
  return hasChange ? told.filter(({ key }) => key !== "changeDue" && key !== "atTheLatest") : told;
}

function sayingOf(
  key: RecipeKey,
  value: Value,
  today: number,
  header: string,
): { readonly asks: Asks; readonly word: string } {
  const recipe = recipeNamed(key);
  if (typeof value === "number" && recipe.words.length === 0) {
    const past = looksOf(recipe).find((look) => "isPast" in look);
    return { asks: past && value < today ? past.asks : "quiet", word: `${header} ${shortDate(value)}` };
  }
  const text = textOf(value).trim();
  if (text === "" || value instanceof CellError) return { asks: "missing", word: `${header}: ${text || "blank"}` };
  const asks = asksOf(text);
  /* Words of two columns stand side by side: a balloon's needs its column's name. */
  return { asks, word: key === "change" ? text : `${header}: ${text}` };
}
