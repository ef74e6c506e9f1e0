/** When a change counts as due soon, and when a date is too far away to be believed. */
import { NO_SOURCE, setting } from "./setting";

export const changeWords = [
  setting({
    name: "Soon_Days",
    label: "Due soon: within",
    default: 14,
    unit: "days",
    range: null,
    allowed: [1, 60],
    source: NO_SOURCE,
    evidence: "clinic setting",
  }),
  setting({
    name: "Far_Months",
    label: "Check the date if a change would be due in more than",
    default: 60,
    unit: "months",
    range: null,
    allowed: [12, 120],
    source: NO_SOURCE,
    evidence: "clinic setting",
  }),
] as const;
