/** The lines above every sheet's content: title, whether the people are invented, what decides, who agreed the settings. */
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

const inventedFormula = `IF(LEN(${INVENTED_ON})=0,"","${INVENTED_LINE}")`;

const dayIn = (name: string) =>
  `DAY(${name})&" "&CHOOSE(MONTH(${name}),${SHORT_MONTHS.map((month) => `"${month}"`).join(",")})&" "&YEAR(${name})`;
/** Said once, above each list, and on no row. */
export const NO_NUMBER = "No number to call is entered.";
const numberFormula = `IF(LEN(TRIM(Call_Day))=0," ${NO_NUMBER}","")`;
const isReviewLate = "IF(ISNUMBER(Agreed_Until),Agreed_Until<As_of,TRUE)";
/** As the pane judges it: a day ahead or a review that is past is not agreed. */
const agreedFormula =
  `IF(LEN(TRIM(Agreed_By))=0,"${NOBODY}",IF(NOT(ISNUMBER(Agreed_On)),"${NOBODY}",IF(Agreed_On>As_of,"${NOBODY}",` +
  `IF(${isReviewLate},"${NOT_AGREED} any more, the review is due: agreed","Settings agreed")` +
  `&" by "&Agreed_By&" on "&${dayIn("Agreed_On")}&".")))&${numberFormula}`;

/** Cells of the first rows; a new book's settings are agreed by nobody yet. */
export function lines(title: string, isInvented: boolean, across: number): readonly CellDescription[] {
  const line = (
    row: number,
    look: CellDescription["look"] & string,
    value: Cell,
    formula?: string,
  ): CellDescription => ({
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
    line(inventedRow, "invented", isInvented ? INVENTED_LINE : "", inventedFormula),
    line(quietRow, "caution", QUIET_LINE),
    line(agreedRow, "caution", `${NOBODY} ${NO_NUMBER}`, agreedFormula),
  ];
}

export const FOOTER = QUIET_LINE;
