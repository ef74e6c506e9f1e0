/**
 * Whether the settings of a family can be used. An empty settings cell counts as 0 in a formula, and 0 days, weeks or mL
 * would make everything look in order: so each family has one named cell that says whether all its numbers are there and
 * in their right order, and a column whose family is not ready says `check settings`.
 */
import type { ClinicSettingName } from "../settings/index";

export const CHECK_SETTINGS = "check settings";

type Family = "change" | "balloon" | "opening" | "fit" | "entries" | "review";

interface Readiness {
  /** The named cell. */
  readonly name: string;
  readonly label: string;
  /** Must be above 0. */
  readonly above: readonly ClinicSettingName[];
  /** Must be 0 or more. */
  readonly least: readonly ClinicSettingName[];
  /** Pairs in rising order. */
  readonly rising: readonly (readonly [ClinicSettingName, ClinicSettingName])[];
}

export const readiness: { readonly [F in Family]: Readiness } = {
  change: {
    name: "Ready_Change",
    label: "Settings for changes can be used",
    above: ["Soon_Days", "Far_Months", "Adult_Age", "Past_Years"],
    least: [],
    rising: [],
  },
  balloon: {
    name: "Ready_Balloon",
    label: "Settings for balloons can be used",
    above: [
      ...(["Check_Days", "Check_First", "Check_AfterChange", "Loss_Again", "Loss_Twice", "Rate_Days"] as const),
      ...(["Fill_Small", "Loss_Small", "Loss_Large", "Loss_Half", "Volume_Most", "Past_Years"] as const),
    ],
    least: ["Check_Grace", "Over_Read"],
    rising: [],
  },
  opening: {
    name: "Ready_Opening",
    label: "Settings for the opening can be used",
    above: ["Tract_Low", "Tract_High", "Past_Years"],
    least: ["First_Days"],
    rising: [["Tract_Low", "Tract_High"]],
  },
  fit: {
    name: "Ready_Fit",
    label: "Settings for fit can be used",
    above: [
      ...(["Slack_Most", "Play_Least", "Play_Most", "Length_Most", "Mark_Most", "Grow_Percent"] as const),
      ...(["Measure_Child", "Measure_Adult", "Adult_Age", "Past_Years"] as const),
    ],
    least: ["Slack_Least", "Mark_Tol"],
    rising: [
      ["Slack_Least", "Slack_Most"],
      ["Play_Least", "Play_Most"],
    ],
  },
  review: {
    name: "Ready_Review",
    label: "Settings for reviews can be used",
    above: ["Rev_Bumper_Adult", "Rev_Bumper_Child", "Adult_Age", "Past_Years"],
    least: [],
    rising: [],
  },
  entries: {
    name: "Ready_Entries",
    label: "Settings for doubtful entries can be used",
    above: [
      ...([
        "Age_Most",
        "Past_Years",
        "Weight_Jump",
        "Weight_Child",
        "Weight_Adult",
        "Adult_Age",
        "Size_Least",
      ] as const),
      ...([
        "Size_Most",
        "Length_Most",
        "Volume_Most",
        "StopGap_Days",
        "Spare_Days",
        "Check_First",
        "Far_Months",
      ] as const),
    ],
    least: [],
    rising: [["Size_Least", "Size_Most"]],
  },
};

export function readyFormula({ above, least, rising }: Readiness): string {
  const tests = [
    ...[...above, ...least].map((name) => `ISNUMBER(${name})`),
    ...above.map((name) => `${name}>0`),
    ...least.map((name) => `${name}>=0`),
    ...rising.map(([low, high]) => `${low}<=${high}`),
  ];
  return `IFERROR(AND(${tests.join(",")}),FALSE)`;
}
