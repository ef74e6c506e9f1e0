/**
 * Saving: the state at opening against the state now, never a log of what happened between. What is equal keeps its
 * bytes; the package's own reader checks the result before anything is handed out (package/patchPackage).
 */
import type { Worksheet } from "@univerjs/core";
import { footerOf } from "../../../styles/added-sheets";
import {
  emptyStore,
  inSlices,
  isRefusal,
  rangeText,
  ranToItsEnd,
  type CellEdit,
  type DefinedNameEdit,
  type NewChart,
  type NewSheet,
  type OpenedWorkbook,
  type PackageEdits,
  type SheetEdits,
  type Sliced,
  type TableEdit,
  type Watching,
} from "../../package";
import { columnLetters } from "../../../../src/columns/formula";
import { AS_OF } from "../../../../src/columns/as-of";
import { malformed } from "../../change/malformed";
import type { Area, SheetChart } from "../../port";
import type { Engine } from "../engine";
import type { Readers } from "../formulas/readable";
import type { Refusal, Saved } from "../interface";
import type { Packages } from "../packages/interface";
import type { OriginStyle } from "../open/styles";
import { geometryNow, openingColumnsNow } from "../book/tables";
import type { GridWorkbookPort } from "../book/workbook";
import { columnWidths, filterDifference, hiddenRows, tableFilter } from "./filters";
import { stateRules } from "../steps/state-rules";
import { nameEdits } from "./names";
import { ownPackage } from "./own-package";
import { sheetDifference } from "./sheet-edits";
import { notWorkedOut, toldOf } from "./told";
import { tableEdit, writtenByTable } from "./table-edits";

interface Origin {
  readonly opened: OpenedWorkbook;
  readonly readers: Readers;
  readonly styles: Readonly<Record<string, OriginStyle>>;
}

/** A sheet of the grid that is in no file, as an empty one of a package. */
function asNew(workbook: GridWorkbookPort, sheet: Worksheet): NewSheet {
  const id = sheet.getSheetId();
  const added = workbook.addedAs(id);
  const { print, held } = added ?? {};
  const { left, right } = footerOf(print?.footer ?? "");
  const merges = workbook.reader(id).merges().map(refOf);
  return {
    name: sheet.getName(),
    // one that was added hidden and shown to look at it stays hidden in the file
    isHidden: added ? (added.isHidden ?? false) : sheet.isSheetHidden() === 1,
    ...(held && { held }),
    ...(print && { print: { landscape: print.landscape, footer: `&L${left}&R${right}` } }),
    ...(merges.length > 0 && { merges }),
    ...(added?.charts && { charts: added.charts.map(chartOf) }),
  };
}

function chartOf({ kind, title, header, rows, names, series, at }: SheetChart): NewChart {
  const cells = (top: number, column: number, many: number): string => {
    const letters = columnLetters(column);
    const first = `$${letters}$${top + 1}`;
    return many === 1 ? first : `${first}:$${letters}$${top + many}`;
  };
  return {
    ...{ kind, title, at },
    names: cells(header + 1, names, rows),
    series: series.map((column) => ({ name: cells(header, column, 1), values: cells(header + 1, column, rows) })),
  };
}

const refOf = ({ top, left, rows, columns }: Area): string =>
  rangeText({ top: top + 1, left: left + 1, bottom: top + rows, right: left + columns });

/** A workbook from no file is compared with empty sheets of its own. */
async function ownOrigin(workbook: GridWorkbookPort, packages: Packages): Promise<Origin> {
  const file = await packages.open(ownPackage(workbook.book.getSheets().map((sheet) => asNew(workbook, sheet))));
  if (isRefusal(file)) throw new Error(file.refused);
  const { opened } = file;
  const nothing = new Set<string>();
  const readers = { tables: [], knowsFunction: () => true, darkNames: nothing, livingNames: nothing };
  return { opened, readers, styles: { xf0: { xf: 0 } } };
}

/** What a file holds of sheets that were added since it was opened: nothing. */
function withEmpty(opened: OpenedWorkbook, added: readonly NewSheet[]): OpenedWorkbook {
  if (added.length === 0) return opened;
  const isNew = (name: string): boolean => added.some((one) => one.name === name);
  const layout = { merges: [], rows: new Map(), columns: [] };
  return {
    ...opened,
    store: (name) => (isNew(name) ? emptyStore() : opened.store(name)),
    layout: (name) => (isNew(name) ? layout : opened.layout(name)),
  };
}

/** The row that stands on every printed page of a sheet that was added. */
function printTitles(workbook: GridWorkbookPort, sheets: readonly Worksheet[]): readonly DefinedNameEdit[] {
  return sheets.flatMap((sheet) => {
    const row = workbook.addedAs(sheet.getSheetId())?.print?.titleRow;
    if (row === undefined) return [];
    const sheetName = sheet.getName();
    const text = `'${sheetName.replaceAll("'", "''")}'!$${row + 1}:$${row + 1}`;
    return [{ name: "_xlnm.Print_Titles", sheetName, text }];
  });
}

/** What a workbook is saved as, before any of it is written. */
interface Collected {
  readonly edits: PackageEdits;
  readonly report: readonly string[];
}

/** So many times what was collected may turn out to be of two moments; then it is collected without a breath. */
const MOST_TRIES = 2;

export interface Saving {
  /** All results stand in their cells. */
  readonly isWorkedOut: boolean;
  /** What is saved is known: whatever is changed from now on is not in it. */
  readonly onCollected: () => void;
  readonly watching: Watching;
}

/** The share that is done when it is known what to write. */
const COLLECTED = 0.4;

