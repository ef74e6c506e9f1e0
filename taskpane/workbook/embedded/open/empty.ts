/** A fresh workbook: one empty sheet. */
import { LocaleType, type IWorkbookData } from "@univerjs/core";
import type { BookFacts } from "../book/facts";
import { PADDING } from "./styles";

const TITLE = "New workbook.xlsx";
const FIRST_SHEET = { id: "sheet1", name: "Sheet1" };

export function emptyBook(unitId: string): { readonly snapshot: IWorkbookData; readonly facts: BookFacts } {
  const snapshot: IWorkbookData = {
    id: unitId,
    name: TITLE,
    appVersion: "",
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: [FIRST_SHEET.id],
    sheets: {
      [FIRST_SHEET.id]: {
        ...FIRST_SHEET,
        rowCount: 1000,
        columnCount: 26,
        cellData: {},
        defaultStyle: { pd: PADDING },
      },
    },
    resources: [],
  };
  const facts: BookFacts = {
    title: TITLE,
    dateSystem: 1900,
    sheets: [{ ...FIRST_SHEET, kind: "worksheet", isHidden: false, isProtected: false }],
    tables: [],
    darkNames: [],
    todayNames: new Set(),
    keptAsValue: new Map(),
    file: null,
  };
  return { snapshot, facts };
}
