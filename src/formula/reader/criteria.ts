/**
 * What COUNTIFS, MAXIFS and MATCH look for: Microsoft's pages on COUNTIFS and MATCH. A number is found in cells that hold
 * it, and by COUNTIFS in texts that read as it; texts without regard to case; ? and * stand for others, ~ takes that away.
 */
import { compared, isError, numberIn, type Value } from "./values";

/** What an index files a cell under; null: cells that only a scan can find. */
export type Key = string | number | boolean;

export type Criterion =
  | { readonly by: "key"; readonly key: Key }
  /** Empty cells and "". */
  | { readonly by: "scan"; readonly fits: (value: Value) => boolean };

const BLANK = "b";
const text = (word: string): Key => `t${word.toLowerCase()}`;

/** For COUNTIFS and its like: 5 and "5" are filed together, empty cells and "" too. */
export function looseKey(value: Value): Key {
  if (value === null || value === "") return BLANK;
  if (typeof value === "string") return numberIn(value) ?? text(value);
  return isError(value) ? `e${value.code}` : value;
}

/** For MATCH: each kind for itself. Empty cells are never found. */
export function strictKey(value: Value): Key | null {
  if (value === null || isError(value)) return null;
  return typeof value === "string" ? text(value) : value;
}

const WILD = /[*?~]/;

/** ? for one character, * for any; ~ before them takes that away. The pattern for a regular expression. */
export const patternOf = (text: string): string =>
  text.replace(/~([*?~])|([*?])|([\s\S])/gu, (_, escaped?: string, wild?: string, plain?: string) =>
    wild === "*"
      ? "[\\s\\S]*?"
      : wild === "?"
        ? "[\\s\\S]"
        : (escaped ?? plain)!.replace(/[$()*+.?[\\\]^{|}]/g, "\\$&"),
  );

/** Whether a cell is a text that fits the pattern as a whole. */
function wildcard(pattern: string): (value: Value) => boolean {
  const whole = new RegExp(`^${patternOf(pattern)}$`, "iu");
  return (value) => typeof value === "string" && whole.test(value);
}

const byKey = (key: Key): Criterion => ({ by: "key", key });

const OPERATOR = /^(<=|>=|<>|=|<|>)([\s\S]*)$/;

export function criterionOf(given: Value): Criterion {
  if (given === null) return byKey(0);
  if (typeof given !== "string") return byKey(looseKey(given));
  const [, operator, rest = ""] = OPERATOR.exec(given) ?? [];
  if (operator === undefined) return equal(given);
  if (operator === "=") {
    return rest === "" ? { by: "scan", fits: (value) => value === null } : equal(rest);
  }
  if (operator === "<>") {
    if (rest === "") return { by: "scan", fits: (value) => value !== null };
    const not = equal(rest);
    return { by: "scan", fits: (value) => !fits(not, value) };
  }
  return { by: "scan", fits: ordered(operator, rest) };
}

/** "<=5" finds numbers only, "<=m" texts only. */
function ordered(operator: string, rest: string): (value: Value) => boolean {
  const other: Value = numberIn(rest) ?? rest;
  return (value) => {
    if (typeof value !== typeof other) return false;
    const difference = compared(value, other);
    if (operator === "<") return difference < 0;
    if (operator === ">") return difference > 0;
    return operator === "<=" ? difference <= 0 : difference >= 0;
  };
}

const equal = (word: string): Criterion => {
  if (WILD.test(word)) return { by: "scan", fits: wildcard(word) };
  if (/^(?:TRUE|FALSE)$/i.test(word)) return byKey(/^true$/i.test(word));
  return byKey(
    /^#(?:N\/A|VALUE!|REF!|DIV\/0!|NUM!|NAME\?|NULL!)$/i.test(word) ? `e${word.toUpperCase()}` : looseKey(word),
  );
};

export const fits = (criterion: Criterion, value: Value): boolean =>
  criterion.by === "key" ? looseKey(value) === criterion.key : criterion.fits(value);

/** What MATCH(...,0) looks for; null: nothing can be found. */
export function matchOf(sought: Value): Criterion | null {
  if (typeof sought === "string" && WILD.test(sought)) return { by: "scan", fits: wildcard(sought) };
  const key = strictKey(sought === null ? 0 : sought);
  return key === null ? null : byKey(key);
}
