/** A range of Excel, over the workbook in memory. */
import { CellError } from "../../../src/worksheet/error";
import { areaAddress, around, bottom, contains, overlaps, right } from "../../../taskpane/workbook/area";
import { GENERAL, type Book, type Sheet, type Table } from "../../../taskpane/workbook/fake/book";
import { MovableFormula } from "../../../src/formula/moving";
import type { Area, Value } from "../../../taskpane/workbook/port";
import type { ConditionalFormats } from "./conditional";
import type { Filters } from "./filters";
import type { Looks } from "./looks";
import { ApiError, isObject, read, type ExcelObject, type Json } from "./objects";
import { deleteUp, insertDown } from "./shift";
import { entered, formatAfter, shown } from "./typed";
import type { View } from "./view";

export interface World {
  readonly book: Book;
  readonly looks: Looks;
  readonly filters: Filters;
  readonly conditional: ConditionalFormats;
  /** Excel's option "Fill formulas in tables to create calculated columns"; people turn it off. */
  readonly fillsFormulas: boolean;
  worksheet(sheet: Sheet): ExcelObject;
  view(sheet: Sheet): View;
}

/** A range also tells where it lies, for methods that take a range. */
export interface RangeObject extends ExcelObject {
  readonly sheet: Sheet;
  readonly area: Area;
}

export const protectedError = () =>
  new ApiError("AccessDenied", "You do not have permission to perform this action: the sheet is protected.");

export function range(world: World, sheet: Sheet, area: Area): RangeObject {
  const mayWrite = () => {
    if (sheet.isProtected) throw protectedError();
  };
  const matrix = <T extends Json>(each: (row: number, column: number) => T): Json =>
    Array.from({ length: area.rows }, (_, r) =>
      Array.from({ length: area.columns }, (_, c) => each(area.top + r, area.left + c)),
    );
  const write = (values: Json, each: (row: number, column: number, value: Json) => void): void => {
    mayWrite();
    spread(world, sheet, area, values, each);
  };
  const rows = () =>
    Array.from({ length: area.rows }, (_, r) => {
      const row = area.top + r;
      return sheet.isHiddenRow(row) || world.filters.hides(sheet, row);
    });
  const typed = (row: number, column: number, value: Json) => {
    const { format } = sheet.cell(row, column) ?? { format: GENERAL };
    const entry = entered(value as string | number | boolean, format);
    if (entry.formula !== undefined) sheet.type(row, column, entry.formula);
    else putValue(sheet, row, column, entry.value);
    if (entry.format !== undefined) sheet.made(row, column).format = formatAfter(entry, format);
    keepHeaders(sheet, row);
  };
  const areas = (list: readonly Area[]): ExcelObject => ({
    type: "RangeAreas",
    parts: {
      areas: () => ({ type: "RangeCollection", items: () => list.map((one) => range(world, sheet, one)) }),
    },
  });
  return {
    type: "Range",
    sheet,
    area,
    properties: {
      rowIndex: read(() => area.top),
      columnIndex: read(() => area.left),
      rowCount: read(() => area.rows),
      columnCount: read(() => area.columns),
      cellCount: read(() => area.rows * area.columns),
      address: read(() => `'${sheet.name}'!${areaAddress(area)}`),
      rowHidden: read(() => {
        const hidden = rows();
        return hidden.every((one) => one === hidden[0]) ? hidden[0]! : null;
      }),
      values: { get: () => matrix((r, c) => wireValue(sheet.value(r, c))), set: (values) => write(values, typed) },
      text: read(() => matrix((r, c) => shownText(sheet, r, c))),
      valueTypes: read(() => matrix((r, c) => valueType(sheet, r, c))),
      formulas: {
        get: () => matrix((r, c) => spelled(sheet, r, c)),
        set: (values) => write(values, typed),
      },
      numberFormat: {
        get: () => matrix((r, c) => sheet.cell(r, c)?.format ?? GENERAL),
        set: (values) => write(values, (r, c, format) => (sheet.made(r, c).format = format as string)),
      },
    },
    parts: {
      format: () => world.looks.format(sheet, area, mayWrite),
      worksheet: () => world.worksheet(sheet),
      conditionalFormats: () => world.conditional.on(sheet, area, mayWrite),
    },
    methods: {
      GetUsedRangeOrNullObject: () => {
        const used = sheet.used();
        const inside = used && overlaps(used, area) && occupied(sheet, area);
        return inside ? range(world, sheet, inside) : null;
      },
      GetRowProperties: () => rows().map((rowHidden) => ({ rowHidden })),
      GetMergedAreasOrNullObject: () => {
        const found = sheet.merges.filter((merge) => overlaps(merge, area));
        return found.length > 0 ? areas(found) : null;
      },
      GetSpillParentOrNullObject: () => {
        if (area.rows * area.columns > 1) throw new ApiError("InvalidArgument", "One cell is needed.");
        const spill = sheet.spillAt(area.top, area.left);
        return spill ? range(world, sheet, { ...spill.area, rows: 1, columns: 1 }) : null;
      },
      GetSpillingToRangeOrNullObject: () => {
        const spill = sheet.spillAt(area.top, area.left);
        const isAnchor = spill?.area.top === area.top && spill.area.left === area.left;
        return spill && isAnchor ? range(world, sheet, spill.area) : null;
      },
      /* The library itself cuts arrays of more than 1,500 cells into pieces, and asks for these. */
      _ValidateArraySize: ([rows, columns]) => {
        if (rows !== area.rows || columns !== area.columns) throw wrongSize();
      },
      GetRow: ([row]) => range(world, sheet, { ...area, top: area.top + Number(row), rows: 1 }),
      GetBoundingRect: ([other]) => range(world, sheet, around(area, (other as RangeObject).area)),
      CopyFrom: ([source, what]) => {
        mayWrite();
        if (!isObject(source) || source.type !== "Range" || what !== "Formulas")
          throw new ApiError("InvalidArgument", "Only formulas of a range are copied.");
        const from = source as RangeObject;
        if (from.area.rows * from.area.columns !== 1) throw new ApiError("InvalidArgument", "One cell is copied.");
        for (const row of reached(world, sheet, area))
          for (let column = area.left; column < right(area); column++) copyFormula(sheet, from.area, { row, column });
      },
      Delete: ([shift]) => {
        if (shift !== "Up") throw new ApiError("InvalidArgument", `delete ${String(shift)}`);
        mayWrite();
        deleteUp(sheet, world.looks, area);
      },
      Insert: ([shift]) => {
        if (shift !== "Down") throw new ApiError("InvalidArgument", `insert ${String(shift)}`);
        mayWrite();
        insertDown(sheet, world.looks, area);
        return range(world, sheet, area);
      },
      Clear: ([what]) => {
        mayWrite();
        if (what === "Formats") return clearFormats(world, sheet, area);
        if (what !== "Contents") throw new ApiError("InvalidArgument", `clear ${String(what)} would take formats too`);
        for (const row of reached(world, sheet, area)) {
          sheet.clear({ ...area, top: row, rows: 1 });
          keepHeaders(sheet, row);
        }
      },
      Select: () => {
        if (sheet.hidden) throw new ApiError("InvalidOperation", "The sheet is hidden.");
        world.book.select(sheet.id, area);
        world.view(sheet).goTo(area);
      },
    },
  };
}

