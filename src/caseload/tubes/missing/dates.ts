/** Days that are missing, wrong, or in an order that cannot be: opening, device, birth, booking, and what was agreed. */
import { formula } from "../../../columns/formula";
import { countedDay } from "../../counted-days";
import { isAhead, isAheadIn, isNumber } from "../../reading";
import { both, isWrong, wrong, type Gap } from "./gap";

export const dateGaps: readonly Gap[] = [
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
    when: wrong("booked", isAheadIn("booked")),
    applies: ({ at, sight }) => isWrong(at("Booked for"), isAhead(at("Booked for"), sight)),
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
    when: wrong("team", isAheadIn("team")),
    applies: ({ at, sight }) => isWrong(at("Date set by placing team"), isAhead(at("Date set by placing team"), sight)),
  },
];
