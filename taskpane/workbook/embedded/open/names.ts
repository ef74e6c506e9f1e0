/** Defined names of a file in the grid. As_of is the one that stands for today. */
import { AS_OF } from "../../../../src/columns/as-of";
import { TODAY_IN_GRID, WHOLE_WORKBOOK } from "../book/names";
import type { OpenedWorkbook } from "../../package";
import type { NamedFormula } from "../formulas/readable";
import { tokens } from "../formulas/tokens";

const TODAY_TEXT = /^\s*TODAY\s*\(\s*\)\s*$/i;

/** Our choice: the grid goes through all of its names at every formula; workbooks tried have some hundreds. */
const MOST_NAMES = 5_000;

/**
 * Names, in lower case, that stay in the file only, where there are too many: those that cells use come first. Formulas
 * with one of the others show their stored values.
 */
export function namesLeftOut(opened: OpenedWorkbook): ReadonlySet<string> {
  const { definedNames, sheets } = opened;
  if (definedNames.length <= MOST_NAMES) return new Set();
  const used = new Set<string>();
  for (const { name, kind } of sheets) {
    if (kind !== "worksheet") continue;
    for (const { formula } of opened.cells(name)) {
      if (formula) for (const { text } of tokens(formula.text)) used.add(text.toLowerCase());
    }
  }
  const spelled = [...new Set(definedNames.map(({ name }) => name.toLowerCase()))];
  const inOrder = [...spelled.filter((name) => used.has(name)), ...spelled.filter((name) => !used.has(name))];
  return new Set(inOrder.slice(MOST_NAMES));
}

export interface GridName {
  readonly id: string;
  readonly name: string;
  readonly formulaOrRefString: string;
  readonly localSheetId: string;
}

/** One day for the whole workbook, set by the page (functions/grid.ts says why). */
export const isTodayName = (name: string, text: string): boolean =>
  name.toLowerCase() === AS_OF.toLowerCase() && TODAY_TEXT.test(text.replace(/^=/, ""));

const REFERENCE = /^(?:'(?:[^']|'')+'|[^'!"(),\s]+)!\$?[A-Za-z]{1,3}\$?\d+(?::\$?[A-Za-z]{1,3}\$?\d+)?$/;

/** The engine tells references from formulas by the "=". */
const asEngineText = (text: string): string => (REFERENCE.test(text) ? text : `=${text}`);

export function gridNames(
  named: readonly NamedFormula[],
  sheetIdOf: (sheetName: string) => string | undefined,
): Record<string, GridName> {
  const names: Record<string, GridName> = {};
  // the engine knows one name of a spelling, the last one: a sheet's own, as copying a sheet in Excel leaves them behind,
  // must not stand for the whole workbook's
  const wholeLast = [...named].sort((one, other) => Number(!one.name.sheetName) - Number(!other.name.sheetName));
  wholeLast.forEach(({ name, text }, index) => {
    if (text === null || name.name.startsWith("_xlnm") || name.name.startsWith("_xlchart")) return;
    const scope = name.sheetName === undefined ? WHOLE_WORKBOOK : sheetIdOf(name.sheetName);
    if (scope === undefined) return;
    const id = `name${index}`;
    const formulaOrRefString = isTodayName(name.name, text) ? TODAY_IN_GRID : asEngineText(text);
    names[id] = { id, name: name.name, formulaOrRefString, localSheetId: scope };
  });
  return names;
}
