/** What the newest check of the device now in says, read from Balloon checks. A word from an old check never stays good. */
import type { Header } from "../headers";
import { CLOUDY, LEFT_EMPTY, MILKY, NOT_AGREED_FILL, PUT_IN_NOT_KNOWN, WHICH_DEVICE, leftBadly } from "../checks/words";
import { formula, type FormulaTemplate } from "../../columns/formula";
import { CHECK_DATE, NO_DATE } from "../../columns/state-words";
import { DATE, letting, PLAIN, TENTHS, type CaseloadColumn } from "../column";
import { CHECK_SETTINGS } from "../ready";
import { dayState, is, isOneOf, numberAt, numbered, numberOrWord, wordIn } from "../reading";
import { holds } from "../words";
import { ifLive } from "./live";

/** Row within Balloon checks; a check from before the device came in was another balloon's. */
export const newest: CaseloadColumn = {
  header: "Newest",
  kind: "computed",
  format: PLAIN,
  width: 4,
  isHidden: true,
  formula: (cell) => {
    const isEarlier = formula`IF(ISNUMBER(in),N(INDEX(Check_On,place))<INT(in),FALSE)`;
    const ofDevice = letting(
      { ...numbered("in", cell("Device in")), place: "MATCH(tag,Check_Tag,0)" },
      formula`IF(${isEarlier},"",place)`,
    );
    const found = formula`IF(ISNUMBER(tag),IF(tag>0,${ofDevice},""),"")`;
    return ifLive(cell, letting({ tag: formula`MAXIFS(Check_Tag,Check_Key,${cell("Key")})` }, found));
  },
};

/** A figure of the newest check. */
function fromCheck(header: Header, column: string, format: string, width: number): CaseloadColumn {
  return {
    header,
    kind: "computed",
    format,
    width,
    formula: (cell) => formula`IF(ISNUMBER(${cell("Newest")}),${numberAt(column, cell("Newest"))},"")`,
  };
}

export const lastCheck = fromCheck("Last check", "Check_On", DATE, 12);
export const outMl = fromCheck("Out mL", "Check_Out", TENTHS, 8);
export const putInMl = fromCheck("Put in mL", "Check_PutIn", TENTHS, 9);
export const lossMl = fromCheck("Loss mL", "Check_Loss", TENTHS, 8);

const isBalloonIn = (held: FormulaTemplate) => is(wordIn(held), "balloon");
/** Known to be held by something else: a check of such a balloon contradicts the row. */
const heldOtherwise: readonly string[] = holds.filter((one) => one !== "balloon" && one !== "not known");
const KEEPS_CARD = "carer, keeps card";

/** As CHECKDUE; sooner again after a check that was anything but as filled. None is awaited from a carer who keeps the card. */
export const checkDue: CaseloadColumn = {
  header: "Check due",
  kind: "computed",
  format: DATE,
  width: 12,
  rules: [{ look: "missing", words: [CHECK_DATE, NO_DATE, CHECK_SETTINGS] }],
  formula: (cell) => {
    const again = formula`IF(${is("INDEX(Check_State,place)", "as filled")},Check_Days,MIN(Check_Days,Loss_Again))`;
    const next = formula`IF(ISNUMBER(place),INT(N(INDEX(Check_On,place)))+${again},INT(in)+Check_AfterChange)`;
    const due = letting({ place: cell("Newest") }, formula`MAX(${next},INT(stoma)+Check_First)`);
    const isUsable = formula`IF(AND(stomais=1,inis=1),INT(in)>=INT(stoma),FALSE)`;
    const dated = formula`IF(${isUsable},${due},IF(OR(stomais=0,inis=0),"${NO_DATE}","${CHECK_DATE}"))`;
    const all = letting(
      {
        ...numbered("stoma", cell("Stoma made")),
        stomais: dayState("stoma"),
        ...numbered("in", cell("Device in")),
        inis: dayState("in"),
      },
      dated,
    );
    const isAwaited = formula`AND(${isBalloonIn(cell("Held by"))},NOT(${is(wordIn(cell("Checked by")), KEEPS_CARD)}))`;
    return ifLive(cell, formula`IF(${isAwaited},IF(Ready_Balloon,${all},"${CHECK_SETTINGS}"),"")`);
  },
};

