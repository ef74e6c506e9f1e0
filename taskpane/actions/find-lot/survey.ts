/** Looks for every column with lots: the caseload's own four, and those of every other list of the workbook. */
import { sparesThere } from "../../../src/caseload/words";
import type { RowsTable } from "../../../src/caseload/names";
import type { ShownHeader } from "../../../src/caseload/headers";
import { holdsLots } from "../../../src/lots/headers";
import { calendarDate } from "../../../src/maths/calendar";
import { shortDate } from "../../../src/words/date-in-words";
import { findLot as words } from "../../texts/find-lot";
import { together } from "../../texts/pieces";
import type { Overview, Value, Workbook } from "../../workbook/port";
import { textOf } from "../caseload/cells";
import { columnOf, readCaseload, textIn, valueIn, type CaseloadRow, type CaseloadRows } from "../caseload/read";
import { headerKey } from "../caseload/recognise";
import { asOfIn } from "../list/as-of";
import { candidatesIn, locate } from "../list/find";
import { identifierIn } from "../list/identifier";
import type { SurveyedList } from "../list/interface";
import { readList } from "../list/read-list";
import { isDateFormat, DAYS_1904_TO_1900 } from "../list/samples";
import type { LotGroup, LotList, LotRow, LotSurvey, OtherColumn } from "./interface";

export interface AskedLots {
  /** By the computer's clock, as a day number. */
  readonly today: number;
  /** Keys of other columns that somebody has asked to look in. */
  readonly also?: readonly string[];
}

type Columns = { rows: LotRow[]; lookedIn: string[]; others: OtherColumn[] };

export async function surveyLots(workbook: Workbook, { today, also = [] }: AskedLots): Promise<LotSurvey> {
  const overview = await workbook.overview();
  const found: Columns = { rows: [], lookedIn: [], others: [] };
  const caseload = await readCaseload(workbook);
  const own = new Set<string>();
  if (caseload.is === "caseload") {
    await lookInCaseload(workbook, caseload, found);
    for (const table of [caseload.tubes, caseload.checks, caseload.changes]) own.add(`table ${table.table}`);
  }
  for (const { choice } of candidatesIn(overview)) {
    if (own.has(choice.key)) continue;
    const { list: located } = await locate(workbook, overview, { list: choice.key });
    if (!located) continue;
    const list = await readList(workbook, overview, located, asOfIn(overview, today));
    await lookInList(workbook, overview, list, also, found);
  }
  return { year: calendarDate(today).year, ...found, isCaseload: caseload.is === "caseload" };
}

/** Which of the caseload's columns hold lots, and of what. */
const ownColumns = {
  tubes: { Lot: "in use", "Spare lot": "spare" },
  changes: { Lot: "past", "New lot": "put in" },
} as const satisfies { readonly [T in RowsTable]?: { readonly [H in ShownHeader<T>]?: LotGroup } };

async function lookInCaseload(
  workbook: Workbook,
  { tubes, changes }: { readonly tubes: CaseloadRows<"tubes">; readonly changes: CaseloadRows<"changes"> },
  found: Columns,
): Promise<void> {
  for (const header of ["Lot", "Spare lot"] as const) {
    await lookIn(workbook, tubes, header, ownColumns.tubes[header], found, aboutTube, (row, lot) =>
      header === "Lot" ? true : lot !== "" || sparesThere.some((word) => word === textIn(row, "Spare at home")),
    );
  }
  for (const header of ["Lot", "New lot"] as const) {
    /* What went in stands in the list too, or among past devices: only a lot that is written down here counts. */
    await lookIn(workbook, changes, header, ownColumns.changes[header], found, aboutPast, (_, lot) =>
      header === "Lot" ? true : lot !== "",
    );
  }
}

async function lookIn<T extends "tubes" | "changes">(
  workbook: Workbook,
  rows: CaseloadRows<T>,
  header: "Lot" | (T extends "tubes" ? "Spare lot" : "New lot"),
  group: LotGroup,
  found: Columns,
  about: (row: CaseloadRow<T>, group: LotGroup) => string,
  counts: (row: CaseloadRow<T>, lot: string) => boolean,
): Promise<void> {
  const name = columnOf(rows, header as ShownHeader<T>);
  if (name === undefined) return;
  const column = rows.columns.indexOf(name);
  const list = ownList(rows);
  const values = rows.rows.map((row) => row.values.get(headerKey(name)) ?? null);
  const dates = await datesAmong(
    workbook,
    list,
    column,
    values,
    rows.rows.map(({ index }) => index),
  );
  rows.rows.forEach((row, i) => {
    const value = values[i]!;
    const cell = { value, isDate: dates.has(i) };
    const lot = shownLot(value, cell.isDate);
    if (!counts(row, lot)) return;
    const { index, sheetRow } = row;
    const idValue = row.values.get(headerKey("ID")) ?? null;
    found.rows.push({
      ...{ group, list, column, row: index, sheetRow, id: textOf(idValue), idValue, cell, lot },
      about: about(row, group),
    });
  });
  found.lookedIn.push(words.column(name, rows.sheetName));
}

