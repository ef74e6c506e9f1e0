/**
 * Every sentence that the pane and the page put on screen, in plain British English; sentences with figures are
 * functions. What worksheet functions say of themselves stands in their own definitions; what actions and hosts refuse,
 * with them. A translation is this folder in another language.
 *
 * The parts stand in files of their own so that each is fetched with the section that shows it; this list of all is for
 * tests and translators.
 */
import { addColumns } from "./add-columns";
import { clinicSettings } from "./clinic-settings";
import { convert } from "./convert-sizes";
import { explain } from "./explain";
import { evidence, guide } from "./guide";
import { help } from "./help";
import { now } from "./forms";
import { shell } from "./shell";
import { ownList } from "./own-list";
import { excel, pane, product } from "./pane";
import { print } from "./print";
import { setUp } from "./set-up";
import { showOnly } from "./show-only";
import { today } from "./today";

export const texts = {
  product,
  pane,
  now,
  today,
  print,
  ownList,
  addColumns,
  setUp,
  convert,
  showOnly,
  guide,
  evidence,
  explain,
  clinicSettings,
  help,
  shell,
  excel,
};
