/** What opening says of a file that the grid cannot show as it is. */
import type { OpenedWorkbook } from "../../package";
import type { Extent } from "./extent";

export const notDrawn = (sheetName: string, { left }: Extent): string =>
  left.count === 1
    ? `"${sheetName}": ${left.first} stands too far from the other cells to be shown here. It stays in the file; formulas that read it show their stored values.`
    : `"${sheetName}": ${left.count} cells, the first of them ${left.first}, stand too far from the others to be shown here. They stay in the file; formulas that read them show their stored values.`;

const count = (number: number, one: string, many: string): string => (number === 1 ? `1 ${one}` : `${number} ${many}`);

interface LeftOut {
  /** Formulas that show their stored values. */
  readonly kept: number;
  /** Names that are not read. */
  readonly names: number;
}

/** What the whole file holds that is not shown, or not worked out, here. */
export function remarksOf(opened: OpenedWorkbook, { kept, names }: LeftOut): readonly string[] {
  const remarks: string[] = [];
  const chartSheets = opened.sheets.filter((sheet) => sheet.kind !== "worksheet");
  if (chartSheets.length > 0) {
    remarks.push(
      `${count(chartSheets.length, "chart sheet is", "chart sheets are")} not shown here and stay in the file: ${chartSheets.map((sheet) => sheet.name).join(", ")}.`,
    );
  }
  if (kept > 0) {
    remarks.push(
      `${count(kept, "formula uses", "formulas use")} something this page cannot work out. The stored values are shown and follow no change made here; the formulas stay in the file.`,
    );
  }
  if (names > 0) {
    remarks.push(
      `${names} of the ${opened.definedNames.length} names are not read here, because there are too many. They stay in the file; formulas that use them show their stored values.`,
    );
  }
  if (opened.hasMacros) remarks.push("The file holds macros. They stay in the file and never run here.");
  return remarks;
}
