/** What is no package of ours at all, told apart so that the sentence helps. */
import { refuse } from "../xlsx/refusal";
import { compoundFileNames, isCompoundFile } from "../xlsx/zip/compound-file";
import { isArchive } from "../xlsx/zip/archive";
import {
  BINARY_WORKBOOK_CONTENT_TYPE,
  isWorkbookContentType,
  MAIN,
  relationshipTypes,
  STRICT_MAIN,
} from "./parts/names";
import type { PackageFiles, Relationship } from "./parts/package-files";
import type { XmlElement } from "../xlsx/xml/element";
import { XmlReader } from "../xlsx/xml/reader";

const NO_WORKBOOK = "This is not an Excel workbook. Choose a file whose name ends in .xlsx or .xlsm.";
const BINARY =
  "This is a binary workbook (.xlsb). Open it in Excel, save a copy as Excel Workbook (.xlsx) and open that.";
const STRICT =
  'This workbook is saved as "Strict Open XML". Open it in Excel, save a copy as Excel Workbook (.xlsx) and open that.';

export function refuseOtherFiles(bytes: Uint8Array): void {
  if (isCompoundFile(bytes)) {
    const names = compoundFileNames(bytes);
    if (names.includes("EncryptedPackage")) {
      refuse(
        "This workbook is protected by a password. Open it in Excel, save a copy without the password, and open that.",
      );
    }
    if (names.includes("Workbook") || names.includes("Book")) {
      refuse(
        "This is a workbook of the older kind (.xls). Open it in Excel, save a copy as Excel Workbook (.xlsx) and open that.",
      );
    }
    refuse(NO_WORKBOOK);
  }
  if (!isArchive(bytes)) refuse(NO_WORKBOOK);
}

/** The workbook part, found from the package's own relationships. */
export function findWorkbookPart(files: PackageFiles, relationships: readonly Relationship[]): string {
  if (relationships.some((one) => one.type === relationshipTypes.strictWorkbook)) refuse(STRICT);
  const main = relationships.find((one) => one.type === relationshipTypes.workbook);
  if (!main) {
    const isOpenDocument = files.find("META-INF/manifest.xml") !== undefined && files.find("content.xml") !== undefined;
    if (isOpenDocument) {
      refuse(
        "This is an OpenDocument file. Open it in its own program, save a copy as Excel Workbook (.xlsx) and open that.",
      );
    }
    return refuse(NO_WORKBOOK);
  }
  const type = files.contentType(main.target);
  if (type.toLowerCase() === BINARY_WORKBOOK_CONTENT_TYPE) refuse(BINARY);
  if (!isWorkbookContentType(type)) refuse(NO_WORKBOOK);
  return main.target;
}

export function refuseOtherNamespaces(workbook: XmlElement): void {
  if (workbook.name.namespace === STRICT_MAIN) refuse(STRICT);
  if (workbook.name.namespace !== MAIN || workbook.name.local !== "workbook") refuse(NO_WORKBOOK);
}

/**
 * A DOCTYPE in a part that is not read here would still reach the next reader. Only the beginning is looked at, where it
 * must stand: old VML drawings are no well-formed XML and are none of our business.
 */
export function refuseDocumentTypes(files: PackageFiles): void {
  for (const { name } of files.entries) {
    const isXml = /\.(xml|rels|vml)$/i.test(name) || files.contentType(name).toLowerCase().endsWith("xml");
    if (isXml && hasDocumentType(files, name)) refuseDocumentType(files, name);
  }
}

const [LESS, EXCLAMATION, D, O] = [0x3c, 0x21, 0x44, 0x4f] as const;

/** "<!DO", each character in one byte or in two: enough to see whether a closer look is needed. */
function hasDocumentType(files: PackageFiles, name: string): boolean {
  const bytes = files.content(name);
  for (let at = bytes.indexOf(EXCLAMATION, 1); at > 0; at = bytes.indexOf(EXCLAMATION, at + 1)) {
    if (bytes[at - 1] === LESS && bytes[at + 1] === D && bytes[at + 2] === O) return true;
    if (bytes[at - 2] === LESS && bytes[at - 1] === 0 && bytes[at + 2] === D && bytes[at + 4] === O) return true;
  }
  return false;
}

function refuseDocumentType(files: PackageFiles, name: string): void {
  const reader = new XmlReader(files.xml(name));
  while (reader.next()) if (reader.kind === "start") return;
}
