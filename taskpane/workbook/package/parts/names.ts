import { knownNamespace } from "../../xlsx/xml/namespaces";

/** The names OOXML gives to things (ECMA-376 part 1, annex A; part 2, annex E; MS-XLSX for Microsoft's own). */
export const MAIN = knownNamespace("http://schemas.openxmlformats.org/spreadsheetml/2006/main");
export const STRICT_MAIN = "http://purl.oclc.org/ooxml/spreadsheetml/main";
export const RELATIONSHIPS = "http://schemas.openxmlformats.org/package/2006/relationships";
export const CONTENT_TYPES = "http://schemas.openxmlformats.org/package/2006/content-types";
export const OFFICE_RELATIONSHIPS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
export const DYNAMIC_ARRAY = "http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray";

export const relationshipTypes = {
  workbook: `${OFFICE_RELATIONSHIPS}/officeDocument`,
  strictWorkbook: "http://purl.oclc.org/ooxml/officeDocument/relationships/officeDocument",
  worksheet: `${OFFICE_RELATIONSHIPS}/worksheet`,
  chartsheet: `${OFFICE_RELATIONSHIPS}/chartsheet`,
  styles: `${OFFICE_RELATIONSHIPS}/styles`,
  sharedStrings: `${OFFICE_RELATIONSHIPS}/sharedStrings`,
  table: `${OFFICE_RELATIONSHIPS}/table`,
  pivotTable: `${OFFICE_RELATIONSHIPS}/pivotTable`,
  pivotCache: `${OFFICE_RELATIONSHIPS}/pivotCacheDefinition`,
  externalLink: `${OFFICE_RELATIONSHIPS}/externalLink`,
  calculationChain: `${OFFICE_RELATIONSHIPS}/calcChain`,
  metadata: `${OFFICE_RELATIONSHIPS}/sheetMetadata`,
  macros: "http://schemas.microsoft.com/office/2006/relationships/vbaProject",
  signatures: "http://schemas.openxmlformats.org/package/2006/relationships/digital-signature/origin",
} as const;

export const METADATA_CONTENT_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml";
export const WORKSHEET_CONTENT_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";
export const STYLES_CONTENT_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml";

const WORKBOOK_CONTENT_TYPES = [
  "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml",
  "application/vnd.openxmlformats-officedocument.spreadsheetml.template.main+xml",
  "application/vnd.ms-excel.sheet.macroenabled.main+xml",
  "application/vnd.ms-excel.template.macroenabled.main+xml",
  "application/vnd.ms-excel.addin.macroenabled.main+xml",
];

export function isWorkbookContentType(type: string): boolean {
  return WORKBOOK_CONTENT_TYPES.includes(type.toLowerCase());
}

export const BINARY_WORKBOOK_CONTENT_TYPE = "application/vnd.ms-excel.sheet.binary.macroenabled.main";
