/** How a tube is held inside, in the words of RETENTION and of the list of tubes. */
import type { Cell } from "../worksheet/cell";
import { reading } from "../worksheet/parameters";

/** Of loop, winged, stitched and (urinary) catheter none is put back or pulled out at home. */
export type Held = "balloon" | "bumper" | "loop" | "winged" | "stitched" | "catheter" | "not known";

const WORDS: readonly Held[] = ["balloon", "bumper", "loop", "winged", "stitched", "catheter"];

/** `ask placing team`, a blank and every other word are not known. */
const heldOf = (cell: Exclude<Cell, null>): Held => {
  const word = String(cell).trim().toLowerCase();
  return WORDS.find((known) => known === word) ?? "not known";
};

/** A required argument; blank is not known. */
export const held = () => ({
  ...reading<Held, object>("How it is held inside: balloon, bumper, or another word of the list", {}, heldOf),
  ifBlank: "not known" as const,
});
