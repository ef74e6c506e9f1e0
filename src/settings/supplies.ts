/** Spares. */
import { NO_SOURCE, setting } from "./setting";

export const supplies = [
  setting({
    name: "Spare_Days",
    label: "Spare must last until the change, and at least for",
    default: 90,
    unit: "days",
    range: null,
    allowed: [30, 365],
    source: NO_SOURCE,
    evidence: "clinic setting",
  }),
] as const;
