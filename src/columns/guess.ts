/**
 * Guesses which column of somebody's list is what: a header that names it, and values that do not speak against it.
 * Two that fit equally well, or a header that may mean two things, give no guess: that is better than a wrong one.
 */
import { BALLOONSTATE } from "../balloon/balloonstate";
import { FREEPLAY } from "../fit/freeplay";
import { MARKSHIFT } from "../fit/markshift";
import { STOMAFIT } from "../fit/stomafit";
import { FRTOMM } from "../sizes/frtomm";
import { MMTOFR } from "../sizes/mmtofr";
import { call } from "../worksheet/call";
import { dayOfText } from "../worksheet/dates";
import { SheetError } from "../worksheet/error";
import { isAsTyped, mendedFrom } from "../mending/headers";
import { readWrittenDate } from "../mending/written-date";
import { headerWords, plainHeader, wholeHeaders } from "./header-words";
import { recipes } from "./recipes/index";
import type { RecipeKey } from "./recipes/recipe";
import { roleNamed, roles, type Content, type Role } from "./role";
import { textOf, type SheetValue } from "./sheet-block";
import { wordKey } from "./spelling";
import { changeStates } from "./state-words";

export interface ColumnLook {
  readonly index: number;
  readonly header: string;
  readonly values: readonly SheetValue[];
  /** Made by this add-in before. */
  readonly isOurs: boolean;
}

export interface RoleGuess {
  readonly column: number;
  readonly because: string;
}

/** So many values are looked at. */
const LOOKED_AT = 200;

/** 1 January 1990 to 31 December 2100: what a date in such a list can be. */
const isDay = (value: number): boolean => value >= 32874 && value < 73415;

type Filled = Exclude<SheetValue, null>;

interface Look {
  readonly fits: (value: Filled) => boolean;
  readonly called: string;
  /** The unit that a header of this sort may name; left out: no length. */
  readonly unit?: string;
  /** Blank and unreadable cells are usual; so many of the filled ones must be what the header says. */
  readonly leastShare: number;
}

const looks: { readonly [C in Content]: Look } = {
  date: { fits: isDate, called: "dates", leastShare: 0.4 },
  words: { fits: (value) => isWord(value) && !isChangeWord(value), called: "words", leastShare: 0.5 },
  "change words": { fits: isChangeWord, called: "words for a change", leastShare: 0.5 },
  size: { fits: (value) => readable(call(FRTOMM, [value])), called: "sizes", unit: "fr", leastShare: 0.5 },
  diameter: {
    fits: (value) => readable(call(MMTOFR, [value])),
    called: "diameters in mm",
    unit: "mm",
    leastShare: 0.5,
  },
  volume: { fits: isVolume, called: "small volumes", leastShare: 0.5 },
  length: {
    fits: (value) => measured(call(STOMAFIT, [value, value, value])),
    called: "lengths in cm",
    unit: "cm",
    leastShare: 0.5,
  },
  distance: {
    fits: (value) => measured(call(FREEPLAY, [value])),
    called: "distances in mm",
    unit: "mm",
    leastShare: 0.5,
  },
  mark: {
    fits: (value) => measured(call(MARKSHIFT, [value, value])),
    called: "marks in cm",
    unit: "cm",
    leastShare: 0.5,
  },
};

const lookOf = (role: Role): Look => looks[roleNamed(role).content];

/** A number that the function reads; its answer to a blank is no measurement. */
const measured = (answer: unknown): boolean => readable(answer) && answer !== "not measured";

const isWord = (value: Filled): boolean =>
  typeof value === "string" && /\p{L}/u.test(value) && dayOfText(value) === null;

function isChangeWord(value: Filled): boolean {
  return typeof value === "string" && changeStates.some((state) => state === wordKey(value));
}

function readable(answer: unknown): boolean {
  return !(answer instanceof SheetError) && answer !== "";
}

/** A text that is a date to people, "13 Jun 2026" or "3/4/24", speaks for a column of dates too: it is told, or mended. */
function isDate(value: Filled): boolean {
  if (typeof value === "number") return isDay(value);
  return typeof value === "string" && (dayOfText(value) !== null || typeof readWrittenDate(value) === "object");
}

function isVolume(value: Filled): boolean {
  return !(typeof value === "number" && value > 60) && readable(call(BALLOONSTATE, [value, 5]));
}

