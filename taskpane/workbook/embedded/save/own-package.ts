/** An .xlsx package of nothing but empty sheets: what a workbook that came from no file is saved into. */
import { strToU8, zipSync } from "fflate";
import { chartParts, emptySheetXml, type NewSheet } from "../../package";
import { escapeAttribute } from "../../xlsx/xml/characters";

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const SHEET_ML = "application/vnd.openxmlformats-officedocument.spreadsheetml";

const relationships = (all: readonly (readonly [type: string, target: string])[]): string =>
  `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${all
    .map(([type, target], index) => `<Relationship Id="rId${index + 1}" Type="${OFFICE}/${type}" Target="${target}"/>`)
    .join("")}</Relationships>`;

const STYLES =
  `${HEAD}<styleSheet xmlns="${MAIN}"><fonts count="1"><font><sz val="11"/><name val="Calibri"/><family val="2"/></font></fonts>` +
  '<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>' +
  '<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders>' +
  '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
  '<cellXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs>' +
  '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>';

const TYPES = "[Content_Types].xml";

export function ownPackage(sheets: readonly NewSheet[]): Uint8Array {
  const parts = sheets.map((_, index) => `worksheets/sheet${index + 1}.xml`);
  const named = sheets
    .map(({ name, isHidden }, index) => {
      const state = isHidden ? ' state="hidden"' : "";
      return `<sheet name="${escapeAttribute(name)}" sheetId="${index + 1}"${state} r:id="rId${index + 1}"/>`;
    })
    .join("");
  const override = (part: string, type: string) =>
    `<Override PartName="/xl/${part}" ContentType="${SHEET_ML}.${type}+xml"/>`;
  const files: Record<string, string> = {
    [TYPES]:
      `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
      `<Default Extension="xml" ContentType="application/xml"/>${override("workbook.xml", "sheet.main")}${override("styles.xml", "styles")}` +
      `${parts.map((part) => override(part, "worksheet")).join("")}</Types>`,
    "_rels/.rels": relationships([["officeDocument", "xl/workbook.xml"]]),
    "xl/workbook.xml": `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><bookViews><workbookView/></bookViews><sheets>${named}</sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": relationships([
      ...parts.map((part) => ["worksheet", part] as const),
      ["styles", "styles.xml"],
    ]),
    "xl/styles.xml": STYLES,
  };
  const overrides: string[] = [];
  sheets.forEach((sheet, index) => {
    files[`xl/${parts[index]}`] = emptySheetXml(sheet);
    const { name: sheetName, charts = [] } = sheet;
    if (charts.length === 0) return;
    for (const { name, text, contentType } of chartParts(
      sheetName,
      `xl/${parts[index]}`,
      charts,
      (one) => one in files,
    )) {
      files[name] = text;
      if (contentType !== null) overrides.push(`<Override PartName="/${name}" ContentType="${contentType}"/>`);
    }
  });
  files[TYPES] = files[TYPES]!.replace("</Types>", `${overrides.join("")}</Types>`);
  return zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])));
}
