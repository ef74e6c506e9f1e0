/** What can happen at the bedside next: what the newest check found and left, a tube that presses or has moved. */
import { ABOVE_LABEL, CLOUDY, LEFT_EMPTY, MILKY, NOT_AGREED_FILL, PUT_IN_NOT_KNOWN } from "../../checks/words";
import { LOW_TWICE } from "../balloon";
import { keyColumn, reads } from "./step";

export const bedsideKey = keyColumn("Bedside", [
  reads("Balloon", "empty", "balloon empty"),
  reads("Balloon", LEFT_EMPTY, "left empty"),
  reads("Balloon", ABOVE_LABEL, "above the label"),
  reads("Balloon", MILKY, "milky fluid"),
  reads("Balloon", LOW_TWICE, "low twice"),
  reads("Balloon", "half or less", "half or less"),
  reads("Balloon", "low", "balloon: low"),
  reads("Balloon", "more than put in", "balloon: more than put in"),
  reads("Balloon", PUT_IN_NOT_KNOWN, "put in not known"),
  reads("Balloon", NOT_AGREED_FILL, "not the agreed fill"),
  reads("Balloon", CLOUDY, "cloudy: ask"),
  reads("Fit", "tight", "tight"),
  reads("Fit", "too short", "too short"),
  reads("Mark", "further out", "further out"),
]);
