/** What the pictures are drawn from, of a ready-made caseload or of somebody's own list. */
import type { Check, LossLimits } from "../../../src/pictures/checks";
import type { Facts } from "../../../src/pictures/devices";
import type { ListPart } from "../../../src/pictures/own-columns";
import type { Tube } from "../../../src/pictures/tubes";

export interface Pictured extends Facts {
  readonly is: "pictured";
  /** The day that counts as today in the workbook. */
  readonly asOf: number;
  /** Tubes in use, by what the list says: due, or booked, or neither. */
  readonly tubes: readonly Tube[];
  /** Null where the list holds no checks. */
  readonly checks: readonly Check[] | null;
  readonly lossLimits: LossLimits;
  /** Rows as people count them, for those that are left out. */
  readonly sheetRows: { readonly changes: readonly number[]; readonly tubes: readonly number[] };
  /** What was read of somebody's own list; null for the ready-made caseload. */
  readonly own: OwnSource | null;
}

export interface OwnSource {
  /** "table Caseload on sheet Adults" */
  readonly label: string;
  /** What has been found in it, as "put in: Device in". */
  readonly found: readonly { readonly part: ListPart; readonly header: string }[];
  readonly missing: readonly ListPart[];
  /** Words for a reason that nobody has explained yet. */
  readonly openReasons: readonly { readonly key: string; readonly word: string; readonly rows: readonly number[] }[];
}

/** No picture can be drawn, and why. */
export interface NoPictures {
  readonly is: "none";
  readonly sentence: string;
}
