/** Whether a workbook is a ready-made caseload and nothing else: then rows may move in it, because nothing can be left behind. */
import { MOST_ROWS_LEFT_TO_THE_ENGINE } from "../../../src/caseload/limits";
import { tableNames } from "../../../src/caseload/names";
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

/** What has to be known before a large caseload is opened that is not worked out by its own rules; else undefined. */
export function sizeWarning(facts: BookFacts): string | undefined {
  if (!isOwnBook(facts)) return undefined;
  const counted: readonly string[] = [tableNames.tubes, tableNames.checks];
  const rows = facts.tables
    .filter(({ name }) => counted.includes(name))
    .reduce((sum, { geometry }) => sum + geometry.bottom - geometry.top, 0);
  if (rows <= MOST_ROWS_LEFT_TO_THE_ENGINE) return undefined;
  return `This caseload has ${count(rows)} rows of tubes and checks, and its formulas are not as they were set up. Then more than ${MOST_ROWS_LEFT_TO_THE_ENGINE} rows take this page minutes. Excel is the place for it.`;
}

/** The same where a formula was changed while the workbook stood here. */
export function releasedWarning(rows: number): string | undefined {
  if (rows <= MOST_ROWS_LEFT_TO_THE_ENGINE) return undefined;
  return `A hidden column, a name or a formula of this caseload was changed. With ${count(rows)} rows this page now takes minutes to work it out. Undo it, or go on in Excel.`;
}

const count = (rows: number): string => rows.toLocaleString("en-GB");
