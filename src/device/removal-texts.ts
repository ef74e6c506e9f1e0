/** What REMOVAL says. Only `balloonMature` tells how; everything else says "do not". */
export const removalTexts = {
  balloonMature:
    "Held by a balloon. Only by somebody trained, with the spare in hand: draw all the water out, keep a flat hand on " +
    "the skin, ease the tube out, stop at resistance, pain or blood. Position confirmed before any feed. The label and " +
    "the placing team decide.",
  balloonOtherwise:
    "Held by a balloon, but the opening is new, its age not known, this is the first tube, or healing is slow: do not " +
    "remove. The placing team decides.",
  balloonAccessNotKnown:
    "Held by a balloon, but it is not recorded where this tube ends: do not remove. The placing team decides.",
  bumper:
    "Held by a bumper: not at home. Trained staff remove it by traction or by endoscopy, as the placing team decides. " +
    "Do not cut it, do not pull.",
  bowel:
    "Part of it lies in the bowel: never at home, never turned; removed where the new position can be seen by imaging. " +
    "The placing team decides.",
  notKnown: "Not known how it is held: do not pull. Ask the placing team.",
} as const;
