/**
 * What a person can do, as data. An action looks at the workbook through the port (survey), works out what would happen
 * (plan, pure), and the pane shows that before anything is applied. Where it stands in the pane, and under which words,
 * is the pane's (taskpane/ui/pane/places.ts).
 */
import type { Change, Place, Receipt, Workbook } from "../workbook/port";

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
  /** Looks, and changes nothing. */
  readonly survey: (workbook: Workbook, asked: Asked) => Promise<Survey>;
  /** Quick enough to run at every press in the pane. */
  readonly plan: (survey: Survey, choices: Choices) => Plan | Problem;
  readonly afterwards: (plan: Plan, receipt: Receipt) => Afterwards;
}

/** Why this host cannot do it at all; null where it can. */
export function cannotDo(workbook: Pick<Workbook, "can">, { steps }: Change): string | null {
  const answers = steps.map(({ kind }) => workbook.can(kind));
  return answers.find((answer) => answer !== true) ?? null;
}

export const problem = (sentence: string, where?: Place): Problem =>
  where ? { outcome: "problem", sentence, where } : { outcome: "problem", sentence };
