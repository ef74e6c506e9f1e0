/** What is missing in a row or contradicts itself: short reasons, one after the other. */
import { formula, quoted, type FormulaTemplate } from "../../columns/formula";
import { addMonths } from "../../maths/calendar";
import { rounded } from "../../worksheet/numbers";
import type { SheetValue } from "../../columns/sheet-block";
import { letting, PLAIN, type CaseloadColumn, type RowCells, type Slots } from "../column";
import { countedDay } from "../counted-days";
import { CHECK_SETTINGS } from "../ready";
import * as read from "../reading";
import type { Sight } from "../sight";
import { CHECK_LATE, newestCheck } from "./balloon";
import { ageClassIn, ageClassOf } from "./kind";
import { ifLive, isLive } from "./live";

const { is, isOneOf, isBlankIn, isAboveIn, isBlank, isAbove, isNumber, word } = read;

/** A row's cells as the reasons read them. */
interface Cells {
  readonly at: (header: string) => SheetValue;
  readonly word: (header: string) => string;
  readonly day: (header: string) => 1 | 0 | -1;
  readonly row: RowCells;
  readonly sight: Sight;
}

interface Reason {
  readonly says: string;
  /** TRUE where it applies, on the LET names below. */
  readonly when: FormulaTemplate;
  readonly applies: (cells: Cells) => boolean;
  /** Asked only where these columns exist. */
  readonly needs?: string;
}

/** LET names. */
const names = (cell: Slots): Readonly<Record<string, FormulaTemplate | string>> => ({
  status: read.wordIn(cell("Status")),
  access: read.wordIn(cell("Access")),
  held: read.wordIn(cell("Held by")),
  shape: read.wordIn(cell("Shape")),
  ...read.numbered("stoma", cell("Stoma made")),
  stomais: read.dayState("stoma"),
  ...read.numbered("in", cell("Device in")),
  inis: read.dayState("in"),
  ...read.numbered("born", cell("Born")),
  bornis: read.dayState("born"),
  age: ageClassIn,
  ...read.numbered("size", cell("Size Fr")),
  ...read.numbered("length", cell("Length cm")),
  ...read.numbered("fill", cell("Fill mL")),
  ...read.numbered("most", cell("Most mL")),
  ...read.numbered("booked", cell("Booked for")),
  ...read.numbered("weight", cell("Weight kg")),
  ...read.numbered("weighed", cell("Weighed on")),
  weighedis: read.dayState("weighed"),
  ...read.numbered("then", cell("Weight then kg")),
  changer: read.wordIn(cell("Changed by")),
  ...read.numbered("own", cell("Own interval months")),
  ...read.numbered("team", cell("Date set by placing team")),
  ...read.numbered("place", cell("Newest")),
  ...read.numbered("due", cell("Change due")),
  limit: formula`IF(${is("access", "g")},Lim_Balloon_G,IF(${is("access", "gj")},Lim_GJ,Lim_Balloon_J))`,
});

const holds = ["balloon", "bumper", "loop", "winged", "stitched", "catheter"];
const accesses = ["g", "gj", "j"];
const changers = ["carer", "nurse at home", "nurse in clinic", "radiology", "endoscopy", "surgery"];

const both = (first: FormulaTemplate, second: FormulaTemplate) => formula`IF(${first},${second},FALSE)`;
const not = (one: FormulaTemplate) => formula`NOT(${one})`;
const isFilledIn = (name: string) => not(isBlankIn(`${name}cell`));
/** Something is entered, and it is not what it should be. */
const wrong = (name: string, right: FormulaTemplate) => both(isFilledIn(name), not(right));
const isWrong = (value: SheetValue, isRight: boolean): boolean => !isBlank(value) && !isRight;

const volumeIn = (name: string) => both(isAboveIn(name), formula`${name}<=Volume_Most`);
const isVolume = (value: SheetValue, { number }: Sight): boolean => isAbove(value) && value <= number("Volume_Most");

const identityReasons: readonly Reason[] = [
  { says: "no ID", when: formula`person=""`, applies: ({ row }) => row["Person"] === "" },
  {
    says: "same ID and access twice",
    when: both(formula`LEN(key)>0`, formula`COUNTIFS(Tube_Key,key)>1`),
    applies: ({ row, sight }) => row["Key"] !== "" && sight.rowsWith("tubes", "Key", row["Key"]!).length > 1,
  },
  { says: "no status", when: not(is("status", "active")), applies: (cells) => cells.word("Status") !== "active" },
  {
    says: "not known where it ends (access)",
    when: not(isOneOf("access", accesses)),
    applies: (cells) => !accesses.includes(cells.word("Access")),
  },
];

