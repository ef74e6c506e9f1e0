/** What stands above every sheet's content: title, whether the people are invented, what decides, who agreed the settings. */
import { SHORT_MONTHS } from "../words/date-in-words";
import { QUIET_LINE } from "../words/who-decides";
import type { Cell } from "../worksheet/cell";
import type { CellDescription } from "./book";
import { agreedRow, inventedRow, quietRow, titleRow } from "./layout";
import { INVENTED_ON } from "./names";

const INVENTED_LINE = "Invented people and data: no real person stands behind any row.";
/** How it begins, whatever is missing; the pane says what (taskpane/actions/clinic-settings/agreement.ts). */
export const NOT_AGREED = "Settings not agreed";
const NOBODY = `${NOT_AGREED}: nobody's name and date stand on the sheet Clinic settings.`;
/** Above a list, where there is room for one line. */
const INVENTED_SHORT = "Invented people. ";
const NOBODY_SHORT = `${NOT_AGREED}.`;

const ifInvented = (line: string) => `IF(LEN(${INVENTED_ON})=0,"","${line}")`;

const dayIn = (name: string) =>
  `DAY(${name})&" "&CHOOSE(MONTH(${name}),${SHORT_MONTHS.map((month) => `"${month}"`).join(",")})&" "&YEAR(${name})`;
/** Said once, above each list, and on no row. */
export const NO_NUMBER = "No number to call is entered.";
const numberFormula = `IF(LEN(TRIM(Call_Day))=0," ${NO_NUMBER}","")`;
const isReviewLate = "IF(ISNUMBER(Agreed_Until),Agreed_Until<As_of,TRUE)";
/** As the pane judges it: a day ahead or a review that is past is not agreed. */
const agreedFormula = (nobody: string) =>
  `IF(LEN(TRIM(Agreed_By))=0,"${nobody}",IF(NOT(ISNUMBER(Agreed_On)),"${nobody}",IF(Agreed_On>As_of,"${nobody}",` +
  `IF(${isReviewLate},"${NOT_AGREED} any more, the review is due: agreed","Settings agreed")` +
  `&" by "&Agreed_By&" on "&${dayIn("Agreed_On")}&".")))&${numberFormula}`;

type Look = CellDescription["look"] & string;

/** Cells of the first rows; a new book's settings are agreed by nobody yet. */
export function lines(title: string, isInvented: boolean, across: number): readonly CellDescription[] {
  const line = (row: number, look: Look, value: Cell, formula?: string): CellDescription => ({
    row,
    column: 0,
    value,
    look,
    across,
    wrap: look === "caution",
    ...(formula !== undefined && { formula }),
  });
  return [
    line(titleRow, "title", title),
    line(inventedRow, "invented", isInvented ? INVENTED_LINE : "", ifInvented(INVENTED_LINE)),
    line(quietRow, "caution", QUIET_LINE),
    line(agreedRow, "caution", `${NOBODY} ${NO_NUMBER}`, agreedFormula(NOBODY)),
  ];
}

/** Columns under the line that says whether the people are invented and who agreed the settings. */
const BESIDE = 12;

/**
 * The one line above a list, so that rows are what is seen: its name, and beside it what must be known of every row. What
 * decides stands on Read first and at the foot of every printed page.
 * @param under columns that the name takes
 */
export const listLine = (title: string, isInvented: boolean, under: number): readonly CellDescription[] => [
  { row: titleRow, column: 0, value: title, look: "title" },
  {
    row: titleRow,
    column: under,
    value: `${isInvented ? INVENTED_SHORT : ""}${NOBODY_SHORT} ${NO_NUMBER}`,
    look: "caution",
    across: BESIDE,
    formula: `${ifInvented(INVENTED_SHORT)}&${agreedFormula(NOBODY_SHORT)}`,
  },
];

export const FOOTER = QUIET_LINE;
