/**
 * Published sources, each written once. Functions, settings and tests cite these texts.
 *
 * How they were reached (the source's own text, an abstract, a quotation) is told in docs/sources.md.
 */
export const sources = {
  french:
    "French (Charrière) scale: 1 Fr = 1/3 mm of outside diameter (foreword of DIN EN ISO 20696:2020: 1 mm = 3 CH)",
  frenchOverlap: "ISO 20696:2018, 5.5.2, in an extract: outside diameter within 0.33 mm, so neighbouring sizes overlap",
  edate: "OpenFormula (OASIS ODF, part 4), EDATE: test rows",
  temporal: "ECMAScript Temporal, PlainDate documentation: 2019-01-31 plus one month is 2019-02-28",
  edateWiki: "OpenOffice.org wiki, EDATE: example",
  nca: "Northern Care Alliance NHS FT, balloon tube exchange: every 3 to 6 months",
  rchMelbourne: "Royal Children's Hospital Melbourne, displaced gastrostomy: balloon devices last 3 to 6 months",
  espghan: "ESPGHAN position paper on PEG in children, update 2021 (second hand): about every 6 months",
  gosh: "Great Ormond Street Hospital, gastrostomy management: at least every 6 months",
  toronto: "SickKids, Toronto: every 6 to 8 months",
  japan: "Japanese clinics' pages: every 1 to 2 months",
  sickKidsLoss:
    "SickKids Connected Care, changing a balloon gastrostomy: more than 0.5 mL less than was put in may mean a leak",
  sickKidsWeekly: "AboutKidsHealth (SickKids), balloon check: weekly",
  cambridgeFirst: "Cambridge University Hospitals, balloon tube in children: first check 4 weeks after placement",
  newcastleFirst: "Newcastle Hospitals, first-line button: balloon water from 2 weeks, then weekly",
  permeation: "Studer 1983, as reported in ACEP Now, May 2021: 5 mL of water became 3.8 mL in 2 weeks on the bench",
  floats: "IEEE 754: 5 - 4.5 is exactly 0.5; 1.1 - 0.6 is a little more than 0.5 in binary",
  catalogue: "defined by this function's rule",
  input: "defined by how arguments are read",
  commonPractice: "common practice, no source",
  noSource: "clinic setting, no published source",
} as const;