const dateReasons: readonly Reason[] = [
  { says: "no date of the stoma", when: formula`stomais=0`, applies: (cells) => cells.day("Stoma made") === 0 },
  { says: "date of the stoma wrong", when: formula`stomais<0`, applies: (cells) => cells.day("Stoma made") < 0 },
  { says: "no date of device in", when: formula`inis=0`, applies: (cells) => cells.day("Device in") === 0 },
  { says: "date of device in wrong", when: formula`inis<0`, applies: (cells) => cells.day("Device in") < 0 },
  {
    says: "device in before the stoma was made",
    when: both(formula`AND(stomais=1,inis=1)`, formula`stoma>=in+1`),
    applies: ({ at, day }) =>
      day("Stoma made") === 1 &&
      day("Device in") === 1 &&
      (at("Stoma made") as number) >= (at("Device in") as number) + 1,
  },
  {
    says: "birth date wrong",
    when: wrong("born", both(formula`ISNUMBER(born)`, both(formula`born<As_of+1`, formula`born>=Day_Birth`))),
    applies: ({ at, sight }) => {
      const born = at("Born");
      return isWrong(born, isNumber(born) && born < sight.asOf + 1 && born >= countedDay("Day_Birth", sight));
    },
  },
  {
    says: "born after the stoma was made",
    when: both(formula`AND(ISNUMBER(born),stomais=1)`, formula`stoma+1<=born`),
    applies: ({ at, day }) => {
      const born = at("Born");
      return isNumber(born) && day("Stoma made") === 1 && (at("Stoma made") as number) + 1 <= born;
    },
  },
  {
    says: "booking is no usable date",
    when: wrong("booked", read.isAheadIn("booked")),
    applies: ({ at, sight }) => isWrong(at("Booked for"), read.isAhead(at("Booked for"), sight)),
  },
  {
    says: "booked date passed",
    when: both(formula`ISNUMBER(booked)`, both(formula`booked<As_of`, formula`IF(inis=1,in<INT(booked),TRUE)`)),
    applies: ({ at, day, sight }) => {
      const booked = at("Booked for");
      if (!isNumber(booked) || booked >= sight.asOf) return false;
      return day("Device in") !== 1 || (at("Device in") as number) < Math.floor(booked);
    },
  },
  {
    says: "own interval wrong",
    needs: "Own interval months",
    when: wrong("own", both(formula`ISNUMBER(own)`, formula`AND(own>=1,own<=Far_Months,own=INT(own))`)),
    applies: ({ at, sight }) => {
      const own = at("Own interval months");
      return isWrong(own, isNumber(own) && own >= 1 && own <= sight.number("Far_Months") && Number.isInteger(own));
    },
  },
  {
    says: "placing team's date wrong",
    needs: "Date set by placing team",
    when: wrong("team", read.isAheadIn("team")),
    applies: ({ at, sight }) =>
      isWrong(at("Date set by placing team"), read.isAhead(at("Date set by placing team"), sight)),
  },
];

/** An own interval or the placing team's date overrides the clinic's limit; a slip of the keyboard would too. */
const AGREED_LATE = "agreed later than the clinic's limit for balloons";
const limitOf = (access: string) => (access === "g" ? "Lim_Balloon_G" : access === "gj" ? "Lim_GJ" : "Lim_Balloon_J");

