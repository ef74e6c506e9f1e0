/** The lists of a workbook: which there are, and where one of them stands now. */
import { findList, type FoundList, type NoList } from "../../../src/columns/find-list";
import type { SheetValue } from "../../../src/columns/sheet-block";
import { sheetNames } from "../../../src/caseload/names";
import { recogniseCaseload } from "../caseload/recognise";
import { bottom, contains, right } from "../../workbook/area";
import type { Area, Overview, SheetOverview, TableOverview, Workbook } from "../../workbook/port";
import type { ListChoice, Wish } from "./interface";
import { isMemorySheet } from "./memory";
import { capital, inQuotes } from "../../texts/pieces";

/** A list before its rows have been read. */
export type Located =
  | { readonly in: "table"; readonly choice: ListChoice; readonly sheet: SheetOverview; readonly table: TableOverview }
  | { readonly in: "sheet"; readonly choice: ListChoice; readonly sheet: SheetOverview; readonly found: FoundList };

export type Candidate =
  | { readonly in: "table"; readonly choice: ListChoice; readonly sheet: SheetOverview; readonly table: TableOverview }
  | { readonly in: "sheet"; readonly choice: ListChoice; readonly sheet: SheetOverview };

/** Sheets of a ready-made caseload that hold words and numbers, and nobody's list. */
const NO_LISTS: ReadonlySet<string> = new Set([sheetNames.readFirst, sheetNames.settings]);

/** Whether a person could mean a list on this sheet: in sight, and no sheet of ours that holds none. */
function mayHoldList(overview: Overview): (sheet: SheetOverview) => boolean {
  const isCaseload = recogniseCaseload(overview).is !== "none";
  return (sheet) => !sheet.hidden && !isMemorySheet(sheet) && !(isCaseload && NO_LISTS.has(sheet.name));
}

/** Tables first. A sheet without a table is offered as a plain list, and so is the sheet one stands on. */
export function candidatesIn(overview: Overview): readonly Candidate[] {
  const isOpen = mayHoldList(overview);
  const sheets = overview.sheets.filter((sheet) => sheet.kind === "worksheet" && sheet.used !== null && isOpen(sheet));
  const tables = overview.tables.flatMap((table): Candidate[] => {
    const sheet = overview.sheets.find(({ id }) => id === table.sheet);
    if (!sheet || !isOpen(sheet)) return [];
    const label = `table ${inQuotes(table.name)} on sheet ${inQuotes(sheet.name)}`;
    return [{ in: "table", choice: { key: `table ${table.name}`, label }, sheet, table }];
  });
  const plain = sheets
    .filter((sheet) => !overview.tables.some((table) => table.sheet === sheet.id) || isOutsideTables(overview, sheet))
    .map((sheet): Candidate => {
      const label = `list on sheet ${inQuotes(sheet.name)}`;
      return { in: "sheet", choice: { key: `sheet ${sheet.id}`, label }, sheet };
    });
  return [...tables, ...plain];
}

const isOutsideTables = ({ selection, tables }: Overview, sheet: SheetOverview): boolean =>
  selection?.sheet === sheet.id &&
  sheet.used !== null &&
  contains(sheet.used, selection.area.top, selection.area.left) &&
  !tables.some((table) => table.sheet === sheet.id && contains(table.area, selection.area.top, selection.area.left));

const distance = (area: Area, at: Area): number =>
  Math.max(area.top - at.top, at.top - (bottom(area) - 1), 0) +
  Math.max(area.left - at.left, at.left - (right(area) - 1), 0);

/** What was found where somebody stands; `list` null with a sentence where nothing can be chosen for them. */
export interface Found {
  readonly list: Located | null;
  readonly sentence: string;
}

export async function locate(workbook: Workbook, overview: Overview, asked: Wish): Promise<Found> {
  const candidates = candidatesIn(overview);
  const wished = candidates.find(({ choice }) => choice.key === asked.list);
  if (wished) return settle(workbook, overview, wished, asked);

  const { selection } = overview;
  const here = overview.sheets.find(({ id }) => id === selection?.sheet);
  if (selection && here) {
    const tables = candidates.filter((one) => one.in === "table" && one.sheet.id === here.id);
    const nearest = tables
      .map((one) => ({ one, away: one.in === "table" ? distance(one.table.area, selection.area) : 0 }))
      .sort((a, b) => a.away - b.away)[0];
    if (nearest?.away === 0) return settle(workbook, overview, nearest.one, asked);
    const plain = candidates.find((one) => one.in === "sheet" && one.sheet.id === here.id);
    const found = plain ? await settle(workbook, overview, plain, asked) : null;
    if (found?.list && (!nearest || holdsSelection(found.list))) return found;
    if (nearest)
      return settle(workbook, overview, nearest.one, asked, " It is the table nearest to the selected cell.");
    if (found) return found;
  }
  const why = !selection || !here ? "No cell is selected." : emptyOrChart(here);
  const [only, second] = candidates;
  if (!only) return { list: null, sentence: `${why} There is no list in this workbook.` };
  if (second) return { list: null, sentence: `${why} Choose one of the lists.` };
  const found = await settle(workbook, overview, only, asked);
  return { ...found, sentence: `${why} ${found.sentence}` };
}

const holdsSelection = (list: Located): boolean => list.in === "sheet" && list.found.sure && list.found.holdsSelection;

const emptyOrChart = (sheet: SheetOverview): string =>
  sheet.kind === "chart sheet"
    ? `The sheet ${inQuotes(sheet.name)} holds a chart and no cells.`
    : sheet.used !== null
      ? `The sheet ${inQuotes(sheet.name)} holds no list.`
      : `The sheet ${inQuotes(sheet.name)} is empty.`;

async function settle(
  workbook: Workbook,
  overview: Overview,
  candidate: Candidate,
  asked: Wish,
  remark = "",
): Promise<Found> {
  const name = capital(candidate.choice.label);
  if (candidate.in === "table") return { list: candidate, sentence: `${name}.${remark}` };
  const found = await findIn(workbook, overview, candidate.sheet, asked);
  if (found.area === null) return { list: null, sentence: `${name}: ${found.sentence}` };
  return { list: { ...candidate, found }, sentence: `${name}.${remark}` };
}

/** The plain list of a sheet; cells that belong to tables are no part of it. */
async function findIn(
  workbook: Workbook,
  overview: Overview,
  sheet: SheetOverview,
  asked: Wish,
): Promise<FoundList | NoList> {
  const { used } = sheet;
  if (!used) return findList({ used: null, values: [] });
  const { values = [], merges = [] } = await workbook.read({ sheet: sheet.id, area: used }, ["values", "merges"]);
  const tables = overview.tables.filter((table) => table.sheet === sheet.id);
  const isInTable = (row: number, column: number) => tables.some((table) => contains(table.area, row, column));
  const outside: readonly (readonly SheetValue[])[] =
    tables.length === 0
      ? values
      : values.map((row, r) => row.map((value, c) => (isInTable(used.top + r, used.left + c) ? null : value)));
  const { selection } = overview;
  const at = selection?.sheet === sheet.id ? { row: selection.area.top, column: selection.area.left } : undefined;
  const correction =
    asked.list !== undefined && asked.headerRow !== undefined
      ? {
          headerRow: asked.headerRow - 1,
          ...(asked.lastRow !== undefined && { lastRow: asked.lastRow - 1 }),
        }
      : undefined;
  return findList({ used, values: outside, merges, ...(at && { at }) }, correction);
}
