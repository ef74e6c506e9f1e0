/**
 * The site, as it was seen last. `tight or stuck` ranks with a tight bolster: it may be buried. An infected one is acted
 * on for the clinic's days after it was seen, then it is to be seen again; without a usable day it counts as seen today.
 */
import { formula, type FormulaTemplate } from "../../../columns/formula";
import { is, isBlankIn, isOneOf, isPastDayIn, wordIn } from "../../reading";
import { sites } from "../../words";
import type { Slots } from "../../column";
import { keyColumn } from "./step";

type Site = (typeof sites)[number];

const isSiteIn = (cell: Slots, site: Site) => is(wordIn(cell("Site")), site);

/** Red, or something that the list has no word for: somebody has to look. */
const otherSites: readonly string[] = sites.filter((site) => site !== "red");

const isOldIn = (cell: Slots): FormulaTemplate => {
  const seen = cell("Site seen on");
  return formula`IF(${isPastDayIn(seen)},IF(ISNUMBER(Site_Act),IF(Site_Act>0,As_of-INT(${seen})>Site_Act,FALSE),FALSE),FALSE)`;
};

export const siteKey = keyColumn("Site now", [
  {
    word: "tight or stuck",
    when: (cell) => isSiteIn(cell, "tight or stuck"),
  },
  {
    word: "infected",
    when: (cell) => formula`IF(${isSiteIn(cell, "infected")},NOT(${isOldIn(cell)}),FALSE)`,
  },
  {
    word: "leaking, opening not mature",
    when: (cell) => formula`AND(${isSiteIn(cell, "leaking")},NOT(${is(cell("Tract"), "mature by weeks")}))`,
  },
  { word: "leaking", when: (cell) => isSiteIn(cell, "leaking") },
  { word: "overgrown", when: (cell) => isSiteIn(cell, "overgrown") },
  {
    word: "see site again",
    when: (cell) =>
      formula`OR(${isSiteIn(cell, "infected")},NOT(OR(${isBlankIn(cell("Site"))},${isOneOf(wordIn(cell("Site")), otherSites)})))`,
  },
]);
