import type { Overview, Workbook } from "../../workbook/port";

/** What Today hands to each form. */
export interface JobProps {
  readonly workbook: Workbook;
  readonly overview: Overview;
  readonly today: number;
  readonly locale: string;
  /** Whether the clinic has agreed its settings, in a sentence. */
  readonly agreed: string;
}
