/** How much water was expected to come out: what was put in last time; where that was not written down, the agreed fill. */
import { TENTHS, type CaseloadColumn } from "../column";
import { isBlank } from "../phrases";
import { computed, hidden } from "../shown";

/** Fill and label of the device now in; of a device that came out, the fill that the log has. */
export const expectedSteps: readonly CaseloadColumn[] = [
  hidden("Agreed mL", `IF([@Current]="yes",IF(ISNUMBER(INDEX(Tube_Fill,[@Tube])),INDEX(Tube_Fill,[@Tube]),""),"")`),
  hidden("Label mL", `IF([@Current]="yes",IF(ISNUMBER(INDEX(Tube_Most,[@Tube])),INDEX(Tube_Most,[@Tube]),""),"")`),
  hidden(
    "Fill then",
    `IF([@Current]="yes",[@[Agreed mL]],IF([@[Device in]]="","",N(IF(COUNTIFS(Change_Key,[@Key],Change_In,[@[Device in]])>0,MAXIFS(Change_Fill,Change_Key,[@Key],Change_In,[@[Device in]],Change_Fill,">0"),IF(${isBlank("[@Access]")},MAXIFS(Change_Fill,Change_Person,[@Person],Change_In,[@[Device in]],Change_Fill,">0"),0)))))`,
  ),
  hidden(
    "Put in, read",
    `IF(ISNUMBER([@[Put in mL]]),[@[Put in mL]],IF(${isBlank("[@[Put in mL]]")},"","not a number"))`,
  ),
  hidden(
    "Expected from",
    `IF(IF(ISNUMBER([@Before]),LEN(INDEX(Check_PutRead,[@Before]))>0,FALSE),INDEX(Check_PutRead,[@Before]),N([@[Fill then]]))`,
  ),
];

export const expectedMl = computed(
  "Expected mL",
  `IFERROR(IF(AND([@Key]<>"",N([@[Expected from]])>0,N([@[Expected from]])<=N(Volume_Most)),[@[Expected from]],""),"")`,
  { format: TENTHS, width: 9 },
);

export const daysSinceFill = computed(
  "Days since fill",
  `IF(ISNUMBER([@Before]),[@[Check day]]-INDEX(Check_Day,[@Before]),IF(AND(ISNUMBER([@Tag]),ISNUMBER([@[Device in]])),[@[Check day]]-N([@[Device in]]),""))`,
  { format: "0", width: 9 },
);
