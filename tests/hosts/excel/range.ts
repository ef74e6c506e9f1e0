/** A range of Excel, over the workbook in memory. */
import { CellError } from "../../../src/worksheet/error";
import { areaAddress, around, bottom, contains, overlaps, right } from "../../../taskpane/workbook/area";
import { GENERAL, type Book, type Sheet, type Table } from "../../../taskpane/workbook/fake/book";
import type { Area, Value } from "../../../taskpane/workbook/port";
import type { Looks } from "./looks";
import { ApiError, read, type ExcelObject, type Json } from "./objects";

export interface World {
  readonly book: Book;
  readonly looks: Looks;
  worksheet(sheet: Sheet): ExcelObject;
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
    spread(sheet, area, values, each);
  };
  const rows = () => Array.from({ length: area.rows }, (_, r) => sheet.isHiddenRow(area.top + r));
  const typed = (row: number, column: number, value: Json) => {
    const isText = sheet.cell(row, column)?.format === "@";
    const text = typeof value === "string" && value.startsWith("'") ? value.slice(1) : null;
    if (text !== null || (isText && typeof value === "string")) putText(sheet, row, column, text ?? String(value));
    else sheet.type(row, column, value as Value);
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
      Clear: ([what]) => {
        if (what !== "Contents") throw new ApiError("InvalidArgument", `clear ${String(what)} would take formats too`);
        mayWrite();
        for (const row of reached(sheet, area)) {
          sheet.clear({ ...area, top: row, rows: 1 });
          keepHeaders(sheet, row);
        }
      },
      Select: () => {
        if (sheet.hidden) throw new ApiError("InvalidOperation", "The sheet is hidden.");
        world.book.select(sheet.id, area);
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
function reached(sheet: Sheet, area: Area): readonly number[] {
  const rows = Array.from({ length: area.rows }, (_, r) => area.top + r);
  const isFiltered = (row: number) => sheet.tables.some((table) => table.filteredRows.has(row));
  return area.rows === 1 ? rows : rows.filter((row) => !isFiltered(row));
}

/** As Excel does it: over filtered rows the shown ones all get the first element (xlwings issue 747). */
function spread(
  sheet: Sheet,
  area: Area,
  values: Json,
  each: (row: number, column: number, value: Json) => void,
): void {
  const matrix = values as readonly (readonly Json[])[];
  if (!Array.isArray(values) || matrix.length !== area.rows || matrix.some((row) => row.length !== area.columns))
    throw new ApiError(
      "InvalidArgument",
      "The number of rows or columns in the input array doesn't match the size or dimensions of the range.",
    );
  const rows = reached(sheet, area);
  const isSpoilt = rows.length < area.rows;
  for (const row of rows)
    for (let column = area.left; column < right(area); column++) {
      const value = isSpoilt ? matrix[0]![0]! : matrix[row - area.top]![column - area.left]!;
      if (value !== null) each(row, column, value);
    }
}

function putText(sheet: Sheet, row: number, column: number, text: string): void {
  sheet.clear({ top: row, left: column, rows: 1, columns: 1 });
  sheet.made(row, column).value = text;
  const table = sheet.tables.find((one) => one.hasHeader && one.area.top === row && contains(one.area, row, column));
  if (table) table.columns[column - table.area.left] = text;
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

export function resize(sheet: Sheet, table: Table, area: Area): void {
  if (sheet.isProtected) throw protectedError();
  const isSameTop = area.top === table.area.top && overlaps(area, table.area);
  const inTheWay = sheet.tables.some((one) => one !== table && overlaps(one.area, area));
  const isMerged = sheet.merges.some((merge) => overlaps(merge, area));
  if (!isSameTop || inTheWay || isMerged || bottom(area) !== bottom(table.area))
    throw new ApiError("InvalidArgument", "The table cannot be resized to this range.");
  table.area = area;
  nameColumns(sheet, table);
}
