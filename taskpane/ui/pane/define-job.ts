/** What a job of the pane is: its name, its words and its screen, in one object (`ui/<job>/job.ts`). */
import { lazy, type ComponentType } from "react";
import type { Overview, Workbook } from "../../workbook/port";
import type { OpenNew } from "./open-new";

export interface Job {
  /** The job's one name: its folder's, in camel case. */
  readonly key: string;
  /** What its press and its heading say. */
  readonly label: string;
  /** One sentence under its heading. */
  readonly lead: string;
  /** What is shown. */
  readonly Content: ComponentType<JobProps>;
}

/** Leads to another job, in whichever place it stands. */
export type Go = (job: Job) => void;

/** How a typed day and month are read. */
export type DayFirstWord = "day" | "month" | "refuse";

/** What a job can be told; each takes what it uses. */
export interface JobProps {
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
  /** False while another job is shown: what follows the selection then rests. */
  readonly isShown: boolean;
}

/** A screen that is fetched when it is first shown, so that the pane stands at once. */
export const fetched = (load: () => Promise<ComponentType<JobProps>>): Job["Content"] =>
  lazy(async () => ({ default: await load() }));
