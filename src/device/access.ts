/** Where a tube ends: in the stomach (G), in the stomach and the bowel (GJ), or straight in the bowel (J). */
import type { Cell } from "../worksheet/cell";
import { reading } from "../worksheet/parameters";

export type Access = "G" | "GJ" | "J" | "not known";

/** `G-J`, `G - J`, `G+J` and `g/j` are GJ; whatever else is not known, never refused: the sentences for it are the cautious ones. */
const accessOf = (cell: Exclude<Cell, null>): Access => {
  // Most cells hold it as it stands.
  if (cell === "G" || cell === "GJ" || cell === "J") return cell;
  const word = String(cell)
    .toUpperCase()
    .replace(/[\s/+&\u2010-\u2015\u2212-]/g, "");
  return word === "G" || word === "GJ" || word === "J" ? word : "not known";
};

const HELP = "Where the feed ends: G stomach, GJ bowel through the stomach, J bowel";

export const access = () => reading<Access, { fallback: Access }>(HELP, { fallback: "not known" }, accessOf);

/** The same where it must stand in the formula. */
export const accessGiven = () => ({
  ...reading<Access, object>(HELP, {}, accessOf),
  ifBlank: "not known" as const,
});
