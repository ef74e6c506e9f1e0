/**
 * The saved copy, read again as a stranger's file and compared with what was meant. Where the two differ the copy is not
 * offered: a fault of ours must not end in somebody's workbook.
 */
import type { OpenedPackage } from "../../opened";
import { opening } from "../../open-package";
import { factsOf } from "../../parts/workbook-parts";
import { Refused } from "../../../xlsx/refusal";
import { compareFilters, compareNames, compareTables } from "./compare-beside";
import { compareCells } from "./compare-cells";
import { Differs, differs, type Meaning } from "./meaning";
import type { PatchedSheet } from "../cells/patch-sheet";
import type { SheetPlan } from "../plan/plan";
import type { Unpacked } from "../../../xlsx/zip/unpack";

/** A sign of life now and then: the share that is done. */
export function* readBack(
  before: OpenedPackage,
  bytes: Uint8Array,
  meaning: Meaning,
  unpacked?: Unpacked,
): Generator<number, void, void> {
  let after: OpenedPackage;
  try {
    after = yield* opening(bytes, before.parts.limits, { earlier: before, ...(unpacked && { unpacked }) });
  } catch (problem) {
    if (problem instanceof Refused && !(problem instanceof Differs)) differs(problem.message);
    throw problem;
  }
  compareParts(before, after, meaning);
  for (const { name, kind, partName } of before.sheets) {
    if (kind !== "worksheet") continue;
    const changed = meaning.sheets.get(name);
    if (!changed || !meaning.changedParts.has(partName)) {
      if (after.store(name) !== before.store(name)) differs(`the sheet "${name}"`);
      continue;
    }
    yield* compareCells(before, after, name, changed.patched, meaning.renames);
    compareSurroundings(before, after, changed.plan, changed.patched);
  }
  compareTables(before, after, meaning);
  compareFilters(before, after, meaning);
  compareNames(before, after, meaning);
}

/** Every part that nobody changed is still packed as it was, to the byte. */
export function compareParts(before: OpenedPackage, after: OpenedPackage, meaning: Meaning): void {
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
  const { name } = plan.sheet;
  const isKept = (local: string): boolean => local !== "sheetData" && !patched.touchedChildren.has(local);
  const textsOf = (opened: OpenedPackage): string[] => {
    const { frame } = factsOf(opened, name);
    const children = frame.children.filter((child) => isKept(child.name.local));
    return children.map((child) => frame[child.place].slice(child.start, child.end));
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
