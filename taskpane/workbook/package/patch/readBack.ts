/**
 * The saved copy, read again as a stranger's file and compared with what was meant. Where the two differ the copy is not
 * offered: a fault of ours must not end in somebody's workbook.
 */
import type { OpenedPackage } from "../opened";
import { open } from "../openPackage";
import { factsOf } from "../parts/workbookParts";
import { Refused } from "../refusal";
import { compareFilters, compareNames, compareTables } from "./compareBeside";
import { SheetComparer } from "./compareCells";
import { Differs, differs, type Meaning } from "./meaning";
import type { PatchedSheet } from "./patchSheet";
import type { SheetPlan } from "./plan";

export function readBack(before: OpenedPackage, bytes: Uint8Array, meaning: Meaning): void {
  const comparers = new Map<string, SheetComparer>();
  for (const [name, { plan, patched }] of meaning.sheets) {
    if (meaning.changedParts.has(plan.sheet.partName))
      comparers.set(name, new SheetComparer(before, name, patched, meaning.renames));
  }
  let after: OpenedPackage;
  try {
    after = open(bytes, before.parts.limits, {
      earlier: before,
      onCell: (sheetName, cell) => (comparers.get(sheetName) ?? differs(`the sheet "${sheetName}"`)).next(cell),
    });
  } catch (problem) {
    if (problem instanceof Refused && !(problem instanceof Differs)) differs(problem.message);
    throw problem;
  }
  compareParts(before, after, meaning);
  for (const [name, comparer] of comparers) {
    comparer.end(after);
    const { plan, patched } = meaning.sheets.get(name) as { plan: SheetPlan; patched: PatchedSheet };
    compareSurroundings(before, after, plan, patched);
  }
  compareTables(before, after, meaning);
  compareFilters(before, after, meaning);
  compareNames(before, after, meaning);
}

/** Every part that nobody changed is still packed as it was, to the byte. */
function compareParts(before: OpenedPackage, after: OpenedPackage, meaning: Meaning): void {
  for (const { name } of before.parts.files.entries) {
    if (meaning.changedParts.has(name)) continue;
    if (after.parts.files.content(name) !== before.parts.files.content(name)) differs(name);
  }
  for (const { name } of after.parts.files.entries) {
    if (!meaning.changedParts.has(name) && before.parts.files.find(name) === undefined) differs(name);
  }
  for (let style = 0; style < before.styleCount; style++) {
    if (after.numberFormat(style) !== before.numberFormat(style)) differs(`cell style ${style}`);
  }
}

function compareSurroundings(
  before: OpenedPackage,
  after: OpenedPackage,
  plan: SheetPlan,
  patched: PatchedSheet,
): void {
  const { name, partName } = plan.sheet;
  const isKept = (local: string): boolean => local !== "sheetData" && !patched.touchedChildren.has(local);
  const textsOf = (opened: OpenedPackage): string[] => {
    const { text } = opened.parts.files.xml(partName);
    const children = factsOf(opened, name).children.filter((child) => isKept(child.name.local));
    return children.map((child) => text.slice(child.start, child.end));
  };
  const was = textsOf(before);
  const is = textsOf(after);
  if (was.length !== is.length || was.some((text, index) => text !== is[index]))
    differs(`the sheet "${name}" beside its cells`);

  const rowsWere = before.layout(name).rows;
  const rowsAre = after.layout(name).rows;
  for (const row of new Set([...rowsWere.keys(), ...rowsAre.keys(), ...plan.hiddenRows.keys()])) {
    const isHidden = plan.hiddenRows.get(row) ?? rowsWere.get(row)?.isHidden ?? false;
    const isSame = rowsWere.get(row)?.height === rowsAre.get(row)?.height;
    if ((rowsAre.get(row)?.isHidden ?? false) !== isHidden || !isSame) differs(`row ${row} of the sheet "${name}"`);
  }
}
