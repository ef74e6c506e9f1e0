/** The balloon: its fill beside the label, and checks that do not go with the device. */
import { formula } from "../../../columns/formula";
import type { SheetValue } from "../../../columns/sheet-block";
import { is, isAbove, isAboveIn, isBlank, isBlankIn, isNumber, isOneOf, isUsualIn } from "../../reading";
import type { Sight } from "../../sight";
import { holds } from "../../words";
import { CHECK_LATE, newestCheck } from "../balloon";
import { both, isFilledIn, isWrong, known, wrong, type Gap } from "./gap";

/** Held by something else. */
const others = known(holds, "not known").filter((one) => one !== "balloon");

const volumeIn = (name: string) => both(isAboveIn(name), isUsualIn(name));
const isVolume = (value: SheetValue, { number }: Sight): boolean => isAbove(value) && value <= number("Volume_Most");

export const balloonGaps: readonly Gap[] = [
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
    says: "a fill without the label's largest volume",
    when: both(is("held", "balloon"), both(isFilledIn("fill"), isBlankIn("mostcell"))),
    applies: ({ at, word: wordAt }) =>
      wordAt("Held by") === "balloon" && !isBlank(at("Fill mL")) && isBlank(at("Most mL")),
  },
  {
    says: "a fill without a balloon",
    when: both(isOneOf("held", others), formula`OR(${isFilledIn("fill")},${isFilledIn("most")})`),
    applies: ({ at, word: wordAt }) =>
      others.includes(wordAt("Held by")) && !(isBlank(at("Fill mL")) && isBlank(at("Most mL"))),
  },
  {
    says: "a balloon check without a balloon",
    when: both(isOneOf("held", others), formula`ISNUMBER(place)`),
    applies: ({ row, word: wordAt }) => others.includes(wordAt("Held by")) && isNumber(row["Newest"]!),
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
    when: both(
      formula`AND(ISNUMBER(place),${isAboveIn("most")})`,
      formula`IFERROR(N(INDEX(Check_PutIn,place))>most,FALSE)`,
    ),
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
