/** Add a person: one new row in the list, must-have columns only; the others are filled in on the sheet. */
import type { Receipt, Workbook } from "../../workbook/port";
import { computedInNew } from "../caseload/computed";
import type { Caseload } from "../caseload/read";
import { afterRecording } from "../caseload/write";
import type { PersonForm, PersonSurvey } from "./plan";

export { personFields, planPerson, type PersonForm, type PersonSurvey } from "./plan";

export const startOfPerson: PersonForm = {
  ...{
    id: "",
    status: "active",
    born: "",
    access: "",
    made: "",
    slow: "",
    heldBy: "",
    knownFrom: "",
    shape: "",
    size: "",
  },
  ...{ length: "", deviceIn: "", fill: "", most: "", changedBy: "", spare: "" },
};

export const surveyPerson = async (workbook: Pick<Workbook, "read">, caseload: Caseload): Promise<PersonSurvey> => ({
  caseload,
  computed: await computedInNew(caseload.tubes, workbook),
});

export const afterPerson = ({ caseload: { tubes } }: PersonSurvey, form: PersonForm, receipt: Receipt) =>
  afterRecording(
    receipt,
    [`${form.id.trim()} stands in ${tubes.sheetName}. Fill in what else is known on the sheet.`],
    receipt.done[0]?.place ?? { sheet: tubes.sheet, area: tubes.area },
  );
