/** Small workbooks written by hand, part by part, so that a test shows the very XML it is about. All content is invented. */
import { strToU8, zipSync } from "fflate";
import { isRefusal, openPackage, patchPackage } from "../../../taskpane/workbook/package";
import type { OpenedPackage, PackageCell, PackageEdits, Patched } from "../../../taskpane/workbook/package";

export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml";

export interface SheetSource {
  readonly name: string;
  /** The whole part, or only what stands inside the root element. */
  readonly xml?: string | Uint8Array;
  readonly inside?: string;
  readonly tables?: readonly string[];
  readonly state?: string;
}

export interface BookSource {
  readonly sheets: readonly SheetSource[];
  readonly strings?: string;
  readonly styles?: string;
  readonly metadata?: string;
  readonly calcChain?: string;
  /** After `<sheets>`. */
  readonly workbookTail?: string;
  readonly workbookHead?: string;
  readonly more?: Readonly<Record<string, string | Uint8Array>>;
  readonly rootRelationships?: string;
  /** All sheets stand in the first one's part. */
  readonly samePart?: boolean;
}

export const STYLES =
  `<styleSheet xmlns="${MAIN}"><numFmts count="1"><numFmt numFmtId="170" formatCode="d\\ mmm\\ yyyy"/></numFmts>` +
  `<fonts count="1"><font><sz val="11"/><name val="Calibri"/></font></fonts>` +
  `<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>` +
  `<borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="4">` +
  `<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>` +
  `<xf numFmtId="14" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>` +
  `<xf numFmtId="170" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"><alignment horizontal="left"/></xf>` +
  `<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0" applyProtection="1"><protection locked="0"/></xf>` +
  `</cellXfs></styleSheet>`;

export function sheetXml(inside: string): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}">${inside}</worksheet>`;
}

export function files(book: BookSource): Record<string, Uint8Array> {
  const overrides: string[] = [];
  const related: string[] = [];
  const parts: Record<string, Uint8Array> = {};
  const add = (name: string, content: string | Uint8Array, type: string): void => {
    parts[name] = typeof content === "string" ? strToU8(content) : content;
    overrides.push(`<Override PartName="/${name}" ContentType="${TYPE}.${type}+xml"/>`);
  };
  let tableNumber = 0;
  const listed = book.sheets.map((sheet, index) => {
    const name = `xl/worksheets/sheet${index + 1}.xml`;
    const tables = sheet.tables ?? [];
    const tableParts = tables.map((_, at) => `<tablePart r:id="rId${at + 1}"/>`).join("");
    const tail = tables.length === 0 ? "" : `<tableParts count="${tables.length}">${tableParts}</tableParts>`;
    add(name, sheet.xml ?? sheetXml((sheet.inside ?? "<sheetData/>") + tail), "worksheet");
    related.push(`<Relationship Id="rId${index + 1}" Type="${OFFICE}/worksheet" Target="worksheets/sheet${book.samePart ? 1 : index + 1}.xml"/>`);
    const relationships = tables.map((table, at) => {
      add(`xl/tables/table${++tableNumber}.xml`, table, "table");
      return `<Relationship Id="rId${at + 1}" Type="${OFFICE}/table" Target="../tables/table${tableNumber}.xml"/>`;
    });
    if (tables.length > 0) parts[`xl/worksheets/_rels/sheet${index + 1}.xml.rels`] = strToU8(relationshipsXml(relationships.join("")));
    const state = sheet.state ? ` state="${sheet.state}"` : "";
    return `<sheet name="${sheet.name}" sheetId="${index + 1}"${state} r:id="rId${index + 1}"/>`;
  });
  const shared: [string, string | undefined, string, string][] = [
    ["sharedStrings", book.strings, "sharedStrings", "sharedStrings"],
    ["styles", book.styles, "styles", "styles"],
    ["metadata", book.metadata, "sheetMetadata", "sheetMetadata"],
    ["calcChain", book.calcChain, "calcChain", "calcChain"],
  ];
  for (const [name, content, type, relation] of shared) {
    if (content === undefined) continue;
    add(`xl/${name}.xml`, content, type);
    related.push(`<Relationship Id="${name}Id" Type="${OFFICE}/${relation}" Target="${name}.xml"/>`);
  }
  for (const [name, content] of Object.entries(book.more ?? {})) parts[name] = typeof content === "string" ? strToU8(content) : content;
  const workbook =
    `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}">${book.workbookHead ?? ""}<sheets>${listed.join("")}</sheets>` +
    `${book.workbookTail ?? ""}</workbook>`;
  return {
    "[Content_Types].xml": strToU8(
      `<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
        `<Default Extension="xml" ContentType="application/xml"/>` +
        `<Override PartName="/xl/workbook.xml" ContentType="${TYPE}.sheet.main+xml"/>${overrides.join("")}</Types>`,
    ),
    "_rels/.rels": strToU8(
      relationshipsXml(`<Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/>${book.rootRelationships ?? ""}`),
    ),
    "xl/workbook.xml": strToU8(workbook),
    "xl/_rels/workbook.xml.rels": strToU8(relationshipsXml(related.join(""))),
    ...parts,
  };
}

export function relationshipsXml(inside: string): string {
  return `<Relationships xmlns="${PACKAGE}/relationships">${inside}</Relationships>`;
}

export function book(source: BookSource): Uint8Array {
  return zipSync(files(source), { mtime: new Date(2026, 0, 1) });
}

/** One sheet "S" with these rows (or whatever stands inside its root element). */
export function oneSheet(inside: string, more: Partial<BookSource> = {}): Uint8Array {
  const content = inside.includes("<sheetData") ? inside : `<sheetData>${inside}</sheetData>`;
  return book({ styles: STYLES, ...more, sheets: [{ name: "S", inside: content }] });
}

export function opened(bytes: Uint8Array): OpenedPackage {
  const answer = openPackage(bytes);
  if (isRefusal(answer)) throw new Error(answer.refused);
  return answer;
}

export function refusalOf(answer: object): string {
  if (!isRefusal(answer)) throw new Error("It was not refused.");
  return answer.refused;
}

export function patched(bytes: Uint8Array, edits: PackageEdits): Patched {
  const answer = patchPackage(opened(bytes), edits);
  if (isRefusal(answer)) throw new Error(answer.refused);
  return answer;
}

export function cellsOf(bytes: Uint8Array, sheet = "S"): Map<string, PackageCell> {
  return new Map([...opened(bytes).cells(sheet)].map((cell) => [cell.ref, cell]));
}

export function cellEdits(edits: Readonly<Record<string, unknown>>, sheet = "S"): PackageEdits {
  return { sheets: new Map([[sheet, { cells: new Map(Object.entries(edits)) as never }]]) };
}

/** The text of a part in a package. */
export function partText(bytes: Uint8Array, name: string): string {
  return opened(bytes).parts.files.xml(name).text;
}

export const SHEET = "xl/worksheets/sheet1.xml";
