/**
 * Record a change: the tube that came out goes to Changes, the person's row takes the new one, in one change of two
 * steps, so that the sheets never disagree.
 */
import type { Receipt, Workbook } from "../../workbook/port";
import { computedIn, computedInNew } from "../caseload/computed";
import type { Device } from "../caseload/identity";
import { placeOf, type Caseload } from "../caseload/read";
import { afterRecording } from "../caseload/write";
import { intervalSentences } from "./interval";
import type { ChangePlan, ChangeSurvey } from "./plan";

export { changeFields, endsCare, retyped, startOfChange, type ChangeForm } from "./form";
export { planChange, type ChangePlan, type ChangeSurvey } from "./plan";

export async function surveyChange(
  workbook: Pick<Workbook, "read">,
  caseload: Caseload,
  device: Device,
): Promise<ChangeSurvey> {
  return {
    caseload,
    device,
    interval: intervalSentences(caseload, device),
    computed: {
      row: await computedIn(caseload.tubes, device.row, workbook),
      change: await computedInNew(caseload.changes, workbook),
    },
  };
}

export const afterChange = ({ caseload, device }: ChangeSurvey, { advice }: ChangePlan, receipt: Receipt) =>
  afterRecording(
    receipt,
    [
      ...advice,
      `The tube that came out stands in ${caseload.changes.sheetName}; the row of ${device.id} is up to date.`,
    ],
    placeOf(caseload.tubes, device.row),
  );
