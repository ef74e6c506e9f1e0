/**
 * Every sentence that the pane and the page put on screen, in plain British English; sentences with figures are
 * functions. What a decision says stands beside the decision: in actions, in the adapters, in the functions themselves.
 * `npm run sentences` lists all of them, with file and line.
 *
 * The parts stand in files of their own so that each is fetched with the section that shows it; this list of all is for
 * tests and translators.
 */
import { addColumns } from "./add-columns";
import { asValues } from "./as-values";
import { checkSheet } from "./check-sheet";
import { repair } from "./repair";
import { clinicSettings } from "./clinic-settings";
import { convertSizes } from "./convert-sizes";
import { explain } from "./explain";
import { entryForm } from "./entry-form";
import { evidence, guide } from "./guide";
import { help } from "./help";
import { addPerson } from "./add-person";
import { forms } from "./forms";
import { recordChange } from "./record-change";
import { recordCheck } from "./record-check";
import { tubeOut } from "./tube-out";
import { shell } from "./shell";
import { mend } from "./mend";
import { ownList } from "./own-list";
import { excel, pane, product } from "./pane";
import { print } from "./print";
import { setUp } from "./set-up";
import { showOnly } from "./show-only";
import { today } from "./today";

export const texts = {
  product,
  pane,
  forms,
  tubeOut,
  recordCheck,
  recordChange,
  addPerson,
  today,
  print,
  ownList,
  addColumns,
  setUp,
  convertSizes,
  mend,
  asValues,
  checkSheet,
  repair,
  showOnly,
  guide,
  evidence,
  explain,
  entryForm,
  clinicSettings,
  help,
  shell,
  excel,
};
