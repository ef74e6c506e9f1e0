/** When water missing from a balloon is called low; the defaults of the function BALLOONSTATE. */
import { NO_SOURCE, setting } from "./setting";

export const balloonLoss = [
  setting({
    name: "Loss_Small",
    label: "Low, fill up to 5 mL: more missing than",
    default: 0.5,
    unit: "mL",
    range: { words: "0.5-2 (above 0.5 from memory, not published)", least: 0.5, most: 2 },
    allowed: [0.2, 5],
    source: "SickKids: more than 0.5 mL less than was put in",
    evidence: "hospital",
  }),
  setting({
    name: "Loss_Large",
    label: "Low, fill above 5 mL: more missing than",
    default: 1,
    unit: "mL",
    range: { words: "1-2 (from memory, not published)", least: 1, most: 2 },
    allowed: [0.2, 5],
    source: NO_SOURCE,
    evidence: "clinic setting",
  }),
  setting({
    name: "Loss_Half",
    label: "Half or less: at most",
    default: 0.5,
    unit: "share of fill",
    range: null,
    allowed: [0.3, 0.8],
    source: NO_SOURCE,
    evidence: "clinic setting",
  }),
  setting({
    name: "Over_Read",
    label: "More than put in: above it by more than",
    default: 0.5,
    unit: "mL",
    range: null,
    allowed: [0, 1],
    source: `${NO_SOURCE}; an allowance for reading the syringe, not for filling`,
    evidence: "clinic setting",
  }),
] as const;
