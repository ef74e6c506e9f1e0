/** Which device a check was made on, and how much water was expected to come out. */
import { formula } from "../../columns/formula";
import { DATE, letting, TENTHS, type CaseloadColumn, type RowCells } from "../column";
import { isBlank, isBlankIn, isNumber } from "../reading";
import type { Sight } from "../sight";
import { currentIn, isCurrent, tubeOf } from "./order";

/** The device now in, unless it came in later; else a past one that was in on that day. */
export const deviceIn: CaseloadColumn = {
  header: "Device in",
  kind: "computed",
  format: DATE,
  width: 12,
  formula: (cell) => {
    const past = letting(
      { past: formula`MAXIFS(Change_In,Change_Key,${cell("Key")},Change_In,"<="&day,Change_Out,">="&day)` },
      formula`IF(ISNUMBER(past),IF(past>0,INT(past),""),"")`,
    );
    const isNow = formula`IF(ISNUMBER(INDEX(Tube_In,tube)),IF(N(INDEX(Tube_In,tube))>0,INT(INDEX(Tube_In,tube))<=day,FALSE),FALSE)`;
    const found = letting(
      { tube: cell("Tube"), day: formula`INT(${cell("Checked on")})` },
      formula`IF(${isNow},INT(INDEX(Tube_In,tube)),${past})`,
    );
    return formula`IF(ISNUMBER(${cell("Tag")}),${found},"")`;
  },
  answer: (row, sight) => {
    if (!isNumber(row["Tag"]!)) return "";
    const day = Math.floor(row["Checked on"] as number);
    const came = tubeOf(row, sight)!["Device in"]!;
    if (isNumber(came) && came > 0 && Math.floor(came) <= day) return Math.floor(came);
    const past = sight
      .rowsWith("changes", "Key", row["Key"]!)
      .map((i) => sight.changes[i]!)
      .filter((one) => isNumber(one["In"]!) && isNumber(one["Out"]!) && one["In"] <= day && one["Out"] >= day)
      .map((one) => one["In"] as number);
    const newest = Math.max(0, ...past);
    return newest > 0 ? Math.floor(newest) : "";
  },
};

export const daysSinceFill: CaseloadColumn = {
  header: "Days since fill",
  kind: "computed",
  format: "0",
  width: 9,
  formula: (cell) => {
    const sinceDevice = formula`IF(ISNUMBER(${cell("Device in")}),INT(${cell("Checked on")})-${cell("Device in")},"")`;
    const sinceCheck = formula`INT(${cell("Checked on")})-INT(INDEX(Check_On,${cell("Before")}))`;
    return formula`IF(ISNUMBER(${cell("Tag")}),IF(ISNUMBER(${cell("Before")}),${sinceCheck},${sinceDevice}),"")`;
  },
  answer: (row, { checks }) => {
    if (!isNumber(row["Tag"]!)) return "";
    const day = Math.floor(row["Checked on"] as number);
    if (isNumber(row["Before"]!)) return day - Math.floor(checks[row["Before"] - 1]!["Checked on"] as number);
    return isNumber(row["Device in"]!) ? day - row["Device in"] : "";
  },
};

const volumeIn = (value: string) =>
  formula`IF(ISNUMBER(${value}),IF(N(${value})>0,IF(N(${value})<=Volume_Most,N(${value}),""),""),"")`;
const volumeOf = (value: unknown, { number }: Sight): number | "" =>
  typeof value === "number" && value > 0 && value <= number("Volume_Most") ? value : "";

/** What was put in last time on this device; where that was not written down, the fill agreed for this person. */
export const expectedMl: CaseloadColumn = {
  header: "Expected mL",
  kind: "computed",
  format: TENTHS,
  width: 9,
  formula: (cell) => {
    const past = letting(
      { fill: formula`MAXIFS(Change_Fill,Change_Key,${cell("Key")},Change_In,${cell("Device in")})` },
      volumeIn("fill"),
    );
    const agreed = formula`IF(${currentIn(cell("Tube"), cell("Device in"))},${volumeIn(`INDEX(Tube_Fill,${"tube"})`)},${past})`;
    const put = "INDEX(Check_PutIn,place)";
    const last = formula`IF(ISNUMBER(place),IF(${isBlankIn(put)},${agreed},${volumeIn(put)}),${agreed})`;
    const all = letting({ place: cell("Before"), tube: cell("Tube") }, last);
    return formula`IF(LEN(${cell("Key")})=0,"",${all})`;
  },
  answer: (row, sight) => {
    if (row["Key"] === "") return "";
    const last = isNumber(row["Before"]!) ? sight.checks[row["Before"] - 1]!["Put in mL"]! : null;
    return isBlank(last) ? agreedFill(row, sight) : volumeOf(last, sight);
  },
};

function agreedFill(row: RowCells, sight: Sight): number | "" {
  if (isCurrent(row, sight)) return volumeOf(tubeOf(row, sight)!["Fill mL"], sight);
  const past = sight
    .rowsWith("changes", "Key", row["Key"]!)
    .map((i) => sight.changes[i]!)
    .filter((one) => isNumber(one["Fill mL"]!) && one["In"] === row["Device in"])
    .map((one) => one["Fill mL"] as number);
  return past.length > 0 ? volumeOf(Math.max(...past), sight) : "";
}
