/** A sheet added behind the last one, and taken away again. */
import {
  mergeWorksheetSnapshotWithDefault,
  Tools,
  WrapStrategy,
  type IColumnData,
  type IRowData,
  type IWorksheetData,
} from "@univerjs/core";
import { InsertSheetMutation, RemoveSheetMutation, SetWorksheetActiveOperation } from "@univerjs/sheets";
import { sheetLooks, type SheetLook, type SheetPaint } from "../../../styles/added-sheets";
import { everyCell, type SheetTarget } from "../../change/new-sheet";
import type { NewSheet, SheetId } from "../../port";
import { GENERAL } from "../book/sheet-reader";
import type { CellData } from "../open/cells";
import { addHeights } from "../open/heights";
import { pixelsOfCharacters } from "../open/snapshot";
import { PADDING, type OriginStyle } from "../open/styles";
import { setCells, shown, valueAsItIs, type Cells, type Desk } from "./write";

/** Of a sheet, besides the rows and columns that hold something: somebody may write on. */
const SPARE = { rows: 200, columns: 26 };

/** Named with a space, as all looks that were asked for (open/style-names.ts). */
const lookName = (look: SheetLook | undefined, format: string): string => `added ${look ?? "plain"} ${format}`;

function styleOf(look: SheetLook | undefined, format: string): OriginStyle {
  const { ink, ground, isBold, wraps }: SheetPaint = look ? sheetLooks[look] : {};
  return {
    ...(ink && { cl: { rgb: `#${ink}` } }),
    ...(ground && { bg: { rgb: `#${ground}` } }),
    ...(isBold && { bl: 1 as const }),
    ...(wraps && { tb: WrapStrategy.WRAP }),
    ...(format !== GENERAL && { n: { pattern: format } }),
    pd: PADDING,
  };
}

interface Drawn {
  readonly cells: CellData;
  /** With what they give, where that is known. */
  readonly formulas: Cells;
  readonly styles: Record<string, OriginStyle>;
  readonly rowData: Record<number, Partial<IRowData>>;
  readonly columnData: Record<number, Partial<IColumnData>>;
}

/** @param forEngine a formula as the grid's engine reads it at a place */
function drawn(sheet: NewSheet, forEngine: (text: string, row: number, column: number) => string): Drawn {
  const cells: CellData = {};
  const formulas: Cells = {};
  const styles: Record<string, OriginStyle> = {};
  const tall: [row: number, column: number][] = [];
  for (const { row, column, value = null, formula, format = GENERAL, look } of everyCell(sheet)) {
    const isDressed = look !== undefined || format !== GENERAL;
    const name = lookName(look, format);
    if (isDressed) styles[name] ??= styleOf(look, format);
    if (formula !== undefined)
      (formulas[row] ??= {})[column] = { ...shown(value ?? undefined), f: forEngine(formula, row, column) };
    const held = formula === undefined ? valueAsItIs(value) : {};
    if (!isDressed && Object.keys(held).length === 0) continue;
    (cells[row] ??= {})[column] = { ...held, ...(isDressed && { s: name }) };
    if (look && (sheetLooks[look] as SheetPaint).wraps) tall.push([row, column]);
  }
  const columnData = Object.fromEntries((sheet.widths ?? []).map((width, i) => [i, { w: pixelsOfCharacters(width) }]));
  const rowData: Record<number, Partial<IRowData>> = {};
  addHeights(rowData, cells, tall, { styles, columns: columnData, merges: [], hasArrow: () => false });
  return { cells, formulas, styles, rowData, columnData };
}

/** @returns what takes it away again */
export function addSheet(
  desk: Desk,
  { step: { sheet }, area }: SheetTarget,
  id: SheetId,
  forEngine: (text: string, row: number, column: number) => string,
): (again: Desk) => void {
  const { unitId } = desk;
  const { cells, formulas, styles, rowData, columnData } = drawn(sheet, forEngine);
  const { rows = 0, columns = 0 } = sheet.held ?? {};
  const snapshot = mergeWorksheetSnapshotWithDefault({
    id,
    name: sheet.name,
    hidden: sheet.isHidden ? 1 : 0,
    rowCount: area.rows + SPARE.rows,
    columnCount: Math.max(area.columns, SPARE.columns),
    cellData: cells,
    rowData,
    columnData,
    ...(rows + columns > 0 && {
      freeze: { xSplit: columns, ySplit: rows, startRow: rows || -1, startColumn: columns || -1 },
    }),
  } as Partial<IWorksheetData>);
  const [insert, remove] = both(unitId, desk.sheets().length, snapshot);
  desk.step.do({ ...insert, params: { ...insert.params, styles } }, remove);
  if (Object.keys(formulas).length > 0) {
    const empty = Object.fromEntries(
      Object.entries(formulas).map(([row, inRow]) => [
        row,
        Object.fromEntries(Object.keys(inRow).map((c) => [c, null])),
      ]),
    );
    desk.step.do(setCells(unitId, id, formulas), setCells(unitId, id, empty));
  }
  return (again) => removeSheet(again, id);
}

const both = (unitId: string, index: number, sheet: IWorksheetData) =>
  [
    { id: InsertSheetMutation.id, params: { unitId, index, sheet } },
    { id: RemoveSheetMutation.id, params: { unitId, subUnitId: sheet.id, subUnitName: sheet.name } },
  ] as const;

function removeSheet(desk: Desk, id: SheetId): void {
  const { unitId } = desk;
  const sheets = desk.sheets();
  const index = sheets.findIndex((sheet) => sheet.getSheetId() === id);
  if (index < 0) return;
  const sheet = sheets[index]!;
  const visible = sheets.filter((one) => one !== sheet && one.isSheetHidden() !== 1);
  const beside = visible.find((one) => sheets.indexOf(one) > index) ?? visible.at(-1);
  const show = (subUnitId: SheetId) => ({ id: SetWorksheetActiveOperation.id, params: { unitId, subUnitId } });
  const isInFront = desk.engine.api.getWorkbook(unitId)?.getWorkbook().getActiveSheet()?.getSheetId() === id;
  const [insert, remove] = both(unitId, index, Tools.deepClone(sheet.getConfig()));
  if (isInFront && beside) desk.step.do(show(beside.getSheetId()));
  desk.step.do(remove, insert);
}
