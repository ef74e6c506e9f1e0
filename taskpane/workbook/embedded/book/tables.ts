/** Tables as they stand now: the grid's own where it has one (undo moves those along), else as at opening. */
import { TableManager } from "@univerjs/sheets-table";
import type { Area } from "../../port";
import type { Engine } from "../engine";
import type { BookFacts, TableFacts } from "./facts";
import type { TableGeometry } from "../formulas/structured";
import { asText } from "../../change/expectations";
import type { SheetReader } from "./sheet-reader";

export interface TableNow {
  readonly facts: TableFacts;
  /** Header, data and totals row. */
  readonly area: Area;
  readonly columns: readonly string[];
}

function tableNow(engine: Engine, unitId: string, facts: TableFacts, reader: SheetReader): TableNow {
  const { geometry, gridId } = facts;
  const range =
    gridId === null ? undefined : engine.injector.get(TableManager).getTableById(unitId, gridId)?.getRange();
  if (!range) {
    const rows = geometry.bottom - geometry.top + 1;
    const area = { top: geometry.top, left: geometry.left, rows, columns: geometry.columns.length };
    return { facts, area, columns: geometry.columns };
  }
  const columns = range.endColumn - range.startColumn + 1;
  return {
    facts,
    area: {
      top: range.startRow,
      left: range.startColumn,
      rows: range.endRow - range.startRow + 1 + geometry.totalsRows,
      columns,
    },
    columns: Array.from({ length: columns }, (_, index) => {
      const header = asText(reader.value(range.startRow, range.startColumn + index));
      return header === "" ? (geometry.columns[index] ?? "") : header;
    }),
  };
}

export const geometryNow = ({ facts, area, columns }: TableNow): TableGeometry => ({
  ...facts.geometry,
  top: area.top,
  left: area.left,
  bottom: area.top + area.rows - 1,
  columns,
});

/** Where the table stands now, under the headings that the file knows. */
export const openingColumnsNow = ({ facts, area }: TableNow): TableGeometry => ({
  ...facts.geometry,
  top: area.top,
  left: area.left,
  bottom: area.top + area.rows - 1,
});

export const tablesNow = (
  engine: Engine,
  unitId: string,
  facts: BookFacts,
  readerOf: (sheetId: string) => SheetReader,
): TableNow[] => facts.tables.map((table) => tableNow(engine, unitId, table, readerOf(table.sheet)));
