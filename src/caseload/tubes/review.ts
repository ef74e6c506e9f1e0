/**
 * Whether a bumper in the stomach is to be looked at again: so long after it came in, or after its site was last seen
 * quiet. A site that was seen to be anything else postpones nothing. Where the age is not known the shorter time counts.
 */
import { type CaseloadColumn } from "../column";
import { ifLive } from "../phrases";
import { hidden } from "../shown";

export const reviewColumns: readonly CaseloadColumn[] = [
  hidden(
    "Review since",
    `IF([@[Age class]]="adult",Day_ReviewAdult,IF([@[Age class]]="child",Day_ReviewChild,MAX(Day_ReviewAdult,Day_ReviewChild)))`,
  ),
  hidden("Last seen", `MAX([@[Device day]],IF([@[Site word]]="quiet",N([@[Seen day]]),0))`),
  hidden(
    "Review",
    ifLive(
      `IF(AND([@Held]="bumper",[@End]="g"),IF(NOT(Ready_Review),"check settings",IF(AND([@[Last seen]]>0,[@[Last seen]]<[@[Review since]]),"review the tube","")),"")`,
    ),
  ),
];
