/**
 * An .xlsx package: opened as a stranger's file, told apart, and saved by changing nothing but what changed.
 *
 *   const opened = openPackage(bytes);            // OpenedPackage | Refusal
 *   if (isRefusal(opened)) show(opened.refused);
 *   for (const cell of opened.cells("Patients")) ...
 *   const saved = patchPackage(opened, { sheets: new Map([["Patients", { cells: new Map([["B2", { value: 14 }]]) }]]) });
 */
export { isRefusal } from "../xlsx/refusal";
export type { Refusal } from "../xlsx/refusal";
export { openPackage } from "./open-package";
export type * from "./contents";
export type * from "./opened";
export { patchPackage } from "./patch-package";
export { whyNotSaved } from "./patch/check/trial";
export type * from "./edits";
export { chartParts } from "./charts";
export { emptySheetXml } from "./new-sheets";
export { openUnhurried, patchUnhurried } from "./unhurried";
export { addressOf, columnLetters, parseRange, rangeText, type Range } from "./addresses";
export { emptyStore } from "./sheet/store";
export { KIND, type CellStore, type StoredFormula } from "./sheet/store";
export type { SharedFormula } from "./sheet/groups";
export { dataOf, workbookOf, type ValuesByRow, type WorkbookData } from "./workbook-data";
export { breath, inSlices, ranToItsEnd, Stopped, type Sliced, type Watching } from "../xlsx/slices";
