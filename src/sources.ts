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
  hospitalPaediatricChart:
    "AboutKidsHealth (SickKids), balloon check: one size of tube, 14 Fr, is filled with 3 to 10 mL depending on its design",
  medscapeReplacement:
    "Medscape, Gastrostomy tube replacement: the same size first, a smaller one to hold the opening; how it is held may not show",
  bhambani: "Bhambani S, West J Emerg Med: openings that had narrowed were widened by 2 Fr (median)",
  leakSize: "Curr Surg Rep 2021, doi 10.1007/s40137-021-00296-4: a larger tube does not cure a leak",
  soscia: "Soscia J, Friedman JN, Paediatr Child Health 2011;16:281-287: balloon port, bumper and loop; GJ by imaging",
  lee2013: "Lee CG, J Korean Med Sci 2013;28:1781-7: 330 bumper tubes replaced by traction or by endoscopy",
  npsa2012: "NPSA Signal, 28 February 2012: tubes pulled out with the balloon full; a forced button and peritonitis",
  sphereRing:
    "geometry: a sphere with a cylindrical hole of height h has the volume of a sphere of diameter h (pi h^3 / 6)",
  sen: "Sen PK, J Am Stat Assoc 1968;63:1379-1389, as in the tests of scipy and R deming: slope 4, 93% limits 26/7 and 35/8",
  senSmall: "counted from all orders of n values: the whole range of slopes covers 67% with 3 points, 92% with 4",
  aciMaturity:
    "ACI/GENCA (New South Wales), emergency page: under 6 weeks immature, 6 to 12 weeks imaging, over 12 mature",
  bordersMaturity: "NHS Borders, enteral feeding for adults: established only after 12 weeks",
  otherMaturity: "other services say 1 to 12 weeks (Medscape 1 to 3, StatPearls 4 to 6, RCH Melbourne 8)",
  npsa2010:
    "NPSA Rapid Response Report 2010; BMJ 2010;340:c2160: pain, bleeding or leakage within 72 hours of a new tube",
  rightDecisions: "Right Decisions (NHS Scotland), paediatric gastrostomy questions: to hospital within 2 to 4 hours",
  edf: "course notes and Hall's condition: unit jobs with whole release days and deadlines, earliest due date first",
  edfMatching:
    "compared with exact matching: earliest due date first met as many due days in 50,000 of 50,000 random cases",
  steenblik:
    "Steenblik M, Nutr Clin Pract 2012, doi 10.1177/0884533612438406: 3.6 cm lying, 4.9 cm sitting (28 adults)",
  esge: "ESGE 2021, part 2 (Gkolfakis P, Endoscopy 2021;53:178-195): bolster 10 to 20 mm from the skin",
  leedsPlay: "Leeds Teaching Hospitals, PEG care: bolster about 5 mm from the skin",
  singh: "Singh RR, Eur J Pediatr Surg 2013;23:76-79: buried bumper: cannot be pushed in or turned, leaks, hurts",
  starship: "Starship (New Zealand), gastrostomy guideline: jejunal tubes are not turned; changed with imaging",
  mifflin:
    "Mifflin MD, St Jeor ST and others, Am J Clin Nutr 1990;51:241-247: 498 healthy adults of 19 to 78 years (rounded form)",
  mifflinHandbook: "general-reader handbook page: woman of 45, 75 kg, 165.1 cm: 1,396 kcal",
  mifflinLecture: "university lecture: woman of 25, 60 kg, 160 cm: 1,314 kcal",
  schofield: "Schofield WN, Hum Nutr Clin Nutr 1985;39 Suppl 1:5-41, as in FAO/WHO/UNU 2004, table 5.2",
  faoWoman: "FAO Food and Nutrition Technical Report 1 (2004), 5.4.1: woman of 18 to 30, 55 kg: 1,302 kcal",
  faoMan: "FAO 2004, table 5.1: man of 20 to 25, 70 kg: 1,745 kcal; the report cuts 7.306 MJ down to 7.30 (0.1%)",
  nutritionAtlas: "nutrition atlas: man of 30 to 60, 70 kg: 1,676 kcal",
  henry: "Henry CJK, Public Health Nutr 2005;8(7A):1133-1152, as in the source of R activAnalyzer",
  frankenfield:
    "Frankenfield D, J Am Diet Assoc 2005;105:775-789: Mifflin-St Jeor the most reliable of four equations; that none is reliable for one person is from memory",
  hollidaySegar: "Holliday MA, Segar WE, Pediatrics 1957;19:823-832",
  drugHandbook: "paediatric drug handbook, chapter 15, and a college page: 22 kg: 1,540 mL a day, 64 mL an hour",
  collegeFluid: "college nursing page: 5 kg 500 mL; 15 kg 1,250 mL, 52 mL an hour",
  fluid32: "clinical text: 32 kg: 1,740 mL a day",
  utmb: "University of Texas Medical Branch, paediatrics: 30 kg: 70 mL an hour by the hourly rule",
  niceFluid: "NICE CG32: adults 30 to 35 mL per kg a day",
  niceFeeding: "NICE CG32: adults who are not severely ill 25 to 35 kcal and 0.8 to 1.5 g of protein per kg a day",
  csun: "university tube-feeding tutorial (CSUN): 80 kg x 35 mL = 2,800 mL",
  pretermWater: "AAP and ESPGHAN as tabulated: preterm infants up to 200 mL per kg a day, the largest figure found",
  pretermEnergy: "AAP and ESPGHAN as tabulated: preterm infants 110 to 130 kcal per kg a day, the largest figure found",
  msdEnteral:
    "MSD Manual Professional, Enteral nutrition (2024): 2,400 kcal at 1 kcal/mL: 100 mL an hour over 24 hours",
  msdSteps: "MSD Manual Professional, Enteral nutrition: start 20 to 30 mL an hour, 10 to 20 more every 4 to 8 hours",
  msdBowel: "MSD Manual Professional, Enteral nutrition: no bolus into the bowel",
  courseNotes:
    "dietetic course notes: 1,800 kcal, 1.0 kcal/mL, 40 g protein a litre, 83% water: 75 mL an hour, 72 g, 1,494 mL, 306 mL to give",
  courseNotesFlush:
    "dietetic course notes: 1,920 mL of 1.2 kcal/mL, 54 g a litre, 81% water, 6 x 100 mL: 104 g, 1,555 mL, 2,155 mL in all (their 2,308 kcal is a slip for 2,304)",
  waterFaq: "patient question page: 1,300 mL at 70% water, need 1,600 mL: 690 mL to give",
  feedWater:
    "an exam tutorial, a pharmacotherapy textbook and intensive-care pages: 83 to 85% water at 1 kcal a mL, 69 to 72% at 2",
  fhirBolus: "HL7 FHIR, NutritionOrder example enteralbolus: 240 mL every 4 hours, at most 1,440 mL a day",
  fhirContinuous:
    "HL7 FHIR, NutritionOrder example enteralcontinuous: 60 mL an hour from 07:00, 80 from 11:00, 100 from 15:00",
  bolusGuideline: "therapeutic guideline, example of bolus feeding: 250 mL five times a day",
  bolusSizes:
    "bolus of 240 to 480 mL (pharmacotherapy textbook), 250 to 300 mL (university tutorial), 200 to 400 mL (ESPEN, second hand)",
  dropsAspen: "ASPEN hand-out for gravity feeding, as quoted: 14 drops make 1 mL of feed",
  dropsOther: "other pages: 20 drops make 1 mL of feed",
  uicFlush: "UIC Drug Information 2010: adults at least 30 mL, every 4 hours when feeding runs continuously",
  sickKidsFlush: "AboutKidsHealth (SickKids): children 5 to 10 mL before and after each feed and medicine",
  flushOthers:
    "University Hospital Augsburg about 10 mL; a Spanish hospital and a US dietetic manual 20 to 30; a tutorial 25 to 60",
  heyland:
    "Heyland and others, published intensive-care protocol: (day's goal - given) / hours left, at most 150 mL an hour",
  hangTimes:
    "NICE CG139: ready to use up to 24 hours a session, home-prepared up to 4; New Zealand handbook: decanted 12",
  niceRefeeding:
    "NICE CG32 (2006, updated 2017): criteria for the risk of refeeding problems, as quoted in three places",
  niceFiveDays:
    "NICE CG32, section 1.4, as quoted in two places: little or nothing eaten for more than 5 days: at most 50% of needs for the first 2 days",
  refeedingTable: "Ann Clin Nutr Metab 2024;16:3-9, doi 10.15747/ACNM.2024.16.1.3: table of NICE and other criteria",
  kaplanMeier:
    "Kaplan EL, Meier P, J Am Stat Assoc 1958;53:457-481; variance by Greenwood; limits on the log(-log) scale",
  freireich:
    "Freireich EJ and others, Blood 1963;21:699 (trial of 6-MP, weeks in remission): data as published; R survival 3.5-3",
  survfitQuantile: "R package survival, documentation of quantile.survfit: the middle of a flat step",
  cha: "Cha BH, BMJ Open Gastroenterol 2022;9:e000881 (abstract): median life of a balloon tube 210 days (188 to 238), of a bumper tube 405; smaller sizes shorter",
  michaud:
    "Michaud L, JPGN 2004;38:426-429 (abstract): 165 balloon buttons in 84 children: mean life 5 months (14 days to 14 months), 61% ended by bursting",
  mantel: "Mantel N, Cancer Chemother Rep 1966;50:163-170 (log-rank test)",
  cohen:
    "Cohen AC, Technometrics 1965;7:579-588: maximum likelihood for the Weibull distribution, lives not over included",
  nistWeibull:
    "NIST/SEMATECH e-Handbook 8.4.1.3: 10 failures in 20 units stopped at 500 hours: shape 1.7208, scale 606.5280",
  nistWeibullExact: "NIST/SEMATECH e-Handbook 8.4.1.3, data; exact optimum and limits by R survreg 3.5-3",
  claytonKaldor: "Clayton D, Kaldor J, Biometrics 1987;43:671-681: gamma prior by marginal maximum likelihood",
  frailty: "Duchateau L, Janssen P, The Frailty Model, Springer 2008: Weibull hazard with gamma frailty (parametric)",
  barlowProschan: "Barlow RE, Proschan F, Mathematical Theory of Reliability, Wiley 1965: age replacement",
  maxSprt: "Kulldorff M and others, Sequential Analysis 2011;30:58-78: maximised sequential probability ratio test",
  maxSprtLeast: "Kulldorff M, Silva IR, REVSTAT 2015;13:19-39: the same with a least number of events",
  hong: "Hong Y, Comput Stat Data Anal 2013;59:41-51: exact distribution of the Poisson-binomial",
  deviceDay:
    "BMJ Quality & Safety, table of definitions: device-days count a person once a day; rate = events / device-days x 1,000",
  fewDays: "BMJ Quality & Safety, same table: below 750 device-days report the time since the last event instead",
  calculatorRate: "calculator page for device rates: 3 events in 1,250 device-days are 2.4 per 1,000",
  deRaddo: "DeRaddo 2019 (abstract): 44 children with jejunal tubes, 31,378 device-days: 202 tube problems, 3 major",
  garwood: "Garwood F, Biometrika 1936;28:437-442: exact limits of a Poisson count",
  garwoodPages: "calculator and statistics pages: 10 events, 95%: 4.80 to 18.39; 0 events: up to 3.689",
  conditional: "Przyborowski J, Wilenski H, Biometrika 1940;31:313-323: two Poisson counts compared given their sum",
  rPoissonTest: "R 4.2.2, poisson.test",
  uChart: "Montgomery DC, Introduction to Statistical Quality Control: u chart, 3 sigma",
  uChartData: "Montgomery's data as in R qcc, pcmanufact: 20 samples of 5 units, mean 1.93, limits 0.07 and 3.79",
  stevenson: "Stevenson WJ, Operations Management, 14th ed., example 15: demand 4, service 0.60: stock 4",
  poissonTable: "Poisson table (R ppois)",
  gs1Dictionary:
    "GS1 Barcode Syntax Dictionary (GS1 AISBL, Apache-2.0): identifiers, lengths, date and check-digit rules",
  gs1Tests: "GS1 Barcode Syntax Engine and Dictionary, their own test cases (Apache-2.0)",
  udiExample: "FDA and NLM, example of a device identifier, as in C-CDA and FHIR",
  reached: "worked out from the published rule; checks the arithmetic, not the source",
  calendar: "counted on a calendar",
  cautionTexts: "the service's sentences for hand-outs, worked out from the sources above",
  catalogue: "defined by this function's rule",
  input: "defined by how arguments are read",
  commonPractice: "common practice, no source",
  noSource: "clinic setting, no published source",
} as const;
