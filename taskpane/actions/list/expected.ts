/** What must still be true of a list when columns are added to it. */
import { bottom, right } from "../../workbook/area";
import { asText } from "../../workbook/change/expectations";
import type { Area, Expectation } from "../../workbook/port";
import type { SurveyedList } from "./interface";

/** Header, data and totals row of the new columns. */
export const besideOf = (list: SurveyedList, columns: number): Area => ({
  ...list.area,
  left: right(list.area),
  columns,
  rows: list.area.rows + (list.hasTotals ? 1 : 0),
});

/** One column of the list, from its header to its last data row. */
export const columnArea = (list: SurveyedList, column: number): Area => ({
  ...list.area,
  left: list.area.left + column,
  columns: 1,
});

/**
 * All that a preview rests on: the list's shape, the cells it was worked out from, and room for the new ones.
 * @param read columns of the list, counted from 0
 * @param place where new columns go; null where there are none
 */
export function expectationsOf(
  list: SurveyedList,
  read: readonly number[],
  place: Area | null,
): readonly Expectation[] {
  const { sheet, area } = list;
  const shape: readonly Expectation[] =
    list.table === null
      ? [
          { kind: "texts", sheet, area: { ...area, rows: 1 }, texts: [list.headerTexts] },
          ...(list.isEmptyBelow
            ? [{ kind: "empty" as const, sheet, area: { ...area, top: bottom(area), rows: 1 } }]
            : []),
        ]
      : [
          {
            kind: "table",
            table: list.table,
            columns: list.columns.map(({ header }) => header),
            dataRows: list.rows.length,
          },
        ];
  return [
    ...shape,
    ...[...new Set(read)].map((column) => textsOf(list, column)),
    ...(place ? [{ kind: "empty" as const, sheet, area: place }] : []),
  ];
}

/** One column's cells, as they were read. */
const textsOf = ({ sheet, area, rows }: SurveyedList, column: number): Expectation => ({
  kind: "texts",
  sheet,
  area: { top: area.top + 1, left: area.left + column, rows: rows.length, columns: 1 },
  texts: rows.map((row) => [asText(row[column] ?? null)]),
});
