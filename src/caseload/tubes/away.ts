/**
 * Somebody on hold or in hospital: the row is silent, and not for ever. After the clinic's days it asks; how long it has
 * been so is known only where somebody wrote it down, which *Missing or contradictory* asks for.
 */
import { formula } from "../../columns/formula";
import { PLAIN, type CaseloadColumn, type Slots } from "../column";
import { is, isBlankIn, isPastDayIn } from "../reading";
import { urgencyKey } from "../urgency";

const SINCE = "Status since";
const hidden = { kind: "computed", format: PLAIN, width: 4, isHidden: true } as const;

const kinds = [
  { live: "hold", days: "Hold_Days", late: urgencyKey("hold too long"), calm: null },
  {
    live: "hospital",
    days: "Hospital_Days",
    late: urgencyKey("hospital too long"),
    calm: urgencyKey("in hospital"),
  },
] as const;
const CHECK = urgencyKey("check settings");

/** The place of its word in the order of urgency; "" where there is none. */
export const away: CaseloadColumn = {
  ...hidden,
  header: "Away",
  formula: (cell) => {
    const [hold, hospital] = kinds.map(({ days, late, calm }) => {
      const isLong = formula`IF(${isPastDayIn(cell(SINCE))},As_of-INT(${cell(SINCE)})>${days},FALSE)`;
      const long = formula`IF(${isLong},${late},${calm ?? '""'})`;
      return formula`IF(ISNUMBER(${days}),IF(${days}>0,${long},${CHECK}),${CHECK})`;
    });
    return formula`IF(${is(cell("Live"), "hold")},${hold!},IF(${is(cell("Live"), "hospital")},${hospital!},""))`;
  },
};

const NO_SINCE = "no date of the status";
const WRONG_SINCE = "date of the status wrong";

/** What is missing in a row that is silent. */
export const awayGapIn = (cell: Slots) =>
  formula`IF(OR(${is(cell("Live"), "hold")},${is(cell("Live"), "hospital")}),IF(${isBlankIn(cell(SINCE))},"${NO_SINCE}",IF(${isPastDayIn(cell(SINCE))},"","${WRONG_SINCE}")),"")`;
