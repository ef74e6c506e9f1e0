/**
 * Whether a workbook that was opened could be saved again, tried without writing: what saving compares of it is compared
 * with itself. Somebody who has worked in it for an hour must not learn then that none of it can be saved.
 */
import type { OpenedPackage } from "../../opened";
import { orRefusal, isRefusal, refuse } from "../../../xlsx/refusal";
import { compareFilters, compareNames, compareTables } from "./compare-beside";
import { Differs, type Meaning } from "./meaning";
import { Plans } from "../plan/plan";

const NOTHING: Omit<Meaning, "sheets"> = { changedParts: new Set(), tables: [], names: [], renames: [] };

export const SIGNED =
  "This workbook carries a digital signature, which any change would break. " +
  "Remove the signature in Excel (File, Info, View Signatures), save a copy, and open that.";

/** A sentence why not; undefined where it can. */
export function whyNotSaved(opened: OpenedPackage): string | undefined {
  const tried = orRefusal(() => {
    try {
      compareWithItself(opened);
    } catch (problem) {
      if (problem instanceof Differs) refuse(`${CANNOT} (${problem.where})`);
      throw problem;
    }
    return {};
  });
  return isRefusal(tried) ? tried.refused : undefined;
}

function compareWithItself(opened: OpenedPackage): void {
  if (opened.isSigned) refuse(SIGNED);
  refuseSharedParts(opened);
  const plans = new Plans(opened);
  for (const { name, kind } of opened.sheets) if (kind === "worksheet") plans.of(name);
  const patched = { chunks: undefined, meant: [], formulaCellsChanged: false, touchedChildren: new Set<string>() };
  const sheets = new Map([...plans.sheets].map(([name, plan]) => [name, { plan, patched }]));
  compareTables(opened, opened, { ...NOTHING, sheets });
  compareFilters(opened, opened, { ...NOTHING, sheets });
  compareNames(opened, opened, { ...NOTHING, sheets });
}

const CANNOT = "This workbook could be read, but not be saved again. Open it in Excel, save a copy, and open that.";

/** An entry on one would stand on the other as well. */
function refuseSharedParts({ sheets, tables }: OpenedPackage): void {
  const owners = new Map<string, string>();
  for (const { name, partName } of [
    ...sheets.map((sheet) => ({ name: `the sheet "${sheet.name}"`, partName: sheet.partName })),
    ...tables.map((table) => ({ name: `the table "${table.name}"`, partName: table.partName })),
  ]) {
    const owner = owners.get(partName.toLowerCase());
    if (owner !== undefined) refuse(`${CANNOT} (In this file ${owner} and ${name} are one and the same part.)`);
    owners.set(partName.toLowerCase(), name);
  }
}
