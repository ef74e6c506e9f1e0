/**
 * What a worked-out cell rests on: cells of the same row that people see, with what stands in them. The caseload works
 * with small hidden columns; what they read counts, not they.
 */
import { rowsTables, tableNames } from "../../../src/caseload/names";
import { TO_DO } from "../../../src/caseload/sort-key";
import { urgencyOf } from "../../../src/caseload/urgency";
import { textOf } from "../../../src/columns/sheet-block";
import { parse } from "../../../src/formula/parse";
import { pieces } from "../../../src/formula/tree";
import type { Area, Overview, Value, Workbook } from "../../workbook/port";
import { isDateFormat } from "../list/samples";
import type { InList } from "./column";
import { columnsRead, toDoReads } from "./read-headers";
import { cellsOf, type Standing } from "./references";
import { unitShown, valueText } from "./values";

/** So many are named; a sentence with more is a list. */
const MOST = 5;

export interface RestsOn {
  /** "Change due is 21 Oct 2026" */
  readonly facts: readonly string[];
  /** Some of them are days, so that it also rests on today. */
  readonly hasDays: boolean;
}

/** Known beforehand for the caseload; null where the formula has to be asked. */
function headersKnown({ header, table }: InList, shown: Value): readonly string[] | null {
  const key = rowsTables.find((one) => tableNames[one] === table);
  if (key === undefined) return null;
  if (key === "tubes" && header === TO_DO) {
    const word = urgencyOf(textOf(shown))?.word;
    return word === undefined ? ["Status"] : (toDoReads[word] ?? []);
  }
  return columnsRead[key][header] ?? null;
}

export async function restsOn(
  workbook: Workbook,
  overview: Overview,
  standing: Standing,
  list: InList,
  { value, formula }: { readonly value: Value; readonly formula: string },
): Promise<RestsOn> {
  const columns = columnsOf(list, headersKnown(list, value), formula, standing, overview).slice(0, MOST);
  const facts: string[] = [];
  let hasDays = false;
  for (const { header, column } of columns) {
    const area: Area = { top: standing.row, left: column, rows: 1, columns: 1 };
    const { values, formats } = await workbook.read({ sheet: standing.sheet, area }, ["values", "formats"]);
    const cell = values?.[0]?.[0] ?? null;
    const unit = unitShown(cell, isDateFormat(formats?.[0]?.[0] ?? ""));
    hasDays ||= unit === "date" && typeof cell === "number";
    facts.push(`${header} is ${valueText(cell, unit)}`);
  }
  return { facts, hasDays };
}

interface Column {
  readonly header: string;
  readonly column: number;
}

function columnsOf(
  { headers, left }: InList,
  known: readonly string[] | null,
  formula: string,
  standing: Standing,
  overview: Overview,
): readonly Column[] {
  if (known !== null)
    return known.flatMap((header) => {
      const at = headers.indexOf(header);
      return at < 0 ? [] : [{ header, column: left + at }];
    });
  const found = new Map<number, Column>();
  for (const piece of pieces(parse(formula))) {
    const cells = piece.is === "reference" ? cellsOf(piece.text, standing, overview) : null;
    if (!cells || cells.sheet !== standing.sheet || cells.area.rows !== 1 || cells.area.columns !== 1) continue;
    const { top, left: column } = cells.area;
    const header = headers[column - left];
    if (top === standing.row && column !== standing.column && header) found.set(column, { header, column });
  }
  return [...found.values()];
}
