/**
 * What the stories of the invented people are made of: parts of rows that recur, so that a story shows what is its
 * own. Fills go with kinds and sizes as labels of devices have them (SickKids' chart: 12 Fr low-profile 2-5 mL, 14 Fr
 * low-profile 3-10, 12-14 Fr long 3-5, low-profile gastrojejunal 5-10; adults' long tubes 5-20, from memory).
 */
import type { CaseloadRow } from "../rows";

export interface Story {
  readonly tubes: readonly CaseloadRow[];
  readonly checks?: readonly CaseloadRow[];
  readonly changes?: readonly CaseloadRow[];
}

/** Stories are told on the day on which the people are invented; all their days count from it. */
export type Tell = (asOf: number) => Story;

/** One lot behind a bad quarter: in use, among spares, and among devices that failed. All of one item, as lots are. */
export const BAD_LOT = "B2291";

/** @param age in days */
export const person = (asOf: number, id: string, age: number, kg: number, weighed: number): CaseloadRow => ({
  ID: id,
  Status: "active",
  Born: asOf - age,
  "Weight kg": kg,
  "Weighed on": asOf - weighed,
});

/** @param made days ago */
export const stoma = (asOf: number, made: number, by: string, access = "G"): CaseloadRow => ({
  Access: access,
  "Stoma made": asOf - made,
  "Placed by": by,
  "Slow healing": "no",
});

export const lowProfile = (fr: number, cm: number, fill: number, most = fill): CaseloadRow => ({
  "Held by": "balloon",
  "Known from": "label",
  Shape: "low-profile",
  "Size Fr": fr,
  "Length cm": cm,
  "Fill mL": fill,
  "Most mL": most,
});

export const longBalloon = (fr: number, fill: number, most: number, mark: number): CaseloadRow => ({
  "Held by": "balloon",
  "Known from": "record",
  Shape: "long",
  "Size Fr": fr,
  "Fill mL": fill,
  "Most mL": most,
  ...marks(mark, mark, 8),
});

export const bumper = (fr: number, mark: number): CaseloadRow => ({
  "Held by": "bumper",
  "Known from": "record",
  Shape: "long",
  "Size Fr": fr,
  ...marks(mark, mark, 9),
});

export const marks = (then: number, now: number, play: number): CaseloadRow => ({
  "Mark then cm": then,
  "Mark now cm": now,
  "Play mm": play,
});

/** @param measured days ago */
export const fit = (asOf: number, lying: number, sitting: number, measured: number, kgThen: number): CaseloadRow => ({
  "Lying cm": lying,
  "Sitting cm": sitting,
  "Measured on": asOf - measured,
  "Weight then kg": kgThen,
});

/** @param since days ago */
export const device = (asOf: number, since: number, lot: string | null): CaseloadRow => ({
  "Device in": asOf - since,
  Lot: lot,
});

/** @param expires days ahead; below 0: it has expired */
export const spare = (
  asOf: number,
  fr: number,
  cm: number | null,
  lot: string | null,
  expires: number,
  kind = "same size",
): CaseloadRow => ({
  "Spare at home": kind,
  "Spare Fr": fr,
  "Spare cm": cm,
  "Spare lot": lot,
  "Spare expires": asOf + expires,
});

/** A long tube is measured when its site is looked at. @param seen days ago */
export const siteOfLong = (asOf: number, word: string, seen: number): CaseloadRow => ({
  ...site(asOf, word, seen),
  "Measured on": asOf - seen,
});

/** @param days ago */
export const since = (asOf: number, days: number): CaseloadRow => ({ "Status since": asOf - days });

/** Those at home know what to do, in writing. */
export const ownPlan: CaseloadRow = { "Own tube-out plan": "yes" };

/** @param ahead days from now */
export const booked = (asOf: number, ahead: number): CaseloadRow => ({ "Booked for": asOf + ahead });

/** @param seen days ago */
export const site = (asOf: number, word: string, seen: number): CaseloadRow => ({
  Site: word,
  "Site seen on": asOf - seen,
});

export const carerAtHome: CaseloadRow = {
  "Checked by": "carer, tells us",
  "Changed by": "carer",
  "Trained for tube out": "put in spare",
  "Own tube-out plan": "yes",
  "Cannot wait": "none",
};

export const nurseAtHome: CaseloadRow = {
  "Checked by": "nurse",
  "Changed by": "nurse at home",
  "Trained for tube out": "no",
  "Own tube-out plan": "no",
  "Cannot wait": "none",
  "Spare at home": "not known",
};

/** Bumpers, loops and tubes that end in the bowel: nothing to check, no spare, changed by those who place them. */
export const changedBy = (team: string, cannotWait = "none"): CaseloadRow => ({
  "Changed by": team,
  "Trained for tube out": "no",
  "Own tube-out plan": "no",
  "Cannot wait": cannotWait,
  "Spare at home": "none",
});

/** A check of a balloon by hand of the story. @param on days ago */
export const check = (
  asOf: number,
  id: string,
  on: number,
  out: number | null,
  putIn: number,
  more: CaseloadRow = {},
): CaseloadRow => ({
  ID: id,
  "Checked on": asOf - on,
  "Out mL": out,
  Looked: out === null ? null : out === 0 ? "nothing came" : "clear",
  "Put in mL": putIn,
  Water: "fresh",
  By: "carer",
  "How known": "phone",
  ...more,
});
