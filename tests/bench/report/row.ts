/** What a job of the benchmarks reports: one row for each thing that a person waits for. */

export type Unit = "ms" | "MB" | "KB" | "s";

/** A figure that is meant to stay below another; `is` left out: the row's ratio. */
export interface Limit {
  readonly what: string;
  readonly most: number;
  readonly is?: number | undefined;
}

export interface Row {
  /** What is done, in a few words; with `size` and `peer` it tells the row from all others of its job. */
  readonly what: string;
  readonly size: string;
  readonly unit: Unit;
  readonly ours: number;
  readonly peer?: string;
  readonly theirs?: number;
  /** Ours over theirs if not said otherwise: below 1 is quicker, or less. `--check` compares it with the committed one. */
  readonly ratio?: number;
  readonly limits?: readonly Limit[];
  readonly remark?: string;
}

export interface How {
  /** Fewer sizes and rounds: minutes become seconds, figures rougher. */
  readonly quick: boolean;
  /** Tells a row as soon as it is measured. */
  readonly row: (row: Row) => void;
  /** Tells in words what could not be measured here. */
  readonly notMeasured: (sentence: string) => void;
}

export interface Job {
  /** By which it is chosen: `npm run bench -- files`. */
  readonly name: string;
  readonly title: string;
  /** What is done and against whom; then what the rows leave out. Whole sentences. */
  readonly about: string;
  readonly leavesOut: string;
  /** Not part of a run of everything: it takes long by itself. */
  readonly onlyByName?: boolean;
  readonly run: (how: How) => Promise<void> | void;
}

export const ratioOf = ({ ratio, ours, theirs }: Row): number | undefined =>
  ratio ?? (theirs === undefined ? undefined : ours / theirs);

/** The limits that a row does not keep. */
export const missed = (row: Row): readonly Limit[] =>
  (row.limits ?? []).filter(({ most, is }) => (is ?? ratioOf(row) ?? Infinity) > most);
