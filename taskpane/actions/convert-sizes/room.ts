/** Whether a formula that fills down would find its cells free. */
import { bottom, parseArea, SHEET_ROWS } from "../../workbook/area";
import type { Area, Workbook } from "../../workbook/port";
import { lookInto } from "../add-columns/beside";
import type { Choices, Room, SizeCells, SizesSurvey } from "./interface";

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
  };
}

/** Where the formula would fill; null where that is no cell, or the sheet ends before. */
export function spillArea(source: SizeCells, start: string): Area | null {
  const cell = parseArea(start.trim());
  if (!cell || cell.rows !== 1 || cell.columns !== 1) return null;
  const area = { ...cell, rows: source.area.rows };
  return bottom(area) > SHEET_ROWS ? null : area;
}

/** Looks at the sheet; null where there is nothing to look at. */
export async function roomFor(workbook: Workbook, survey: SizesSurvey, choices: Choices): Promise<Room | null> {
  const source = sourceOf(survey, choices);
  const area = source && spillArea(source, choices.start);
  if (!source || !area) return null;
  const found = await lookInto(workbook, await workbook.overview(), source.sheet, area);
  return { area, inTheWay: found.map(({ address }) => address) };
}
