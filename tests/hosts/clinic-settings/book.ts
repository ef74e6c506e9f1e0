/** An invented caseload in memory with every setting as it begins, and what a test puts in their place. */
import { clinicSettings, type ClinicSettingName } from "../../../src/settings/index";
import { day } from "../../../src/worksheet/dates";
import type { Cell } from "../../../src/worksheet/cell";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { caseloadBook } from "../caseload-jobs/book";

export const TODAY = day("2026-11-26");

export type Put = Readonly<Partial<Record<ClinicSettingName, Cell>>>;

export const bookWith = (put: Put = {}) =>
  caseloadBook({
    names: { ...Object.fromEntries(clinicSettings.map((one) => [one.name, one.default])), As_of: TODAY, ...put },
  });

export const workbookWith = (put: Put = {}) => fakeWorkbook(bookWith(put));

export const agreedPut: Put = {
  ...{ Agreed_By: "Nutrition team", Agreed_On: day("2026-04-03"), Agreed_Until: day("2027-04-03") },
  ...{ Clinic_Name: "Invented clinic", Call_Day: "01632 960014", Call_Night: "01632 960015" },
  ...{ Call_Hospital: "Invented hospital, 01632 960016", Call_Emergency: "999" },
};
