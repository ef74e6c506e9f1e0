/** Who the clinic is, whom to call, and who agreed to the settings. Nothing of it has a default. */
import { dateSetting, NO_SOURCE, setting, textSetting } from "./setting";

export const clinic = [
  textSetting({ name: "Clinic_Name", label: "Service name" }),
  textSetting({
    name: "Call_Day",
    label: "Number in hours",
    source: `${NO_SOURCE}: the clinic's own; hand-outs cannot be printed while it is empty`,
  }),
  textSetting({ name: "Call_Night", label: "Number out of hours" }),
  textSetting({ name: "Call_Hospital", label: "Hospital that can replace tubes" }),
  textSetting({ name: "Call_Emergency", label: "Emergency number", source: `${NO_SOURCE}: the country's own` }),
] as const;

export const agreement = [
  textSetting({ name: "Agreed_By", label: "Settings agreed by" }),
  dateSetting({ name: "Agreed_On", label: "Settings agreed on" }),
  setting({
    name: "Review_Months",
    label: "Settings to be reviewed after",
    default: 12,
    unit: "months",
    range: null,
    allowed: [1, 36],
    source: NO_SOURCE,
    evidence: "clinic setting",
  }),
  dateSetting({
    name: "Agreed_Until",
    label: "Settings to be reviewed by",
    formula:
      'IF(OR(NOT(ISNUMBER(Agreed_On)),NOT(ISNUMBER(Review_Months))),"",MIN(DATE(YEAR(Agreed_On),MONTH(Agreed_On)+Review_Months,DAY(Agreed_On)),DATE(YEAR(Agreed_On),MONTH(Agreed_On)+Review_Months+1,0)))',
  }),
] as const;
