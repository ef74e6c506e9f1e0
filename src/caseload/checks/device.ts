/** Which device a check was made on, and how much water was expected to come out. */
import { formula } from "../../columns/formula";
import { DATE, letting, TENTHS, type CaseloadColumn, type RowCells } from "../column";
import { isBlank, isBlankIn, isNumber, isUsualIn } from "../reading";
import type { Sight } from "../sight";
import { currentIn, isCurrent, pastIn, pastOf, tubeOf } from "./order";

/**
 * The device now in, unless it came in later; else a past one that was in on that day. With no access given it is the
 * person's, who may have had one with another access.
 */
export const deviceIn: CaseloadColumn = {
  header: "Device in",
  kind: "computed",
  format: DATE,
  width: 12,
  formula: (cell) => {
    const person = formula`IF(${isBlankIn(cell("Access"))},${pastIn("Person", cell("Person"), "day")},0)`;
    const past = letting(
      { own: pastIn("Key", cell("Key"), "day"), past: formula`IF(own>0,own,${person})` },
      formula`IF(past>0,INT(past),"")`,
    );
    const came = "INDEX(Tube_In,tube)";
    const isNow = formula`IF(ISNUMBER(tube),IF(ISNUMBER(${came}),IF(N(${came})>0,INT(${came})<=day,FALSE),FALSE),FALSE)`;
    const found = letting(
      { tube: cell("Tube"), day: formula`INT(${cell("Checked on")})` },
      formula`IF(${isNow},INT(${came}),${past})`,
    );
    return formula`IF(ISNUMBER(${cell("Tag")}),${found},"")`;
  },
  answer: (row, sight) => {
    if (!isNumber(row["Tag"]!)) return "";
    const day = Math.floor(row["Checked on"] as number);
    const came = tubeOf(row, sight)?.["Device in"] ?? null;
    if (isNumber(came) && came > 0 && Math.floor(came) <= day) return Math.floor(came);
    const own = pastOf("Key", row["Key"]!, day, sight);
    const past = own > 0 || !isBlank(row["Access"]!) ? own : pastOf("Person", row["Person"]!, day, sight);
    return past > 0 ? Math.floor(past) : "";
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
  formula`IF(ISNUMBER(${value}),IF(N(${value})>0,IF(${isUsualIn(formula`N(${value})`)},N(${value}),""),""),"")`;
const volumeOf = (value: unknown, { number }: Sight): number | "" =>
  typeof value === "number" && value > 0 && value <= number("Volume_Most") ? value : "";

/** What was put in last time on this device; where that was not written down, the fill agreed for this person. */
export const expectedMl: CaseloadColumn = {
  header: "Expected mL",
  kind: "computed",
  format: TENTHS,
  width: 9,
  formula: (cell) => {
    const fillOf = (whose: "Key" | "Person") =>
      formula`MAXIFS(Change_Fill,Change_${whose},${cell(whose)},Change_In,${cell("Device in")})`;
    const isOwn = formula`COUNTIFS(Change_Key,${cell("Key")},Change_In,${cell("Device in")})>0`;
    const person = formula`IF(${isBlankIn(cell("Access"))},${fillOf("Person")},0)`;
    const fill = letting({ fill: formula`IF(${isOwn},${fillOf("Key")},${person})` }, volumeIn("fill"));
    const past = formula`IF(ISNUMBER(${cell("Device in")}),${fill},"")`;
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
  const device = row["Device in"]!;
  if (!isNumber(device)) return "";
  const past = (whose: "Key" | "Person") =>
    sight
      .rowsWith("changes", whose, row[whose]!)
      .map((i) => sight.changes[i]!)
      .filter((one) => one["In"] === device);
  const own = past("Key");
  const fills = (own.length > 0 || !isBlank(row["Access"]!) ? own : past("Person"))
    .map((one) => one["Fill mL"]!)
    .filter(isNumber);
  return fills.length > 0 ? volumeOf(Math.max(...fills), sight) : "";
}
