/** The spare at home, where somebody has one: whether it would go in, its lot and its expiry; and the word for the site. */
import { formula } from "../../../columns/formula";
import { isAheadIn, isBlankIn, isOneOf } from "../../reading";
import { sites, sparesThere } from "../../words";
import { both, known, not, wrong, type Gap } from "./gap";

const there = known(sparesThere);
const siteWords = known(sites);
const hasSpareIn = isOneOf("spare", there);

export const spareGaps: readonly Gap[] = [
  {
    says: "the spare is not of the tube's size",
    needs: "Spare Fr",
    when: both(
      hasSpareIn,
      formula`OR(IF(AND(ISNUMBER(size),ISNUMBER(sparefr)),IF(sparefr>size,TRUE,IF(alike,sparefr<size,FALSE)),FALSE),IF(AND(ISNUMBER(length),ISNUMBER(sparecm)),IF(sparecm<length,TRUE,IF(alike,sparecm>length,FALSE)),FALSE))`,
    ),
  },
  {
    says: "no lot of the spare",
    needs: "Spare lot",
    when: both(hasSpareIn, isBlankIn("sparelot")),
  },
  {
    says: "no usable expiry of the spare",
    needs: "Spare expires",
    when: both(hasSpareIn, not(isAheadIn("expires"))),
  },
  {
    says: "site is no word of the list",
    needs: "Site",
    when: wrong("site", isOneOf("site", siteWords)),
  },
];
