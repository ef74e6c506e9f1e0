/**
 * When a device is due for its change, and the latest it may stay. Sources as read in the services' own public pages;
 * "second hand" where only another author's summary was read.
 */
import { NO_SOURCE, setting } from "./setting";

export const changeIntervals = [
  setting({
    name: "Int_Balloon_G",
    label: "Balloon, gastrostomy: change due after",
    default: 3,
    unit: "months",
    range: {
      words:
        "1-8 (Japan 1-2; Newcastle 3; Northern Care Alliance, RCH Melbourne 3-6; ESPGHAN, Great Ormond Street 6; Toronto 6-8)",
      least: 1,
      most: 8,
    },
    allowed: [1, 12],
    source: "Northern Care Alliance; RCH Melbourne",
    evidence: "hospital",
  }),
  setting({
    name: "Lim_Balloon_G",
    label: "Balloon, gastrostomy: at the latest after",
    default: 6,
    unit: "months",
    range: { words: "2-8", least: 2, most: 8 },
    allowed: [1, 12],
    source: "ESPGHAN 2021 (second hand); Great Ormond Street; Kent Community Health",
    evidence: "guideline",
  }),
  setting({
    name: "Int_Balloon_J",
    label: "Balloon, jejunostomy: change due after",
    default: 3,
    unit: "months",
    range: { words: "3-6 (Leeds 12-16 weeks; Northern Care Alliance 6 months)", least: 3, most: 6 },
    allowed: [1, 12],
    source: "Leeds; Northern Care Alliance",
    evidence: "hospital",
  }),
  setting({
    name: "Lim_Balloon_J",
    label: "Balloon, jejunostomy: at the latest after",
    default: 6,
    unit: "months",
    range: { words: "3-6", least: 3, most: 6 },
    allowed: [1, 12],
    source: "Northern Care Alliance",
    evidence: "hospital",
  }),
  setting({
    name: "Int_GJ",
    label: "Gastrojejunal: change with imaging due after",
    default: 3,
    unit: "months",
    range: { words: "1 (the first change) to 6", least: 1, most: 6 },
    allowed: [1, 12],
    source: "CHOP; Stanford; Boston; Great Ormond Street",
    evidence: "hospital",
  }),
  setting({
    name: "Lim_GJ",
    label: "Gastrojejunal: at the latest after",
    default: 6,
    unit: "months",
    range: { words: "3-6", least: 3, most: 6 },
    allowed: [1, 12],
    source: "Great Ormond Street",
    evidence: "hospital",
  }),
  setting({
    name: "Lim_Bumper_Adult",
    label: "Bumper, adult: plan a change by",
    default: 24,
    unit: "months",
    range: { words: "on failure only, or by up to 60", least: null, most: 60 },
    allowed: [1, 60],
    source: `${NO_SOURCE} (proposed from Siau 2018: 95.1% still working at 1 year)`,
    evidence: "clinic setting",
  }),
  setting({
    name: "Lim_Bumper_Child",
    label: "Bumper, child: plan a change by",
    default: 24,
    unit: "months",
    range: { words: "18-24", least: 18, most: 24 },
    allowed: [1, 36],
    source: "Great Ormond Street; Starship New Zealand",
    evidence: "hospital",
  }),
] as const;