const ownList = ({ table, sheet, sheetName, area, columns, dataRows }: CaseloadRows): LotList => ({
  ...{ key: `table ${table}`, name: sheetName, table, sheet, area, headers: columns, headerTexts: columns, dataRows },
  identifier: columns.findIndex((header) => headerKey(header) === headerKey("ID")),
});

const dayText = (value: Value): string => (typeof value === "number" && value > 0 ? shortDate(value) : "");
const filled = (parts: readonly string[]): string => parts.filter((part) => part !== "").join(", ");

function aboutTube(row: CaseloadRow<"tubes">, group: LotGroup): string {
  const status = textIn(row, "Status").toLowerCase();
  const away = status === "" || status === "active" ? "" : status;
  if (group === "spare") {
    const size = textIn(row, "Spare Fr");
    const expires = dayText(valueIn(row, "Spare expires"));
    return filled([words.spare, size && `${size} Fr`, expires && words.expires(expires), away]);
  }
  const since = dayText(valueIn(row, "Device in"));
  return filled([deviceIn(row), since === "" ? words.noDay : words.since(since), away]);
}

function aboutPast(row: CaseloadRow<"changes">, group: LotGroup): string {
  const [from, until] = [dayText(valueIn(row, "In")), dayText(valueIn(row, "Out"))];
  if (group === "put in") return filled([textIn(row, "New held by"), until === "" ? words.noDay : words.putIn(until)]);
  return filled([deviceIn(row), words.fromTo(from || words.noDay, until || words.noDay), textIn(row, "Reason")]);
}

function deviceIn(row: CaseloadRow<"tubes"> | CaseloadRow<"changes">): string {
  const read = (header: "Held by" | "Size Fr" | "Length cm"): string =>
    textOf(row.values.get(headerKey(header)) ?? null);
  const [size, length] = [read("Size Fr"), read("Length cm")];
  return [
    read("Held by"),
    /^[\d.]+$/u.test(size) ? `${size} Fr` : size,
    /^[\d.]+$/u.test(length) ? `${length} cm` : length,
  ]
    .filter((part) => part !== "")
    .join(" ");
}

async function lookInList(
  workbook: Workbook,
  overview: Overview,
  list: SurveyedList,
  also: readonly string[],
  found: Columns,
): Promise<void> {
  const identifier = identifierIn(list);
  const own: LotList = {
    ...{ key: list.key, name: list.sheetName, table: list.table, sheet: list.sheet, area: list.area, identifier },
    headers: list.columns.map(({ header }) => header),
    headerTexts: list.headerTexts,
    dataRows: list.rows.length,
  };
  for (const { index, header } of list.columns) {
    const key = `${list.key} ${index}`;
    if (!holdsLots(header) && !also.includes(key)) {
      if (index !== identifier) found.others.push({ key, label: words.column(header, list.sheetName) });
      continue;
    }
    found.lookedIn.push(words.column(header, list.sheetName));
    const values = list.rows.map((row) => row[index] ?? null);
    const places = list.rows.map((_, row) => row);
    const dates = await datesAmong(workbook, own, index, values, places);
    list.rows.forEach((row, at) => {
      if (row.every((value) => textOf(value) === "")) return;
      const shift = dates.has(at) && overview.dateSystem === 1904 ? DAYS_1904_TO_1900 : 0;
      const value = typeof values[at] === "number" ? values[at] + shift : values[at]!;
      const idValue = identifier === null ? null : (row[identifier] ?? null);
      found.rows.push({
        ...{ group: "list", list: own, column: index, row: at, sheetRow: list.rowNumbers[at]!, idValue },
        ...{ id: textOf(idValue), cell: { value, isDate: dates.has(at) }, lot: shownLot(value, dates.has(at)) },
        about: aboutRow(list, row),
      });
    });
  }
}

/** Kind, size and the day of the last change, where the list has them. */
function aboutRow({ guesses }: SurveyedList, row: readonly Value[]): string {
  const of = (role: "kind" | "size" | "last"): Value => {
    const guess = guesses[role];
    return guess ? (row[guess.column] ?? null) : null;
  };
  const last = of("last");
  const when = dayText(last) || textOf(last);
  return filled([
    [textOf(of("kind")), textOf(of("size"))].filter((part) => part !== "").join(" "),
    when && words.since(when),
  ]);
}

const shownLot = (value: Value, isDate: boolean): string =>
  isDate && typeof value === "number" ? shortDate(value) : value === 0 ? "" : textOf(value);

/** Places in `values` whose cells show a number as a date. */
async function datesAmong(
  workbook: Workbook,
  list: LotList,
  column: number,
  values: readonly Value[],
  rows: readonly number[],
): Promise<ReadonlySet<number>> {
  if (!values.some((value) => typeof value === "number" && value !== 0)) return new Set();
  const area = { top: list.area.top + 1, left: list.area.left + column, rows: list.dataRows, columns: 1 };
  const { formats = [] } = await workbook.read({ sheet: list.sheet, area }, ["formats"]);
  return new Set(
    values.flatMap((value, i) => (typeof value === "number" && isDateFormat(formats[rows[i]!]?.[0] ?? "") ? [i] : [])),
  );
}

export const lookedInText = (survey: LotSurvey): string => together(survey.lookedIn);
