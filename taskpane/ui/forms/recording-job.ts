import type { ComponentType } from "react";
import type { Overview, Workbook } from "../../workbook/port";

/** What can be written down from Today: its name, its words and its form, in one object (`ui/<job>/job.ts`). */
export interface RecordingJob {
  /** The job's one name: its folder's, in camel case. */
  readonly key: string;
  /** What its press says, under "Write down". */
  readonly label: string;
  /** What stands above its form. */
  readonly heading: string;
  readonly Form: ComponentType<RecordingProps>;
}

/** What a form gets once the list has been looked at. */
export interface RecordingFormProps<Survey> extends RecordingProps {
  readonly survey: Survey;
  readonly ways: FormWays;
}

export interface FormWays {
  /** Leads away from the form; once it is done a new one begins. */
  readonly again: (isDone: boolean) => void;
  /** Looks at the list once more, entries kept. Gives why it could not, or null. */
  readonly renew: () => Promise<string | null>;
}

/** What Today hands to each form. */
export interface RecordingProps {
  readonly workbook: Workbook;
  readonly overview: Overview;
  readonly today: number;
  readonly locale: string;
  /** Whether the clinic has agreed its settings, in a sentence. */
  readonly agreed: string;
}