/** The smallest rectangle in an area around what is not empty. */
function occupied(sheet: Sheet, area: Area): Area | null {
  let found: Area | null = null;
  for (let top = area.top; top < bottom(area); top++)
    for (let left = area.left; left < right(area); left++) {
      const cell = { top, left, rows: 1, columns: 1 };
      if (sheet.isOccupied(top, left)) found = found ? around(found, cell) : cell;
    }
  return found;
}

/** Rows a filter hides, when they lie among others that are written together, are not reached. */
function reached(world: World, sheet: Sheet, area: Area): readonly number[] {
  const rows = Array.from({ length: area.rows }, (_, r) => area.top + r);
  return area.rows === 1 ? rows : rows.filter((row) => !world.filters.hides(sheet, row));
}

const wrongSize = () =>
  new ApiError(
    "InvalidArgument",
    "The number of rows or columns in the input array doesn't match the size or dimensions of the range.",
  );

/** As Excel does it: over filtered rows the shown ones all get the first element (xlwings issue 747). */
function spread(
  world: World,
  sheet: Sheet,
  area: Area,
  values: Json,
  each: (row: number, column: number, value: Json) => void,
): void {
  const matrix = values as readonly (readonly Json[])[];
  if (!Array.isArray(values) || matrix.length !== area.rows || matrix.some((row) => row.length !== area.columns))
    throw wrongSize();
  const rows = reached(world, sheet, area);
  const isSpoilt = rows.length < area.rows;
  for (const row of rows)
    for (let column = area.left; column < right(area); column++) {
      const value = isSpoilt ? matrix[0]![0]! : matrix[row - area.top]![column - area.left]!;
      if (value !== null) each(row, column, value);
    }
}

