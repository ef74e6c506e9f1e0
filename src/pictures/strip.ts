/** One person's devices, one after the other: how long each was in, why it came out, and what is in now. */
import type { Device } from "./devices";

export interface StripDevice {
  readonly kind: string;
  readonly from: number;
  /** The last day that is known of it. */
  readonly to: number;
  readonly days: number;
  /** "in": in now. "away": was in when last seen. */
  readonly ended: "failed" | "unplanned" | "planned" | "in" | "away";
  readonly reason: string;
}

export interface StripPicture {
  readonly devices: readonly StripDevice[];
  /** Days between two devices of which nothing is written down. */
  readonly gaps: readonly { readonly from: number; readonly to: number }[];
}

const endOf = ({ until, failed, unplanned, isInUse }: Device): StripDevice["ended"] =>
  until === null ? (isInUse ? "in" : "away") : failed ? "failed" : unplanned ? "unplanned" : "planned";

/** A gap of so many days is no slip of a day or two in writing down. Clinic setting, no published source. */
const LEAST_GAP = 3;

export function stripPicture(devices: readonly Device[], person: string): StripPicture {
  const own = devices
    .filter((device) => device.person === person)
    .map((device): StripDevice => ({
      kind: device.kind,
      from: device.from,
      to: device.until ?? device.from + Math.floor(device.days),
      days: device.days,
      ended: endOf(device),
      reason: device.reason,
    }))
    .sort((a, b) => a.from - b.from || a.to - b.to);
  const gaps: { from: number; to: number }[] = [];
  let until = own[0]?.to ?? 0;
  for (const { from, to } of own.slice(1)) {
    if (from - until >= LEAST_GAP) gaps.push({ from: until, to: from });
    until = Math.max(until, to);
  }
  return { devices: own, gaps };
}

/** Everybody with a device, in the order of their identifiers. */
export const peopleIn = (devices: readonly Device[]): readonly string[] =>
  [...new Set(devices.map(({ person }) => person))].sort();
