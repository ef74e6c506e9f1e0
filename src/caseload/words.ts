/** Words to choose from. Stored in people's workbooks. */
export const statuses = ["active", "in hospital", "on hold", "left"] as const;
export const accesses = ["G", "GJ", "J"] as const;
export const placers = ["endoscopy", "radiology", "surgery", "not known"] as const;
export const yesNoNotKnown = ["no", "yes", "not known"] as const;
export const holds = ["balloon", "bumper", "loop", "winged", "stitched", "catheter", "not known"] as const;
export const knownFrom = ["record", "label", "seen", "not known"] as const;
export const shapes = ["long", "low-profile"] as const;
export const checkedBy = ["carer, tells us", "carer, keeps card", "nurse", "not arranged"] as const;
export const changers = [
  ...["carer", "nurse at home", "nurse in clinic", "radiology", "endoscopy", "surgery", "not decided"],
] as const;
export const trained = ["put in spare", "hold opening only", "no", "not known"] as const;
export const cannotWait = [
  ...["insulin", "seizure medicine", "other medicine", "fluid or glucose", "none", "not known"],
] as const;
export const turning = ["team decides", "weekly", "daily", "never"] as const;
/** Those that say that there is one. */
export const sparesThere = ["same size", "smaller", "both"] as const;
export const spares = [...sparesThere, "none", "not known"] as const;
export const sites = ["quiet", "red", "overgrown", "leaking", "infected", "tight or stuck", "not seen"] as const;
export const looks = ["clear", "cloudy", "milky, yellow or like feed", "nothing came"] as const;
export const waters = ["fresh", "same put back"] as const;
export const checkers = ["carer", "nurse", "other"] as const;
export const howKnown = ["seen", "phone", "card"] as const;
export const places = [
  ...["home", "clinic", "ward", "emergency department", "radiology", "endoscopy", "theatre"],
] as const;
export const confirmedBy = ["pH", "X-ray or contrast", "other", "not recorded"] as const;

export interface Reason {
  readonly word: string;
  readonly failed: boolean;
  readonly unplanned: boolean;
  /** It says that the device was held by a balloon. */
  readonly ofBalloon: boolean;
}

const reason = (word: string, failed: boolean, unplanned: boolean, ofBalloon = false): Reason => ({
  ...{ word, failed, unplanned, ofBalloon },
});

/** Why a device came out. Failed: the device itself gave way. Unplanned: nobody had arranged it. */
export const reasons: readonly Reason[] = [
  reason("planned", false, false),
  reason("balloon burst", true, true, true),
  reason("balloon leaking", true, true, true),
  reason("split or broken", true, true),
  reason("came out, balloon empty", true, true, true),
  reason("came out, balloon full or bumper", false, true),
  reason("blocked", false, true),
  reason("too short or too long", false, true),
  reason("buried or stuck", false, true),
  reason("moved (GJ)", false, true),
  reason("change of type", false, false),
  reason("recall", false, false),
  reason("no longer needed", false, false),
  reason("left", false, false),
  reason("other", false, true),
];
