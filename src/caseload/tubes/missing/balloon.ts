/** The balloon: its fill beside the label, and checks that do not go with the device. */
import { formula } from "../../../columns/formula";
import { is, isAboveIn, isBlankIn, isOneOf, isUsualIn } from "../../reading";
import { holds } from "../../words";
import { CHECK_LATE } from "../balloon";
import { both, isFilledIn, known, wrong, type Gap } from "./gap";

/** Held by something else. */
const others = known(holds, "not known").filter((one) => one !== "balloon");

const volumeIn = (name: string) => both(isAboveIn(name), isUsualIn(name));

export const balloonGaps: readonly Gap[] = [
  {
    says: "no fill",
    when: both(is("held", "balloon"), isBlankIn("fillcell")),
  },
  {
    says: "fill is not a usual volume",
    when: wrong("fill", volumeIn("fill")),
  },
  {
    says: "label's volume is not a usual volume",
    when: wrong("most", volumeIn("most")),
  },
  {
    says: "fill above the label",
    when: both(formula`AND(${isAboveIn("fill")},${isAboveIn("most")})`, formula`fill>most`),
  },
  {
    says: "a fill without the label's largest volume",
    when: both(is("held", "balloon"), both(isFilledIn("fill"), isBlankIn("mostcell"))),
  },
  {
    says: "a fill without a balloon",
    when: both(isOneOf("held", others), formula`OR(${isFilledIn("fill")},${isFilledIn("most")})`),
  },
  {
    says: "a balloon check without a balloon",
    when: both(isOneOf("held", others), formula`ISNUMBER(place)`),
  },
  {
    says: "checked before the first-check date",
    when: both(formula`AND(ISNUMBER(place),stomais=1)`, formula`N(INDEX(Check_On,place))<INT(stoma)+Check_First`),
  },
  {
    says: "more put in than the label allows",
    when: both(
      formula`AND(ISNUMBER(place),${isAboveIn("most")})`,
      formula`IFERROR(N(INDEX(Check_PutIn,place))>most,FALSE)`,
    ),
  },
  {
    says: "nothing recorded since device in",
    when: both(formula`NOT(ISNUMBER(place))`, is("water", CHECK_LATE)),
  },
];
