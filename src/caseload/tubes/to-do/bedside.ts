/** What can happen at the bedside next: nothing holds the tube, it presses, it has moved, its site is ill. */
import { LOW_TWICE } from "../balloon";
import { MILKY } from "../../checks/states";
import { keyColumn, reads } from "./step";

/** The balloon's own words; those that are calm say nothing here. */
export const bedsideKey = keyColumn("Bedside", [
  reads("Balloon", "empty", "balloon empty"),
  reads("Balloon", MILKY, "milky fluid"),
  reads("Balloon", LOW_TWICE, "low twice"),
  reads("Balloon", "half or less", "half or less"),
  reads("Balloon", "low", "balloon: low"),
  reads("Balloon", "more than put in", "balloon: more than put in"),
  reads("Fit", "tight", "tight"),
  reads("Fit", "too short", "too short"),
  reads("Mark", "further out", "further out"),
]);
