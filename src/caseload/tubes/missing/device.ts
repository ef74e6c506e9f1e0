/** The device: how it is held, its shape and sizes, how long it may stay, and who changes it. */
import { formula } from "../../../columns/formula";
import { is, isAboveIn, isBlankIn, isOneOf, monthsLater, wordIn } from "../../reading";
import { changers, holds, knownFrom, shapes as shapeWords } from "../../words";
import { both, isFilledIn, known, not, wrong, type Gap } from "./gap";

const shapes = known(shapeWords);
const kinds = known(holds, "not known");
const evidence = known(knownFrom, "not known");
const decided = known(changers, "not decided");

/** An own interval or the placing team's date overrides the clinic's limit; a slip of the keyboard would too. */
const AGREED_LATE = "agreed later than the clinic's limit for balloons";

/** Something that a carer never changes, by its name. */
const carerChanges = (says: string, when: Gap["when"]): Gap[] => [
  {
    says,
    when: both(is("changer", "carer"), when),
  },
];

export const deviceGaps: readonly Gap[] = [
  {
    says: AGREED_LATE,
    when: both(
      formula`AND(${is("held", "balloon")},inis=1,ISNUMBER(due))`,
      both(formula`ISNUMBER(limit)`, formula`due>${monthsLater("in", "limit")}`),
    ),
  },
  {
    says: "not known how it is held",
    when: not(isOneOf("held", kinds)),
  },
  {
    says: "how it is held: ask where that is known from",
    when: not(isOneOf("from", evidence)),
  },
  {
    says: "no shape",
    when: not(isOneOf("shape", shapes)),
  },
  {
    says: "no birth date: adult or child not known",
    when: both(is("held", "bumper"), isBlankIn("borncell")),
  },
  { says: "no size", when: isBlankIn("sizecell") },
  {
    says: "size is not a number",
    when: wrong("size", formula`ISNUMBER(size)`),
  },
  {
    says: "size: rather mm than Fr",
    when: both(formula`ISNUMBER(size)`, formula`size<Size_Least`),
  },
  {
    says: "size very large",
    when: both(formula`ISNUMBER(size)`, formula`size>Size_Most`),
  },
  {
    says: "no length",
    when: both(is("shape", "low-profile"), isBlankIn("lengthcell")),
  },
  {
    says: "length: rather mm than cm",
    when: both(formula`ISNUMBER(length)`, formula`length>Length_Most`),
  },
  {
    says: "length is not a number above 0",
    when: wrong("length", isAboveIn("length")),
  },
  {
    says: "catheter longer in than a stop-gap",
    when: both(is("held", "catheter"), both(formula`inis=1`, formula`As_of-in>StopGap_Days`)),
  },
  {
    says: "not decided who changes it",
    when: not(isOneOf("changer", decided)),
  },
  ...carerChanges("a carer is to change a GJ: never at home", is("access", "gj")),
  ...carerChanges("a carer is to change a J: never at home", is("access", "j")),
  ...carerChanges("a carer is to change a bumper: not at home", is("held", "bumper")),
  ...carerChanges(
    "carer is to change a device that is not changed at home",
    formula`NOT(OR(${isOneOf("access", ["gj", "j"])},${is("held", "bumper")},AND(${is("held", "balloon")},${is("access", "g")})))`,
  ),
  {
    says: "turning: must be never",
    needs: "Turning",
    when: both(
      formula`OR(${is("held", "stitched")},${isOneOf("access", ["gj", "j"])})`,
      formula`AND(${isFilledIn("turning")},NOT(${is(wordIn("turningcell"), "never")}))`,
    ),
  },
];