/** Throws `Stopped` where somebody stopped it. */
export async function saveBook(
  engine: Engine,
  workbook: GridWorkbookPort,
  packages: Packages,
  { isWorkedOut, onCollected, watching }: Saving,
): Promise<Saved | Refusal> {
  const { file, title } = workbook.bookFacts;
  const origin = file ?? (await ownOrigin(workbook, packages));
  const collecting = () => collect(engine, workbook, origin, isWorkedOut);
  let collected: Collected | undefined;
  for (let tries = 0; !collected; tries++) {
    const { revision } = workbook;
    const all = tries < MOST_TRIES ? await inSlices(collecting(), watching, 0, COLLECTED) : ranToItsEnd(collecting());
    // somebody typed meanwhile: a file holds one moment
    if (workbook.revision === revision) collected = all;
  }
  const { edits, report } = collected;
  onCollected();
  const share = (done: number) => watching.tell?.(COLLECTED + (1 - COLLECTED) * done);
  const patched = await packages.patch(origin.opened, edits, { ...watching, tell: share });
  if (!file) packages.release(origin.opened);
  if (isRefusal(patched)) return { outcome: "refused", sentence: patched.refused };
  const renamed = patched.report.renamedColumns.map(
    ({ table, from, to }) => `Table "${table}": the column "${from}" is now called "${to}", in its formulas too.`,
  );
  return { outcome: "saved", bytes: patched.bytes, name: title, report: [...report, ...renamed] };
}

/** In slices: a sign of life now and then, the share that is done. */
function* collect(
  engine: Engine,
  workbook: GridWorkbookPort,
  { opened: inFile, readers: atOpening, styles }: Origin,
  isWorkedOut: boolean,
): Sliced<Collected> {
  const known = new Set(inFile.sheets.map(({ name }) => name));
  const fresh = workbook.book.getSheets().filter((sheet) => !known.has(sheet.getName()));
  const newSheets = fresh.map((sheet) => asNew(workbook, sheet));
  const opened = withEmpty(inFile, newSheets);
  const report: string[] = [];
  /** Told only where the file becomes another one. */
  const remarks: string[] = [];
  const sheets = new Map<string, SheetEdits>();
  const renewed = new Map<string, ReadonlyMap<string, CellEdit>>();
  const tables: TableEdit[] = [];
  const gridStyles = workbook.book.getStyles();
  const allTables = workbook.tables();
  const sheetNames = workbook.sheetNames();
  // what the file says of a column means its rows as they are now, under the heading that it had
  const readers: Readers = { ...atOpening, tables: allTables.map(openingColumnsNow) };

  const today = workbook.namesForToday.has(AS_OF.toLowerCase()) ? AS_OF : "TODAY()";
  for (const sheet of workbook.book.getSheets()) {
    const id = sheet.getSheetId();
    const sheetName = sheet.getName();
    const reader = workbook.reader(id);
    const own = allTables.filter((table) => table.facts.sheet === id);
    let losesFilter = false;
    const writers = own.flatMap((table) => {
      const filter = tableFilter(engine, workbook, table, opened, reader);
      losesFilter ||= filter.isLossy;
      const edit = tableEdit({ table, reader, gridStyles, styles, filter: filter.edit });
      if (!edit) return [];
      tables.push(edit);
      return edit.addColumns ? [writtenByTable(table, edit.addColumns)] : [];
    });
    const comparing = sheetDifference({
      opened,
      sheetName,
      readers,
      styles,
      reader,
      gridStyles,
      atOpening: workbook.atOpening.get(id) ?? { results: new Map(), spills: new Map() },
      tables: own.map(geometryNow),
      isWrittenElsewhere: (row, column) => writers.some((writes) => writes(row, column)),
      outdated: workbook.outdated.of(id),
      isMalformed: (formula) => malformed(formula, sheetNames) !== undefined,
    });
    const difference = yield* comparing;
    const filter = filterDifference(engine, workbook, id, opened, reader);
    const hidden = hiddenRows(opened, sheetName, reader);
    const widths = columnWidths(opened, sheetName, reader);
    const { cells, kept } = difference;
    if (difference.renewed.size > 0) renewed.set(sheetName, difference.renewed);
    const rules = stateRules(engine, workbook.unit, id, today);
    if (cells.size > 0 || hidden.size > 0 || widths.length > 0 || filter.edit || rules.length > 0) {
      sheets.set(sheetName, {
        ...(cells.size > 0 && { cells }),
        ...(hidden.size > 0 && { hiddenRows: hidden }),
        ...(widths.length > 0 && { columnWidths: widths }),
        ...(filter.edit && { filter: filter.edit }),
        ...(rules.length > 0 && { rules }),
      });
    }
    report.push(...toldOf(sheetName, difference, { ...filter, isLossy: filter.isLossy || losesFilter }));
    if (kept.length > 0) remarks.push(notWorkedOut(sheetName, kept));
  }

  const definedNames = [
    ...nameEdits(engine, workbook, opened, atOpening, readers),
    ...printTitles(workbook, workbook.book.getSheets()),
  ];
  const isChanged = sheets.size > 0 || tables.length > 0 || definedNames.length > 0 || newSheets.length > 0;
  if (isChanged) {
    // a file that is written holds what the screen shows, what moved with the calendar too
    for (const [name, cells] of renewed)
      sheets.set(name, { ...sheets.get(name), cells: new Map([...cells, ...(sheets.get(name)?.cells ?? [])]) });
    report.push(...remarks);
    if (!isWorkedOut)
      report.push(
        "Not everything was worked out when this was saved: results in the file may be old ones. Wait for the page, then save again.",
      );
  }
  return { edits: { newSheets, sheets, tables, definedNames }, report };
}
