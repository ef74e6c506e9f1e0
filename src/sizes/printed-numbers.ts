/**
 * The numbers of a text as people print and type it (`14 Fr x 2.3 cm, 5 mL`; `Ch. 14`; `3-5 mL`), each with its unit.
 *
 * Nothing is guessed: a number with something unexplained against it (`l4 Fr`, `1O Fr`, `14½`) is `broken`, because one
 * of its digits may be missing from it; two numbers of which only the second has a unit (`5 (max 7) mL`) share it. A sum
 * (`5+5 mL`), a multiple (`2 x 5 mL`) and a bound (`<5 mL`) are none of their numbers.
 */
import { isAscii, plainCharacters } from "../worksheet/numbers";

/** Largest size read. From memory: no device for this use comes near it; larger numbers are another unit. */
export const LARGEST_FRENCH = 60;
/** No tube for this use is smaller, from memory: a smaller number behind a size (`14 Fr 2.3`) is a length or a volume. */
const SMALLEST_FRENCH = 5;

export const printUnits = ["Fr", "mm", "cm", "mL"] as const;
export type PrintUnit = (typeof printUnits)[number];
/** `other`: a unit in which nothing is read here, such as inches. */
type Unit = PrintUnit | "gauge" | "other";

/** The largest number that may be meant where its own unit does not stand beside it. */
const MOST: Readonly<Record<PrintUnit, number>> = { Fr: LARGEST_FRENCH, mm: 60, cm: 60, mL: 60 };

/** What a word means beside a number. */
interface Meaning {
  readonly unit?: Unit;
  /** It says that the numbers on both sides are of different kinds: 14 x 2.3 cm. */
  readonly times?: true;
  /** It says that they are of one kind: 3 to 5, 5 (max 7). */
  readonly joins?: true;
  /** It says that both are there: 5 mL and 5 mL. */
  readonly adds?: true;
}

const NO_MEANING: Meaning = {};
const TIMES = "x";
const MEANINGS = new Map<string, Meaning>([[TIMES, { times: true }]]);
const meaningOf = (word: string): Meaning => MEANINGS.get(word) ?? NO_MEANING;

function spelt(unit: Unit, ...words: readonly string[]): void {
  for (const word of words) {
    MEANINGS.set(word, { unit });
    // `14frx2.3cm`: a unit with "x" written against it.
    MEANINGS.set(word + TIMES, { unit, times: true });
  }
}
spelt("Fr", "f", "fr", "fg", "ch", "char", "charr", "french", "charriere");
spelt("mm", "mm");
spelt("cm", "cm");
spelt("mL", "ml", "mls", "cc", "ccs", "millilitre", "millilitres");
spelt("gauge", "g", "ga", "gauge");
spelt("other", "m", "in", "inch", "l");

MEANINGS.set("and", { joins: true, adds: true });
MEANINGS.set("plus", { joins: true, adds: true });
for (const word of ["to", "or", "bis", "a", "max", "maximum", "min", "minimum"]) {
  MEANINGS.set(word, { joins: true });
}

export interface PrintedNumber {
  /** Digits with points and commas as they stand there. */
  readonly text: string;
  /** Its own unit, or one shared with a number that it is joined to. */
  unit: Unit | undefined;
  isShared: boolean;
  readonly negative: boolean;
  /** Something stands against it that no unit explains: it cannot be read. */
  broken: boolean;
  /** How it hangs together with the number before it; undefined: not at all. */
  readonly joined: "firmly" | "loosely" | undefined;
  /** It is added to the number before it, or multiplied with it. */
  readonly behind: "plus" | "times" | undefined;
}

/** `foreign`: a digit of another script, or a fraction; `sign`: any other sign. */
type Kind = "number" | "word" | "joiner" | "times" | "separator" | "foreign" | "sign";

/** Signs that say more than that they are there. */
const SIGNS = new Map<string, Kind>([
  ...[..."-\u2013\u2014/~±|"].map((sign): [string, Kind] => [sign, "joiner"]),
  ...[...",;&+"].map((sign): [string, Kind] => [sign, "separator"]),
  ...[..."×*"].map((sign): [string, Kind] => [sign, "times"]),
]);

const PLUSES = new Set(["+", "&"]);
/** A number behind one of these is a limit, not what is meant. */
const BOUNDS = new Set(["<", ">", "≤", "≥"]);

interface Token {
  readonly kind: Kind;
  readonly text: string;
  /** Of a word. */
  readonly meaning: Meaning;
  /** The token that it stands against, without a space between. */
  readonly against: Token | undefined;
}

