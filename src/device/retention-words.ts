/** How a tube is held inside, in the words of RETENTION and of the list of tubes. */
import type { Cell } from "../worksheet/cell";
import { reading } from "../worksheet/parameters";

/** Of loop, winged, stitched and (urinary) catheter none is put back or pulled out at home. */
export type Held = "balloon" | "bumper" | "loop" | "winged" | "stitched" | "catheter" | "not known";

const WORDS = new Map<string, Held>(
  (["balloon", "bumper", "loop", "winged", "stitched", "catheter"] as const).map((word) => [word, word]),
);

/** `ask placing team`, a blank and every other word are not known. Most cells hold a word as it stands: that is tried first. */
const heldOf = (cell: Exclude<Cell, null>): Held =>
  WORDS.get(String(cell)) ?? WORDS.get(String(cell).trim().toLowerCase()) ?? "not known";

/** A required argument; blank is not known. */
export const held = () => ({
  ...reading<Held, object>("How it is held inside: balloon, bumper, or another word of the list", {}, heldOf),
  ifBlank: "not known" as const,
});
