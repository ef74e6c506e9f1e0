/**
 * A list of invented people as a workbook: 15 columns of texts, dates, numbers and one formula, as other programs write
 * them: shared strings, styles, one sheet, compressed.
 */
import { strToU8, zipSync } from "fflate";
import { files, MAIN, sheetXml, STYLES } from "../../workbooks/package/build";

export const SHEET = "S";

const letter = (column: number): string => String.fromCharCode(65 + column);

/** Texts that many rows share, and one for each row. */
class Strings {
  private readonly places = new Map<string, number>();
  private uses = 0;

  cell(ref: string, text: string): string {
    this.uses++;
    const place = this.places.get(text) ?? this.places.size;
    this.places.set(text, place);
    return `<c r="${ref}" t="s"><v>${place}</v></c>`;
  }

  xml(): string {
    const items = [...this.places.keys()].map((text) => `<si><t>${text}</t></si>`).join("");
    return `<sst xmlns="${MAIN}" count="${this.uses}" uniqueCount="${this.places.size}">${items}</sst>`;
  }
}

const HEADERS = [
  ...["ID", "Kind", "Size", "Last change", "Water put in", "Water out", "Ward", "Item", "Spare"],
  ...["Weight kg", "Lying cm", "Sitting cm", "Length cm", "Visits", "Third of size"],
];
export const COLUMNS = HEADERS.length;

const KINDS = ["PEG", "balloon", "GJ", "balloon"];
const SPARES = ["none", "same size", "smaller"];

/** What a row holds: a text, a number, a day, or a formula over the size with its result. */
export type ListCell = string | number | { readonly day: number } | { readonly f: string; readonly v: number };

/** @param row 0 is the row of headers */
export function listRow(row: number): readonly ListCell[] {
  if (row === 0) return HEADERS;
  const tenths = (from: number, of: number): number => from + (row % of) / 10;
  const size = 12 + 2 * (row % 7);
  return [
    `P-${String(row).padStart(6, "0")}`,
    KINDS[row % KINDS.length]!,
    size,
    { day: 45_900 + ((row * 7) % 250) },
    5,
    tenths(3.8, 13),
    `Ward ${row % 40}`,
    `Item ${(row * 3) % 90}`,
    SPARES[row % SPARES.length]!,
    3 + (row % 80),
    tenths(1, 30),
    tenths(1.2, 30),
    1.5 + (row % 6) / 2,
    row % 9,
    { f: `C${row + 1}/3`, v: size / 3 },
  ];
}

/** The date's style in the styles of tests. */
const DATE = 1;

function cellXml(strings: Strings, ref: string, cell: ListCell): string {
  if (typeof cell === "string") return strings.cell(ref, cell);
  if (typeof cell === "number") return `<c r="${ref}"><v>${cell}</v></c>`;
  if ("day" in cell) return `<c r="${ref}" s="${DATE}"><v>${cell.day}</v></c>`;
  return `<c r="${ref}"><f>${cell.f}</f><v>${cell.v}</v></c>`;
}

function rowXml(strings: Strings, row: number): string {
  const cells = listRow(row).map((cell, column) => cellXml(strings, `${letter(column)}${row + 1}`, cell));
  return `<row r="${row + 1}">${cells.join("")}</row>`;
}

/** @param rows how many people; a row of headers stands above them */
export function makeList(rows: number): Uint8Array {
  const strings = new Strings();
  const lines = Array.from({ length: rows + 1 }, (_, row) => rowXml(strings, row));
  const xml = strToU8(sheetXml(`<sheetData>${lines.join("")}</sheetData>`));
  const parts = files({ styles: STYLES, strings: strings.xml(), sheets: [{ name: SHEET, xml }] });
  return zipSync(parts, { mtime: new Date(2026, 0, 1) });
}
