/** What would be done, from what was found and chosen: a change to be applied, or why there is none. Pure. */
import { NAMESPACE } from "../../../src/formula/ours";
import { columnLetters, inA1, inTable, type FormulaTemplate } from "../../../src/columns/formula";
import { areaAddress, overlaps } from "../../workbook/area";
import { asText } from "../../workbook/change/expectations";
import type { Change } from "../../workbook/port";
import { problem, type Problem } from "../action";
import { besideOf, expectationsOf } from "../list/expected";
import type { SurveyedList } from "../list/interface";
import { wayText } from "../list/read-list";
import { count, inQuotes } from "../../texts/pieces";
import type { Choices, Room, SizeCells, SizesPlan, SizesSurvey, SpillCells } from "./interface";
import { readSizes, type SizesRead } from "./read-sizes";
import { sourceOf, spillCells } from "./room";
import { readingSentences } from "./sentences";
import { noSettings, ways } from "./ways";
import { sheetProtected, twoCalled } from "../list/sentences";

/** @param room what was found where a formula would fill down; null: nobody has looked yet, or nothing is to fill */
export function planSizes(survey: SizesSurvey, choices: Choices, room: Room | null = null): SizesPlan | Problem {
  const source = sourceOf(survey, choices);
  if (!source) return problem(survey.list ? "Say which column holds the sizes." : survey.sentence);
  const sheet = survey.book.sheets.find(({ id }) => id === source.sheet);
  if (sheet?.isProtected) return problem(sheetProtected(sheet.name));
  const read = readSizes(source, choices.way);
  if (read.reading.blank === read.reading.of)
    return problem("Nothing stands in these cells.", { sheet: source.sheet, area: source.area });
  if (choices.put === "spill") return planSpill(survey, choices, room, source, read);
  const { list } = survey;
  if (!list || choices.from.of === "selected")
    return problem("Only a whole column of a list gets a new column beside it. Choose the other place.");
  return planColumn(list, choices, choices.from.column!, source, read);
}

/** The header of the new column: ours, or with a number where the list has it already. */
function freeHeader(list: SurveyedList, header: string): string {
  const taken = new Set(list.columns.map((column) => column.header.trim().toLowerCase()));
  let free = header;
  for (let n = 2; taken.has(free.toLowerCase()); n++) free = `${header} ${n}`;
  return free;
}

function planColumn(
  list: SurveyedList,
  { way }: Choices,
  index: number,
  source: SizeCells,
  { reading, results }: SizesRead,
): SizesPlan | Problem {
  if (list.obstacles[0]) return list.obstacles[0];
  const column = list.columns[index]!;
  if (list.table !== null && column.sharesHeader) return problem(twoCalled(column.header));
  const { recipe, role } = ways[way];
  const formula = recipe.template({ [role]: { header: column.header, index } }, noSettings);
  const header = freeHeader(list, recipe.header);
  const place = besideOf(list, 1);
  const to = list.table === null ? { list: { sheet: list.sheet, area: list.area } } : { table: list.table };
  const change: Change = {
    steps: [{ kind: "addColumns", to, columns: [{ header, formula, format: recipe.format, results }] }],
    expects: expectationsOf(list, [index], place),
  };
  return {
    outcome: "planned",
    change,
    reading,
    source,
    place: { sheet: list.sheet, area: place },
    formula: `=${written(list, formula)}`,
    header,
    says: [
      ...readingSentences(reading),
      `Adds the column ${inQuotes(header)} at the right end of the ${list.label}: column ${columnLetters(place.left)}, ` +
        `${count(list.rows.length, "row")}, one formula in each. Nothing is overwritten.`,
    ],
  };
}

/** The formula of the first row, as this list's host would show it. */
const written = (list: SurveyedList, formula: FormulaTemplate): string =>
  list.table === null ? inA1(formula, list.area.top + 1, list.area.left) : inTable(formula, list.table);

function planSpill(
  survey: SizesSurvey,
  choices: Choices,
  room: Room | null,
  source: SizeCells,
  { reading }: SizesRead,
): SizesPlan | Problem {
  const cells = spillCells(survey, choices);
  if (!cells) return problem(`Give one cell, such as H2, with ${count(source.area.rows, "row")} from there down.`);
  const { area } = cells;
  const table = survey.book.tables.find((each) => each.sheet === source.sheet && overlaps(each.area, area));
  if (table)
    return problem(
      `${areaAddress(area)} reaches into the table ${inQuotes(table.name)}, and in a table a formula cannot fill the ` +
        "cells below it. Choose a cell outside the table, or a new column of the list.",
    );
  if (overlaps(source.area, area)) return problem("The answers would stand on the sizes. Choose another cell.");
  if (!room || !isSame(room, cells)) return problem("Looking whether those cells are free…");
  if (room.inTheWay.length > 0)
    return problem(
      `These cells are not empty: ${wayText(room.inTheWay)}. The answers need ${areaAddress(area)}. Choose another cell.`,
    );
  const { recipe, functionName } = ways[choices.way];
  const formula = `=${NAMESPACE}.${functionName}(${areaAddress(source.area)})`;
  const { sheet } = source;
  return {
    outcome: "planned",
    change: {
      steps: [{ kind: "writeFormula", sheet, row: area.top, column: area.left, formula, format: recipe.format }],
      expects: [
        { kind: "texts", sheet, area: source.area, texts: source.values.map((value) => [asText(value)]) },
        { kind: "empty", sheet, area },
      ],
    },
    reading,
    source,
    place: { sheet, area },
    formula,
    header: null,
    says: [
      ...readingSentences(reading),
      `Puts one formula into ${areaAddress({ ...area, rows: 1 })}; its answers fill ${areaAddress(area)}, without a ` +
        "header and with all their decimals. Nothing is overwritten.",
      ...(reading.notRead > 0
        ? ["In some versions of Excel one cell that is not read turns all answers of such a formula into errors."]
        : []),
    ],
  };
}

const isSame = (a: SpillCells, b: SpillCells): boolean =>
  a.sheet === b.sheet && areaAddress(a.area) === areaAddress(b.area);
