/**
 * What a person's own past says of the interval that was agreed for them: never a permission. It only ever speaks for an
 * earlier change than the agreed one, and where there is too little it says so with the counts.
 */
import { dayByWhich, fitFrailty, type Bounded, type Frailty } from "../maths/frailty";
import { LEAST_DEVICES, LEAST_FAILURES } from "../wear/devices";
import type { Device } from "./devices";

/** A person's own figures are told from so many failures on. Clinic setting, no published source. */
export const LEAST_OWN_FAILURES = 2;
/** One in ten may have failed by the day that is said. Clinic setting, no published source. */
export const RISK = 0.1;
export const WEAR_LEVEL = 0.9;

export interface Counts {
  readonly devices: number;
  readonly failures: number;
}

/** The frailty model on a clinic's devices, with each person's place in it. */
export interface WearModel extends Counts {
  readonly people: readonly string[];
  readonly places: ReadonlyMap<string, number>;
  /** The longest life of a failed device of each person; 0 where none failed. */
  readonly failedBy: Float64Array;
  /** Undefined where the clinic has too few, or no curve fits. */
  readonly fit: Frailty | undefined;
}

export function wearModel(devices: readonly Device[]): WearModel {
  const places = new Map<string, number>();
  const person = Uint32Array.from(devices, ({ person: name }) => {
    const known = places.get(name);
    if (known !== undefined) return known;
    places.set(name, places.size);
    return places.size - 1;
  });
  const failedBy = new Float64Array(places.size);
  let failures = 0;
  devices.forEach(({ failed, days }, i) => {
    if (!failed) return;
    failures++;
    failedBy[person[i]!] = Math.max(failedBy[person[i]!]!, days);
  });
  const isEnough = failures >= LEAST_FAILURES && devices.length >= LEAST_DEVICES && places.size >= 2;
  const fit = isEnough
    ? fitFrailty({
        days: Float64Array.from(devices, ({ days }) => days),
        failed: Uint8Array.from(devices, ({ failed }) => (failed ? 1 : 0)),
        person,
        people: places.size,
      })
    : undefined;
  return { devices: devices.length, failures, people: [...places.keys()], places, failedBy, fit };
}

export type IntervalAdvice =
  /** Of the clinic. */
  | ({ readonly is: "too few" } & Counts)
  /** Of the person: the clinic's curve speaks, and is named as such. */
  | (Counts & { readonly is: "clinic"; readonly day: number; readonly isEarlier: boolean })
  | (Counts & { readonly is: "person"; readonly failedBy: number; readonly day: Bounded; readonly isEarlier: boolean });

/**
 * @param person undefined, or one who has no device in the list: somebody of whom nothing is known yet
 * @param agreed days from putting in to the agreed change; null where none is agreed: then no day is called earlier
 */
export function adviceFor(model: WearModel, person: string | undefined, agreed: number | null): IntervalAdvice {
  const { fit, devices, failures } = model;
  if (!fit) return { is: "too few", devices, failures };
  const at = person === undefined ? undefined : model.places.get(person);
  const own = { devices: at === undefined ? 0 : fit.devices[at]!, failures: at === undefined ? 0 : fit.failures[at]! };
  const isEarlier = (day: number): boolean => agreed !== null && day < agreed;
  if (at === undefined || own.failures < LEAST_OWN_FAILURES) {
    const day = dayByWhich(fit, undefined, RISK, WEAR_LEVEL).value;
    return { is: "clinic", ...own, day, isEarlier: isEarlier(day) };
  }
  const day = dayByWhich(fit, at, RISK, WEAR_LEVEL);
  return { is: "person", ...own, failedBy: model.failedBy[at]!, day, isEarlier: isEarlier(day.value) };
}
