/** What the booked day and the dates say together; hidden columns that *To do* reads. */
import { formula } from "../../columns/formula";
import { PLAIN, type CaseloadColumn } from "../column";
import { isBlankIn } from "../reading";

const hidden = { kind: "computed", format: PLAIN, width: 4, isHidden: true } as const;

/** The sooner of due and latest; where neither is a date, the word that stands in place of the due date. */
export const dueFirst: CaseloadColumn = {
  ...hidden,
  header: "Due first",
  formula: (cell) => {
    const [due, latest] = [cell("Change due"), cell("At the latest")];
    return formula`IF(ISNUMBER(${latest}),IF(ISNUMBER(${due}),IF(N(${due})<N(${latest}),${due},${latest}),${latest}),IF(ISNUMBER(${due}),${due},""))`;
  },
};

export const AHEAD = "ahead";
export const MISSED = "missed";
export const WRONG = "wrong";

/** `ahead`: today or later. `missed`: past, and no device came in since. `wrong`: no usable day. "" else. */
export const booking: CaseloadColumn = {
  ...hidden,
  header: "Booking",
  formula: (cell) => {
    const [booked, came] = [cell("Booked for"), cell("Device in")];
    const past = formula`IF(ISNUMBER(${came}),IF(N(${came})<INT(${booked}),"${MISSED}",""),"${MISSED}")`;
    const near = formula`IF(AND(N(${booked})>=Day_Oldest,N(${booked})<Day_Farthest+1),IF(N(${booked})>=As_of,"${AHEAD}",${past}),"${WRONG}")`;
    return formula`IF(ISNUMBER(${booked}),${near},IF(${isBlankIn(booked)},"","${WRONG}"))`;
  },
};
