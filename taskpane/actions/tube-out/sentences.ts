/**
 * What Tube out says beyond the sentences of CAMEOUT. Like those they are changed only towards more care, and none of
 * them may speak of putting a tube in.
 */

/** On every card, whatever the class. */
export const halfOut = "Half out, longer than usual, or turned: the same as out. Do not push it back.";

/** Said instead of the only class that may be put back, where the rows themselves are in doubt. */
export const doubtful = {
  notFound:
    "Emergency. Nobody with this identifier is in the list: nothing is known of this tube. Go to hospital now. Put nothing in.",
  whichDevice: "Emergency. It is not known which of these devices this is. Go to hospital now. Put nothing in.",
  left: "Emergency. This person is written down as left, so the entries may be old. Go to hospital now. Put nothing in.",
  sheetsDisagree:
    "Emergency. A change is written down that is later than the tube in this list: it is not known which tube is in. Go to hospital now. Put nothing in.",
  settings:
    "Emergency. The clinic’s settings for the age of an opening cannot be used. Treat it as new: go to hospital now. Put nothing in.",
} as const;

export type Doubt = keyof typeof doubtful;

export const NOT_WRITTEN = "not written down";
