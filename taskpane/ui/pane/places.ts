/** The pane's places in their order, and the jobs of each. */
import { pane as words } from "../../texts/pane";
import { addColumns } from "../add-columns/job";
import { asValues } from "../as-values/job";
import { checkSheet } from "../check-sheet/job";
import { clinicSettings } from "../clinic-settings/job";
import { convertSizes } from "../convert-sizes/job";
import { explain } from "../explain/job";
import { findLot } from "../find-lot/job";
import { guide } from "../guide/job";
import { help } from "../help/job";
import { mend } from "../mend/job";
import { overdueTable } from "../overdue-table/job";
import { pictures } from "../pictures/job";
import { print } from "../print/job";
import { repair } from "../repair/job";
import { serviceFigures } from "../service-figures/job";
import { setUp } from "../set-up/job";
import { showOnly } from "../show-only/job";
import { thisList } from "../this-list/job";
import { today } from "../today/job";
import { tubeOut } from "../tube-out/job";
import type { Job } from "./define-job";

export interface Place {
  readonly label: string;
  /** More than one: a row of presses at the top chooses. */
  readonly jobs: readonly [Job, ...Job[]];
}

const alone = (job: Job): Place => ({ label: job.label, jobs: [job] });

/** The telephone call: one press away from everywhere. */
export const call = alone(tubeOut);
/** A ready-made caseload opens here. */
export const day = alone(today);
/** Any other workbook opens here. */
export const list: Place = {
  label: words.list,
  jobs: [addColumns, mend, checkSheet, showOnly, thisList, convertSizes],
};
const more: Place = {
  label: words.more,
  jobs: [clinicSettings, findLot, serviceFigures, overdueTable, setUp, asValues, repair, guide, explain, help],
};

/** At the pane's foot, in this order. */
export const places: readonly Place[] = [day, list, alone(pictures), alone(print), more];
