/**
 * Lots that could be the same one, written down wrongly: offered to a person, never taken for it. Which signs are mistaken
 * for each other is from memory (hand-written and printed labels), no published source.
 */
export type Likeness =
  "other signs between" | "other leading zeros" | "signs that look alike" | "one sign differs" | "part of it";

const ALIKE: Readonly<Record<string, string>> = {
  ...{ O: "0", Q: "0", D: "0", I: "1", L: "1", "|": "1", "!": "1", Z: "2", S: "5", G: "6", B: "8", U: "V" },
  /* Greek and Cyrillic letters that look like Latin ones: А В Е К М Н О Р С Т Х. */
  ...{ "\u0410": "A", "\u0412": "8", "\u0415": "E", "\u041A": "K", "\u041C": "M", "\u041D": "H", "\u041E": "0" },
  ...{ "\u0420": "P", "\u0421": "C", "\u0422": "T", "\u0425": "X", "\u0391": "A", "\u0392": "8", "\u039F": "0" },
};

/** One edit makes another lot of almost any shorter text. */
const LEAST_FOR_AN_EDIT = 4;
const LEAST_FOR_A_PART = 4;

const bare = (key: string): string => key.replace(/[^\p{L}\p{N}|!]/gu, "");
const folded = (key: string): string => [...key].map((sign) => ALIKE[sign] ?? sign).join("");
const withoutZeros = (key: string): string => key.replace(/(?<!\d)0+(?=\d)/g, "");

/** One sign put in, left out or replaced, or two neighbours exchanged. */
function isOneEdit(a: string, b: string): boolean {
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  if (long.length - short.length > 1) return false;
  let at = 0;
  while (at < short.length && short[at] === long[at]) at++;
  if (short.length < long.length) return short.slice(at) === long.slice(at + 1);
  if (short.slice(at + 1) === long.slice(at + 1)) return true;
  return short[at] === long[at + 1] && short[at + 1] === long[at] && short.slice(at + 2) === long.slice(at + 2);
}

/**
 * Why two lots could be one; null where nothing speaks for it, or where they are the same.
 * @param a key of a lot, as `lotKey` makes it
 */
export function likeness(a: string, b: string): Likeness | null {
  if (a === b || a === "" || b === "") return null;
  const [x, y] = [bare(a), bare(b)];
  if (x === y) return "other signs between";
  if (x === "" || y === "") return null;
  if (withoutZeros(x) === withoutZeros(y)) return "other leading zeros";
  const [fx, fy] = [folded(x), folded(y)];
  if (fx === fy) return "signs that look alike";
  const [least, most] = [Math.min(x.length, y.length), Math.max(x.length, y.length)];
  if (least >= LEAST_FOR_AN_EDIT && isOneEdit(fx, fy)) return "one sign differs";
  const isPart = x.length < y.length ? y.includes(x) : x.includes(y);
  return least >= LEAST_FOR_A_PART && least < most && isPart ? "part of it" : null;
}
