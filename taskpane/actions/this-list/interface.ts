/**
 * This list: what a person says that its columns and words are, kept in the workbook and nowhere else.
 *
 * It is kept by a press of its own, not along with the first job: a sheet in somebody's workbook is more than they asked
 * for when they added a column, and what is said here can be looked at before it counts for everything else.
 */
import type { Remembered } from "../../../src/columns/remembered";
import type { Role } from "../../../src/columns/role";
import type { KindKey } from "../../../src/settings/kinds";
import type { Planned } from "../action";
import type { Survey } from "../add-columns/interface";
import type { Memory } from "../list/memory";

export interface ThisListChoices {
  /** What each column is, by its place in the list; left out: nothing of ours. */
  readonly meanings: Readonly<Record<number, Role>>;
  /** By the word in small letters. */
  readonly words: Readonly<Record<string, KindKey>>;
}

export interface ThisListSurvey extends Pick<Survey, "lists" | "list" | "sentence"> {
  readonly memory: Memory;
  /** Numbers and lengths that columns of ours were made with, or that were kept before. */
  readonly numbers: Remembered["numbers"];
  readonly lengths: readonly number[];
  readonly proposal: ThisListChoices;
}

export interface ThisListPlan extends Planned {
  readonly remembered: Remembered;
  /** Lines for this list. */
  readonly lines: number;
  /** The workbook keeps exactly this already. */
  readonly isKept: boolean;
}
