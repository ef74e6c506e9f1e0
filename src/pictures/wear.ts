/** Who wears devices through fast: each person's wear beside the clinic's mean, and the day that it would be wise to plan by. */
import { dayByWhich, fitFrailty, relativeWear, type Bounded } from "../maths/frailty";
import { LEAST_DEVICES, LEAST_FAILURES } from "../wear/devices";
import type { Device } from "./devices";

/** A person's own figures are told from so many failures on. Clinic setting, no published source. */
export const LEAST_OWN_FAILURES = 2;
/** One in ten may have failed by the day that is said. Clinic setting, no published source. */
export const RISK = 0.1;
const LEVEL = 0.9;

export interface PersonWear {
  readonly person: string;
  readonly devices: number;
  readonly failures: number;
  readonly wear: Bounded;
  /** Day by which one in ten of this person's devices has failed. */
  readonly day: Bounded;
}

export interface WearPicture {
  readonly devices: number;
  readonly failures: number;
  readonly people: number;
  /** People with failures enough, the fastest first; undefined where the clinic has too few. */
  readonly told: readonly PersonWear[] | undefined;
}

export function wearPicture(devices: readonly Device[]): WearPicture {
  const names = [...new Set(devices.map(({ person }) => person))];
  const failures = devices.filter(({ failed }) => failed).length;
  const counts = { devices: devices.length, failures, people: names.length };
  if (failures < LEAST_FAILURES || devices.length < LEAST_DEVICES || names.length < 2)
    return { ...counts, told: undefined };
  const places = new Map(names.map((name, i) => [name, i]));
  const fit = fitFrailty({
    days: Float64Array.from(devices, ({ days }) => days),
    failed: Uint8Array.from(devices, ({ failed }) => (failed ? 1 : 0)),
    person: Uint32Array.from(devices, ({ person }) => places.get(person)!),
    people: names.length,
  });
  if (!fit) return { ...counts, told: undefined };
  const told = names.flatMap((person, i): PersonWear[] =>
    fit.failures[i]! < LEAST_OWN_FAILURES
      ? []
      : [
          {
            person,
            devices: fit.devices[i]!,
            failures: fit.failures[i]!,
            wear: relativeWear(fit, i, LEVEL),
            day: dayByWhich(fit, i, RISK, LEVEL),
          },
        ],
  );
  return { ...counts, told: told.sort((a, b) => b.wear.value - a.wear.value) };
}
