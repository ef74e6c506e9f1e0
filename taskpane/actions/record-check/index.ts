/** Record a check: one row in Balloon checks, and the person's row where its columns are not formulas. */
import type { Receipt, Workbook } from "../../workbook/port";
import { computedIn, computedInNew } from "../caseload/computed";
import type { Device, Meant } from "../caseload/identity";
import { placeOf, type Caseload } from "../caseload/read";
import { afterRecording } from "../caseload/write";
import type { CheckPlan, CheckSurvey } from "./plan";

export { checkFields, planCheck, startOfCheck, type CheckForm, type CheckPlan, type CheckSurvey } from "./plan";

export async function surveyCheck(
  workbook: Pick<Workbook, "read">,
  caseload: Caseload,
  meant: Meant,
  device: Device,
): Promise<CheckSurvey> {
  return {
    caseload,
    meant,
    device,
    computed: {
      row: await computedIn(caseload.tubes, device.row, workbook),
      check: await computedInNew(caseload.checks, workbook),
    },
  };
}

export const afterCheck = ({ caseload, device }: CheckSurvey, { meaning }: CheckPlan, receipt: Receipt) =>
  afterRecording(
    receipt,
    [...meaning.advice, `The check of ${device.id} stands in ${caseload.checks.sheetName}.`],
    receipt.done[0]?.place ?? placeOf(caseload.tubes, device.row),
  );
