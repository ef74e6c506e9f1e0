/**
 * What to do now when a tube has come out, by its class. These sentences can hurt somebody: they are changed only towards
 * more care, and only that of a mature opening and a balloon may speak of putting a tube in.
 */
import { rememberEach } from "../worksheet/remember";
import type { TubeOutClass } from "./tube-out-class";

const counted = (n: number, unit: string): string => `${n} ${unit}${n === 1 ? "" : "s"}`;
const weeks = (n: number): string => counted(n, "week");

export const opening = "Stop feed, water and medicines. Note the time. Cover the opening with a clean dry dressing.";

/** What stands in the sentences: the limits for the age of an opening in weeks, and how soon the hospital is reached. */
export interface Limits {
  readonly immature: number;
  readonly mature: number;
  readonly hours: number;
}

/** Hours, where the clinic has not set its own: Right Decisions (2-4 hours), as the setting Out_Aim has it. */
export const USUAL_HOURS = 2;

const within = (hours: number): string => `within ${counted(hours, "hour")}`;

/** For a spare that must not be put in: the opening closes all the same. */
export const beThere = (hours: number): string =>
  `The opening can close within hours, however old it is: be there ${within(hours)}.`;

const uncertainFrom = rememberEach((immature: number) =>
  rememberEach(
    (mature: number) =>
      `Emergency. The opening is ${immature} to ${weeks(mature)} old and may not be firm. Go to hospital now; the team ` +
      "there decides how a tube goes back. Put nothing in.",
  ),
);

const immatureBelow = rememberEach(
  (immature: number) =>
    `Emergency. The opening is new (under ${weeks(immature)}). Go to hospital now. Put nothing in, not even the spare.`,
);

const tooShortASetting = rememberEach(
  (mature: number) =>
    `Emergency. An opening of ${weeks(mature)} is not taken for firm, and the setting says so: treat it as new. Go to ` +
    "hospital now. Put nothing in.",
);

const balloonMature = rememberEach(
  (hours: number) =>
    "Urgent. The opening can close within hours, however old it is. If you are trained and this person's own plan says " +
    "so, put in the spare, gently. Stop at pain, blood or resistance. Nothing down the tube until its position is " +
    "confirmed as in the plan. Not trained, no plan, no spare, it will not slide in, the balloon came out full, or any " +
    `doubt: put nothing in and go to hospital now, to be there ${within(hours)}.`,
);

const sentences: { readonly [C in TubeOutClass]: string | ((limits: Limits) => string) } = {
  bowel: "Emergency. This opening leads straight into the bowel. Go to hospital now. Put nothing in.",
  "stomach and bowel":
    "Emergency. Part of this tube lies in the bowel and can only go back with imaging. Go to hospital now. Do not put " +
    "the spare in.",
  "access not known": "Emergency. It is not recorded where this tube ends. Go to hospital now. Put nothing in.",
  "date not known":
    "Emergency. It is not recorded when the opening was made. Treat it as new: go to hospital now. Put nothing in.",
  immature: ({ immature }) => immatureBelow(immature),
  uncertain: ({ immature, mature }) => uncertainFrom(immature)(mature),
  "setting too short": ({ mature }) => tooShortASetting(mature),
  "first or slow":
    "Emergency. This is still the first tube, or healing is slow: treat the opening as new. Go to hospital now. Put " +
    "nothing in.",
  "first or slow not known":
    "Emergency. It is not recorded whether this is still the first tube, or whether healing is slow: treat the opening " +
    "as new. Go to hospital now. Put nothing in.",
  bumper:
    "Urgent. A tube held by a bumper cannot go back in, and the opening may be torn. Go to hospital now. Put nothing in.",
  "other kind": "Urgent. This kind of tube is not put back at home. Go to hospital now. Put nothing in.",
  "balloon, mature": ({ hours }) => balloonMature(hours),
};

/** The sentence that decides. */
export function middleOf(one: TubeOutClass, limits: Limits): string {
  const sentence = sentences[one];
  return typeof sentence === "string" ? sentence : sentence(limits);
}

/** After every middle but the last. */
export const planOnly = "Only a written plan for this person, and training in it, may say otherwise.";

/** So that an old page shows its age. */
export const countedFor = (date: string): string => `The age of the opening was counted for ${date}.`;

/** The last sentences, whatever the class. */
export const takeAlong =
  "Take along the tube, the spare and this page. Pain, bleeding, swollen belly, vomiting, fever, or hard to wake: call " +
  "the emergency number now. Say if insulin, seizure medicine or feed cannot be missed.";
const withCard = `${takeAlong} Call the number on your emergency card.`;
const withNumber = `${takeAlong} Our number: `;

export const closing = (phone: string): string => (phone === "" ? withCard : `${withNumber}${phone}.`);