export const LOW_TWICE = "low twice: plan change";
export const NO_CHECK_YET = "no check yet";
export const CHECK_LATE = "check late";
const TOO_EARLY = "too early";
/** What the newest check left in the balloon, or in the syringe, that has to be asked about. */
const remarks = [PUT_IN_NOT_KNOWN, NOT_AGREED_FILL, CLOUDY] as const;
export const KEPT_AT_HOME = "kept at home";

/** Bad news first; `as filled` only where nothing speaks against it. */
export const balloon: CaseloadColumn = {
  header: "Balloon",
  kind: "computed",
  format: PLAIN,
  width: 20,
  rules: [
    { look: "act", words: ["empty", ...leftBadly, "half or less", MILKY, LOW_TWICE, "low", "more than put in"] },
    { look: "soon", words: [...remarks, TOO_EARLY, CHECK_LATE] },
    { look: "missing", words: [WHICH_DEVICE, CHECK_DATE, NO_DATE, "not measured", NO_CHECK_YET, CHECK_SETTINGS] },
    { look: "quiet", words: [KEPT_AT_HOME, "as filled"] },
  ],
  formula: (cell) => {
    const isHome = is(wordIn(cell("Checked by")), KEEPS_CARD);
    const isLate = formula`IF(ISNUMBER(due),due+Check_Grace<As_of,FALSE)`;
    const dateWord = formula`IF(ISNUMBER(due),"",IF(LEN(due)=0,"",due))`;
    const early = formula`IF(ISNUMBER(stoma),N(INDEX(Check_On,place))<INT(stoma)+Check_First,FALSE)`;
    const calm = formula`IF(${is("state", "as filled")},IF(home,"${KEPT_AT_HOME}",IF(ISNUMBER(due),"as filled","${CHECK_DATE}")),"not measured")`;
    const timely = formula`IF(LEN(dated)>0,dated,IF(${isLate},"${CHECK_LATE}",${calm}))`;
    const unread = formula`IF(${isOneOf("state", remarks)},state,IF(${is("state", "as filled")},${timely},"not measured"))`;
    const mild = formula`IF(${is("state", "more than put in")},state,IF(${early},"${TOO_EARLY}",IF(loose,"${WHICH_DEVICE}",${unread})))`;
    const low = formula`IF(N(INDEX(Check_LowRow,place))>=Loss_Twice,"${LOW_TWICE}","low")`;
    const found = letting(
      {
        state: "T(INDEX(Check_State,place))",
        left: "T(INDEX(Check_Left,place))",
        ...numbered("stoma", cell("Stoma made")),
      },
      formula`IF(${is("state", "empty")},state,IF(${isOneOf("left", leftBadly)},left,IF(${isOneOf("state", ["half or less", MILKY])},state,IF(${is("state", "low")},${low},${mild}))))`,
    );
    const none = formula`IF(loose,"${WHICH_DEVICE}",IF(LEN(dated)>0,dated,IF(${isLate},"${CHECK_LATE}",IF(home,"${KEPT_AT_HOME}","${NO_CHECK_YET}"))))`;
    const all = letting(
      {
        place: cell("Newest"),
        ...numberOrWord("due", cell("Check due")),
        dated: dateWord,
        home: isHome,
        /* An empty criterion would count the blanks: real engines do, the grid's does not. */
        loose: formula`IF(LEN(${cell("Person")})=0,FALSE,COUNTIFS(Check_Loose,${cell("Person")})+COUNTIFS(Check_Loose,${cell("Key")})>0)`,
      },
      formula`IF(ISNUMBER(place),${found},${none})`,
    );
    /* Nothing came out: that needs no setting to be bad news. */
    const isEmpty = formula`IF(ISNUMBER(${cell("Newest")}),${is(formula`INDEX(Check_State,${cell("Newest")})`, "empty")},FALSE)`;
    const unready = formula`IF(${isEmpty},"empty","${CHECK_SETTINGS}")`;
    /* How it is held is not known, and somebody checked a balloon: that there is nothing in it is not held back. */
    const isOpen = formula`NOT(${isOneOf(wordIn(cell("Held by")), heldOtherwise)})`;
    const isLeftEmpty = formula`IF(ISNUMBER(${cell("Newest")}),${is(formula`INDEX(Check_Left,${cell("Newest")})`, LEFT_EMPTY)},FALSE)`;
    const open = formula`IF(${isOpen},IF(${isEmpty},"empty",IF(${isLeftEmpty},"${LEFT_EMPTY}","")),"")`;
    return ifLive(cell, formula`IF(${isBalloonIn(cell("Held by"))},IF(Ready_Balloon,${all},${unready}),${open})`);
  },
};