const deviceReasons: readonly Reason[] = [
  {
    says: AGREED_LATE,
    when: both(
      formula`AND(${is("held", "balloon")},inis=1,ISNUMBER(due))`,
      both(formula`ISNUMBER(limit)`, formula`due>${read.monthsLater("in", "limit")}`),
    ),
    applies: ({ at, day, word: wordAt, sight }) => {
      const [due, months] = [at("Change due"), sight.setting(limitOf(wordAt("Access")))];
      if (wordAt("Held by") !== "balloon" || day("Device in") !== 1 || !isNumber(due) || !isNumber(months))
        return false;
      return due > addMonths(Math.floor(at("Device in") as number), Math.trunc(months));
    },
  },
  {
    says: "not known how it is held",
    when: not(isOneOf("held", holds)),
    applies: (cells) => !holds.includes(cells.word("Held by")),
  },
  {
    says: "no shape",
    when: not(isOneOf("shape", ["long", "low-profile"])),
    applies: (cells) => !["long", "low-profile"].includes(cells.word("Shape")),
  },
  {
    says: "no birth date: adult or child?",
    when: both(is("held", "bumper"), isBlankIn("borncell")),
    applies: ({ at, word: wordAt }) => wordAt("Held by") === "bumper" && isBlank(at("Born")),
  },
  { says: "no size", when: isBlankIn("sizecell"), applies: ({ at }) => isBlank(at("Size Fr")) },
  {
    says: "size is not a number",
    when: wrong("size", formula`ISNUMBER(size)`),
    applies: ({ at }) => isWrong(at("Size Fr"), isNumber(at("Size Fr"))),
  },
  {
    says: "size: mm instead of Fr?",
    when: both(formula`ISNUMBER(size)`, formula`size<Size_Least`),
    applies: ({ at, sight }) => isNumber(at("Size Fr")) && (at("Size Fr") as number) < sight.number("Size_Least"),
  },
  {
    says: "size very large",
    when: both(formula`ISNUMBER(size)`, formula`size>Size_Most`),
    applies: ({ at, sight }) => isNumber(at("Size Fr")) && (at("Size Fr") as number) > sight.number("Size_Most"),
  },
  {
    says: "no length",
    when: both(is("shape", "low-profile"), isBlankIn("lengthcell")),
    applies: ({ at, word: wordAt }) => wordAt("Shape") === "low-profile" && isBlank(at("Length cm")),
  },
  {
    says: "length: mm instead of cm?",
    when: both(formula`ISNUMBER(length)`, formula`length>Length_Most`),
    applies: ({ at, sight }) => isNumber(at("Length cm")) && (at("Length cm") as number) > sight.number("Length_Most"),
  },
  {
    says: "length is not a number above 0",
    when: wrong("length", isAboveIn("length")),
    applies: ({ at }) => isWrong(at("Length cm"), isAbove(at("Length cm"))),
  },
  {
    says: "catheter longer in than a stop-gap",
    when: both(is("held", "catheter"), both(formula`inis=1`, formula`As_of-in>StopGap_Days`)),
    applies: ({ at, day, word: wordAt, sight }) =>
      wordAt("Held by") === "catheter" &&
      day("Device in") === 1 &&
      sight.asOf - (at("Device in") as number) > sight.number("StopGap_Days"),
  },
  {
    says: "not decided who changes it",
    when: not(isOneOf("changer", changers)),
    applies: (cells) => !changers.includes(cells.word("Changed by")),
  },
  {
    says: "carer is to change a device that is not changed at home",
    when: both(is("changer", "carer"), formula`NOT(AND(${is("held", "balloon")},${is("access", "g")}))`),
    applies: (cells) =>
      cells.word("Changed by") === "carer" && !(cells.word("Held by") === "balloon" && cells.word("Access") === "g"),
  },
  {
    says: "turning: must be never",
    needs: "Turning",
    when: both(
      formula`OR(${is("held", "stitched")},${isOneOf("access", ["gj", "j"])})`,
      formula`AND(${isFilledIn("turning")},NOT(${is(read.wordIn("turningcell"), "never")}))`,
    ),
    applies: ({ at, word: wordAt }) =>
      (wordAt("Held by") === "stitched" || wordAt("Access") === "gj" || wordAt("Access") === "j") &&
      !isBlank(at("Turning")) &&
      wordAt("Turning") !== "never",
  },
];

const balloonReasons: readonly Reason[] = [
  {
    says: "no fill",
    when: both(is("held", "balloon"), isBlankIn("fillcell")),
    applies: ({ at, word: wordAt }) => wordAt("Held by") === "balloon" && isBlank(at("Fill mL")),
  },
  {
    says: "fill is not a usual volume",
    when: wrong("fill", volumeIn("fill")),
    applies: ({ at, sight }) => isWrong(at("Fill mL"), isVolume(at("Fill mL"), sight)),
  },
  {
    says: "label's volume is not a usual volume",
    when: wrong("most", volumeIn("most")),
    applies: ({ at, sight }) => isWrong(at("Most mL"), isVolume(at("Most mL"), sight)),
  },
  {
    says: "fill above the label",
    when: both(formula`AND(${isAboveIn("fill")},${isAboveIn("most")})`, formula`fill>most`),
    applies: ({ at }) => {
      const [fill, most] = [at("Fill mL"), at("Most mL")];
      return isAbove(fill) && isAbove(most) && fill > most;
    },
  },
  {
    says: "a fill without a balloon",
    when: both(isOneOf("held", holds.slice(1)), formula`OR(${isFilledIn("fill")},${isFilledIn("most")})`),
    applies: ({ at, word: wordAt }) =>
      holds.slice(1).includes(wordAt("Held by")) && !(isBlank(at("Fill mL")) && isBlank(at("Most mL"))),
  },
  {
    says: "a balloon check without a balloon",
    when: both(isOneOf("held", holds.slice(1)), formula`ISNUMBER(place)`),
    applies: ({ row, word: wordAt }) => holds.slice(1).includes(wordAt("Held by")) && isNumber(row["Newest"]!),
  },
  {
    says: "checked before the first-check date",
    when: both(formula`AND(ISNUMBER(place),stomais=1)`, formula`N(INDEX(Check_On,place))<INT(stoma)+Check_First`),
    applies: ({ at, day, row, sight }) => {
      const check = newestCheck(row, sight);
      if (!check || day("Stoma made") !== 1) return false;
      return (check["Checked on"] as number) < Math.floor(at("Stoma made") as number) + sight.number("Check_First");
    },
  },
  {
    says: "more put in than the label allows",
    when: both(formula`AND(ISNUMBER(place),${isAboveIn("most")})`, formula`N(INDEX(Check_PutIn,place))>most`),
    applies: ({ at, row, sight }) => {
      const put = newestCheck(row, sight)?.["Put in mL"] ?? "";
      const most = at("Most mL");
      return isAbove(most) && isNumber(put) && put > most;
    },
  },
  {
    says: "nothing recorded since device in",
    when: both(formula`NOT(ISNUMBER(place))`, is("water", CHECK_LATE)),
    applies: ({ row }) => !isNumber(row["Newest"]!) && row["Balloon"] === CHECK_LATE,
  },
];

