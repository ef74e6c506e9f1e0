/** Words that a check can get beside those of BALLOONSTATE, and what they have in common. */

/** The fluid looked like feed: the balloon may have burst, or the wrong port was used. */
export const MILKY = "milky fluid";
/** What came out was cloudy: the figures do not explain it. */
export const CLOUDY = "cloudy: ask";
/** Nothing came out, and no volume is written down: the valve or the balloon may have failed. */
export const NOTHING_CAME = "nothing came";
export const WHICH_DEVICE = "device not clear";

/** What a check leaves in the balloon. */
export const LEFT_EMPTY = "left empty";
export const ABOVE_LABEL = "above the label";
export const PUT_IN_NOT_KNOWN = "put in not known";
export const NOT_AGREED_FILL = "not the agreed fill";

/** Words that say that water is missing. */
export const waterMissing = ["empty", "half or less", "low"] as const;
/** What was put in is worse than anything that figures say which miss no water. */
export const leftBadly: readonly string[] = [LEFT_EMPTY, ABOVE_LABEL];
/** Words that stand on figures. */
export const measuredWords: readonly string[] = [
  ...[...waterMissing, ...leftBadly, MILKY, "more than put in", PUT_IN_NOT_KNOWN, NOT_AGREED_FILL, CLOUDY, "as filled"],
];
