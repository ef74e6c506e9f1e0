/** Who wears devices through fast: each person's wear beside the clinic's mean, and the day that it would be wise to plan by. */
import { chanceBelow, dayByWhich, meanWear, relativeWear, type Bounded } from "../maths/frailty";
import { LEAST_OWN_FAILURES, RISK, WEAR_LEVEL, type Counts, type WearModel } from "./advice";

/** So many are drawn, the fastest first: more is no picture, and each one's limits cost work. Clinic setting, no published source. */
export const MOST_DRAWN = 40;

export interface PersonWear extends Counts {
  readonly person: string;
  readonly wear: Bounded;
  /** Day by which one in ten of this person's devices has failed. */
  readonly day: Bounded;
  /** Days in place of the failed device that lasted longest. */
  readonly failedBy: number;
  /** Known to wear devices through faster than the mean: the limits lie above 1. */
  readonly isFast: boolean;
}

export interface WearPicture extends Counts {
  readonly people: number;
  /** With failures enough, the fastest first, at most MOST_DRAWN; undefined where the clinic has too few. */
  readonly told: readonly PersonWear[] | undefined;
  /** How many have failures enough, and how many of them are known to be faster than the mean. */
  readonly withOwn: number;
  readonly fast: number;
}

/** Everybody who is known to wear devices through faster than the mean. */
export function fastWearers({ fit, people }: WearModel): readonly string[] {
  if (!fit) return [];
  return people.filter((_, i) => fit.failures[i]! >= LEAST_OWN_FAILURES && isFaster(fit, i));
}

const isFaster = (fit: NonNullable<WearModel["fit"]>, person: number): boolean =>
  chanceBelow(fit, person, 1) < (1 - WEAR_LEVEL) / 2;

export function wearPicture(model: WearModel): WearPicture {
  const { fit, devices, failures } = model;
  const counts = { devices, failures, people: model.people.length };
  if (!fit) return { ...counts, told: undefined, withOwn: 0, fast: 0 };
  const own = model.people.flatMap((_, i) =>
    fit.failures[i]! < LEAST_OWN_FAILURES ? [] : [{ i, mean: meanWear(fit, i), isFast: isFaster(fit, i) }],
  );
  own.sort((a, b) => b.mean - a.mean);
  const told = own.slice(0, MOST_DRAWN).map(({ i, isFast }): PersonWear => ({
    person: model.people[i]!,
    devices: fit.devices[i]!,
    failures: fit.failures[i]!,
    wear: relativeWear(fit, i, WEAR_LEVEL),
    day: dayByWhich(fit, i, RISK, WEAR_LEVEL),
    failedBy: model.failedBy[i]!,
    isFast,
  }));
  return { ...counts, told, withOwn: own.length, fast: own.filter(({ isFast }) => isFast).length };
}