function putValue(sheet: Sheet, row: number, column: number, value: Value): void {
  sheet.clear({ top: row, left: column, rows: 1, columns: 1 });
  sheet.made(row, column).value = value;
  const table = sheet.tables.find((one) => one.hasHeader && one.area.top === row && contains(one.area, row, column));
  if (table) table.columns[column - table.area.left] = String(value ?? "");
}

function clearFormats({ looks }: World, sheet: Sheet, area: Area): void {
  for (let row = area.top; row < bottom(area); row++)
    for (let column = area.left; column < right(area); column++) {
      const cell = sheet.cell(row, column);
      if (cell) Object.assign(cell, { format: GENERAL, bold: false });
      looks.forget(sheet, row, column);
    }
}

function copyFormula(sheet: Sheet, from: Area, to: { readonly row: number; readonly column: number }): void {
  const cell = sheet.cell(from.top, from.left);
  if (!cell?.formula) return putValue(sheet, to.row, to.column, cell?.value ?? null);
  const moved = new MovableFormula(cell.formula.slice(1)).moved(to.row - from.top, to.column - from.left);
  sheet.type(to.row, to.column, `=${moved}`);
}

/** A table's header cells are never empty and never alike. */
export function keepHeaders(sheet: Sheet, row: number): void {
  for (const table of sheet.tables) if (table.hasHeader && table.area.top === row) nameColumns(sheet, table);
}

export function nameColumns(sheet: Sheet, table: Table): void {
  const taken = new Set<string>();
  table.columns = Array.from({ length: table.area.columns }, (_, i) => {
    const column = table.area.left + i;
    const asked = String(sheet.value(table.area.top, column) ?? "");
    let name = asked;
    for (let n = 1; name === "" || taken.has(name.toLowerCase()); n++)
      name = asked === "" ? `Column${n}` : asked + (n + 1);
    taken.add(name.toLowerCase());
    if (name !== asked) sheet.made(table.area.top, column).value = name;
    return name;
  });
}

function wireValue(value: Value): Json {
  if (value instanceof CellError) return value.code;
  return value === null ? "" : value;
}

export function shownText(sheet: Sheet, row: number, column: number): string {
  const { value, format } = sheet.cell(row, column) ?? { value: null, format: GENERAL };
  return value instanceof CellError ? value.code : shown(value, format);
}

function valueType(sheet: Sheet, row: number, column: number): string {
  const cell = sheet.cell(row, column);
  if (!cell || (cell.value === null && cell.formula === null)) return "Empty";
  if (cell.value instanceof CellError) return "Error";
  if (typeof cell.value === "number") return "Double";
  return typeof cell.value === "boolean" ? "Boolean" : "String";
}

/** A formula inside a table is spelled short: "Tubes[[#This Row],[Size]]" comes back as "[@Size]". */
function spelled(sheet: Sheet, row: number, column: number): Json {
  const cell = sheet.cell(row, column);
  if (!cell) return "";
  if (cell.formula === null) return wireValue(cell.value);
  const table = sheet.tables.find((one) => contains(one.area, row, column));
  if (!table) return cell.formula;
  return cell.formula.replaceAll(`${table.name}[[#This Row],[`, "[@[").replace(/\[@\[(\w+)\]\]/g, "[@$1]");
}

export function resize(world: World, sheet: Sheet, table: Table, area: Area): void {
  if (sheet.isProtected) throw protectedError();
  const isSameTop = area.top === table.area.top && overlaps(area, table.area);
  const inTheWay = sheet.tables.some((one) => one !== table && overlaps(one.area, area));
  const isMerged = sheet.merges.some((merge) => overlaps(merge, area));
  const isTorn = table.hasTotals && bottom(area) !== bottom(table.area);
  if (!isSameTop || inTheWay || isMerged || isTorn || area.rows < 2)
    throw new ApiError("InvalidArgument", "The table cannot be resized to this range.");
  const before = table.area;
  table.area = area;
  nameColumns(sheet, table);
  if (world.fillsFormulas && before.rows > 1)
    for (let row = bottom(before); row < bottom(area); row++)
      for (let column = before.left; column < right(before); column++)
        if (sheet.cell(bottom(before) - 1, column)?.formula && !sheet.isOccupied(row, column))
          copyFormula(sheet, { top: bottom(before) - 1, left: column, rows: 1, columns: 1 }, { row, column });
}
