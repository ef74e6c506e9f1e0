/** Whether a workbook is a ready-made caseload and nothing else: then rows may move in it, because nothing can be left behind. */
import { tableNames } from "../../../../src/caseload/names";
import type { BookFacts } from "./facts";

/** What we write ourselves, and what Excel adds to it when it saves; no drawings, charts, comments, links, pivots. */
const OWN_PARTS =
  /^(?:\[Content_Types\]\.xml|_rels\/\.rels|docProps\/(?:core|app|custom)\.xml|xl\/(?:workbook|styles|sharedStrings|metadata|calcChain)\.xml|xl\/theme\/[^/]+|xl\/_rels\/workbook\.xml\.rels|xl\/worksheets\/[^/]+\.xml|xl\/worksheets\/_rels\/[^/]+|xl\/tables\/[^/]+|xl\/printerSettings\/[^/]+)$/;

export function isOwnBook({ file, tables }: BookFacts): boolean {
  if (!file) return false;
  const names = new Set(tables.map((table) => table.name));
  return (
    Object.values(tableNames).every((name) => names.has(name)) &&
    file.opened.partNames.every((name) => OWN_PARTS.test(name))
  );
}
