import { LIMITS, type Limits } from "../xlsx/limits";
import type { OpenedPackage } from "./opened";
import type { PackageSheet, PackageTable } from "./contents";
import { readMetadata } from "./parts/metadata";
import { relationshipTypes } from "./parts/names";
import { PackageFiles } from "./parts/package-files";
import { readSharedStrings } from "./parts/shared-strings";
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
import { factsOf } from "./parts/workbook-parts";
import { orRefusal, refuse, type Refusal } from "../xlsx/refusal";
import { ranToItsEnd } from "../xlsx/slices";
import { findWorkbookPart, refuseDocumentTypes, refuseOtherFiles, refuseOtherNamespaces } from "./refuse-foreign";
import { inspectSheet, type SheetFacts } from "./sheet/inspect";
import type { Unpacked } from "../xlsx/zip/unpack";

/** Opens an .xlsx or .xlsm package, or says in a sentence why not. Limits left out are those of `LIMITS`. */
export function openPackage(bytes: Uint8Array, limits: Partial<Limits> = {}): OpenedPackage | Refusal {
  return orRefusal(() => ranToItsEnd(opening(bytes, { ...LIMITS, ...limits })));
}

/** What is known of a package already: parts that are unpacked, and the state it had before a change. */
export interface Beforehand {
  readonly unpacked?: Unpacked;
  /** A saved copy is read again: what did not change since is not read twice. */
  readonly earlier?: OpenedPackage;
}

/** What can be said of a file before any of it is unpacked. */
export function refuseAtFirstSight(bytes: Uint8Array, limits: Limits): void {
  if (bytes.length > limits.fileBytes) {
    const megabytes = Math.round(limits.fileBytes / 1024 / 1024);
    refuse(`This file is too large for this page: more than ${megabytes} MB. Work with it in Excel, or split it.`);
  }
  refuseOtherFiles(bytes);
}

/** Gives the share that is done, now and then. */
export function* opening(
  bytes: Uint8Array,
  limits: Limits,
  { unpacked, earlier }: Beforehand = {},
): Generator<number, OpenedPackage, void> {
  refuseAtFirstSight(bytes, limits);
  const files = new PackageFiles(bytes, limits, unpacked, earlier?.parts.files);
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
  const strings = stringsPart === undefined ? NO_STRINGS : sharedStrings(files, stringsPart, earlier);
  const metadata = readMetadata(metadataPart === undefined ? undefined : files.tree(metadataPart));

  const listed = readSheets(workbook, relationships);
  const facts = new Map<string, SheetFacts>();
  const count = cellCounter(limits);
  const worksheets = listed.filter((one) => one.kind === "worksheet");
  const size = (partName: string): number => files.content(partName).length;
  const all = worksheets.reduce((sum, { partName }) => sum + size(partName), 1);
  let done = 0;
  for (const { name, partName } of worksheets) {
    const known = earlier && sameSheet(earlier, files, name, partName, strings);
    if (known) {
      count(known.store.data.count);
      facts.set(name, known);
    } else {
      const around = { partName, strings, dynamicMarks: metadata.marks };
      const reading = inspectSheet(files.part(partName), around, styles.count, count);
      facts.set(name, yield* told(reading, (read) => (done + read) / all));
    }
    done += size(partName);
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
      const { store } = factsOf(this, sheetName);
      return { [Symbol.iterator]: () => store.cells() };
    },
    store(sheetName) {
      return factsOf(this, sheetName).store;
    },
    layout(sheetName) {
      return factsOf(this, sheetName).layout;
    },
    partNames: files.entries.map(({ name }) => name),
    parts: { limits, files, workbookPart, relationships, stylesPart, metadataPart, metadata, strings, facts },
  };
}

const NO_STRINGS: readonly string[] = [];

function sharedStrings(files: PackageFiles, part: string, earlier: OpenedPackage | undefined): readonly string[] {
  const known = earlier?.parts.files;
  const isSame = known?.find(part) === part && known.content(part) === files.content(part);
  return earlier && isSame ? earlier.parts.strings : readSharedStrings(files.part(part));
}

/** Gives a share for each sign of life. */
function* told<T>(work: Generator<number, T, void>, share: (read: number) => number): Generator<number, T, void> {
  for (let step = work.next(); ; step = work.next()) {
    if (step.done) return step.value;
    yield share(step.value);
  }
}

function sameSheet(
  { parts }: OpenedPackage,
  files: PackageFiles,
  name: string,
  partName: string,
  strings: readonly string[],
): SheetFacts | undefined {
  const isSame = parts.files.find(partName) !== undefined && parts.files.content(partName) === files.content(partName);
  return isSame && parts.strings === strings ? parts.facts.get(name) : undefined;
}

function cellCounter(limits: Limits): (cells: number) => void {
  let count = 0;
  return (cells) => {
    count += cells;
    if (count > limits.cells) {
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
