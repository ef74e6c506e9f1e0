/** Why a change is not begun: said to the person, nothing was changed. */
import { areaAddress } from "../area";
import type { Overview, SheetId, SheetOverview, TableOverview } from "../port";

export class Refusal {
  constructor(readonly sentence: string) {}
}

export const notEmpty = (address: string): Refusal =>
  new Refusal(`Cell ${address} is not empty. Nothing is overwritten: clear it or move it first.`);

export const spillInTheWay = (address: string): Refusal =>
  new Refusal(`Cell ${address} is filled by a formula that spills into it. Move that formula first.`);

export const noRoom = new Refusal(
  "The result needs the cells beside or below it, and they are not empty. Choose another cell.",
);

/** @param fault a sentence that says what is wrong with a formula */
export const noFormula = (fault: string): Refusal => new Refusal(`${fault} Nothing was written.`);

export const noTable = (name: string): Refusal =>
  new Refusal(`The table "${name}" is no longer there. Choose the list again.`);

export const filterHides = (name: string): string => `A filter hides rows of "${name}". Show all rows, then try again.`;

export const otherRows = new Refusal("The list has got more rows or fewer meanwhile. Look at the preview again.");

export const noRowLeft = new Refusal("The sheet has no row left below the table.");

export const NO_COLUMN_LEFT = "There is no room: the list reaches the sheet's last column. Move it to the left first.";

export const tableInTheWay = ({ name, area }: Pick<TableOverview, "name" | "area">): Refusal =>
  new Refusal(`The table "${name}" stands in the way (${areaAddress(area)}). Move it first.`);

export const STOPPED = "Stopped. Everything was taken back.";

export const noHeader = (name: string): Refusal =>
  new Refusal(`The table "${name}" shows no header row. Turn its header row on first.`);

/** The sheet, where it is there and has cells. */
export function sheetWithCells(id: SheetId, overview: Overview): SheetOverview | Refusal {
  const sheet = overview.sheets.find((one) => one.id === id);
  if (!sheet) return new Refusal("That sheet is no longer there. Choose the list again.");
  return sheet.kind === "chart sheet"
    ? new Refusal(`"${sheet.name}" holds a chart and no cells. Choose another sheet.`)
    : sheet;
}

export function unwritableSheet(id: SheetId, overview: Overview): Refusal | null {
  const sheet = sheetWithCells(id, overview);
  if (sheet instanceof Refusal) return sheet;
  return sheet.isProtected
    ? new Refusal(`The sheet "${sheet.name}" is protected. Take the protection off, then try again.`)
    : null;
}
