/** Where the cells stand that a described workbook gives a name. */
import type { BookDescription } from "../../../src/caseload/book";
import { parseArea } from "../../../taskpane/workbook/area";

export function areaOfName(book: BookDescription, name: string) {
  const { refersTo } = book.names.find((one) => one.name === name)!;
  return parseArea(refersTo.slice(refersTo.lastIndexOf("!") + 1))!;
}
