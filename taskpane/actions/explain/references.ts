/** Which cells a reference means, and how a person finds them. */
import { areaAddress, bottom, contains, parseArea } from "../../workbook/area";
import { structuredToA1, type TableGeometry } from "../../../src/formula/structured";
import type { Area, Overview, SheetId } from "../../workbook/port";
import { isWholeLines } from "../../../src/formula/words";

/** The cell that holds the formula. */
export interface Standing {
  readonly sheet: SheetId;
  readonly row: number;
  readonly column: number;
}

export interface Cells {
  readonly sheet: SheetId;
  readonly area: Area;
}

export const geometryOf = (overview: Overview): readonly TableGeometry[] =>
  overview.tables.map(({ name, sheet, area, columns, hasHeader, hasTotals }) => ({
    name,
    sheetName: overview.sheets.find(({ id }) => id === sheet)?.name ?? "",
    top: area.top,
    left: area.left,
    bottom: bottom(area) - 1,
    columns,
    headerRows: hasHeader ? 1 : 0,
    totalsRows: hasTotals ? 1 : 0,
  }));

/** @returns null where it cannot be told which cells are meant */
export function cellsOf(reference: string, standing: Standing, overview: Overview): Cells | null {
  const own = overview.sheets.find(({ id }) => id === standing.sheet);
  const plain = structuredToA1(reference, geometryOf(overview), { ...standing, sheetName: own?.name ?? "" });
  if (plain === undefined) return null;
  const cut = plain.lastIndexOf("!");
  const name = plain.slice(0, Math.max(cut, 0)).replace(/^'|'$/g, "").replaceAll("''", "'");
  const sheet = cut < 0 ? own : overview.sheets.find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (!sheet) return null;
  const address = plain.slice(cut + 1);
  const area = isWholeLines(address) ? wholeLines(address, sheet.used) : parseArea(address);
  return area && { sheet: sheet.id, area };
}

/** A:C and 3:7, as far as the sheet is used. */
function wholeLines(address: string, used: Area | null): Area | null {
  if (!used) return null;
  const [from, to] = address.replaceAll("$", "").split(":") as [string, string];
  const isRows = /^\d/.test(from);
  const lines = parseArea(isRows ? `A${from}:A${to}` : `${from}1:${to}1`);
  if (!lines) return null;
  return isRows ? { ...lines, left: used.left, columns: used.columns } : { ...lines, top: used.top, rows: used.rows };
}

/** `cell B4, column "Size" in this row`, `cells B4 to B10 on "Old list"`. */
export function spoken({ sheet, area }: Cells, standing: Standing, overview: Overview): string {
  const where = sheet === standing.sheet ? "" : ` on "${overview.sheets.find(({ id }) => id === sheet)?.name ?? ""}"`;
  if (area.rows > 1 || area.columns > 1) {
    const [from, to] = areaAddress(area).split(":");
    return `cells ${from} to ${to}${where}`;
  }
  const table = overview.tables.find((one) => one.sheet === sheet && contains(one.area, area.top, area.left));
  const header = table?.hasHeader && area.top > table.area.top ? table.columns[area.left - table.area.left] : undefined;
  const row = sheet === standing.sheet && area.top === standing.row ? " in this row" : "";
  return `cell ${areaAddress(area)}${where}${header === undefined ? "" : `, column "${header}"${row}`}`;
}
