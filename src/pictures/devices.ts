/**
 * The facts behind every picture, once: what each device of the caseload lived through. Read from the columns that the
 * caseload's own formulas work out (*Days in place*, *Failed*, *Unplanned*), so that no rule of theirs is written again.
 *
 * Tubes still in count with the days up to now. A row that cannot be used is told with its reason and never guessed.
 */
import type { SheetValue } from "../columns/sheet-block";
import type { Header } from "../caseload/headers";
import { CellError } from "../worksheet/error";

export interface Device {
  readonly person: string;
  /** As the list says: "balloon", "bumper"; "not known" where it does not. */
  readonly kind: string;
  readonly shape: string;
  readonly lot: string;
  /** Day numbers; `until` is the day it came out, or null where that is not written down. */
  readonly from: number;
  readonly until: number | null;
  /** In, and the person on the list and here: false also for one whose person is away or has left. */
  readonly isInUse: boolean;
  /** Days in place, up to now for one that is still in; half a day for one that came out on its first. */
  readonly days: number;
  readonly failed: boolean;
  readonly unplanned: boolean;
  /** Why it came out, as the list says; "" while it is in. */
  readonly reason: string;
}

export const reasonsLeftOut = [
  "no ID",
  "dates missing or wrong",
  "reason missing or not known",
  "no day since when",
  "a later row of the same person",
] as const;
export type WhyLeftOut = (typeof reasonsLeftOut)[number];

export interface LeftOut {
  readonly table: "changes" | "tubes";
  /** Counted from 0, as the rows were given. */
  readonly row: number;
  readonly why: WhyLeftOut;
}

/** What stands in a row under a header. */
export type RowOf<T extends "changes" | "tubes"> = (header: Header<T>) => SheetValue;

export interface Facts {
  readonly devices: readonly Device[];
  readonly leftOut: readonly LeftOut[];
}

const FIRST_DAY_IN = 0.5;

const text = (value: SheetValue): string =>
  value === null || value instanceof CellError ? "" : String(value).replace(/\s+/gu, " ").trim();
const word = (value: SheetValue): string => text(value).toLowerCase();
const day = (value: SheetValue): number | null => (typeof value === "number" && value > 0 ? Math.floor(value) : null);

const kindOf = (value: SheetValue): string => word(value) || "not known";

function past(row: RowOf<"changes">): Device | WhyLeftOut | null {
  const person = word(row("ID"));
  const isBlank = person === "" && text(row("In")) === "" && text(row("Out")) === "" && text(row("Reason")) === "";
  if (isBlank) return null;
  if (person === "") return "no ID";
  const [days, until] = [row("Days in place"), day(row("Out"))];
  if (typeof days !== "number" || until === null) return "dates missing or wrong";
  const [failed, unplanned] = [word(row("Failed")), word(row("Unplanned"))];
  const isKnown = (said: string): boolean => said === "yes" || said === "no";
  if (!isKnown(failed) || !isKnown(unplanned)) return "reason missing or not known";
  return {
    person,
    kind: kindOf(row("Held by")),
    shape: word(row("Shape")),
    lot: text(row("Lot")),
    from: until - Math.floor(days),
    until,
    isInUse: false,
    days: Math.max(FIRST_DAY_IN, days),
    failed: failed === "yes",
    unplanned: unplanned === "yes",
    reason: text(row("Reason")),
  };
}

/** Persons who are away keep their device, but nobody has watched it since. */
function present(row: RowOf<"tubes">, asOf: number, oldest: number): Device | WhyLeftOut | null {
  const person = word(row("ID"));
  const from = day(row("Device in"));
  const status = word(row("Status"));
  if (person === "" && from === null && status === "") return null;
  if (person === "") return "no ID";
  if (from === null || from > asOf || from < oldest) return "dates missing or wrong";
  const isInUse = status === "active" || status === "";
  const since = isInUse ? asOf : day(row("Status since"));
  if (since === null || since < from) return "no day since when";
  const last = Math.min(asOf, since);
  return {
    person,
    kind: kindOf(row("Held by")),
    shape: word(row("Shape")),
    lot: text(row("Lot")),
    from,
    until: null,
    isInUse,
    days: Math.max(FIRST_DAY_IN, last - from),
    failed: false,
    unplanned: false,
    reason: "",
  };
}

/**
 * @param asOf the day that counts as today
 * @param oldest days before this one are slips
 */
export function devicesOf(
  rows: { readonly changes: readonly RowOf<"changes">[]; readonly tubes: readonly RowOf<"tubes">[] },
  asOf: number,
  oldest: number,
): Facts {
  const devices: Device[] = [];
  const leftOut: LeftOut[] = [];
  const take = (table: LeftOut["table"], row: number, found: Device | WhyLeftOut | null): void => {
    if (typeof found === "string") leftOut.push({ table, row, why: found });
    else if (found) devices.push(found);
  };
  rows.changes.forEach((row, i) => take("changes", i, past(row)));
  rows.tubes.forEach((row, i) => take("tubes", i, present(row, asOf, oldest)));
  return { devices, leftOut };
}

/** What the pictures are about: all kinds, or one. */
export const ofKind = <D extends { readonly kind: string }>(
  devices: readonly D[],
  kind: string | null,
): readonly D[] => (kind === null ? devices : devices.filter((device) => device.kind === kind));

/** The kinds that there are, the commonest first. */
export function kindsIn(devices: readonly Device[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const { kind } of devices) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1]).map(([kind]) => kind);
}
