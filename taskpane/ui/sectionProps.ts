import type { Overview, Workbook } from "../workbook/port";
import type { DayFirstWord } from "./help/Help";
import type { OpenNew } from "./openNew";

/** What a section of the pane can be told; each part takes what it uses. */
export interface SectionProps {
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
  /** False while another part is shown: what follows the selection then rests. */
  readonly isShown: boolean;
}
