/** What a clinic has entered in an older caseload, for one that is set up anew from it. */
import type { ClinicSettingName } from "../settings/index";
import type { Cell } from "../worksheet/cell";
import type { RowsTable } from "./names";
import type { CaseloadRows } from "./rows";

export interface CarriedSetting {
  /** As it stands, also where it is none that is allowed: the sheet asks who agreed to it. */
  readonly value: Cell;
  readonly agreedBy: Cell;
  readonly agreedOn: Cell;
}

/** A typed column that is none of ours. */
export interface OwnColumn {
  readonly header: string;
  readonly format: string;
  /** A cell for each row of its table. */
  readonly cells: readonly Cell[];
}

/** A line of the table of reasons on the settings sheet. */
export interface CarriedReason {
  readonly word: Cell;
  readonly failed: Cell;
  readonly unplanned: Cell;
}

export interface Carried {
  readonly rows: CaseloadRows;
  /** A setting that is not among them gets its default. */
  readonly settings: ReadonlyMap<ClinicSettingName, CarriedSetting>;
  /** Null: those of a new caseload. */
  readonly reasons: readonly CarriedReason[] | null;
  readonly own: { readonly [T in RowsTable]: readonly OwnColumn[] };
  /** The day on which its people were invented; null where they are real. */
  readonly inventedOn: number | null;
}
