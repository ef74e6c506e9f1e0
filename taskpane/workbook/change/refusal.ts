/** Why a change is not begun: said to the person, nothing was changed. */
import type { Overview, SheetId } from "../port";

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

export const noTable = (name: string): Refusal =>
  new Refusal(`The table "${name}" is no longer there. Choose the list again.`);

export const noHeader = (name: string): Refusal =>
  new Refusal(`The table "${name}" shows no header row. Turn its header row on first.`);

export function unwritableSheet(id: SheetId, overview: Overview): Refusal | null {
  const sheet = overview.sheets.find((one) => one.id === id);
  if (!sheet) return new Refusal("That sheet is no longer there. Choose the list again.");
  if (sheet.kind === "chart sheet")
    return new Refusal(`"${sheet.name}" holds a chart and no cells. Choose another sheet.`);
  if (sheet.isProtected)
    return new Refusal(`The sheet "${sheet.name}" is protected. Take the protection off, then try again.`);
  return null;
}
