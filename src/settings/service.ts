/** How the service counts. */
import { NO_SOURCE, setting } from "./setting";

export const serviceCounts = [
  setting({
    name: "Level",
    label: "Level of limits",
    default: 0.95,
    unit: "share",
    range: null,
    allowed: [0.8, 0.99],
    source: "convention",
    evidence: "common practice",
  }),
  setting({
    name: "Rate_MinDays",
    label: "Show no rate below",
    default: 750,
    unit: "tube-days",
    range: { words: "750", least: 750, most: 750 },
    allowed: [100, 5000],
    source: "BMJ Quality and Safety, table of least tube-days",
    evidence: "study",
  }),
  setting({
    name: "Small_Count",
    label: 'Counts shown as "under": below',
    default: 5,
    unit: "people",
    range: { words: "3-10", least: 3, most: 10 },
    allowed: [0, 20],
    source: `${NO_SOURCE} (privacy)`,
    evidence: "clinic setting",
  }),
] as const;
