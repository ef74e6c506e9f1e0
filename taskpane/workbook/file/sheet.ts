/** xl/worksheets/sheetN.xml. */
import type { SheetDescription } from "../../../src/caseload/book";
import { cellAddress } from "../../../src/columns/formula";
import { CellWriter } from "./cell";
import { cellsOf, type Cells } from "./cells";
import { heightsOf } from "./heights";
import type { Lists } from "./lists";
import { pagesWide, printXml } from "./print";
import { conditionalFormatsXml, ignoredErrorsXml, validationsXml } from "./rules";
import type { Strings } from "./strings";
import type { Styles } from "./styles";
import { counted, element, MAIN, OFFICE, part } from "./xml";

/** Characters; Excel's own width for a column of which nothing is said. */
const DEFAULT_WIDTH = 8.43;

interface ColumnSize {
  readonly width: number;
  readonly isHidden: boolean;
}

/** Widths by column, those of the table first. */
function columnSizes({ table, widths = {} }: SheetDescription): ReadonlyMap<number, ColumnSize> {
  const sizes = new Map<number, ColumnSize>();
  for (const [column, width] of Object.entries(widths)) sizes.set(Number(column), { width, isHidden: false });
  table?.columns.forEach(({ width, isHidden = false }, index) => sizes.set(table.left + index, { width, isHidden }));
  return sizes;
}

const columnsXml = (sizes: ReadonlyMap<number, ColumnSize>): string => {
  const columns = [...sizes]
    .sort(([one], [other]) => one - other)
    .map(([column, { width, isHidden }]) =>
      element("col", { min: column + 1, max: column + 1, width, hidden: isHidden || undefined, customWidth: 1 }),
    );
  return columns.length === 0 ? "" : element("cols", {}, columns);
};

function viewXml({ frozen, table }: SheetDescription, isFirst: boolean): string {
  const { rows = 0, columns = 0 } = frozen ?? {};
  const pane = rows > 0 ? (columns > 0 ? "bottomRight" : "bottomLeft") : "topRight";
  const freeze =
    rows + columns === 0
      ? ""
      : element("pane", {
          xSplit: columns || undefined,
          ySplit: rows || undefined,
          topLeftCell: cellAddress(rows, columns),
          activePane: pane,
          state: "frozen",
        }) + element("selection", { pane });
  const view = element(
    "sheetView",
    { showGridLines: table ? undefined : 0, tabSelected: isFirst ? 1 : undefined, workbookViewId: 0 },
    freeze,
  );
  return element("sheetViews", {}, view);
}

function rowsXml(cells: Cells, heights: ReadonlyMap<number, number>, writer: CellWriter): string {
  const numbers = [...new Set([...cells.keys(), ...heights.keys()])].sort((one, other) => one - other);
  return numbers
    .map((row) => {
      const inRow = [...(cells.get(row) ?? [])].sort(([one], [other]) => one - other);
      const height = heights.get(row);
      return element(
        "row",
        { r: row + 1, ht: height, customHeight: height === undefined ? undefined : 1 },
        inRow.map(([column, cell]) => writer.xml(row, column, cell)),
      );
    })
    .join("");
}

function dimensionOf(cells: Cells): string {
  const rows = [...cells.keys()];
  const columns = [...new Set([...cells.values()].flatMap((row) => [...row.keys()]))];
  if (rows.length === 0) return "A1";
  const least = (all: readonly number[]) => all.reduce((one, other) => Math.min(one, other));
  const most = (all: readonly number[]) => all.reduce((one, other) => Math.max(one, other));
  return `${cellAddress(least(rows), least(columns))}:${cellAddress(most(rows), most(columns))}`;
}

const mergesXml = ({ cells }: SheetDescription): string =>
  counted(
    "mergeCells",
    cells.flatMap(({ row, column, across = 1 }) =>
      across === 1
        ? []
        : [element("mergeCell", { ref: `${cellAddress(row, column)}:${cellAddress(row, column + across - 1)}` })],
    ),
  );

export interface Shared {
  readonly styles: Styles;
  readonly strings: Strings;
  readonly lists: Lists;
}

export function sheetXml(sheet: SheetDescription, isFirst: boolean, { styles, strings, lists }: Shared): string {
  const sizes = columnSizes(sheet);
  const cells = cellsOf(sheet);
  const heights = heightsOf(sheet, (column) => sizes.get(column)?.width ?? DEFAULT_WIDTH);
  const root = element("worksheet", { xmlns: MAIN, "xmlns:r": OFFICE }, [
    sheet.print ? element("sheetPr", {}, element("pageSetUpPr", { fitToPage: 1 })) : "",
    element("dimension", { ref: dimensionOf(cells) }),
    viewXml(sheet, isFirst),
    element("sheetFormatPr", { defaultRowHeight: 15 }),
    columnsXml(sizes),
    `<sheetData>${rowsXml(cells, heights, new CellWriter(styles, strings))}</sheetData>`,
    mergesXml(sheet),
    conditionalFormatsXml(sheet),
    validationsXml(sheet, lists),
    printXml(sheet.print, pagesWide(sizes)),
    ignoredErrorsXml(sheet),
    sheet.table ? counted("tableParts", [element("tablePart", { "r:id": "rId1" })]) : "",
  ]);
  return part(root);
}
