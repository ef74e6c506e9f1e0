/** Days that are missing, wrong, or in an order that cannot be: opening, device, birth, booking, and what was agreed. */
import { formula } from "../../../columns/formula";
import { isAheadIn } from "../../reading";
import { both, wrong, type Gap } from "./gap";

export const dateGaps: readonly Gap[] = [
  { says: "no date of the stoma", when: formula`stomais=0` },
  { says: "date of the stoma wrong", when: formula`stomais<0` },
  { says: "no date of device in", when: formula`inis=0` },
  { says: "date of device in wrong", when: formula`inis<0` },
  {
    says: "device in before the stoma was made",
    when: both(formula`AND(stomais=1,inis=1)`, formula`stoma>=in+1`),
  },
  {
    says: "birth date wrong",
    when: wrong("born", both(formula`ISNUMBER(born)`, both(formula`born<As_of+1`, formula`born>=Day_Birth`))),
  },
  {
    says: "born after the stoma was made",
    when: both(formula`AND(ISNUMBER(born),stomais=1)`, formula`stoma+1<=born`),
  },
  {
    says: "booking is no usable date",
    when: wrong("booked", isAheadIn("booked")),
  },
  {
    says: "booked date passed",
    when: both(formula`ISNUMBER(booked)`, both(formula`booked<As_of`, formula`IF(inis=1,in<INT(booked),TRUE)`)),
  },
  {
    says: "own interval wrong",
    needs: "Own interval months",
    when: wrong("own", both(formula`ISNUMBER(own)`, formula`AND(own>=1,own<=Far_Months,own=INT(own))`)),
  },
  {
    says: "placing team's date wrong",
    needs: "Date set by placing team",
    when: wrong("team", isAheadIn("team")),
  },
];
