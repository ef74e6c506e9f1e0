/**
 * Whether a bumper in the stomach is to be looked at again: so long after it came in, or after its site was last seen
 * quiet. A site that was seen to be anything else postpones nothing. Hidden columns that *To do* reads.
 */
import { formula } from "../../columns/formula";
import { PLAIN, type CaseloadColumn } from "../column";
import { CHECK_SETTINGS } from "../ready";
import { is, isPastDayIn, wordIn } from "../reading";
import { ifLive } from "./live";

export const REVIEW = "review the tube";
export const QUIET = "quiet";

const SEEN = "Site seen on";
const hidden = { kind: "computed", format: PLAIN, width: 4, isHidden: true } as const;

/** `adult`, `child`, `not known`. */
export const ageClass: CaseloadColumn = {
  ...hidden,
  header: "Age class",
  formula: (cell) =>
    ifLive(
      cell,
      formula`IF(${isPastDayIn(cell("Born"))},IF(N(${cell("Born")})<Day_Adult+1,"adult","child"),"not known")`,
    ),
};

export const review: CaseloadColumn = {
  ...hidden,
  header: "Review",
  formula: (cell) => {
    const came = formula`IF(${isPastDayIn(cell("Device in"))},N(${cell("Device in")}),0)`;
    const isSeen = formula`IF(${is(wordIn(cell("Site")), QUIET)},${isPastDayIn(cell(SEEN))},FALSE)`;
    const last = formula`MAX(${came},IF(${isSeen},N(${cell(SEEN)}),0))`;
    const age = cell("Age class");
    /* Where the age is not known the shorter time counts. */
    const since = formula`IF(${is(age, "adult")},Day_ReviewAdult,IF(${is(age, "child")},Day_ReviewChild,MAX(Day_ReviewAdult,Day_ReviewChild)))`;
    const isDue = formula`IF(${last}>0,INT(${last})<${since},FALSE)`;
    const isBumper = formula`AND(${is(wordIn(cell("Held by")), "bumper")},${is(wordIn(cell("Access")), "g")})`;
    return ifLive(cell, formula`IF(${isBumper},IF(Ready_Review,IF(${isDue},"${REVIEW}",""),"${CHECK_SETTINGS}"),"")`);
  },
};
