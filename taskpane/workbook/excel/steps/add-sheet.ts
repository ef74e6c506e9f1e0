/** A sheet added behind the last one, and taken away again. */
import { cellAddress } from "../../../../src/columns/formula";
import { footerOf, sheetLooks, type SheetPaint } from "../../../styles/added-sheets";
import { everyCell, sheetCell, type SheetTarget } from "../../change/new-sheet";
import type { SheetChart, SheetId } from "../../port";
import { rangeOf } from "../place";
import { entry, GENERAL } from "../values";

/** Excel tells widths in points: so many pixels for a character of the default font and beside them, 96 to an inch. */
const pointsOfCharacters = (characters: number): number => (characters * 7 + 5) * 0.75;

/** Cells in one request: far below the 5 MB that Excel on the web takes at once. */
const AT_ONCE = 20_000;

/** `addresses` of `getRanges` may not be longer than this (documented for RangeAreas). */
const LONGEST_ADDRESS = 8_000;

/** @returns the id of the sheet; `made` is told of it as soon as it is there, so that it can be taken away again */
export function addSheet({ step: { sheet }, area }: SheetTarget, made: (id: SheetId) => void): Promise<void> {
  return Excel.run(async (context) => {
    const added = context.workbook.worksheets.add(sheet.name);
    added.load("id");
    await context.sync();
    made(added.id);
    await writeCells(context, added, { sheet, area });
    (sheet.widths ?? []).forEach((width, column) => {
      rangeOf(added, { top: 0, left: column, rows: 1, columns: 1 }).format.columnWidth = pointsOfCharacters(width);
    });
    const { rows = 0, columns = 0 } = sheet.held ?? {};
    if (rows > 0 && columns > 0) added.freezePanes.freezeAt(rangeOf(added, { top: 0, left: 0, rows, columns }));
    else if (rows > 0) added.freezePanes.freezeRows(rows);
    else if (columns > 0) added.freezePanes.freezeColumns(columns);
    if (sheet.print) setUpPrint(added, sheet.print);
    for (const chart of sheet.charts ?? []) addChart(added, chart, sheet);
    if (sheet.isHidden) added.visibility = Excel.SheetVisibility.hidden;
    await context.sync();
  });
}

type Added = Pick<SheetTarget["step"], "sheet"> & Pick<SheetTarget, "area">;

async function writeCells(context: Excel.RequestContext, to: Excel.Worksheet, { sheet, area }: Added): Promise<void> {
  const { columns } = area;
  const rows = Array.from({ length: area.rows }, () => ({
    formats: new Array<string>(columns).fill(GENERAL),
    entries: new Array<string | number | boolean>(columns).fill(""),
  }));
  const dressed = new Map<keyof typeof sheetLooks, string[]>();
  for (const { row, column, value = null, formula, format = GENERAL, look } of everyCell(sheet)) {
    const { formats, entries } = rows[row]!;
    formats[column] = format;
    entries[column] = formula ?? entry(value, format);
    if (look) dressed.set(look, [...(dressed.get(look) ?? []), cellAddress(row, column)]);
  }
  const step = Math.max(1, Math.floor(AT_ONCE / columns));
  for (let top = 0; top < rows.length; top += step) {
    const some = rows.slice(top, top + step);
    const range = rangeOf(to, { top, left: 0, rows: some.length, columns });
    /* Formats first: they decide what Excel makes of a value. */
    range.numberFormat = some.map(({ formats }) => formats);
    range.formulas = some.map(({ entries }) => entries);
    await context.sync();
  }
  for (const [look, addresses] of dressed)
    for (const some of together(addresses)) {
      const { ink, ground, isBold, wraps }: SheetPaint = sheetLooks[look];
      const { format } = to.getRanges(some);
      if (ink) format.font.color = `#${ink}`;
      if (ground) format.fill.color = `#${ground}`;
      if (isBold) format.font.bold = true;
      if (wraps) format.wrapText = true;
    }
  await context.sync();
}

/** Addresses in as few texts as may be. */
function together(addresses: readonly string[]): readonly string[] {
  const all: string[] = [];
  for (const address of addresses) {
    const last = all.at(-1);
    if (last !== undefined && last.length + address.length < LONGEST_ADDRESS)
      all[all.length - 1] = `${last},${address}`;
    else all.push(address);
  }
  return all;
}

const chartTypes: { readonly [K in SheetChart["kind"]]: `${Excel.ChartType}` } = {
  columns: "ColumnStacked",
  bars: "BarClustered",
  lines: "LineMarkers",
  scatter: "XYScatterLinesNoMarkers",
};

/** A chart of Excel's own. It begins as its first series; each other one is added by its cells. */
function addChart(
  to: Excel.Worksheet,
  { kind, title, header, rows, names, series, at }: SheetChart,
  { cells }: SheetTarget["step"]["sheet"],
): void {
  const textIn = (row: number, at: number): string => String(sheetCell(cells[row]?.[at] ?? null).value ?? "");
  const column = (left: number, withHeader = false): Excel.Range =>
    rangeOf(to, {
      ...{ left, columns: 1 },
      ...(withHeader ? { top: header, rows: rows + 1 } : { top: header + 1, rows }),
    });
  const [first, ...others] = series;
  const chart = to.charts.add(chartTypes[kind], column(first!, true), "Columns");
  chart.title.text = title;
  const drawn = [
    chart.series.getItemAt(0),
    ...others.map((one) => {
      const added = chart.series.add(textIn(header, one));
      added.setValues(column(one));
      return added;
    }),
  ];
  for (const one of drawn) one.setXAxisValues(column(names));
  chart.setPosition(rangeOf(to, { top: at.row, left: at.column, rows: 1, columns: 1 }));
}

function setUpPrint(sheet: Excel.Worksheet, print: NonNullable<SheetTarget["step"]["sheet"]["print"]>): void {
  const { pageLayout } = sheet;
  pageLayout.paperSize = Excel.PaperType.a4;
  pageLayout.orientation = print.landscape ? Excel.PageOrientation.landscape : Excel.PageOrientation.portrait;
  pageLayout.zoom = { horizontalFitToPages: 1 };
  if (print.titleRow !== undefined) pageLayout.setPrintTitleRows(`$${print.titleRow + 1}:$${print.titleRow + 1}`);
  const { left, right } = footerOf(print.footer);
  pageLayout.headersFooters.defaultForAllPages.leftFooter = left;
  pageLayout.headersFooters.defaultForAllPages.rightFooter = right;
}

/** Somebody may have removed it by hand. */
export const removeSheet = (id: SheetId): Promise<void> =>
  Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(id);
    await context.sync();
    if (!sheet.isNullObject) sheet.delete();
    await context.sync();
  });
