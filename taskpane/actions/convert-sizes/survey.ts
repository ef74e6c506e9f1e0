/** Looks where somebody stands: the list and its columns, and selected cells that stand outside of one. */
import { rolesNamed } from "../../../src/columns/header-words";
import { MMTOFR } from "../../../src/sizes/mmtofr";
import { FRTOMM } from "../../../src/sizes/frtomm";
import { call } from "../../../src/worksheet/call";
import type { SheetFunction } from "../../../src/worksheet/define";
import { bottom, overlaps, right } from "../../workbook/area";
import type { Overview, Value, Workbook } from "../../workbook/port";
import { cellAddress } from "../../../src/columns/formula";
import { asOfIn } from "../list/as-of";
import { candidatesIn, locate } from "../list/find";
import type { SurveyedList } from "../list/interface";
import { readList } from "../list/read-list";
import { readShownDates } from "../list/shown-dates";
import { count } from "../../texts/pieces";
import type { Asked, Choices, SizeCells, SizesSurvey, Way } from "./interface";

/** So many cells tell which way a column goes. */
const LOOKED_AT = 200;

export async function surveySizes(workbook: Workbook, asked: Asked): Promise<SizesSurvey> {
  const overview = await workbook.overview();
  const { list: located, sentence } = await locate(workbook, overview, asked);
  const list = located && (await readList(workbook, overview, located, asOfIn(overview, asked.today)));
  const selected = await selectedCells(workbook, overview, list);
  return {
    lists: candidatesIn(overview).map(({ choice }) => choice),
    list,
    sentence: list ? `${sentence} ${count(list.rows.length, "row")}.` : sentence,
    selected,
    book: overview,
    proposal: proposalFor(overview, list, selected),
  };
}

/** Two or more selected cells of one column, as far as the sheet is used; not where they are a list's whole column. */
async function selectedCells(
  workbook: Workbook,
  { selection, sheets, dateSystem }: Overview,
  list: SurveyedList | null,
): Promise<SizeCells | null> {
  const used = sheets.find(({ id }) => id === selection?.sheet)?.used;
  if (!selection || !used || selection.area.columns !== 1) return null;
  const { left } = selection.area;
  let top = Math.max(selection.area.top, used.top);
  let end = Math.min(bottom(selection.area), bottom(used));
  if (list && list.sheet === selection.sheet && overlaps(selection.area, list.area)) {
    top = Math.max(top, list.area.top + 1);
    end = Math.min(end, bottom(list.area));
    if (end - top === list.rows.length) return null;
  }
  if (end - top < 2) return null;
  const area = { top, left, rows: end - top, columns: 1 };
  const { values: rows = [] } = await workbook.read({ sheet: selection.sheet, area }, ["values"]);
  const dates = await readShownDates(workbook, selection.sheet, area, rows, [0], dateSystem);
  return {
    sheet: selection.sheet,
    area,
    values: rows.map((row) => row[0] ?? null),
    shownDates: dates.get(0) ?? new Map<number, string>(),
  };
}

/** The column that is selected, or that looks like sizes; the way that its header or its cells speak for. */
function proposalFor(overview: Overview, list: SurveyedList | null, selected: SizeCells | null): Choices {
  const start = startFor(list, selected);
  if (!list || (selected && !stands(selected, list)))
    return { start, way: wayOf("", selected?.values ?? []), from: { of: "selected" }, put: "spill" };
  const column = columnFor(overview, list);
  const values = column === null ? [] : list.rows.map((row) => row[column] ?? null);
  const header = column === null ? "" : list.columns[column]!.header;
  return { start, way: wayOf(header, values), from: { of: "column", column }, put: "beside" };
}

const stands = (selected: SizeCells, list: SurveyedList): boolean =>
  selected.sheet === list.sheet && overlaps(selected.area, list.area);

function columnFor({ selection }: Overview, list: SurveyedList): number | null {
  const guessed = list.guesses.size?.column ?? list.guesses.diameter?.column ?? null;
  if (!selection || selection.sheet !== list.sheet) return guessed;
  const { area } = selection;
  const isColumn = area.columns === 1 && area.left >= list.area.left && area.left < right(list.area);
  const chosen = isColumn ? area.left - list.area.left : null;
  return (area.rows > 1 ? (chosen ?? guessed) : (guessed ?? chosen)) ?? null;
}

const reads = (definition: SheetFunction, value: Value): boolean => typeof call(definition, [value]) === "number";

/** A number alone may be either; a text with its unit is read one way only. */
function wayOf(header: string, values: readonly Value[]): Way {
  if (rolesNamed(header).includes("diameter")) return "toFr";
  const texts = values.filter((value) => typeof value === "string").slice(0, LOOKED_AT);
  const french = texts.filter((value) => reads(FRTOMM, value)).length;
  const millimetres = texts.filter((value) => reads(MMTOFR, value)).length;
  return millimetres > french ? "toFr" : "toMm";
}

/** One column is left free, so that the list does not swallow what has no header. */
function startFor(list: SurveyedList | null, selected: SizeCells | null): string {
  if (selected && !(list && stands(selected, list))) return cellAddress(selected.area.top, selected.area.left + 2);
  return list ? cellAddress(list.area.top + 1, right(list.area) + 1) : "";
}
