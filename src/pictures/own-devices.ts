/**
 * The devices of somebody's own list, one row a device: in since a day, out on a day and why, or still in. The same facts
 * as the ready-made caseload's, so that every picture reads both alike. What is missing is named and never guessed.
 */
import { reasons } from "../caseload/words";
import { guessKind } from "../columns/kind-guess";
import { textOf, type SheetValue } from "../columns/sheet-block";
import { wordKey } from "../columns/spelling";
import { addMonths } from "../maths/calendar";
import { CellError } from "../worksheet/error";
import { dayOfText } from "../worksheet/dates";
import type { Device, LeftOut, WhyLeftOut } from "./devices";
import type { IntervalUnit } from "./own-columns";
import type { Tube } from "./tubes";

/** What a word for a reason means. */
export const meanings = ["failed", "unplanned", "planned"] as const;
export type Meaning = (typeof meanings)[number];

/** Which column of the list is what; null: none. */
export interface ListColumns {
  readonly person: number | null;
  readonly kind: number | null;
  readonly shape: number | null;
  readonly lot: number | null;
  readonly status: number | null;
  readonly putIn: number | null;
  readonly cameOut: number | null;
  readonly reason: number | null;
  readonly due: number | null;
  readonly interval: { readonly column: number; readonly unit: IntervalUnit } | null;
}

export interface OwnFacts {
  readonly devices: readonly Device[];
  readonly leftOut: readonly LeftOut[];
  readonly tubes: readonly Tube[];
  /** Words for a reason that nobody has explained yet, with their rows (counted from 0), most rows first. */
  readonly openReasons: readonly { readonly word: string; readonly rows: readonly number[] }[];
}

/** Words of the ready-made caseload's own list of reasons are known; every other one is asked. */
const known = new Map<string, Meaning>(
  reasons.map(({ word, failed, unplanned }) => [word, failed ? "failed" : unplanned ? "unplanned" : "planned"]),
);

const AWAY: ReadonlySet<string> = new Set(["in hospital", "on hold", "left"]);
const FIRST_DAY_IN = 0.5;

type Row = readonly SheetValue[];

const cell = (row: Row, column: number | null): SheetValue => (column === null ? null : (row[column] ?? null));
const text = (row: Row, column: number | null): string => {
  const value = cell(row, column);
  return value instanceof CellError ? "" : textOf(value).replace(/\s+/gu, " ").trim();
};
/** A true date, or `2026-05-14`: no other text is turned into a day. */
const dayIn = (row: Row, column: number | null): number | null => {
  const value = cell(row, column);
  const day = typeof value === "string" ? dayOfText(value) : value;
  return typeof day === "number" && day > 0 ? Math.floor(day) : null;
};

const kindOf = (row: Row, column: number | null): string => {
  const word = text(row, column);
  return word === "" ? "not known" : (guessKind(word) ?? wordKey(word));
};

const added = (day: number, many: number, unit: IntervalUnit): number =>
  unit === "months" ? addMonths(day, many) : day + many * (unit === "weeks" ? 7 : 1);

/** The day on which the change is due: as the list says, else so long after putting in as it says. */
function dueOf(row: Row, columns: ListColumns, from: number | null): number | null {
  const said = dayIn(row, columns.due);
  if (said !== null || columns.interval === null || from === null) return said;
  const many = cell(row, columns.interval.column);
  const isWhole = typeof many === "number" && Number.isInteger(many) && many > 0;
  return isWhole ? added(from, many, columns.interval.unit) : null;
}

/**
 * @param rows of the list, without its header
 * @param asOf the day that counts as today
 * @param oldest days before this one are slips
 * @param said what somebody has said of words for a reason, by `wordKey`
 */
export function ownDevices(
  rows: readonly Row[],
  columns: ListColumns,
  { asOf, oldest }: { readonly asOf: number; readonly oldest: number },
  said: ReadonlyMap<string, Meaning>,
): OwnFacts {
  const newest = newestOfEach(rows, columns);
  const devices: Device[] = [];
  const leftOut: LeftOut[] = [];
  const tubes: Tube[] = [];
  const open = new Map<string, { word: string; rows: number[] }>();
  rows.forEach((row, i) => {
    if (row.every((value) => value === null || textOf(value).trim() === "")) return;
    const out = text(row, columns.cameOut);
    const isPast = out !== "" || cell(row, columns.cameOut) instanceof CellError;
    const person = columns.person === null ? `row ${i}` : wordKey(text(row, columns.person));
    const from = dayIn(row, columns.putIn);
    const status = wordKey(text(row, columns.status));
    const reason = text(row, columns.reason);
    const about = {
      person,
      kind: kindOf(row, columns.kind),
      shape: wordKey(text(row, columns.shape)),
      lot: text(row, columns.lot),
      reason,
    };
    const isInUse = !isPast && !AWAY.has(status) && newest(row, i);
    if (isInUse) {
      const day = dueOf(row, columns, from);
      tubes.push({
        day,
        person,
        kind: about.kind,
        agreed: day !== null && from !== null && day > from ? day - from : null,
      });
    }
    const leave = (why: WhyLeftOut): void => void leftOut.push({ table: isPast ? "changes" : "tubes", row: i, why });
    if (person === "") return leave("no ID");
    if (from === null || from > asOf || from < oldest) return leave("dates missing or wrong");
    if (!isPast) {
      if (AWAY.has(status)) return leave("no day since when");
      if (!isInUse) return leave("a later row of the same person");
      devices.push({
        ...about,
        ...{ from, until: null, isInUse, failed: false, unplanned: false, reason: "" },
        days: Math.max(FIRST_DAY_IN, asOf - from),
      });
      return;
    }
    const until = dayIn(row, columns.cameOut);
    if (until === null || until < from || until > asOf) return leave("dates missing or wrong");
    const key = wordKey(reason);
    const meaning = known.get(key) ?? said.get(key);
    if (meaning === undefined) {
      if (key !== "") {
        const one = open.get(key) ?? { word: reason, rows: [] };
        one.rows.push(i);
        open.set(key, one);
      }
      return leave("reason missing or not known");
    }
    devices.push({
      ...about,
      ...{ from, until, isInUse: false },
      days: Math.max(FIRST_DAY_IN, until - from),
      failed: meaning === "failed",
      unplanned: meaning !== "planned",
    });
  });
  return { devices, leftOut, tubes, openReasons: [...open.values()].sort((a, b) => b.rows.length - a.rows.length) };
}

/** Of several rows of one person without a day out only the newest can still be in. */
function newestOfEach(rows: readonly Row[], columns: ListColumns): (row: Row, i: number) => boolean {
  if (columns.person === null) return () => true;
  const newest = new Map<string, { from: number; i: number }>();
  rows.forEach((row, i) => {
    if (text(row, columns.cameOut) !== "") return;
    const person = wordKey(text(row, columns.person));
    const from = dayIn(row, columns.putIn) ?? -1;
    const other = newest.get(person);
    if (!other || from > other.from) newest.set(person, { from, i });
  });
  return (row, i) => {
    const person = wordKey(text(row, columns.person));
    return person === "" || newest.get(person)?.i === i;
  };
}
