import type { DefinedNameEdit, PackageEdits, Patched, PatchReport } from "./edits";
import type { OpenedPackage } from "./opened";
import { withNewSheets, type WithSheets } from "./new-sheets";
import { filterNames } from "./patch/tables/filter-names";
import { patchDefinedNames } from "./patch/tables/defined-names";
import { Outgoing } from "./patch/outgoing";
import { patchSheet, type PatchedSheet } from "./patch/cells/patch-sheet";
import { patchTable } from "./patch/tables/patch-table";
import { planSheet, Plans, type SheetPlan } from "./patch/plan/plan";
import { planTables, renamesOf } from "./patch/plan/plan-tables";
import { readBack } from "./patch/check/read-back";
import { WorkbookResources } from "./patch/styles/resources";
import { SIGNED } from "./patch/check/trial";
import type { Meaning } from "./patch/check/meaning";
import { orRefusal, refuse, type Refusal } from "../xlsx/refusal";
import { ranToItsEnd, type Sliced } from "../xlsx/slices";

/**
 * Saves the changes into a copy of the opened package, reads that copy back and compares; or says why not.
 *
 * Parts that do not change keep their bytes, packed as they came, and their order; changed parts are packed anew under the date they had; new parts come last. Cached results are always written, and `calcPr` is left alone:
 * `fullCalcOnLoad` would turn every function of the add-in into #NAME? for a reader who does not have it.
 */
export function patchPackage(opened: OpenedPackage, edits: PackageEdits): Patched | Refusal {
  return orRefusal(() => {
    const base = ranToItsEnd(withNewSheets(opened, edits.newSheets ?? []));
    const patching = ranToItsEnd(patch(base.opened, edits));
    const { outgoing } = patching;
    const bytes = patching.isChanged ? outgoing.write() : base.opened.parts.files.bytes.slice();
    if (patching.isChanged) ranToItsEnd(readBack(base.opened, bytes, patching.meaning));
    return patchedWith(patching, bytes, base);
  });
}

/** What goes out, before it is packed. */
export interface Patching {
  readonly outgoing: Outgoing;
  readonly isChanged: boolean;
  readonly meaning: Meaning;
  readonly report: PatchReport;
}

/** @param base what came in before, so that it could be filled */
export const patchedWith = ({ outgoing, report }: Patching, bytes: Uint8Array, base: WithSheets): Patched => ({
  bytes,
  changedParts: [...new Set([...base.changedParts, ...outgoing.changed])],
  report: { ...report, addedParts: [...base.addedParts, ...report.addedParts] },
});

/** Sheets that are to be added stand in the package already. A sign of life now and then: the share that is done. */
export function* patch(opened: OpenedPackage, edits: PackageEdits): Sliced<Patching> {
  const { files, workbookPart } = opened.parts;
  const plans = new Plans(opened);
  for (const [name, sheetEdits] of edits.sheets ?? []) planSheet(plans.of(name), sheetEdits);
  const tables = planTables(opened, edits.tables ?? [], plans);
  const renames = renamesOf(tables);
  if (renames.length > 0) {
    for (const sheet of opened.sheets) if (sheet.kind === "worksheet") plans.of(sheet.name).renames = renames;
  }
  const names: readonly DefinedNameEdit[] = [...filterNames(opened, plans), ...(edits.definedNames ?? [])];

  const outgoing = new Outgoing(files, workbookPart);
  const resources = new WorkbookResources(opened);
  const sheets = new Map<string, { readonly plan: SheetPlan; readonly patched: PatchedSheet }>();
  for (const [name, plan] of plans.sheets) {
    const patched = yield* patchSheet(plan, resources);
    if (patched.chunks) outgoing.changeBytes(plan.facts.frame.part, patched.chunks);
    sheets.set(name, { plan, patched });
  }
  for (const table of opened.tables) {
    const plan = tables.find((one) => one.table === table);
    if (!plan && renames.length === 0) continue;
    const source = files.xml(table.partName);
    outgoing.change(source, patchTable(source, plan, renames));
  }
  if (names.length > 0 || renames.length > 0) {
    const source = files.xml(workbookPart);
    outgoing.change(source, patchDefinedNames(source, names, opened.sheets, renames));
  }
  resources.write(outgoing);
  if ([...sheets.values()].some(({ patched }) => patched.formulaCellsChanged)) outgoing.removeCalculationChain();

  const isChanged = outgoing.changed.length > 0;
  if (isChanged && opened.isSigned) refuse(SIGNED);
  return {
    outgoing,
    isChanged,
    meaning: { changedParts: new Set(outgoing.changed), sheets, tables, names, renames },
    report: {
      cellsWritten: [...sheets.values()].reduce((sum, { patched }) => sum + patched.meant.length, 0),
      stylesAdded: resources.stylesAdded,
      addedParts: outgoing.added,
      removedParts: outgoing.removed,
      renamedColumns: renames,
    },
  };
}
