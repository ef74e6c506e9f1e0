/** Typed cells as the rules read them: words of the lists, days that can be, or why there is none. */
import { type CaseloadColumn } from "../column";
import { dayOf, isBirth, isBlank, isOneOf, isPast, knownWord, wordOf } from "../phrases";
import { hidden } from "../shown";

/** Its row within the list, counted from 1. */
export const OWN_ROW = "(ROW()-ROW(Tube_Top))";

/** How many rows are this person's, and this device's; a second one is a contradiction or a second device. */
export const rowColumns: readonly CaseloadColumn[] = [
  hidden("Rows of the person", `IF([@Person]="",0,COUNTIFS(Tube_Person,[@Person]))`),
  hidden("Rows of the key", `IF([@Key]="",0,COUNTIFS(Tube_Key,[@Key]))`),
  hidden("First of the person", `IF([@[Rows of the person]]>1,MATCH([@Person],Tube_Person,0),${OWN_ROW})`),
];

/** `Held`: what holds it; `End`: where the feed ends; `Form`: its shape; `Card`: a carer keeps a card at home. */
export const wordColumns: readonly CaseloadColumn[] = [
  hidden("Held", knownWord("[@[Held by]]", ["balloon", "bumper", "loop", "winged", "stitched", "catheter"])),
  hidden("End", knownWord("[@Access]", ["g", "gj", "j"])),
  hidden("Form", knownWord("[@Shape]", ["long", "low-profile"])),
  hidden(
    "Changer",
    knownWord(
      "[@[Changed by]]",
      ["carer", "nurse at home", "nurse in clinic", "radiology", "endoscopy", "surgery"],
      "not decided",
    ),
  ),
  hidden("Card", `IF(${wordOf("[@[Checked by]]")}="carer, keeps card","yes","no")`),
  hidden("Spare", knownWord("[@[Spare at home]]", ["same size", "smaller", "both", "none"])),
  hidden("Spare there", `IF(OR([@Spare]="none",[@Spare]="not known"),"no","yes")`, "spare"),
  hidden(
    "Site word",
    `IF(${isOneOf(wordOf("[@Site]"), ["", "quiet", "red", "overgrown", "leaking", "infected", "tight or stuck", "not seen"])},LOWER(TRIM([@Site])),"other")`,
    "spare",
  ),
];

/** `Came`: the day of Device in, whether it can be or not. */
export const dayColumns: readonly CaseloadColumn[] = [
  hidden("Stoma day", dayOf("[@[Stoma made]]")),
  hidden("Device day", dayOf("[@[Device in]]")),
  hidden("Came", `IF(ISNUMBER([@[Device in]]),INT([@[Device in]]),"")`),
  hidden("Seen day", `IF(${isPast("[@[Site seen on]]")},INT([@[Site seen on]]),"")`, "spare"),
  hidden("Status day", dayOf("[@[Status since]]")),
  hidden(
    "Months old",
    `IF(${isBirth("[@Born]")},12*(YEAR(As_of)-YEAR([@Born]))+MONTH(As_of)-MONTH([@Born])-IF(DAY(As_of)<DAY([@Born]),1,0),IF(${isBlank("[@Born]")},"","check date"))`,
  ),
  hidden("Age class", `IF(${isPast("[@Born]")},IF([@Born]<Day_Adult+1,"adult","child"),"not known")`),
  hidden(
    "Stoma after device",
    `IF(AND(ISNUMBER([@[Stoma made]]),ISNUMBER([@[Device in]])),IF([@[Stoma made]]>=[@[Device in]]+1,"yes","no"),"no")`,
  ),
  hidden(
    "Stoma before birth",
    `IF(AND(ISNUMBER([@[Stoma day]]),ISNUMBER([@Born])),IF([@[Stoma made]]+1<=[@Born],"yes","no"),"no")`,
  ),
];
