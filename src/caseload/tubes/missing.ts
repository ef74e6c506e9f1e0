/** Missing or contradictory: all that is missing in a row, or contradicts itself, in words, one after the other. */
import { PLAIN, type CaseloadColumn } from "../column";
import { isAhead, isBlank, isOneOf, isPast, joined, sentence, wordOf } from "../phrases";
import { computed, hidden } from "../shown";

export const gapColumns: readonly CaseloadColumn[] = [
  hidden(
    "Gaps of the person",
    joined(
      sentence(`[@Person]=""`, "no ID"),
      sentence(`[@[Rows of the key]]>1`, "same ID and access twice"),
      sentence(`[@[Status word]]<>"active"`, "no status"),
      sentence(`[@End]="not known"`, "not known where it ends (access)"),
    ),
  ),
  hidden(
    "Gaps of dates",
    joined(
      `IF([@[Stoma day]]="no date","no date of the stoma",IF([@[Stoma day]]="check date","date of the stoma wrong",""))`,
      `IF([@[Device day]]="no date","no date of device in",IF([@[Device day]]="check date","date of device in wrong",IF(AND([@[Stoma after device]]="yes",ISNUMBER([@[Stoma day]])),"device in before the stoma was made","")))`,
    ),
  ),
  hidden(
    "Gaps of birth and booking",
    joined(
      sentence(`[@[Months old]]="check date"`, "birth date wrong"),
      sentence(`[@[Stoma before birth]]="yes"`, "born after the stoma was made"),
      sentence(`[@Booking]="wrong"`, "booking is no usable date"),
      sentence(
        `IF(ISNUMBER([@[Booked for]]),AND([@[Booked for]]<As_of,N([@[Device day]])<INT([@[Booked for]])),FALSE)`,
        "booked date passed",
      ),
    ),
  ),
  hidden(
    "Gaps of person and dates",
    joined(
      "[@[Gaps of the person]]",
      "[@[Gaps of dates]]",
      "[@[Gaps of birth and booking]]",
      sentence(`[@[Own months]]="check date"`, "own interval wrong"),
      sentence(`[@[Team day]]="check date"`, "placing team's date wrong"),
    ),
  ),
  hidden(
    "Gaps of kind",
    joined(
      sentence(
        `AND([@Held]="balloon",COUNT([@[Change due]],[@[Limit day]])=1+1,N([@[Change due]])>N([@[Limit day]]))`,
        "agreed later than the clinic's limit for balloons",
      ),
      sentence(`[@Held]="not known"`, "not known how it is held"),
      sentence(
        `NOT(${isOneOf(wordOf("[@[Known from]]"), ["record", "label", "seen"])})`,
        "how it is held: ask where that is known from",
      ),
    ),
  ),
  hidden(
    "Gap of size",
    `IF(ISNUMBER([@[Size Fr]]),IF([@[Size Fr]]<Size_Least,"size: rather mm than Fr",IF([@[Size Fr]]>Size_Most,"size very large","")),IF(${isBlank("[@[Size Fr]]")},"no size","size is not a number"))`,
  ),
  hidden(
    "Gap of length",
    `IF(ISNUMBER([@[Length cm]]),IF([@[Length cm]]>Length_Most,"length: rather mm than cm",IF([@[Length cm]]<=0,"length is not a number above 0","")),IF(${isBlank("[@[Length cm]]")},IF([@Form]="low-profile","no length",""),"length is not a number above 0"))`,
  ),
  hidden(
    "Gaps of shape and size",
    joined(
      sentence(`[@Form]="not known"`, "no shape"),
      sentence(`AND([@Held]="bumper",LEN([@[Months old]])=0)`, "no birth date: adult or child not known"),
      "[@[Gap of size]]",
      "[@[Gap of length]]",
    ),
  ),
  hidden(
    "Gaps of time and changer",
    joined(
      sentence(
        `IF(AND([@Held]="catheter",ISNUMBER([@[Device day]])),As_of-[@[Device in]]>StopGap_Days,FALSE)`,
        "catheter longer in than a stop-gap",
      ),
      sentence(`[@Changer]="not decided"`, "not decided who changes it"),
      sentence(`[@[Nobody trained]]="not known"`, "nobody is trained for tube out: ask what cannot wait"),
    ),
  ),
  hidden(
    "Gaps of the carer",
    `IF([@Changer]="carer",${joined(`IF(OR([@End]="gj",[@End]="j"),"a carer is to change a "&UPPER([@End])&": never at home","")`, sentence(`[@Held]="bumper"`, "a carer is to change a bumper: not at home"), sentence(`AND([@Kind]<>"balloon g",[@Held]<>"bumper",[@End]<>"gj",[@End]<>"j")`, "carer is to change a device that is not changed at home"))},"")`,
  ),
  hidden(
    "Gap of turning",
    `IF(AND(OR([@Held]="stitched",[@End]="gj",[@End]="j"),NOT(${isOneOf(wordOf("[@Turning]"), ["", "never"])})),"turning: must be never","")`,
    "plan",
  ),
  hidden(
    "Gaps of device",
    joined(
      "[@[Gaps of kind]]",
      "[@[Gaps of shape and size]]",
      "[@[Gaps of time and changer]]",
      "[@[Gaps of the carer]]",
      "[@[Gap of turning]]",
    ),
  ),
  hidden(
    "Fill state",
    `IF(IFERROR(AND([@[Fill mL]]>0,[@[Fill mL]]<=Volume_Most),FALSE),"usual",IF(${isBlank("[@[Fill mL]]")},"none","unusual"))`,
  ),
  hidden(
    "Label state",
    `IF(IFERROR(AND([@[Most mL]]>0,[@[Most mL]]<=Volume_Most),FALSE),"usual",IF(${isBlank("[@[Most mL]]")},"none","unusual"))`,
  ),
  hidden(
    "Gaps of fill",
    joined(
      `IF([@[Fill state]]="unusual","fill is not a usual volume",IF(AND([@Held]="balloon",[@[Fill state]]="none"),"no fill",""))`,
      sentence(`[@[Label state]]="unusual"`, "label's volume is not a usual volume"),
      sentence(
        `IF(COUNT([@[Fill mL]],[@[Most mL]])=1+1,AND([@[Most mL]]>0,[@[Fill mL]]>[@[Most mL]]),FALSE)`,
        "fill above the label",
      ),
    ),
  ),
  hidden(
    "Gaps of balloon",
    joined(
      sentence(
        `AND([@Held]="balloon",[@[Fill state]]<>"none",[@[Label state]]="none")`,
        "a fill without the label's largest volume",
      ),
      sentence(
        `AND([@[Held otherwise]]="yes",[@[Fill state]]&[@[Label state]]<>"nonenone")`,
        "a fill without a balloon",
      ),
      sentence(`AND([@[Held otherwise]]="yes",ISNUMBER([@Newest]))`, "a balloon check without a balloon"),
    ),
  ),
  hidden(
    "Gaps of checks",
    joined(
      sentence(`AND([@[Too early]]="yes",ISNUMBER([@[Stoma day]]))`, "checked before the first-check date"),
      sentence(
        `IF(COUNT([@[Put in mL]],[@[Most mL]])=1+1,AND([@[Most mL]]>0,[@[Put in mL]]>[@[Most mL]]),FALSE)`,
        "more put in than the label allows",
      ),
      sentence(`AND([@Balloon]="check late",NOT(ISNUMBER([@Newest])))`, "nothing recorded since device in"),
    ),
  ),
  hidden(
    "Weight state",
    `IF(${isBlank("[@[Weight kg]]")},"",IF(${isPast("[@[Weighed on]]")},IF([@[Weighed on]]<IF([@[Age class]]="adult",Day_WeightAdult,Day_WeightChild),"weight is old",""),"no usable date of the weight"))`,
  ),
  hidden(
    "Gaps of weight",
    joined(
      sentence(
        `IF(ISNUMBER([@[Weight kg]]),[@[Weight kg]]<=0,NOT(${isBlank("[@[Weight kg]]")}))`,
        "weight is not a number above 0",
      ),
      "[@[Weight state]]",
      sentence(`IF(ISNUMBER([@[Weight change]]),[@[Weight change]]>Weight_Jump,FALSE)`, "weight has jumped"),
    ),
  ),
  hidden(
    "Gap of readings",
    `IF(COUNT([@[Lying cm]],[@[Sitting cm]])=1+1,IF(AND([@[Sitting cm]]>0,[@[Sitting cm]]<[@[Lying cm]]),"sitting below lying",""),"")`,
    "fit",
  ),
  hidden(
    "Spare size",
    `IF(AND(ISNUMBER([@[Size Fr]]),ISNUMBER([@[Spare Fr]])),IF(OR([@[Spare Fr]]>[@[Size Fr]],AND([@Spare]="same size",[@[Spare Fr]]<[@[Size Fr]])),"other",""),"")`,
    "spare",
  ),
  hidden(
    "Spare length",
    `IF(AND(ISNUMBER([@[Length cm]]),ISNUMBER([@[Spare cm]])),IF(OR([@[Spare cm]]<[@[Length cm]],AND([@Spare]="same size",[@[Spare cm]]>[@[Length cm]])),"other",""),"")`,
    "spare",
  ),
  hidden(
    "Gaps of spare",
    `IF([@[Spare there]]="yes",${joined(sentence(`[@[Spare size]]&[@[Spare length]]<>""`, "the spare is not of the tube's size"), sentence(isBlank("[@[Spare lot]]"), "no lot of the spare"), sentence(`NOT(${isAhead("[@[Spare expires]]")})`, "no usable expiry of the spare"))},"")`,
    "spare",
  ),
  hidden(
    "Gaps of balloon, weight and spare",
    joined(
      "[@[Gaps of fill]]",
      "[@[Gaps of balloon]]",
      "[@[Gaps of checks]]",
      "[@[Gaps of weight]]",
      "[@[Gap of readings]]",
      "[@[Gaps of spare]]",
      sentence(`[@[Site word]]="other"`, "site is no word of the list"),
    ),
  ),
];

export const missing = computed(
  "Missing or contradictory",
  `IF([@Live]="live",IF(Ready_Entries,${joined("[@[Gaps of person and dates]]", "[@[Gaps of device]]", "[@[Gaps of balloon, weight and spare]]")},"check settings"),IF(OR([@Live]="",ISNUMBER([@[Status day]])),"",IF([@[Status day]]="no date","no date of the status","date of the status wrong")))`,
  { format: PLAIN, width: 58 },
);
