/** The one cell that a name stands for. */
import { cellAddress } from "../../../src/columns/formula";
import { parsePlace } from "../area";
import type { Area, Overview, SheetId, Step, Workbook } from "../port";
import { Refusal, unwritableSheet } from "./refusal";

export interface NamedCellTarget {
  readonly kind: "writeNamed";
  readonly step: Extract<Step, { kind: "writeNamed" }>;
  readonly sheet: SheetId;
  /** One cell. */
  readonly area: Area;
}

/** Where the name stands now. */
export function namedCell(name: string, overview: Overview): { sheet: SheetId; area: Area } | Refusal {
  const found = overview.names.find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (!found) return new Refusal(`The name "${name}" is no longer there. Nothing was written.`);
  const place = parsePlace(found.refersTo);
  const sheet = overview.sheets.find((one) => one.name.toLowerCase() === place?.sheetName.toLowerCase());
  // a column of a table that has one row is told as $A$2:$A$2
  const isOne = place && !found.refersTo.includes(":");
  if (!place || !sheet || !isOne)
    return new Refusal(`The name "${found.name}" does not stand for one cell, so nothing can be written into it.`);
  return { sheet: sheet.id, area: place.area };
}

export async function namedCellTarget(
  step: NamedCellTarget["step"],
  overview: Overview,
  reader: Pick<Workbook, "read">,
): Promise<NamedCellTarget | Refusal> {
  const place = namedCell(step.name, overview);
  if (place instanceof Refusal) return place;
  const unwritable = unwritableSheet(place.sheet, overview);
  if (unwritable) return unwritable;
  const { formulas } = await reader.read(place, ["formulas"]);
  if (formulas![0]![0] !== null)
    return new Refusal(
      `${cellAddress(place.area.top, place.area.left)} ("${step.name}") is worked out by a formula. It is not typed over.`,
    );
  return { kind: "writeNamed", step, ...place };
}
