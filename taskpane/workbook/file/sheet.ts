/** xl/worksheets/sheetN.xml. */
import type { SheetDescription } from "../../../src/caseload/book";
import { cellAddress } from "../../../src/columns/formula";
import { ByteWriter } from "../xlsx/byte-writer";
import type { Sliced } from "../xlsx/slices";
import { CellWriter } from "./cell";
import { cellsOf, type Cells } from "./cells";
import { heightsOf } from "./heights";
import type { Lists } from "./lists";
import { pagesWide, printXml } from "./print";
import { conditionalFormatsXml, ignoredErrorsXml, validationsXml } from "./rules";
import type { Strings } from "./strings";
import type { Styles } from "./styles";
import { counted, element, MAIN, OFFICE, part, startTag } from "./xml";

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

function viewXml({ frozen, table }: SheetDescription, isOpened: boolean): string {
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
    { showGridLines: table ? undefined : 0, tabSelected: isOpened ? 1 : undefined, workbookViewId: 0 },
    freeze,
  );
  return element("sheetViews", {}, view);
}

function* writeRows(
  out: ByteWriter,
  cells: Cells,
  heights: ReadonlyMap<number, number>,
  writer: CellWriter,
): Sliced<void> {
  const numbers = [...new Set([...cells.keys(), ...heights.keys()])].sort((one, other) => one - other);
  let done = 0;
  for (const row of numbers) {
    const inRow = [...(cells.get(row) ?? [])].sort(([one], [other]) => one - other);
    const height = heights.get(row);
    out.text(
      element(
        "row",
        { r: row + 1, ht: height, customHeight: height === undefined ? undefined : 1 },
        inRow.map(([column, cell]) => writer.xml(row, column, cell)),
      ),
    );
    if (++done % ROWS_AT_A_TIME === 0) yield done / numbers.length;
  }
}

const ROWS_AT_A_TIME = 50;

function dimensionOf(cells: Cells): string {
  if (cells.size === 0) return "A1";
  let [top, left, bottom, right] = [Infinity, Infinity, -1, -1];
  for (const [row, inRow] of cells) {
    top = Math.min(top, row);
    bottom = Math.max(bottom, row);
    for (const column of inRow.keys()) {
      left = Math.min(left, column);
      right = Math.max(right, column);
    }
  }
  return `${cellAddress(top, left)}:${cellAddress(bottom, right)}`;
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

/** In pieces and in slices: a sheet of thousands of rows is longer than one text may be. */
export function* sheetChunks(
  sheet: SheetDescription,
  isOpened: boolean,
  { styles, strings, lists }: Shared,
): Sliced<readonly Uint8Array[]> {
  const sizes = columnSizes(sheet);
  const cells = cellsOf(sheet);
  const heights = heightsOf(sheet, (column) => sizes.get(column)?.width ?? DEFAULT_WIDTH);
  const out = new ByteWriter();
  out.text(
    part(
      startTag("worksheet", { xmlns: MAIN, "xmlns:r": OFFICE }) +
        (sheet.print ? element("sheetPr", {}, element("pageSetUpPr", { fitToPage: 1 })) : "") +
        element("dimension", { ref: dimensionOf(cells) }) +
        viewXml(sheet, isOpened) +
        element("sheetFormatPr", { defaultRowHeight: 15 }) +
        columnsXml(sizes) +
        startTag("sheetData", {}),
    ),
  );
  yield* writeRows(out, cells, heights, new CellWriter(styles, strings));
  out.text(
    [
      "</sheetData>",
      mergesXml(sheet),
      conditionalFormatsXml(sheet),
      validationsXml(sheet, lists),
      printXml(sheet.print, pagesWide(sizes, sheet.print?.columns)),
      ignoredErrorsXml(sheet),
      sheet.table ? counted("tableParts", [element("tablePart", { "r:id": "rId1" })]) : "",
      "</worksheet>",
    ].join(""),
  );
  out.close();
  return out.chunks;
}
