/**
 * What a tube that has come out is a case of. The class decides; every sentence, in a cell or on screen, is made from it.
 * Every doubt comes before the only class whose tube may be put back.
 */
import type { Access } from "../device/access";
import type { Held } from "../device/retention-words";
import { LEAST_MATURE_FROM, tractOrDoubt, type DateOrDoubt } from "../schedule/tract";
import type { YesNo } from "../worksheet/yes-no";

/** In the order of the rules: the first that is met decides. */
export const tubeOutClasses = [
  ...["bowel", "stomach and bowel", "access not known", "date not known"],
  ...["immature", "uncertain", "setting too short", "first or slow", "first or slow not known"],
  ...["bumper", "other kind", "balloon, mature"],
] as const;

export type TubeOutClass = (typeof tubeOutClasses)[number];

export interface TubeOutFacts {
  /** Excel serial day on which the opening was made. */
  readonly stomamade: DateOrDoubt;
  readonly asof: DateOrDoubt;
  readonly retention: Held;
  readonly access: Access;
  readonly firsttube: YesNo;
  readonly slow: YesNo;
  /** Weeks; never above `mature`. */
  readonly immature: number;
  /** Weeks. */
  readonly mature: number;
}

export function tubeOutClass(facts: TubeOutFacts): TubeOutClass {
  const { stomamade, asof, retention, access, firsttube, slow, immature, mature } = facts;
  if (access === "J") return "bowel";
  if (access === "GJ") return "stomach and bowel";
  if (access === "not known") return "access not known";
  const tract = tractOrDoubt(stomamade, asof, immature, mature);
  if (tract === "not known") return "date not known";
  if (tract !== "mature by weeks") return tract;
  if (mature < LEAST_MATURE_FROM) return "setting too short";
  if (firsttube === "yes" || slow === "yes") return "first or slow";
  if (firsttube === "not known" || slow === "not known") return "first or slow not known";
  if (retention === "bumper") return "bumper";
  return retention === "balloon" ? "balloon, mature" : "other kind";
}

/** By somebody trained, with a plan of this person's own and a spare: in this class, and in no other. */
export const mayGoBack = (one: TubeOutClass): boolean => one === "balloon, mature";

/** The rules before these do not ask how old the opening is. */
const BEFORE_AGE: readonly TubeOutClass[] = ["bowel", "stomach and bowel", "access not known", "date not known"];

/** Whether the age of the opening was counted: the day that it was counted for is then said. */
export const isAgeCounted = (one: TubeOutClass): boolean => !BEFORE_AGE.includes(one);
