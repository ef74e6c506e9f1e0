/** How old an opening is, and what is done when a tube has come out. */
import { NO_SOURCE, setting } from "./setting";

export const tract = [
  setting({
    name: "Tract_Low",
    label: "Opening immature: below",
    default: 6,
    unit: "weeks",
    range: { words: "1-8 (Kent, SickKids 8)", least: 1, most: 8 },
    allowed: [4, 12],
    source: "ACI/GENCA, emergency page",
    evidence: "guideline",
  }),
  setting({
    name: "Tract_High",
    label: "Opening mature by weeks: from",
    default: 12,
    unit: "weeks",
    range: { words: "2-12", least: 2, most: 12 },
    allowed: [8, 26],
    source: "ACI/GENCA; NHS Borders",
    evidence: "guideline",
  }),
  setting({
    name: "First_Days",
    label: "First tube: put in within so many days of the stoma",
    default: 14,
    unit: "days",
    range: null,
    allowed: [0, 84],
    source: NO_SOURCE,
    evidence: "clinic setting",
  }),
] as const;

/** How long what was seen, or a status, is taken as it was written down. */
export const asking = [
  setting({
    name: "Site_Act",
    label: "Act on an infected site for",
    default: 14,
    unit: "days",
    range: null,
    allowed: [3, 42],
    source: NO_SOURCE,
    evidence: "clinic setting",
  }),
  setting({
    name: "Hold_Days",
    label: "On hold: ask after",
    default: 28,
    unit: "days",
    range: null,
    allowed: [7, 180],
    source: NO_SOURCE,
    evidence: "clinic setting",
  }),
  setting({
    name: "Hospital_Days",
    label: "In hospital: ask after",
    default: 28,
    unit: "days",
    range: null,
    allowed: [7, 180],
    source: NO_SOURCE,
    evidence: "clinic setting",
  }),
] as const;

export const tubeOut = [
  setting({
    name: "Out_Aim",
    label: "Tube out: reach the hospital within, aim",
    default: 2,
    unit: "hours",
    range: { words: "2-6", least: 2, most: 6 },
    allowed: [1, 4],
    source: "Right Decisions (2-4 hours)",
    evidence: "hospital",
  }),
  setting({
    name: "Out_Most",
    label: "Tube out: reach the hospital within, at most",
    default: 4,
    unit: "hours",
    range: { words: "2-8", least: 2, most: 8 },
    allowed: [2, 6],
    source: "RCH Melbourne",
    evidence: "hospital",
  }),
  setting({
    name: "PH_Max",
    label: "Position confirmed by pH: at or below",
    default: 5,
    unit: "pH",
    range: { words: "5.0-5.5 (SickKids, Glasgow 5.5; all for nasogastric tubes)", least: 5, most: 5.5 },
    allowed: [4, 5.5],
    source: "Sydney; Gilbertson 2011",
    evidence: "hospital",
  }),
  setting({
    name: "Watch_Hours",
    label: "Extra watch after a new tube",
    default: 72,
    unit: "hours",
    range: { words: "72 hours to 7 days", least: 72, most: 168 },
    allowed: [24, 168],
    source: "NPSA 2010; NHS Borders",
    evidence: "guideline",
  }),
] as const;
