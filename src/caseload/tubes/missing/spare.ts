/** The spare at home, where somebody has one: whether it would go in, its lot and its expiry; and the word for the site. */
import { formula } from "../../../columns/formula";
import { isAhead, isAheadIn, isBlank, isBlankIn, isNumber, isOneOf } from "../../reading";
import { sites, sparesThere } from "../../words";
import { both, isWrong, known, not, wrong, type Cells, type Gap } from "./gap";

const there = known(sparesThere);
const siteWords = known(sites);
const hasSpareIn = isOneOf("spare", there);
const hasSpare = (cells: Cells): boolean => there.includes(cells.word("Spare at home"));

export const spareGaps: readonly Gap[] = [
  {
    says: "the spare is not of the tube's size",
    needs: "Spare Fr",
    when: both(
      hasSpareIn,
      formula`OR(IF(AND(ISNUMBER(size),ISNUMBER(sparefr)),IF(sparefr>size,TRUE,IF(alike,sparefr<size,FALSE)),FALSE),IF(AND(ISNUMBER(length),ISNUMBER(sparecm)),IF(sparecm<length,TRUE,IF(alike,sparecm>length,FALSE)),FALSE))`,
    ),
    applies: (cells) => {
      const [size, length, french, cm] = ["Size Fr", "Length cm", "Spare Fr", "Spare cm"].map(cells.at);
      const isAlike = cells.word("Spare at home") === "same size";
      const isOther = isNumber(size!) && isNumber(french!) && (french > size || (isAlike && french < size));
      const isShort = isNumber(length!) && isNumber(cm!) && (cm < length || (isAlike && cm > length));
      return hasSpare(cells) && (isOther || isShort);
    },
  },
  {
    says: "no lot of the spare",
    needs: "Spare lot",
    when: both(hasSpareIn, isBlankIn("sparelot")),
    applies: (cells) => hasSpare(cells) && isBlank(cells.at("Spare lot")),
  },
  {
    says: "no usable expiry of the spare",
    needs: "Spare expires",
    when: both(hasSpareIn, not(isAheadIn("expires"))),
    applies: (cells) => hasSpare(cells) && !isAhead(cells.at("Spare expires"), cells.sight),
  },
  {
    says: "site is no word of the list",
    needs: "Site",
    when: wrong("site", isOneOf("site", siteWords)),
    applies: (cells) => isWrong(cells.at("Site"), siteWords.includes(cells.word("Site"))),
  },
];