const isDigit = (code: number): boolean => code >= 0x30 && code <= 0x39;
const isLetter = (code: number): boolean => code >= 0x61 && code <= 0x7a;
const SPACE = 0x20;
const POINT = 0x2e;
const COMMA = 0x2c;

/** Where the digits end that begin here, points and commas between digits among them. */
function endOfNumber(text: string, start: number): number {
  let at = start + 1;
  for (;;) {
    while (isDigit(text.charCodeAt(at))) at++;
    const mark = text.charCodeAt(at);
    if ((mark !== POINT && mark !== COMMA) || !isDigit(text.charCodeAt(at + 1))) return at;
    at += 2;
  }
}

function endOfWord(text: string, start: number): number {
  let at = start + 1;
  while (isLetter(text.charCodeAt(at))) at++;
  return at;
}

/** Sign by sign, because a regular expression with its matches took most of a long column's time. */
function tokensOf(text: string): Token[] {
  const tokens: Token[] = [];
  let against: Token | undefined;
  for (let at = 0, end = 0; at < text.length; at = end) {
    const code = text.charCodeAt(at);
    if (code === SPACE) {
      against = undefined;
      end = at + 1;
      continue;
    }
    let kind: Kind;
    if (isDigit(code) || (code === POINT && isDigit(text.charCodeAt(at + 1)))) {
      kind = "number";
      end = endOfNumber(text, at);
    } else if (isLetter(code)) {
      kind = "word";
      end = endOfWord(text, at);
    } else {
      const sign = String.fromCodePoint(text.codePointAt(at)!);
      end = at + sign.length;
      if (/\s/.test(sign)) {
        against = undefined;
        continue;
      }
      kind = SIGNS.get(sign) ?? (/\p{N}/u.test(sign) ? "foreign" : "sign");
    }
    const whole = text.slice(at, end);
    against = { kind, text: whole, meaning: kind === "word" ? meaningOf(whole) : NO_MEANING, against };
    tokens.push(against);
  }
  return tokens;
}

/** `l.5 cm`, `O,5 mL`: a letter alone before a point or comma may be a digit; "x" and "F." are not. */
const isLetterAlone = (token: Token | undefined): boolean =>
  token?.kind === "word" && token.text.length === 1 && !token.meaning.times && token.meaning.unit !== "Fr";

