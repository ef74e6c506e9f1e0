/**
 * Days that lie so many years or months from today, each counted once in a named cell of the settings sheet. Every row
 * compares with them; counted anew in every row they made the grid several times slower.
 */
import type { ClinicSettingName } from "../settings/index";

interface CountedDay {
  readonly label: string;
  readonly setting: ClinicSettingName;
  /** Months to go by for 1 of the setting's unit; negative: back. */
  readonly months: 1 | -1 | -12;
}

export const countedDays = {
  Day_Oldest: { label: "No date but a birth date before", setting: "Past_Years", months: -12 },
  Day_Birth: { label: "No birth date before", setting: "Age_Most", months: -12 },
  Day_Farthest: { label: "No date after", setting: "Far_Months", months: 1 },
  Day_Adult: { label: "Adult if born by", setting: "Adult_Age", months: -12 },
  Day_WeightAdult: { label: "Weight of an adult good since", setting: "Weight_Adult", months: -1 },
  Day_WeightChild: { label: "Weight of a child good since", setting: "Weight_Child", months: -1 },
  Day_MeasureAdult: { label: "Measurement of an adult good since", setting: "Measure_Adult", months: -1 },
  Day_MeasureChild: { label: "Measurement of a child good since", setting: "Measure_Child", months: -1 },
  Day_ReviewAdult: { label: "Bumper of an adult seen to since", setting: "Rev_Bumper_Adult", months: -1 },
  Day_ReviewChild: { label: "Bumper of a child seen to since", setting: "Rev_Bumper_Child", months: -1 },
} as const satisfies Record<string, CountedDay>;

/**
 * So many whole months later, clipped to the month's end. Not EDATE: the grid's engine (Univer 0.25.1) turns 31 August
 * and six months into 3 March. DATE(...,0) is the last day of the month before.
 */
export const monthsLaterIn = (day: string, months: string): string =>
  `MIN(DATE(YEAR(${day}),MONTH(${day})+${months},DAY(${day})),DATE(YEAR(${day}),MONTH(${day})+${months}+1,0))`;

export const countedDayFormula = ({ setting, months }: CountedDay): string =>
  monthsLaterIn("As_of", `IF(ISNUMBER(${setting}),${months === 1 ? "" : `${months}*`}${setting},0)`);