const weightReasons: readonly Reason[] = [
  {
    says: "weight is not a number above 0",
    when: wrong("weight", isAboveIn("weight")),
    applies: ({ at }) => isWrong(at("Weight kg"), isAbove(at("Weight kg"))),
  },
  {
    says: "no usable date of the weight",
    when: both(isFilledIn("weight"), formula`weighedis<1`),
    applies: ({ at, day }) => !isBlank(at("Weight kg")) && day("Weighed on") < 1,
  },
  {
    says: "weight is old",
    when: both(
      formula`AND(${isFilledIn("weight")},weighedis=1)`,
      formula`weighed<IF(${is("age", "adult")},Day_WeightAdult,Day_WeightChild)`,
    ),
    applies: ({ at, day, row, sight }) => {
      if (isBlank(at("Weight kg")) || day("Weighed on") !== 1) return false;
      const since = ageClassOf(row, sight) === "adult" ? "Day_WeightAdult" : "Day_WeightChild";
      return (at("Weighed on") as number) < countedDay(since, sight);
    },
  },
  {
    says: "weight has jumped",
    needs: "Weight then kg",
    when: both(
      formula`AND(${isAboveIn("weight")},${isAboveIn("then")})`,
      formula`ROUND(100*ABS(weight/then-1),9)>Weight_Jump`,
    ),
    applies: ({ at, sight }) => {
      const [weight, then] = [at("Weight kg"), at("Weight then kg")];
      return (
        isAbove(weight) && isAbove(then) && rounded(100 * Math.abs(weight / then - 1)) > sight.number("Weight_Jump")
      );
    },
  },
  {
    says: "sitting below lying",
    needs: "Sitting cm",
    when: both(formula`AND(${isAboveIn("lying")},${isAboveIn("sitting")})`, formula`sitting<lying`),
    applies: ({ at }) => {
      const [lying, sitting] = [at("Lying cm"), at("Sitting cm")];
      return isAbove(lying) && isAbove(sitting) && sitting < lying;
    },
  },
];

const hasSpareIn = isOneOf("spare", ["same size", "smaller", "both"]);
const hasSpare = (cells: Cells): boolean => ["same size", "smaller", "both"].includes(cells.word("Spare at home"));

const spareReasons: readonly Reason[] = [
  {
    says: "the spare is not of the tube's size",
    needs: "Spare Fr",
    when: both(
      hasSpareIn,
      formula`OR(IF(AND(ISNUMBER(size),ISNUMBER(sparefr)),IF(sparefr>size,TRUE,IF(alike,sparefr<size,FALSE)),FALSE),IF(AND(ISNUMBER(length),ISNUMBER(sparecm)),IF(sparecm<length,TRUE,IF(alike,sparecm>length,FALSE)),FALSE))`,
    ),
    applies: (cells) => {
      const [size, length, french, cm] = ["Size Fr", "Length cm", "Spare Fr", "Spare cm"].map(cells.at);
      const isAlike = cells.word("Spare at home") === "same size";
      const isOther = isNumber(size!) && isNumber(french!) && (french > size || (isAlike && french < size));
      const isShort = isNumber(length!) && isNumber(cm!) && (cm < length || (isAlike && cm > length));
      return hasSpare(cells) && (isOther || isShort);
    },
  },
  {
    says: "no lot of the spare",
    needs: "Spare lot",
    when: both(hasSpareIn, isBlankIn("sparelot")),
    applies: (cells) => hasSpare(cells) && isBlank(cells.at("Spare lot")),
  },
  {
    says: "no usable expiry of the spare",
    needs: "Spare expires",
    when: both(hasSpareIn, not(read.isAheadIn("expires"))),
    applies: (cells) => hasSpare(cells) && !read.isAhead(cells.at("Spare expires"), cells.sight),
  },
];

