import type { Overview, Workbook } from "../../workbook/port";
import type { DayFirstWord } from "../help/Help";
import type { OpenNew } from "./open-new";
import type { Part, Place } from "./places";

/** Leads to another place of the pane. */
export type Go = (place: Place["key"], part?: Part["key"]) => void;

/** What a part of the pane can be told; each takes what it uses. */
export interface PartProps {
  /** Null while the host is starting. */
  readonly workbook: Workbook | null;
  readonly overview: Overview | null;
  /** Today as a day number, by the computer's clock. */
  readonly today: number;
  /** How dates are written on screen: the host's language. */
  readonly locale: string;
  readonly version: string;
  /** How typed dates are read; null where the host decides (Excel). */
  readonly dayFirst: DayFirstWord | null;
  readonly openNew: OpenNew;
  readonly go: Go;
  /** False while another part is shown: what follows the selection then rests. */
  readonly isShown: boolean;
}
