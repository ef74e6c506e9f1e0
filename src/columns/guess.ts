/**
 * Guesses which column of somebody's list is what: a header that names it, and values that do not speak against it.
 * Two that fit equally well, or a header that may mean two things, give no guess: that is better than a wrong one.
 */
import { BALLOONSTATE } from "../balloon/balloonstate";
import { FRTOMM } from "../sizes/frtomm";
import { call } from "../worksheet/call";
import { dayOfText } from "../worksheet/dates";
import { SheetError } from "../worksheet/error";
import { headerWords, plainHeader } from "./header-words";
import { recipes } from "./recipes/index";
import { roles, type Role } from "./role";
import { textOf, type SheetValue } from "./sheet-block";

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

const fits: { readonly [R in Role]: (value: Exclude<SheetValue, null>) => boolean } = {
  last: isDate,
  due: isDate,
  latest: isDate,
  kind: (value) => typeof value === "string" && /\p{L}/u.test(value) && dayOfText(value) === null,
  size: (value) => readable(call(FRTOMM, [value])),
  out: isVolume,
  putIn: isVolume,
};

const called: { readonly [R in Role]: string } = {
  last: "dates",
  due: "dates",
  latest: "dates",
  kind: "words",
  size: "sizes",
  out: "small volumes",
  putIn: "small volumes",
};

function readable(answer: unknown): boolean {
  return !(answer instanceof SheetError) && answer !== "";
}

function isDate(value: Exclude<SheetValue, null>): boolean {
  return typeof value === "number" ? isDay(value) : typeof value === "string" && dayOfText(value) !== null;
}

function isVolume(value: Exclude<SheetValue, null>): boolean {
  return !(typeof value === "number" && value > 60) && readable(call(BALLOONSTATE, [value, 5]));
}

const isWordFor = (role: Role, text: string): boolean => headerWords[role].includes(text);

/** 2: the header is the very word. 1: but for something in brackets, or for a word before or after it. 0: neither. */
function named(header: string, role: Role): number {
  const text = plainHeader(header);
  if (isWordFor(role, text)) return 2;
  if (isWordFor(role, plainHeader(header.replace(/[([][^)\]]*[)\]]/g, " ")))) return 1;
  const several = headerWords[role].filter((word) => word.includes(" "));
  return several.some((word) => text.startsWith(`${word} `) || text.endsWith(` ${word}`)) ? 1 : 0;
}

/** Of two headers for one role, the one listed first is the better one: what was put in goes before the agreed fill. */
const rank = (header: string, role: Role): number => headerWords[role].indexOf(plainHeader(header));

/** A column that we made is an answer. Only the dates that "Change" stands on may be taken from one. */
function mayBeRead(look: ColumnLook, role: Role): boolean {
  const ours = recipes.find((recipe) => recipe.header.toLowerCase() === look.header.trim().toLowerCase());
  if (role === "due") return !look.isOurs || ours?.key === "changeDue";
  if (role === "latest") return !look.isOurs || ours?.key === "atTheLatest";
  return !look.isOurs && ours === undefined;
}

interface Weighed {
  readonly look: ColumnLook;
  readonly weight: number;
  readonly fitting: number;
  readonly filled: number;
}

/** Blank and unreadable cells are usual; so many of the filled ones must be what the header says. */
const leastShare: { readonly [R in Role]: number } = {
  last: 0.4,
  due: 0.4,
  latest: 0.3,
  kind: 0.5,
  size: 0.5,
  out: 0.5,
  putIn: 0.5,
};

function weigh(look: ColumnLook, role: Role): Weighed | null {
  const name = named(look.header, role);
  if (name === 0 || !mayBeRead(look, role)) return null;
  const filled = look.values.filter((value) => value !== null && textOf(value).trim() !== "").slice(0, LOOKED_AT);
  const fitting = filled.filter((value) => fits[role](value!)).length;
  const share = filled.length === 0 ? 0 : fitting / filled.length;
  // A column of our own may hold words instead of dates in most rows.
  if (!look.isOurs && (filled.length === 0 ? name < 2 : share < leastShare[role])) return null;
  return { look, weight: name, fitting, filled: filled.length };
}

export function guessRoles(looks: readonly ColumnLook[]): { readonly [R in Role]?: RoleGuess } {
  const found: { [R in Role]?: RoleGuess } = {};
  const headers = looks.map((look) => plainHeader(look.header));
  for (const { key: role } of roles) {
    const weighed = looks
      .filter((look) => headers.filter((header) => header === plainHeader(look.header)).length === 1)
      .flatMap((look) => weigh(look, role) ?? [])
      .sort((a, b) => b.weight - a.weight || rank(a.look.header, role) - rank(b.look.header, role));
    const [best, second] = weighed;
    if (!best || (second && second.weight === best.weight && role !== "putIn")) continue;
    const { look, fitting, filled } = best;
    const values = filled === 0 ? "no values yet" : `${fitting} of ${filled} values are ${called[role]}`;
    found[role] = { column: look.index, because: `header "${look.header.trim()}"; ${values}` };
  }
  return found;
}
