/**
 * What a person can do, as data: the pane draws its menu and screens from these. An action looks at the workbook
 * through the port (survey), works out what would happen (plan, pure), and the pane shows that before anything is
 * applied.
 */
import type { Change, Place, Receipt, StepKind, Workbook } from "../workbook/port";

/** The pane's sections, in their order. */
export type Section =
  "Now" | "Caseload" | "Convert" | "Show only" | "Functions" | "Clinic settings" | "Help and cautions";

/** Why something cannot be done, and what to do. Nothing has been touched. */
export interface Problem {
  readonly outcome: "problem";
  readonly sentence: string;
  /** Where to look; the pane can reveal it. */
  readonly where?: Place;
}

/** What would happen, in numbers, before it happens. */
export interface Planned {
  readonly outcome: "planned";
  readonly change: Change;
  /** The preview, sentence by sentence; what is not usable comes first. */
  readonly says: readonly string[];
}

/** What to say once it has been tried, and where to look. */
export interface Afterwards {
  readonly outcome: Receipt["outcome"];
  readonly sentences: readonly string[];
  readonly where: Place | null;
  /** Something stands that can be taken back. */
  readonly canTakeBack: boolean;
}

export interface Action<Survey, Asked, Choices, Plan extends Planned> {
  readonly key: string;
  readonly section: Section;
  readonly label: string;
  /** One sentence under the label. */
  readonly help: string;
  /** Steps that the host must be able to do; ask `workbook.can` for each. */
  readonly needs: readonly StepKind[];
  /** Looks, and changes nothing. */
  readonly survey: (workbook: Workbook, asked: Asked) => Promise<Survey>;
  /** Quick enough to run at every press in the pane. */
  readonly plan: (survey: Survey, choices: Choices) => Plan | Problem;
  readonly afterwards: (plan: Plan, receipt: Receipt) => Afterwards;
}

export const problem = (sentence: string, where?: Place): Problem =>
  where ? { outcome: "problem", sentence, where } : { outcome: "problem", sentence };
