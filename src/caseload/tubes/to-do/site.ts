/**
 * The site, as it was seen last. `tight or stuck` ranks with a tight bolster: it may be buried. An infected one is acted
 * on for the clinic's days after it was seen, then it is to be seen again; without a usable day it counts as seen today.
 */
import { formula, type FormulaTemplate } from "../../../columns/formula";
import { is, isAbove, isBlank, isBlankIn, isOneOf, isPastDayIn, stateOfDay, word, wordIn } from "../../reading";
import { sites } from "../../words";
import type { Slots } from "../../column";
import type { Sight } from "../../sight";
import { keyColumn, type At } from "./step";

type Site = (typeof sites)[number];

const isSiteIn = (cell: Slots, site: Site) => is(wordIn(cell("Site")), site);
const isSite = (at: At, site: Site): boolean => word(at("Site")) === site;

/** Red, or something that the list has no word for: somebody has to look. */
const otherSites: readonly string[] = sites.filter((site) => site !== "red");

const isOldIn = (cell: Slots): FormulaTemplate => {
  const seen = cell("Site seen on");
  return formula`IF(${isPastDayIn(seen)},IF(ISNUMBER(Site_Act),IF(Site_Act>0,As_of-INT(${seen})>Site_Act,FALSE),FALSE),FALSE)`;
};
function isOld(at: At, sight: Sight): boolean {
  const seen = at("Site seen on");
  if (stateOfDay(seen, sight) !== 1 || !isAbove(sight.setting("Site_Act"))) return false;
  return sight.asOf - Math.floor(seen as number) > sight.number("Site_Act");
}

export const siteKey = keyColumn("Site now", [
  {
    word: "tight or stuck",
    when: (cell) => isSiteIn(cell, "tight or stuck"),
    holds: (at) => isSite(at, "tight or stuck"),
  },
  {
    word: "infected",
    when: (cell) => formula`IF(${isSiteIn(cell, "infected")},NOT(${isOldIn(cell)}),FALSE)`,
    holds: (at, sight) => isSite(at, "infected") && !isOld(at, sight),
  },
  {
    word: "leaking, opening not mature",
    when: (cell) => formula`AND(${isSiteIn(cell, "leaking")},NOT(${is(cell("Tract"), "mature by weeks")}))`,
    holds: (at) => isSite(at, "leaking") && at("Tract") !== "mature by weeks",
  },
  { word: "leaking", when: (cell) => isSiteIn(cell, "leaking"), holds: (at) => isSite(at, "leaking") },
  { word: "overgrown", when: (cell) => isSiteIn(cell, "overgrown"), holds: (at) => isSite(at, "overgrown") },
  {
    word: "see site again",
    when: (cell) =>
      formula`OR(${isSiteIn(cell, "infected")},NOT(OR(${isBlankIn(cell("Site"))},${isOneOf(wordIn(cell("Site")), otherSites)})))`,
    holds: (at) => isSite(at, "infected") || !(isBlank(at("Site")) || otherSites.includes(word(at("Site")))),
  },
]);
