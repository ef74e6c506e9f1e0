import { LIMITS, type Limits } from "./limits";
import type { OpenedPackage, PackageCell, PackageSheet, PackageTable } from "./opened";
import { readMetadata } from "./parts/metadata";
import { relationshipTypes } from "./parts/names";
import { PackageFiles } from "./parts/packageFiles";
import { readSharedStrings } from "./parts/sharedStrings";
import { Styles } from "./parts/styles";
import { readTable } from "./parts/tables";
import {
  type ListedSheet,
  readActiveSheet,
  readDate1904,
  readDefinedNames,
  readSheets,
  readStructureLock,
} from "./parts/workbook";
import { factsOf } from "./parts/workbookParts";
import { orRefusal, refuse, type Refusal } from "./refusal";
import { findWorkbookPart, refuseDocumentTypes, refuseOtherFiles, refuseOtherNamespaces } from "./refuseForeign";
import { readCells } from "./sheet/cells";
import { inspectSheet, type SheetFacts } from "./sheet/inspect";
import { SheetWalk } from "./sheet/walk";

/** Opens an .xlsx or .xlsm package, or says in a sentence why not. Limits left out are those of `LIMITS`. */
export function openPackage(bytes: Uint8Array, limits: Partial<Limits> = {}): OpenedPackage | Refusal {
  return orRefusal(() => open(bytes, { ...LIMITS, ...limits }));
}

/** A saved copy read again: what did not change since is not read twice, and every cell of what did is shown. */
export interface SecondLook {
  readonly earlier: OpenedPackage;
  onCell(sheetName: string, cell: PackageCell): void;
}

export function open(bytes: Uint8Array, limits: Limits, again?: SecondLook): OpenedPackage {
  if (bytes.length > limits.fileBytes) {
    const megabytes = Math.round(limits.fileBytes / 1024 / 1024);
    refuse(`This file is too large for this page: more than ${megabytes} MB. Work with it in Excel, or split it.`);
  }
  refuseOtherFiles(bytes);
  const files = new PackageFiles(bytes, limits, again?.earlier.parts.files);
  const packageRelationships = files.relationships("");
  const workbookPart = findWorkbookPart(files, packageRelationships);
  refuseDocumentTypes(files);
  const workbook = files.tree(workbookPart);
  refuseOtherNamespaces(workbook);
  const relationships = files.relationships(workbookPart);
  const partOf = (type: string): string | undefined => relationships.find((one) => one.type === type)?.target;

  const stylesPart = partOf(relationshipTypes.styles);
  const stringsPart = partOf(relationshipTypes.sharedStrings);
  const metadataPart = partOf(relationshipTypes.metadata);
  const styles = new Styles(stylesPart === undefined ? undefined : files.tree(stylesPart));
  const strings = stringsPart === undefined ? [] : readSharedStrings(files.xml(stringsPart));
  const metadata = readMetadata(metadataPart === undefined ? undefined : files.tree(metadataPart));

  const listed = readSheets(workbook, relationships);
  const facts = new Map<string, SheetFacts>();
  const countCell = cellCounter(limits);
  for (const sheet of listed.filter((one) => one.kind === "worksheet")) {
    const { name, partName } = sheet;
    const earlier = again && sameSheet(again.earlier, files, name, partName);
    const around = { partName, strings, dynamicMarks: metadata.marks };
    const onCell = (cell: PackageCell): void => {
      countCell();
      again?.onCell(name, cell);
    };
    facts.set(name, earlier ?? inspectSheet(files.xml(partName), around, styles.count, onCell));
  }
  const sheetRelationships = listed.map((sheet) => ({ sheet, list: files.relationships(sheet.partName) }));
  const activeSheet = readActiveSheet(workbook, listed);
  const types = new Set(sheetRelationships.flatMap(({ list }) => list.map((one) => one.type)));

  return {
    date1904: readDate1904(workbook),
    sheets: listed.map((sheet) => withFacts(sheet, facts.get(sheet.name))),
    ...(activeSheet === undefined ? {} : { activeSheet }),
    tables: sheetRelationships.flatMap(({ sheet, list }): PackageTable[] =>
      list
        .filter((one) => one.type === relationshipTypes.table)
        .map((one) => readTable(files.tree(one.target), sheet.name, one.target)),
    ),
    definedNames: readDefinedNames(workbook, listed),
    hasMacros: partOf(relationshipTypes.macros) !== undefined,
    hasPivotTables: types.has(relationshipTypes.pivotTable) || partOf(relationshipTypes.pivotCache) !== undefined,
    hasExternalLinks: partOf(relationshipTypes.externalLink) !== undefined,
    isSigned: packageRelationships.some((one) => one.type === relationshipTypes.signatures),
    structureIsLocked: readStructureLock(workbook),
    styleCount: styles.count,
    numberFormat: (styleIndex) => styles.numberFormat(styleIndex),
    isQuoted: (styleIndex) => styles.isQuoted(styleIndex),
    isLocked: (styleIndex) => styles.isLocked(styleIndex),
    cells(sheetName) {
      const { groups } = factsOf(this, sheetName);
      const { partName } = this.sheets.find((sheet) => sheet.name === sheetName) as PackageSheet;
      const around = { partName, strings, dynamicMarks: metadata.marks, groups };
      return { [Symbol.iterator]: () => readCells(new SheetWalk(files.xml(partName)).rows(), around) };
    },
    layout(sheetName) {
      return factsOf(this, sheetName).layout;
    },
    parts: { limits, files, workbookPart, relationships, stylesPart, metadataPart, metadata, strings, facts },
  };
}

function sameSheet(
  earlier: OpenedPackage,
  files: PackageFiles,
  name: string,
  partName: string,
): SheetFacts | undefined {
  const { parts } = earlier;
  const isSame = parts.files.find(partName) !== undefined && parts.files.content(partName) === files.content(partName);
  return isSame ? parts.facts.get(name) : undefined;
}

function cellCounter(limits: Limits): () => void {
  let count = 0;
  return () => {
    if (++count > limits.cells) {
      refuse(
        `This workbook has more than ${limits.cells.toLocaleString("en-GB")} cells, too many for this page. ` +
          `Work with it in Excel, or split it.`,
      );
    }
  };
}

function withFacts(sheet: ListedSheet, facts: SheetFacts | undefined): PackageSheet {
  if (!facts) return { ...sheet, isProtected: false, allowsFiltering: false };
  const { isProtected, allowsFiltering, dimension, usedRange, filter } = facts;
  return {
    ...sheet,
    isProtected,
    allowsFiltering,
    ...(dimension === undefined ? {} : { dimension }),
    ...(usedRange === undefined ? {} : { usedRange }),
    ...(filter ? { filter } : {}),
  };
}
