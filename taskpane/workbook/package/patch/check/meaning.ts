/** What a saved copy must hold when it is read again, and what is said when it does not. */
import type { DefinedNameEdit } from "../../edits";
import type { ColumnRename } from "../../../../../src/formula/renaming";
import { Refused } from "../../../xlsx/refusal";
import type { PatchedSheet } from "../cells/patch-sheet";
import type { SheetPlan } from "../plan/plan";
import type { TablePlan } from "../plan/plan-tables";

export interface Meaning {
  readonly changedParts: ReadonlySet<string>;
  readonly sheets: ReadonlyMap<string, { readonly plan: SheetPlan; readonly patched: PatchedSheet }>;
  readonly tables: readonly TablePlan[];
  readonly names: readonly DefinedNameEdit[];
  readonly renames: readonly ColumnRename[];
}

const NOT_SAVED =
  "The changed workbook did not read back as it was meant, so it was not saved; the file you opened is as it was.";

/** The saved copy is not what was meant, and where. */
export class Differs extends Refused {
  constructor(readonly where: string) {
    super(`${NOT_SAVED} (${where})`);
  }
}

export function differs(where: string): never {
  throw new Differs(where);
}