/** Names that only some columns can give. */
const further = (cell: Slots): Readonly<Record<string, FormulaTemplate>> => ({
  person: cell("Person"),
  key: cell("Key"),
  water: cell("Balloon"),
  ...(cell.has("Turning") && { turningcell: cell("Turning") }),
  ...(cell.has("Lying cm") && {
    ...read.numbered("lying", cell("Lying cm")),
    ...read.numbered("sitting", cell("Sitting cm")),
  }),
  ...(cell.has("Spare lot") && {
    spare: read.wordIn(cell("Spare at home")),
    sparelot: cell("Spare lot"),
    alike: is("spare", "same size"),
    ...read.numbered("sparefr", cell("Spare Fr")),
    ...read.numbered("sparecm", cell("Spare cm")),
    ...read.numbered("expires", cell("Spare expires")),
  }),
});

/** Of all LET names those that the reasons use, and those that these stand on. */
function namesUsed(cell: Slots, reasons: readonly Reason[]): Readonly<Record<string, FormulaTemplate | string>> {
  const all = Object.entries({ ...names(cell), ...further(cell) });
  const words = (template: FormulaTemplate | string): string =>
    typeof template === "string" ? template : template.map((part) => (typeof part === "string" ? part : " ")).join("");
  let read = reasons.map(({ when }) => words(when)).join(" ");
  const used = new Set<string>();
  /* A name stands on those before it, so the last is asked first. */
  for (const [name, value] of [...all].reverse()) {
    if (!new RegExp(`(?<![\\w.])${name}(?![\\w.(])`).test(read)) continue;
    used.add(name);
    read += ` ${words(value)}`;
  }
  return Object.fromEntries(all.filter(([name]) => used.has(name)));
}

/** One part of the list, out of sight: Excel takes no formula of more than 8,192 characters. */
function gaps(header: string, reasons: readonly Reason[]): CaseloadColumn {
  return {
    header,
    kind: "computed",
    format: PLAIN,
    width: 4,
    isHidden: true,
    formula: (cell) => {
      const asked = reasons.filter(({ needs }) => needs === undefined || cell.has(needs));
      const list = asked.reduce<FormulaTemplate>(
        (all, { says, when }) => formula`${all},IF(${when},${quoted(says)},"")`,
        [],
      );
      return ifLive(cell, letting(namesUsed(cell, asked), formula`TEXTJOIN("; ",TRUE${list})`));
    },
    answer: (row, sight) => {
      if (!isLive(row)) return "";
      const cells: Cells = {
        at: (one) => row[one]!,
        word: (one) => word(row[one]!),
        day: (one) => read.stateOfDay(row[one]!, sight),
        row,
        sight,
      };
      return reasons
        .filter(({ needs }) => needs === undefined || sight.has(needs))
        .filter(({ applies }) => applies(cells))
        .map(({ says }) => says)
        .join("; ");
    },
  };
}

const PERSON = "Gaps of person and dates";
const DEVICE = "Gaps of device";
const WATER = "Gaps of balloon, weight and spare";

export const hiddenGaps: readonly CaseloadColumn[] = [
  gaps(PERSON, [...identityReasons, ...dateReasons]),
  gaps(DEVICE, deviceReasons),
  gaps(WATER, [...balloonReasons, ...weightReasons, ...spareReasons]),
];

export const missing: CaseloadColumn = {
  header: "Missing or contradictory",
  kind: "computed",
  format: PLAIN,
  width: 34,
  formula: (cell) => {
    const all = formula`TEXTJOIN("; ",TRUE,${cell(PERSON)},${cell(DEVICE)},${cell(WATER)})`;
    return ifLive(cell, formula`IF(Ready_Entries,${all},"${CHECK_SETTINGS}")`);
  },
  answer: (row, sight) => {
    if (!isLive(row)) return "";
    if (!sight.isReady("entries")) return CHECK_SETTINGS;
    return [PERSON, DEVICE, WATER]
      .map((header) => row[header])
      .filter((text) => text !== "")
      .join("; ");
  },
};
