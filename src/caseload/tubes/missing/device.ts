/** The device: how it is held, its shape and sizes, how long it may stay, and who changes it. */
import { formula } from "../../../columns/formula";
import { addMonths } from "../../../maths/calendar";
import { is, isAbove, isAboveIn, isBlank, isBlankIn, isNumber, isOneOf, monthsLater, wordIn } from "../../reading";
import { changers, holds, knownFrom, shapes as shapeWords } from "../../words";
import { both, isFilledIn, isWrong, known, not, wrong, type Gap } from "./gap";

const shapes = known(shapeWords);
const kinds = known(holds, "not known");
const evidence = known(knownFrom, "not known");
const decided = known(changers, "not decided");

/** An own interval or the placing team's date overrides the clinic's limit; a slip of the keyboard would too. */
const AGREED_LATE = "agreed later than the clinic's limit for balloons";
const limitOf = (access: string) => (access === "g" ? "Lim_Balloon_G" : access === "gj" ? "Lim_GJ" : "Lim_Balloon_J");

/** Something that a carer never changes, by its name. */
const carerChanges = (
  says: string,
  when: Gap["when"],
  applies: (wordAt: (header: string) => string) => boolean,
): Gap[] => [
  {
    says,
    when: both(is("changer", "carer"), when),
    applies: ({ word: wordAt }) => wordAt("Changed by") === "carer" && applies(wordAt),
  },
];

export const deviceGaps: readonly Gap[] = [
  {
    says: AGREED_LATE,
    when: both(
      formula`AND(${is("held", "balloon")},inis=1,ISNUMBER(due))`,
      both(formula`ISNUMBER(limit)`, formula`due>${monthsLater("in", "limit")}`),
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
    when: not(isOneOf("held", kinds)),
    applies: (cells) => !kinds.includes(cells.word("Held by")),
  },
  {
    says: "how it is held: ask where that is known from",
    when: not(isOneOf("from", evidence)),
    applies: (cells) => !evidence.includes(cells.word("Known from")),
  },
  {
    says: "no shape",
    when: not(isOneOf("shape", shapes)),
    applies: (cells) => !shapes.includes(cells.word("Shape")),
  },
  {
    says: "no birth date: adult or child not known",
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
    says: "size: rather mm than Fr",
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
    says: "length: rather mm than cm",
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
    when: not(isOneOf("changer", decided)),
    applies: (cells) => !decided.includes(cells.word("Changed by")),
  },
  ...carerChanges("a carer is to change a GJ: never at home", is("access", "gj"), (one) => one("Access") === "gj"),
  ...carerChanges("a carer is to change a J: never at home", is("access", "j"), (one) => one("Access") === "j"),
  ...carerChanges(
    "a carer is to change a bumper: not at home",
    is("held", "bumper"),
    (one) => one("Held by") === "bumper",
  ),
  ...carerChanges(
    "carer is to change a device that is not changed at home",
    formula`NOT(OR(${isOneOf("access", ["gj", "j"])},${is("held", "bumper")},AND(${is("held", "balloon")},${is("access", "g")})))`,
    (one) =>
      !["gj", "j"].includes(one("Access")) &&
      one("Held by") !== "bumper" &&
      !(one("Held by") === "balloon" && one("Access") === "g"),
  ),
  {
    says: "turning: must be never",
    needs: "Turning",
    when: both(
      formula`OR(${is("held", "stitched")},${isOneOf("access", ["gj", "j"])})`,
      formula`AND(${isFilledIn("turning")},NOT(${is(wordIn("turningcell"), "never")}))`,
    ),
    applies: ({ at, word: wordAt }) =>
      (wordAt("Held by") === "stitched" || wordAt("Access") === "gj" || wordAt("Access") === "j") &&
      !isBlank(at("Turning")) &&
      wordAt("Turning") !== "never",
  },
];
