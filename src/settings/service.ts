/** What the service hands round of itself. */
import { NO_SOURCE, setting } from "./setting";

export const service = [
  setting({
    name: "Small_Count",
    label: "Counts shown as “under” on pages to hand round: those below",
    default: 5,
    unit: "people or changes",
    range: { words: "3-10", least: 3, most: 10 },
    allowed: [0, 20],
    source: `${NO_SOURCE}: privacy`,
    evidence: "clinic setting",
  }),
] as const;
