/**
 * Which column of somebody's own list tells what the pictures need beside the roles of *Add columns*: whose the device was,
 * when it came out and why, how long was agreed. By headers alone: one that may mean two things gives no answer.
 */
import { plainHeader } from "../columns/header-words";

/** What the pictures look for in a list, and tell whether they found it. */
export type ListPart = "person" | "kind" | "shape" | "lot" | "putIn" | "cameOut" | "reason" | "due";

export type OwnPart = "person" | "putIn" | "cameOut" | "reason" | "lot" | "interval";

const words: { readonly [P in OwnPart]: readonly string[] } = {
  person: [
    ...["id", "patient id", "person id", "person", "patient", "client id", "identifier", "initials", "number"],
    ...["nhs number", "hospital number", "hosp no", "hospital no", "mrn", "kurzel", "kennung"],
  ],
  /** Only beside the day on which it came out: alone it may be the day of the opening, or water. */
  putIn: [
    ...["in", "date in", "put in", "put in on", "date put in", "device in", "inserted", "inserted on", "date inserted"],
    ...["fitted", "fitted on", "date fitted", "placed", "placed on", "in on"],
  ],
  cameOut: [
    ...["came out", "came out on", "date out", "out on", "removed", "removed on", "date removed", "removal date"],
    ...["taken out", "taken out on", "date of removal", "device out", "tube out on"],
  ],
  reason: [
    ...["reason", "reason for change", "reason for removal", "reason out", "reason changed", "why", "why out"],
    ...["why it came out", "why changed", "cause", "grund", "motif", "motivo", "reden"],
  ],
  lot: ["lot", "lot no", "lot number", "batch", "batch no", "batch number"],
  interval: [...["change every", "change interval", "interval", "own interval", "planned interval", "agreed interval"]],
};

/** Units of an interval stand in its header, or it is not read: 6 may be weeks. */
const units = { days: "days", day: "days", weeks: "weeks", week: "weeks", months: "months", month: "months" } as const;
export type IntervalUnit = (typeof units)[keyof typeof units];

export interface OwnColumns {
  readonly person: number | null;
  readonly putIn: number | null;
  readonly cameOut: number | null;
  readonly reason: number | null;
  readonly lot: number | null;
  readonly interval: { readonly column: number; readonly unit: IntervalUnit } | null;
}

/** @param headers as they stand, from the left */
export function ownColumns(headers: readonly string[]): OwnColumns {
  const plain = headers.map(plainHeader);
  const only = (part: OwnPart): number | null => {
    const found = plain.flatMap((text, i) => (words[part].includes(text) ? [i] : []));
    return found.length === 1 ? found[0]! : null;
  };
  const intervals = plain.flatMap((text, column) => {
    const parts = text.split(" ");
    const unit = Object.hasOwn(units, parts.at(-1)!) ? units[parts.at(-1) as keyof typeof units] : undefined;
    return unit && words.interval.includes(parts.slice(0, -1).join(" ")) ? [{ column, unit }] : [];
  });
  const cameOut = only("cameOut");
  return {
    person: only("person"),
    putIn: cameOut === null ? null : only("putIn"),
    cameOut,
    reason: only("reason"),
    lot: only("lot"),
    interval: intervals.length === 1 ? intervals[0]! : null,
  };
}
