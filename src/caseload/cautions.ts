import { WHO_DECIDES } from "../words/who-decides";

/** In the fifth caution, where the clinic has not set its own; NPSA 2010, NHS Borders. */
export const WATCH_HOURS = 72;

/** The fifth, before and behind the time of extra watch. */
export const aroundWatch = [
  "Stop the feed and call at once: pain when feeding, fresh blood, stomach fluid leaking, swollen or hard belly, vomiting, fever, trouble breathing; above all in the first ",
  " after a new tube and after any hard change.",
] as const;

const watch = aroundWatch.join(`${WATCH_HOURS} hours`);

/** The fourth caution, which Tube out says too. */
export const TUBE_OUT =
  "Tube out or half out: urgent at any age of the opening. New, first, jejunal, bumper or unknown: hospital, nothing in.";

/** The ninth, which Record a change says too. */
export const NEVER_TURN =
  "A tube through which another runs into the bowel, and a stitched tube: never turn, never change at home. Children under 10 kg with one: higher risk of perforation.";

/** What everybody who uses the caseload must have read; hand-outs carry 1, 4 and 5. */
export const cautions: readonly string[] = [
  `This is arithmetic and memory aid for trained staff. ${WHO_DECIDES}`,
  "A date is a reminder, a word is a comparison with your settings. Neither shows that a tube is sound or in the right place. Balloons burst without warning.",
  "Words count from what was written down. Old, missing or wrong entries give old, missing or wrong answers; look at the date beside the word.",
  TUBE_OUT,
  watch,
  "Nothing down a tube whose position is not confirmed. A pH above the limit means not confirmed; a low pH is not proof either. Acid medicine and recent feed mislead.",
  "Only water in a balloon, never more than the label. Never feed or medicine into the balloon valve. Never tell the volume from the size.",
  "Do not empty a balloon in a new opening before the placing team's date. Hold the tube while it is empty.",
  NEVER_TURN,
  "Tight, stuck, painful: may be buried. Do not force; stop the feed; call.",
  "A leak is not cured by a larger tube or by more water.",
  "Feed figures are starting points for a dietitian. They do not know the illness. No bolus into the bowel. Refeeding criteria are for adults.",
  "Services differ: agree your own settings, with name and date, and review them.",
  "Identifiers only, no names; keep the file where your rules allow. Nothing is sent anywhere.",
];

/** Where in them the clinic's own hours stand. */
export const watchAt = cautions.indexOf(watch);
