/** Whether a formula that fills down would find its cells free. */
import { bottom, parseArea, SHEET_ROWS } from "../../workbook/area";
import type { Workbook } from "../../workbook/port";
import { lookInto } from "../list/beside";
import type { Choices, Room, SizeCells, SizesSurvey, SpillCells } from "./interface";

const NO_DATES: ReadonlyMap<number, string> = new Map();

/** The cells that are to be converted; null while no column is chosen. */
export function sourceOf(survey: SizesSurvey, { from }: Choices): SizeCells | null {
  if (from.of === "selected") return survey.selected;
  const { list } = survey;
  if (!list || from.column === null || !list.columns[from.column]) return null;
  const { column } = from;
  return {
    sheet: list.sheet,
    area: { top: list.area.top + 1, left: list.area.left + column, rows: list.rows.length, columns: 1 },
    values: list.rows.map((row) => row[column] ?? null),
    shownDates: list.shownDates.get(column) ?? NO_DATES,
  };
}

/**
 * Where a formula would fill down; null where none is to, where no one cell is named, or where the sheet ends before.
 * Pure: whoever looks for room asks here first whether there is anything to look at.
 */
export function spillCells(survey: SizesSurvey, choices: Choices): SpillCells | null {
  const source = choices.put === "spill" ? sourceOf(survey, choices) : null;
  const cell = source && parseArea(choices.start.trim());
  if (!cell || cell.rows !== 1 || cell.columns !== 1) return null;
  const area = { ...cell, rows: source.area.rows };
  return bottom(area) > SHEET_ROWS ? null : { sheet: source.sheet, area };
}

/** Looks at the sheet. */
export async function roomFor(workbook: Workbook, { sheet, area }: SpillCells): Promise<Room> {
  const found = await lookInto(workbook, await workbook.overview(), sheet, area);
  return { sheet, area, inTheWay: found.map(({ address }) => address) };
}
