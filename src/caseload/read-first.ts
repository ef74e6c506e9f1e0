/** Read first: what this is, the order of work, the cautions, who decides. */
import { cellAddress, quoted } from "../columns/formula";
import { WHO_DECIDES } from "../words/who-decides";
import { isoText } from "../worksheet/dates";
import type { CellDescription, NameDescription, SheetDescription } from "./book";
import { aroundWatch, cautions, WATCH_HOURS, watchAt } from "./cautions";
import { DATE } from "./column";
import { FOOTER, lines } from "./lines";
import { headerRow } from "./layout";
import { INVENTED_ON, sheetNames } from "./names";

const WHAT =
  "A caseload of people who live with a gastrostomy tube: which device each of them has, when it is due for change, what the last balloon check found, and what is to be done.";

const WORK: readonly string[] = [
  "Clinic settings: look at every number, change what your service does differently, enter the numbers to call, then who agreed, and when.",
  "Tubes in use: one row for each device. Identifiers only. White columns are typed or chosen, shaded ones are worked out.",
  "Every day: filter To do and read it from the worst word down; it names the most urgent single thing of each row.",
  "After a balloon check: add one row to Balloon checks. After a change: move the old device to Changes and enter the new one in Tubes in use.",
  "Missing or contradictory: mend what it names, until it is blank. Where something is missing no word here is a good one.",
  "Rows may be sorted, filtered, added and deleted; the formulas go along. Type below the last row of a list to add one.",
  "States count from today, the name As_of.",
];

const WHO = `${WHO_DECIDES} Nobody else, and no sheet.`;

const WIDE = 4;

/** Excel takes no text of more than 255 characters in a formula: the caution stands in two. */
const watchFormula = (number: number): string => {
  const [before, after] = aroundWatch;
  const hours = `IF(ISNUMBER(Watch_Hours),Watch_Hours,"${WATCH_HOURS}")`;
  return `${quoted(`${number}. ${before}`)}&${hours}&${quoted(` hours${after}`)}`;
};

export interface ReadFirstSheet {
  readonly sheet: SheetDescription;
  readonly names: readonly NameDescription[];
}

/** @param inventedOn the day on which its people were invented; null where they are real */
export function readFirstSheet(asOf: number, inventedOn: number | null): ReadFirstSheet {
  const isInvented = inventedOn !== null;
  const cells: CellDescription[] = [...lines("Read first", isInvented, WIDE)];
  let row = headerRow;
  const add = (value: string, look: CellDescription["look"] & string, formula?: string) => {
    cells.push({ row, column: 0, value, look, across: WIDE, wrap: true, ...(formula !== undefined && { formula }) });
    row += 1;
  };
  add("What this is", "heading");
  add(WHAT, "text");
  add("The order of work", "heading");
  WORK.forEach((one, i) => add(`${i + 1}. ${one}`, "text"));
  add("Cautions", "heading");
  cautions.forEach((one, i) => add(`${i + 1}. ${one}`, "caution", i === watchAt ? watchFormula(i + 1) : undefined));
  add("Who decides", "heading");
  add(WHO, "text");
  cells.push({ row, column: 0, value: "People invented on (blank once they are gone)", look: "text" });
  cells.push({ row, column: 1, value: inventedOn, look: "setting", format: DATE });
  const name = {
    name: INVENTED_ON,
    refersTo: `'${sheetNames.readFirst}'!${cellAddress(row, 1).replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2")}`,
  };
  cells.push({ row: row + 1, column: 0, value: `Set up on ${isoText(asOf)}.`, look: "text" });
  return {
    names: [name],
    sheet: {
      name: sheetNames.readFirst,
      cells,
      widths: { 0: 46, 1: 18, 2: 30, 3: 30 },
      print: { landscape: false, footer: FOOTER },
    },
  };
}
