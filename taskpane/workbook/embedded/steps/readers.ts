/** Who reads single rows of a table, and would come to read other people's when rows move up. */
import { cellAddress } from "../../../../src/columns/formula";
import { contains } from "../../area";
import { readsSomeRows } from "../../../../src/formula/following";
import { engineNames } from "../book/names";
import { geometryNow, type TableNow } from "../book/tables";
import type { Desk } from "./write";
import { ownFormulas } from "./size";

/** A cell's address or a name; undefined where nobody does. Formulas in the table's own rows go along with them. */
export function readerOfSomeRows(desk: Desk, table: TableNow): string | undefined {
  const geometry = geometryNow(table);
  const name = engineNames(desk.engine, desk.unitId).find((one) => readsSomeRows(one.formulaOrRefString, "", geometry));
  if (name) return name.name;
  for (const sheet of desk.sheets()) {
    const reader = desk.reader(sheet.getSheetId());
    const isOwn = sheet.getSheetId() === table.facts.sheet;
    for (const { row, column, text } of ownFormulas(reader)) {
      if (isOwn && contains(table.area, row, column)) continue;
      if (readsSomeRows(text, sheet.getName(), geometry))
        return `${isOwn ? "" : `${sheet.getName()}!`}${cellAddress(row, column)}`;
    }
  }
  return undefined;
}
