/** What the newest check of the device now in says, read from Balloon checks. A word from an old check never stays good. */
import { CLOUDY, LEFT_EMPTY, MILKY, NOT_AGREED_FILL, PUT_IN_NOT_KNOWN, WHICH_DEVICE, leftBadly } from "../checks/words";
import { formula, type FormulaTemplate } from "../../columns/formula";
import { CHECK_DATE, NO_DATE } from "../../columns/state-words";
import type { SheetValue } from "../../columns/sheet-block";
import { DATE, letting, PLAIN, TENTHS, type CaseloadColumn, type RowCells } from "../column";
import { CHECK_SETTINGS } from "../ready";
import {
  dayState,
  is,
  isNumber,
  isOneOf,
  numberAt,
  numbered,
  numberOrWord,
  stateOfDay,
  word,
  wordIn,
} from "../reading";
import type { Sight } from "../sight";
import { holds } from "../words";
import { ifLive, isLive } from "./live";

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
  answer: (row, sight) => {
    if (!isLive(row)) return "";
    const places = sight.rowsWith("checks", "Key", row["Key"]!).filter((i) => isNumber(sight.checks[i]!["Tag"]!));
    if (places.length === 0) return "";
    const tag = (i: number) => sight.checks[i]!["Tag"] as number;
    const place = places.reduce((best, i) => (tag(i) > tag(best) ? i : best));
    const [device, on] = [row["Device in"]!, sight.checks[place]!["Checked on"] as number];
    return isNumber(device) && on < Math.floor(device) ? "" : place + 1;
  },
};

export const newestCheck = (row: RowCells, { checks }: Sight): RowCells | null =>
  isNumber(row["Newest"]!) ? checks[row["Newest"] - 1]! : null;

/** A figure of the newest check. */
function fromCheck(header: string, column: string, source: string, format: string, width: number): CaseloadColumn {
  return {
    header,
    kind: "computed",
    format,
    width,
    formula: (cell) => formula`IF(ISNUMBER(${cell("Newest")}),${numberAt(column, cell("Newest"))},"")`,
    answer: (row, sight) => {
      const value = newestCheck(row, sight)?.[source] ?? "";
      return isNumber(value) ? value : "";
    },
  };
}

export const lastCheck = fromCheck("Last check", "Check_On", "Checked on", DATE, 12);
export const outMl = fromCheck("Out mL", "Check_Out", "Out mL", TENTHS, 8);
export const putInMl = fromCheck("Put in mL", "Check_PutIn", "Put in mL", TENTHS, 9);
export const lossMl = fromCheck("Loss mL", "Check_Loss", "Loss mL", TENTHS, 8);

const isBalloonIn = (held: FormulaTemplate) => is(wordIn(held), "balloon");
const isBalloon = (row: RowCells): boolean => word(row["Held by"]!) === "balloon";
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
  answer: (row, sight) => {
    if (!isLive(row) || !isBalloon(row) || word(row["Checked by"]!) === KEEPS_CARD) return "";
    if (!sight.isReady("balloon")) return CHECK_SETTINGS;
    const { number } = sight;
    const [stoma, device] = [row["Stoma made"]!, row["Device in"]!];
    const [stomaIs, deviceIs] = [stateOfDay(stoma, sight), stateOfDay(device, sight)];
    if (stomaIs !== 1 || deviceIs !== 1) return stomaIs === 0 || deviceIs === 0 ? NO_DATE : CHECK_DATE;
    const [made, came] = [Math.floor(stoma as number), Math.floor(device as number)];
    if (came < made) return CHECK_DATE;
    const check = newestCheck(row, sight);
    const soon = Math.min(number("Check_Days"), number("Loss_Again"));
    const next = check
      ? Math.floor(check["Checked on"] as number) + (check["State"] === "as filled" ? number("Check_Days") : soon)
      : came + number("Check_AfterChange");
    return Math.max(next, made + number("Check_First"));
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
  answer: (row, sight) => {
    if (!isLive(row)) return "";
    if (!isBalloon(row)) return openWord(row, sight);
    if (!sight.isReady("balloon") && newestCheck(row, sight)?.["State"] === "empty") return "empty";
    return sight.isReady("balloon") ? balloonWord(row, sight) : CHECK_SETTINGS;
  },
};

function openWord(row: RowCells, sight: Sight): SheetValue {
  const check = newestCheck(row, sight);
  if (!check || heldOtherwise.includes(word(row["Held by"]!))) return "";
  if (check["State"] === "empty") return "empty";
  return check["Left"] === LEFT_EMPTY ? LEFT_EMPTY : "";
}

function balloonWord(row: RowCells, sight: Sight): SheetValue {
  const { number, asOf } = sight;
  const due = row["Check due"]!;
  const isHome = word(row["Checked by"]!) === KEEPS_CARD;
  const isLate = isNumber(due) && due + number("Check_Grace") < asOf;
  const dated = isNumber(due) ? "" : due;
  const isLoose = [row["Person"]!, row["Key"]!].some(
    (one) => one !== "" && sight.rowsWith("checks", "Loose", one).length > 0,
  );
  const check = newestCheck(row, sight);
  if (!check) {
    if (isLoose) return WHICH_DEVICE;
    if (dated !== "") return dated;
    if (isLate) return CHECK_LATE;
    return isHome ? KEPT_AT_HOME : NO_CHECK_YET;
  }
  const state = check["State"]!;
  const left = check["Left"]!;
  if (state === "empty") return state;
  if (leftBadly.includes(left as string)) return left;
  if (state === "half or less" || state === MILKY) return state;
  const inARow = check["Low in a row"]!;
  if (state === "low") return isNumber(inARow) && inARow >= number("Loss_Twice") ? LOW_TWICE : "low";
  if (state === "more than put in") return state;
  const stoma = row["Stoma made"]!;
  if (isNumber(stoma) && (check["Checked on"] as number) < Math.floor(stoma) + number("Check_First")) return TOO_EARLY;
  if (isLoose) return WHICH_DEVICE;
  if ((remarks as readonly SheetValue[]).includes(state)) return state;
  if (state !== "as filled") return "not measured";
  if (dated !== "") return dated;
  if (isLate) return CHECK_LATE;
  if (isHome) return KEPT_AT_HOME;
  return isNumber(due) ? "as filled" : CHECK_DATE;
}
