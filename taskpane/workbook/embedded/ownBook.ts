/** Whether a workbook is a ready-made caseload and nothing else: then rows may move in it, because nothing can be left behind. */
import { MOST_ROWS_WORKED_OUT_BY_THE_GRID } from "../../../src/caseload/limits";
import { tableNames } from "../../../src/caseload/names";
import type { BookFacts } from "./facts";

/** What we write ourselves, and what Excel adds to it when it saves; no drawings, charts, comments, links, pivots. */
const OWN_PARTS =
  /^(?:\[Content_Types\]\.xml|_rels\/\.rels|docProps\/(?:core|app|custom)\.xml|xl\/(?:workbook|styles|sharedStrings|metadata|calcChain)\.xml|xl\/theme\/[^/]+|xl\/_rels\/workbook\.xml\.rels|xl\/worksheets\/[^/]+\.xml|xl\/worksheets\/_rels\/[^/]+|xl\/tables\/[^/]+|xl\/printerSettings\/[^/]+)$/;

/** The settings stand on their sheet without a table. */
const LISTS = [tableNames.tubes, tableNames.checks, tableNames.changes];

export function isOwnBook({ file, tables }: BookFacts): boolean {
  if (!file) return false;
  const names = new Set(tables.map((table) => table.name));
  return (
    LISTS.every((name) => names.has(name)) && file.opened.parts.files.entries.every(({ name }) => OWN_PARTS.test(name))
  );
}

/** What has to be known before a large caseload is opened here; undefined where there is nothing to say. */
export function sizeWarning(facts: BookFacts): string | undefined {
  if (!isOwnBook(facts)) return undefined;
  const counted: readonly string[] = [tableNames.tubes, tableNames.checks];
  const rows = facts.tables
    .filter(({ name }) => counted.includes(name))
    .reduce((sum, { geometry }) => sum + geometry.bottom - geometry.top, 0);
  if (rows <= MOST_ROWS_WORKED_OUT_BY_THE_GRID) return undefined;
  return `This caseload has ${rows.toLocaleString("en-GB")} rows of tubes and checks. Up to ${MOST_ROWS_WORKED_OUT_BY_THE_GRID} are worked out here within seconds; this one takes longer, some thousand rows take minutes, and each check is slow. Excel is the place for it.`;
}
