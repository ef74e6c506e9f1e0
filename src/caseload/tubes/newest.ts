/**
 * The newest check of the device now in: the last one of this row among the tags in order (checks/order.ts). A check from
 * before the device came in was another balloon's.
 */
import { OWN_ROW } from "./read";
import { DATE, TENTHS, type CaseloadColumn } from "../column";
import { computed, hidden } from "../shown";

/** `Newest`: its row within Balloon checks. */
export const newestSteps: readonly CaseloadColumn[] = [
  hidden(
    "Newest tag",
    `IF(AND([@Live]="live",[@[Rows of the key]]=1),IFERROR(LOOKUP((${OWN_ROW}*10^5+10^5-1-1)*10^5-1,Check_InOrder),0),0)`,
  ),
  hidden(
    "Newest",
    `IF(INT([@[Newest tag]]/10^10)=${OWN_ROW},IF(N([@Came])>INDEX(Check_Day,MOD([@[Newest tag]],10^5)),"",MOD([@[Newest tag]],10^5)),"")`,
  ),
  hidden("Check state", `IF(ISNUMBER([@Newest]),T(INDEX(Check_State,[@Newest])),"")`),
  hidden("Check left", `IF(ISNUMBER([@Newest]),T(INDEX(Check_Left,[@Newest])),"")`),
];

export const lastCheck = computed("Last check", `IF(ISNUMBER([@Newest]),INDEX(Check_On,[@Newest]),"")`, {
  format: DATE,
  width: 12,
});

export const outMl = computed(
  "Out mL",
  `IF(ISNUMBER([@Newest]),IF(ISNUMBER(INDEX(Check_Out,[@Newest])),INDEX(Check_Out,[@Newest]),""),"")`,
  { format: TENTHS, width: 8 },
);

export const putInMl = computed(
  "Put in mL",
  `IF(ISNUMBER([@Newest]),IF(ISNUMBER(INDEX(Check_PutIn,[@Newest])),INDEX(Check_PutIn,[@Newest]),""),"")`,
  { format: TENTHS, width: 9 },
);

export const lossMl = computed("Loss mL", `IF(ISNUMBER([@Newest]),INDEX(Check_Loss,[@Newest]),"")`, {
  format: TENTHS,
  width: 8,
});
