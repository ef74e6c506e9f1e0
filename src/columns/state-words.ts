/** The words that our columns can show in place of a date. Bad news first; missing is a word of its own, never a blank. */
export const NO_DATE = "no date";
export const KIND_NOT_KNOWN = "kind not known";
export const NO_SET_CHANGE = "no set change";
/** The kind says that no balloon holds this tube: there is no water to check. */
export const NO_BALLOON = "no balloon";
/** The kind says where the tube ends, or who decides, and not whether a balloon holds it. */
export const BALLOON_NOT_KNOWN = "balloon not known";
export const CHECK_DATE = "check date";
/** A number of the settings sheet has been emptied. */
export const NO_SETTING = "no setting";

export const changeStates = [
  "past limit",
  "overdue",
  CHECK_DATE,
  NO_DATE,
  KIND_NOT_KNOWN,
  "due soon",
  "later",
  NO_SET_CHANGE,
] as const;

export type ChangeState = (typeof changeStates)[number];
