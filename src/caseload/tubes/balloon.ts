/** What the newest check of the device now in says. A word from an old check never stays good. */
import {
  ABOVE_LABEL,
  CLOUDY,
  LEFT_EMPTY,
  MILKY,
  NOT_AGREED_FILL,
  NOTHING_CAME,
  PUT_IN_NOT_KNOWN,
  WHICH_DEVICE,
} from "../checks/words";
import { CHECK_DATE, NO_DATE } from "../../columns/state-words";
import { OWN_ROW } from "./read";
import { CHECK_SETTINGS } from "../ready";
import { DATE, PLAIN, type CaseloadColumn } from "../column";
import { ifLive, isOneOf } from "../phrases";
import { computed, hidden } from "../shown";

/**
 * `Loose check`: a check of this person that cannot be laid to a device, or to a day. `Balloon by dates`: `as filled` only
 * where the next check is not late.
 */
export const balloonSteps: readonly CaseloadColumn[] = [
  hidden(
    "Next check",
    `IF(ISNUMBER([@Newest]),INT(N([@[Last check]]))+IF([@[Check state]]="as filled",Check_Days,MIN(Check_Days,Loss_Again)),IF(ISNUMBER([@[Device day]]),[@[Device day]]+Check_AfterChange,""))`,
  ),
  hidden(
    "Check by dates",
    `IF(AND(ISNUMBER([@[Stoma day]]),ISNUMBER([@[Device day]])),IF([@[Device day]]<[@[Stoma day]],"check date",MAX([@[Next check]],[@[Stoma day]]+Check_First)),IF(OR([@[Stoma day]]="no date",[@[Device day]]="no date"),"no date","check date"))`,
  ),
  hidden("Late", `IF(ISNUMBER([@[Check due]]),IF([@[Check due]]+Check_Grace<As_of,"late",""),"")`),
  hidden(
    "Loose check",
    `IF([@Person]="","no",IF(OR(IFERROR(LOOKUP((${OWN_ROW}*10^5+10^5-1)*10^5-1,Check_InOrder),0)>=(${OWN_ROW}*10^5+10^5-1-1)*10^5,IFERROR(LOOKUP(([@[First of the person]]+1)*10^10-1,Check_InOrder),0)>=([@[First of the person]]*10^5+10^5-1)*10^5),"yes","no"))`,
  ),
  hidden(
    "Too early",
    `IF(AND(ISNUMBER([@[Stoma made]]),ISNUMBER([@[Last check]])),IF([@[Last check]]<INT([@[Stoma made]])+Check_First,"yes","no"),"no")`,
  ),
  hidden(
    "Balloon by dates",
    `IF(ISNUMBER([@[Check due]]),IF([@Late]="late","check late",IF(ISNUMBER([@Newest]),"as filled","no check yet")),IF([@[Check due]]<>"",[@[Check due]],IF([@Card]="yes","kept at home",IF(ISNUMBER([@Newest]),"check date","no check yet"))))`,
  ),
  hidden(
    "Nothing missing",
    `IF([@[Too early]]="yes","too early",IF([@[Loose check]]="yes","device not clear",IF(${isOneOf("[@[Check state]]", ["put in not known", "not the agreed fill", "cloudy: ask"])},[@[Check state]],IF([@[Check state]]="as filled",[@[Balloon by dates]],"not measured"))))`,
  ),
  hidden(
    "Balloon checked",
    `IF([@[Check state]]="empty","empty",IF(OR([@[Check left]]="left empty",[@[Check left]]="above the label"),[@[Check left]],IF(${isOneOf("[@[Check state]]", ["half or less", "milky fluid", "more than put in", "nothing came"])},[@[Check state]],IF([@[Check state]]="low",IF(N(INDEX(Check_LowRow,[@Newest]))>=Loss_Twice,"low twice: plan change","low"),[@[Nothing missing]]))))`,
  ),
  hidden("Held otherwise", `IF(OR([@Held]="balloon",[@Held]="not known"),"no","yes")`),
  hidden("Found empty", `IF([@[Check state]]="empty","empty",IF([@[Check left]]="left empty","left empty",""))`),
];

/** As CHECKDUE; sooner again after a check that was anything but as filled. None is awaited from a carer who keeps the card. */
export const checkDue = computed(
  "Check due",
  `IF(AND([@Live]="live",[@Held]="balloon",[@Card]="no"),IF(Ready_Balloon,[@[Check by dates]],"check settings"),"")`,
  { format: DATE, width: 12, rules: [{ look: "missing", words: [CHECK_DATE, NO_DATE, CHECK_SETTINGS] }] },
);

/** Bad news first; `as filled` only where nothing speaks against it. */
export const balloon = computed(
  "Balloon",
  ifLive(
    `IF([@Held]="balloon",IF(Ready_Balloon,IF(ISNUMBER([@Newest]),[@[Balloon checked]],IF([@[Loose check]]="yes","device not clear",[@[Balloon by dates]])),IF([@[Found empty]]="empty","empty","check settings")),T([@[Found empty]]))`,
  ),
  {
    format: PLAIN,
    width: 19,
    rules: [
      {
        look: "act",
        words: [
          "empty",
          LEFT_EMPTY,
          ABOVE_LABEL,
          "half or less",
          MILKY,
          NOTHING_CAME,
          "low twice: plan change",
          "low",
          "more than put in",
        ],
      },
      { look: "soon", words: [PUT_IN_NOT_KNOWN, NOT_AGREED_FILL, CLOUDY, "too early", "check late"] },
      { look: "missing", words: [WHICH_DEVICE, CHECK_DATE, NO_DATE, "not measured", "no check yet", CHECK_SETTINGS] },
      { look: "quiet", words: ["kept at home", "as filled"] },
    ],
  },
);
