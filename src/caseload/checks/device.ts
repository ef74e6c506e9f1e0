/**
 * Which device a check was made on. The device now in, unless it came in later; else a past one that was in on that day.
 * With no access given it is the person's only row, or a past device of any access.
 */
import { DATE, type CaseloadColumn } from "../column";
import { identityOf, isBlank, isPast } from "../phrases";
import { computed, hidden } from "../shown";

/**
 * `Key`: a key that several rows of the list have is none; one that no row has is a device's that came out since, where
 * the log says that it was in on that day. `Tag`: one whole number for whose check it is, its day and its row; devices that
 * have no row any more count from 50,000.
 */
export const deviceSteps: readonly CaseloadColumn[] = [
  hidden("Check day", `IF(${isPast("[@[Checked on]]")},INT([@[Checked on]]),"")`),
  hidden("First row", `IF([@Person]="","",IFERROR(MATCH([@Person],Tube_Person,0),""))`),
  hidden(
    "Asked key",
    `IF(${isBlank("[@Access]")},IF(IF(ISNUMBER([@[First row]]),INDEX(Tube_PersonRows,[@[First row]])=1,FALSE),INDEX(Tube_Key,[@[First row]]),""),IF([@Person]="","",[@Person]&"|"&${identityOf("[@Access]")}))`,
  ),
  hidden("Row", `IF([@[Asked key]]="","",IFERROR(MATCH([@[Asked key]],Tube_Key,0),""))`),
  hidden("Came", `IF(ISNUMBER([@Row]),INDEX(Tube_Came,[@Row]),"")`),
  hidden("Now in", `IF(AND(ISNUMBER([@[Checked on]]),N([@Came])>0),IF([@Came]<=INT([@[Checked on]]),"yes","no"),"no")`),
  hidden(
    "Past in",
    `IF(OR([@[Asked key]]="",[@[Now in]]="yes",NOT(ISNUMBER([@[Checked on]]))),0,N(MAXIFS(Change_In,Change_Key,[@[Asked key]],Change_In,"<="&INT([@[Checked on]]),Change_Out,">="&INT([@[Checked on]]))))`,
  ),
  hidden("Key", `IF(IF(ISNUMBER([@Row]),INDEX(Tube_KeyRows,[@Row])=1,[@[Past in]]>0),[@[Asked key]],"")`),
  hidden("Tube", `IF([@Key]="","",[@Row])`),
  hidden(
    "Tag",
    `IF(OR([@Key]="",[@[Check day]]=""),"",(IF(ISNUMBER([@Tube]),[@Tube],5*10^4+MATCH([@Key],Change_Key,0))*10^5+[@[Check day]])*10^5+ROW()-ROW(Check_Top))`,
  ),
  hidden(
    "Past in, any access",
    `IF(AND([@[Past in]]=0,[@[Now in]]="no",ISNUMBER([@Tag]),${isBlank("[@Access]")}),N(MAXIFS(Change_In,Change_Person,[@Person],Change_In,"<="&[@[Check day]],Change_Out,">="&[@[Check day]])),[@[Past in]])`,
  ),
  hidden("Current", `IF(ISNUMBER([@Tube]),IF(OR([@[Device in]]="",[@[Device in]]=[@Came]),"yes","no"),"no")`),
];

export const deviceIn = computed(
  "Device in",
  `IF(ISNUMBER([@Tag]),IF([@[Now in]]="yes",[@Came],IF([@[Past in, any access]]>0,INT([@[Past in, any access]]),"")),"")`,
  { format: DATE, width: 12 },
);
