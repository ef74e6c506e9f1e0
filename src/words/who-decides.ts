/** Who decides, wherever somebody might take a figure for a decision. */
export const WHO_DECIDES = "The device's label, the placing team, this person's own plan and local policy decide.";

/** Stands on every sheet, on every printed page, and in the pane whatever it shows. */
export const QUIET_LINE = `Arithmetic and memory aid for trained staff. ${WHO_DECIDES}`;
