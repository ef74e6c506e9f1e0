/** Columns that stand at the right end of a table now and did not at opening; rows at its end; what its filter shows. */
import type { Styles } from "@univerjs/core";
import type { FilterEdit, NewTableColumn, StyleEdit, TableEdit } from "../../package";
import { bottom, right } from "../../area";
import { toFile } from "../formulas/dialect";
import { relativeForm } from "../formulas/references";
import type { OriginStyle } from "../open/styles";
import type { SheetReader } from "../book/sheet-reader";
import { geometryNow, type TableNow } from "../book/tables";
import { structuredForm } from "./formulas";
import { lookOf } from "./looks";
import { fileValue } from "./values";

export interface TableSource {
  readonly table: TableNow;
  readonly reader: SheetReader;
  readonly gridStyles: Styles;
  readonly styles: Readonly<Record<string, OriginStyle>>;
  readonly filter: FilterEdit | undefined;
}

/** Undefined where the table is as it was. */
export function tableEdit(source: TableSource): TableEdit | undefined {
  const { facts, area } = source.table;
  const addColumns = newColumns(source);
  const lastRow = bottom(area) - 1 === facts.geometry.bottom ? undefined : bottom(area);
  if (addColumns.length === 0 && lastRow === undefined && !source.filter) return undefined;
  return {
    table: facts.name,
    ...(addColumns.length > 0 && { addColumns }),
    ...(lastRow !== undefined && { lastRow }),
    ...(source.filter && { filter: source.filter }),
  };
}

function newColumns({ table, reader, gridStyles, styles }: TableSource): readonly NewTableColumn[] {
  const { facts, area } = table;
  const { geometry } = facts;
  const firstNew = geometry.left + geometry.columns.length;
  const now = geometryNow(table);
  const firstRow = area.top + geometry.headerRows;
  const lastRow = bottom(area) - geometry.totalsRows;

  const style = (row: number, column: number): StyleEdit | undefined => {
    const held = reader.cell(row, column)?.s;
    if (!held) return undefined;
    const id = typeof held === "string" ? held : undefined;
    return lookOf({ id, style: gridStyles.get(held) }, 0, styles, false).edit;
  };
  /** One formula for the whole column, or undefined where rows differ. */
  const sameFormula = (column: number): string | undefined => {
    const first = reader.formula(firstRow, column)?.slice(1);
    if (first === undefined) return undefined;
    const meaning = relativeForm(first, firstRow, column);
    for (let row = firstRow + 1; row < lastRow; row++) {
      const text = reader.formula(row, column)?.slice(1);
      if (text === undefined || relativeForm(text, row, column) !== meaning) return undefined;
    }
    return toFile(structuredForm(first, now, firstRow));
  };

  const addColumns: NewTableColumn[] = [];
  for (let column = firstNew; column < right(area); column++) {
    const formula = sameFormula(column);
    const headerStyle = style(area.top, column);
    const bodyStyle = style(firstRow, column);
    addColumns.push({
      header: now.columns[column - area.left]!,
      ...(headerStyle !== undefined && { headerStyle }),
      ...(formula !== undefined && {
        calculatedColumnFormula: formula,
        valueAt: (row: number) => fileValue(reader.value(row - 1, column)),
      }),
      ...(bodyStyle !== undefined && { style: bodyStyle }),
    });
  }
  return addColumns;
}

/** Cells that the table's own edit writes: header, and the body of columns that share one formula. */
export function writtenByTable(
  table: TableNow,
  added: readonly NewTableColumn[],
): (row: number, column: number) => boolean {
  const { geometry } = table.facts;
  const firstNew = geometry.left + geometry.columns.length;
  const lastRow = bottom(table.area) - geometry.totalsRows;
  return (row, column) => {
    if (column < firstNew || column >= right(table.area) || row < table.area.top || row >= bottom(table.area))
      return false;
    if (row === table.area.top) return true;
    return row < lastRow && added[column - firstNew]!.calculatedColumnFormula !== undefined;
  };
}
