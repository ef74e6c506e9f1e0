/**
 * Every sentence that the pane and the page put on screen, in plain British English; sentences with figures are
 * functions. What worksheet functions say of themselves stands in their own definitions; what actions and hosts refuse,
 * with them. A translation is this folder in another language.
 *
 * The parts stand in files of their own so that each is fetched with the section that shows it; this list of all is for
 * tests and translators.
 */
import { addColumns } from "./add-columns";
import { convert } from "./convert";
import { explain } from "./explain";
import { evidence, guide } from "./guide";
import { help } from "./help";
import { shell } from "./page";
import { showOnly } from "./show-only";
import { excel, pane, product } from "./pane";

export const texts = { product, pane, addColumns, convert, showOnly, guide, explain, evidence, help, shell, excel };