/** `2·5`, `5'5`: signs that some write as a decimal point; an apostrophe also stands before a text. */
const isOtherPoint = (token: Token | undefined): boolean =>
  token?.kind === "sign" &&
  (/^[·∙⋅•‧・]$/.test(token.text) || (/^['’`]$/.test(token.text) && token.against !== undefined));

function numbersOf(tokens: readonly Token[]): PrintedNumber[] {
  const found: PrintedNumber[] = [];
  let last: PrintedNumber | undefined;
  /** The newest word that was the unit of the number before it. */
  let unitWord: Token | undefined;
  let joined: PrintedNumber["joined"];
  let behind: PrintedNumber["behind"];
  let unitBefore: "Fr" | undefined;
  let awaitsUnit = false;

  const add = (text: string, negative: boolean, broken: boolean): void => {
    last = { text, unit: unitBefore, isShared: false, negative, broken, joined, behind };
    found.push(last);
    awaitsUnit = unitBefore === undefined;
    unitBefore = undefined;
    joined = "loosely";
    behind = undefined;
  };

  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i]!;
    const { kind, text, against } = token;
    if (kind === "number") {
      const word = against?.kind === "word" ? against : undefined;
      const afterTimes = word?.meaning.times === true;
      const afterUnit = word !== undefined && word === unitWord;
      // ".8" is a decimal behind a space or a bracket; "Ch.14" is a shortened word; "14Fr.5mL" may be either.
      const isPoint = text.startsWith(".");
      const isShort = isPoint && ((word !== undefined && !afterTimes) || against?.text === ".");
      const explained =
        word === undefined ||
        afterTimes ||
        (isPoint ? !afterUnit : afterUnit || word.meaning.joins === true || word.meaning.unit === "Fr");
      // " ,5 mL" may be half a millilitre.
      const afterLooseComma =
        against?.text === "," && (against.against === undefined || isLetterAlone(against.against));
      const isBound = i > 0 && BOUNDS.has(tokens[i - 1]!.text);
      const isUnsure = isBound || afterLooseComma || isOtherPoint(against) || (isPoint && isLetterAlone(word));
      const negative = i === 1 && tokens[0]!.text === "-";
      add(isShort ? text.slice(1) : text, negative, !explained || against?.kind === "foreign" || isUnsure);
    } else if (kind === "foreign") {
      if (against?.kind === "number" && last) last.broken = true;
      else add(text, false, true);
    } else if (kind === "word") {
      const { unit, times, joins, adds } = token.meaning;
      if (awaitsUnit && last && unit !== undefined) {
        last.unit = unit;
        unitWord = token;
        awaitsUnit = false;
      } else if ((against?.kind === "number" || against?.kind === "foreign") && last && !times && !joins) {
        // "1O Fr": the unit behind it still belongs to it.
        last.broken = true;
      } else {
        // "CH 14", "Fr 14": only a French size is also written behind its unit.
        unitBefore = !awaitsUnit && unit === "Fr" && joined !== "firmly" ? "Fr" : undefined;
        awaitsUnit = false;
        if (joined === "firmly") joined = "loosely";
      }
      if (times) joined = undefined;
      else if (joins) joined = "firmly";
      if (times) behind = "times";
      else if (adds) behind = "plus";
    } else if (kind !== "sign") {
      if (kind === "times") joined = undefined;
      else if (kind === "joiner") joined = "firmly";
      if (kind === "times") behind = "times";
      else if (PLUSES.has(text)) behind = "plus";
      awaitsUnit = false;
    }
  }
  return found;
}

/** `14 Fr/2.3`: behind a size this is no second size. */
export const isTooSmallForASize = ({ text, broken }: PrintedNumber): boolean =>
  !broken && Number(text.replace(",", ".")) < SMALLEST_FRENCH;

const shareable = ({ unit }: PrintedNumber): PrintUnit | undefined =>
  unit === "gauge" || unit === "other" ? undefined : unit;

const share = (number: PrintedNumber, unit: PrintUnit): void => {
  number.unit = unit;
  number.isShared = true;
};

/** `3-5 mL`: both are mL. `REF 12345, 14 Fr`: a number far too large for the unit is something else. */
function shareUnits(list: readonly PrintedNumber[]): void {
  for (let i = list.length - 1; i > 0; i--) {
    const [to, from] = [list[i - 1]!, list[i]!];
    const unit = shareable(from);
    if (unit === undefined || from.joined === undefined || to.unit !== undefined) continue;
    if (from.joined === "firmly" || !(Number(to.text.replace(",", ".")) > MOST[unit])) share(to, unit);
  }
  for (let i = 1; i < list.length; i++) {
    const [from, to] = [list[i - 1]!, list[i]!];
    const unit = shareable(from);
    if (unit === undefined || to.joined !== "firmly" || to.unit !== undefined) continue;
    if (unit !== "Fr" || !isTooSmallForASize(to)) share(to, unit);
  }
}

/** `2 x 5 mL`, `5 mL x 2`: neither number is the volume. Of lengths and sizes the other number is rather the size. */
function refuseMultiples(list: readonly PrintedNumber[]): void {
  for (let i = 1; i < list.length; i++) {
    const [one, other] = [list[i - 1]!, list[i]!];
    if (other.behind !== "times") continue;
    if (one.unit === undefined && other.unit === "mL") other.broken = true;
    if (one.unit === "mL" && other.unit === undefined) one.broken = true;
  }
}

/** Whether two numbers of one unit say the same twice (`5 mL (5 cc)`), each by itself. */
export const isRestated = (one: PrintedNumber, other: PrintedNumber): boolean =>
  !one.isShared && !other.isShared && other.behind !== "plus";

/** Small letters, accents dropped. */
const plainLetters = (raw: string): string =>
  isAscii(raw)
    ? raw.toLowerCase()
    : plainCharacters(raw)
        .toLowerCase()
        .normalize("NFD")
        .replace(/[\u0300-\u036f]/g, "");

/** The numbers of a text in their order. */
export function readPrintedNumbers(raw: string): readonly PrintedNumber[] {
  const numbers = numbersOf(tokensOf(plainLetters(raw)));
  shareUnits(numbers);
  refuseMultiples(numbers);
  return numbers;
}

/** The words of a text, as they are read beside its numbers: small letters, accents dropped. */
export const printedWords = (raw: string): readonly string[] =>
  tokensOf(plainLetters(raw))
    .filter(({ kind }) => kind === "word")
    .map(({ text }) => text);
