/** Balloon checks, person by person: what was missing at each check since a day, beside the clinic's limit. */
import { measuredWords, waterMissing } from "../caseload/checks/words";

export interface Check {
  /** With the access behind it where somebody has two devices. */
  readonly person: string;
  readonly day: number;
  /** mL missing of what was put in; null where it was not measured, or the figures cannot be used. */
  readonly loss: number | null;
  /** mL that should have been in; null where that is not known. */
  readonly expected: number | null;
  /** The check's word in the caseload. */
  readonly says: string;
}

/** Settings of the clinic; null where one is missing. */
export interface LossLimits {
  readonly smallUpTo: number | null;
  readonly small: number | null;
  readonly large: number | null;
}

export interface PersonChecks {
  readonly person: string;
  /** Rising in time. */
  readonly checks: readonly Check[];
  readonly latest: Check;
  /** Loss in mL above which this clinic calls this balloon low; null where the fill or the setting is not known. */
  readonly limit: number | null;
  /** What the latest check says: water is missing, or not; null where its figures cannot tell. */
  readonly isLow: boolean | null;
}

export interface ChecksPicture {
  /** Low first, then what cannot be told, then the rest; within each by what is missing, most first. */
  readonly people: readonly PersonChecks[];
  readonly low: number;
  readonly notTold: number;
}

/** So many are drawn: a page of small pictures. */
export const MOST_MULTIPLES = 12;

const limitFor = (expected: number | null, { smallUpTo, small, large }: LossLimits): number | null =>
  expected === null || smallUpTo === null ? null : expected <= smallUpTo ? small : large;

const isLow = (says: string): boolean | null =>
  (waterMissing as readonly string[]).includes(says) ? true : measuredWords.includes(says) ? false : null;

export function checksPicture(checks: readonly Check[], limits: LossLimits, since: number): ChecksPicture {
  const by = new Map<string, Check[]>();
  for (const check of checks) {
    if (check.day < since) continue;
    const own = by.get(check.person);
    if (own) own.push(check);
    else by.set(check.person, [check]);
  }
  const people = [...by].map(([person, own]): PersonChecks => {
    own.sort((a, b) => a.day - b.day);
    const latest = own.at(-1)!;
    return { person, checks: own, latest, limit: limitFor(latest.expected, limits), isLow: isLow(latest.says) };
  });
  const place = (one: PersonChecks): number => (one.isLow === null ? 1 : one.isLow ? 0 : 2);
  people.sort(
    (a, b) => place(a) - place(b) || (b.latest.loss ?? 0) - (a.latest.loss ?? 0) || (a.person < b.person ? -1 : 1),
  );
  return {
    people,
    low: people.filter((one) => one.isLow).length,
    notTold: people.filter((one) => one.isLow === null).length,
  };
}
