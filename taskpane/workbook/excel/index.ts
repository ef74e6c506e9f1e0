/** Excel behind the port. */
import type { Workbook } from "../port";
import { ExcelWorkbook } from "./workbook";

export { detectHost } from "./host";
export { openNew } from "./open-new";

/** The workbook open in Excel; ask {@link detectHost} first. */
export const createExcelWorkbook = (): Workbook => new ExcelWorkbook();
