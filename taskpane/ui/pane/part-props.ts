import type { pane } from "../../texts/pane";
import type { Overview, Workbook } from "../../workbook/port";
import type { OpenNew } from "./open-new";

export type PlaceKey = "tubeOut" | "today" | "list" | "pictures" | "more";
export type PartKey = keyof typeof pane.leads;

/** Leads to another place of the pane. */
export type Go = (place: PlaceKey, part?: PartKey) => void;

/** How a typed day and month are read. */
export type DayFirstWord = "day" | "month" | "refuse";

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
