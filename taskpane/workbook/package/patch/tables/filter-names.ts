/** A sheet's own filter has a hidden name for its range (`_xlnm._FilterDatabase`), which Excel keeps in step with it. */
import { columnLetters, parseRange } from "../../addresses";
import type { DefinedNameEdit } from "../../edits";
import type { OpenedPackage } from "../../opened";
import type { Plans } from "../plan/plan";

const NAME = "_xlnm._FilterDatabase";

export function filterNames(opened: OpenedPackage, plans: Plans): DefinedNameEdit[] {
  const edits: DefinedNameEdit[] = [];
  for (const [sheetName, { filter, sheet }] of plans.sheets) {
    if (!filter) continue;
    const hasName = opened.definedNames.some((one) => one.name === NAME && one.sheetName === sheetName);
    if (filter.remove) {
      if (hasName) edits.push({ name: NAME, sheetName, text: null });
    } else if (filter.ref !== undefined && filter.ref !== sheet.filter?.ref) {
      edits.push({ name: NAME, sheetName, text: `${quoted(sheetName)}!${fixed(filter.ref)}`, isHidden: true });
    }
  }
  return edits;
}

function quoted(sheetName: string): string {
  return `'${sheetName.replaceAll("'", "''")}'`;
}

function fixed(ref: string): string {
  const range = parseRange(ref);
  if (!range) return ref;
  return `$${columnLetters(range.left)}$${range.top}:$${columnLetters(range.right)}$${range.bottom}`;
}
