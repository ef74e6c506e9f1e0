/** The words that our columns for a change can show. Bad news first; missing is a word of its own, never a blank. */
export const NO_DATE = "no date";
export const KIND_NOT_KNOWN = "kind not known";
export const NO_SET_CHANGE = "no set change";
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