const UNITS: ReadonlySet<string> = new Set(["mm", "cm", "inch", "inches", "fr"]);
/** What else is changed and checked on such lists. */
const OTHER_THINGS = /\b(?:water|dressing|weight|feed|set|sets|syringe|skin|site|bloods?|plan)\b/;

const isWordFor = (role: Role, text: string): boolean => headerWords[role].includes(text);

/**
 * 3: a column that was mended from such a one. 2: the header is the very word. 1: but for something in brackets, or for a
 * word before or after it. 0: none of these, or what was typed before it was mended.
 */
function named(header: string, role: Role): number {
  const text = plainHeader(header);
  if (isAsTyped(text)) return 0;
  const original = mendedFrom(text);
  if (original !== null && isWordFor(role, original)) return 3;
  if (isWordFor(role, text)) return 2;
  if (namesAnotherUnit(text, role)) return 0;
  if (isWordFor(role, plainHeader(header.replace(/[([][^)\]]*[)\]]/g, " ")))) return 1;
  const several = headerWords[role].filter((word) => word.includes(" ") && !wholeHeaders.has(word));
  const isWithin = several.some((word) => text.startsWith(`${word} `) || text.endsWith(` ${word}`));
  return isWithin && !OTHER_THINGS.test(text) ? 1 : 0;
}

/** "Length (mm)", "Gap (cm)", "Size (mm)": read in our unit they would be ten or three times too small or too large. */
function namesAnotherUnit(text: string, role: Role): boolean {
  const { unit } = lookOf(role);
  return unit !== undefined && text.split(" ").some((word) => UNITS.has(word) && word !== unit);
}

/** Of two headers for one role, the one listed first is the better one: what was put in goes before the agreed fill. */
const rank = (header: string, role: Role): number => headerWords[role].indexOf(plainHeader(header));

/** The columns of ours from which a role may be taken: the dates that "Change" stands on, and its words to show by. */
const readsOurs: { readonly [R in Role]?: RecipeKey } = { due: "changeDue", latest: "atTheLatest", state: "change" };

/** A column that we made is an answer, and no figure of theirs. */
function mayBeRead(look: ColumnLook, role: Role): boolean {
  const ours = recipes.find((recipe) => recipe.header.toLowerCase() === look.header.trim().toLowerCase());
  if (!look.isOurs && (role === "due" || role === "latest")) return true;
  return ours === undefined ? !look.isOurs : ours.key === readsOurs[role];
}

interface Weighed {
  readonly look: ColumnLook;
  readonly weight: number;
  readonly fitting: number;
  readonly filled: number;
}

/** How many of a column's entries, of the first ones, are what such a column holds. */
export function fitsRole(
  role: Role,
  values: readonly SheetValue[],
): { readonly filled: number; readonly fitting: number } {
  const { fits } = lookOf(role);
  const filled = values.filter((value) => value !== null && textOf(value).trim() !== "").slice(0, LOOKED_AT);
  return { filled: filled.length, fitting: filled.filter((value) => fits(value!)).length };
}

function weigh(look: ColumnLook, role: Role): Weighed | null {
  const name = named(look.header, role);
  if (name === 0 || !mayBeRead(look, role)) return null;
  const { leastShare } = lookOf(role);
  const { filled, fitting } = fitsRole(role, look.values);
  const share = filled === 0 ? 0 : fitting / filled;
  // A column of our own may hold words instead of dates in most rows.
  if (!look.isOurs && (filled === 0 ? name < 2 : share < leastShare)) return null;
  return { look, weight: name, fitting, filled };
}

export function guessRoles(looks: readonly ColumnLook[]): { readonly [R in Role]?: RoleGuess } {
  const found: { [R in Role]?: RoleGuess } = {};
  const headers = looks.map((look) => plainHeader(look.header));
  const once = looks.filter((_, at) => headers.indexOf(headers[at]!) === headers.lastIndexOf(headers[at]!));
  for (const { key: role } of roles) {
    const weighed = once
      .flatMap((look) => weigh(look, role) ?? [])
      .sort((a, b) => b.weight - a.weight || rank(a.look.header, role) - rank(b.look.header, role));
    const [best, second] = weighed;
    if (!best || (second && second.weight === best.weight && role !== "putIn")) continue;
    const { look, fitting, filled } = best;
    const values = filled === 0 ? "no values yet" : `${fitting} of ${filled} values are ${lookOf(role).called}`;
    found[role] = { column: look.index, because: `header "${look.header.trim()}"; ${values}` };
  }
  return found;
}
