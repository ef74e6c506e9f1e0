/** Which device a check was made on, and how much water was expected to come out. */
import { formula } from "../../columns/formula";
import { DATE, letting, TENTHS, type CaseloadColumn } from "../column";
import { isBlankIn, isUsualIn } from "../reading";
import { currentIn, pastIn } from "./order";

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
};

const volumeIn = (value: string) =>
  formula`IF(ISNUMBER(${value}),IF(N(${value})>0,IF(${isUsualIn(formula`N(${value})`)},N(${value}),""),""),"")`;

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
};
