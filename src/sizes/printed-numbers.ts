/**
 * The numbers of a text as people print and type it (`14 Fr x 2.3 cm, 5 mL`; `Ch. 14`; `3-5 mL`), each with its unit.
 *
 * Nothing is guessed: a number with something unexplained against it (`l4 Fr`, `1O Fr`, `14½`) is `broken`, because one
 * of its digits may be missing from it; two numbers of which only the second has a unit (`5 (max 7) mL`) share it.
 */
import { plainCharacters } from "../worksheet/numbers";

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

const UNITS = new Map<string, Unit>();
const spelt = (unit: Unit, ...words: readonly string[]): void => words.forEach((word) => void UNITS.set(word, unit));
spelt("Fr", "f", "fr", "fg", "ch", "char", "charr", "french", "charriere");
spelt("mm", "mm");
spelt("cm", "cm");
spelt("mL", "ml", "mls", "cc", "ccs", "millilitre", "millilitres");
spelt("gauge", "g", "ga", "gauge");
spelt("other", "m", "in", "inch", "l");

/** Between two numbers they say that both are of one kind: 3 to 5, 5 (max 7). */
const JOINING_WORDS = new Set(["to", "or", "and", "bis", "a", "max", "maximum", "min", "minimum"]);
/** Between two numbers they say that both are of different kinds: 14 x 2.3 cm. */
const isTimes = (word: string): boolean => /^[x×*]$/.test(word);

export interface PrintedNumber {
  /** Digits with points and commas as they stand there. */
  readonly text: string;
  /** Its own unit, or one shared with a number that it is joined to. */
  unit: Unit | undefined;
  readonly negative: boolean;
  /** Something stands against it that no unit explains: it cannot be read. */
  broken: boolean;
  /** How it hangs together with the number before it; undefined: not at all. */
  readonly joined: "firmly" | "loosely" | undefined;
}

/** Numbers; words; signs that join; signs between; digits of other scripts and fractions; any other sign. */
const TOKEN = /(\.?\d+(?:[.,]\d+)*)|([a-z]+)|([-\u2013\u2014/~±|])|([,;&+])|(\p{N})|\S/gu;
type Kind = "number" | "word" | "joiner" | "separator" | "foreign" | "sign";

interface Token {
  readonly kind: Kind;
  readonly text: string;
  /** The token that it stands against, without a space between. */
  readonly against: Token | undefined;
}

function tokensOf(text: string): Token[] {
  const tokens: Token[] = [];
  let end = -1;
  for (const match of text.matchAll(TOKEN)) {
    const [whole, number, word, joiner, separator, foreign] = match;
    const kind: Kind =
      number !== undefined
        ? "number"
        : word !== undefined
          ? "word"
          : joiner !== undefined
            ? "joiner"
            : separator !== undefined
              ? "separator"
              : foreign !== undefined
                ? "foreign"
                : "sign";
    tokens.push({ kind, text: whole, against: match.index === end ? tokens.at(-1) : undefined });
    end = match.index + whole.length;
  }
  return tokens;
}

/** `14frx2.3cm`: a unit with "x" written against it. */
const withoutTimes = (word: string): string => (word.length > 1 && word.endsWith("x") ? word.slice(0, -1) : word);
const endsInTimes = (word: string): boolean => isTimes(word) || (!UNITS.has(word) && UNITS.has(withoutTimes(word)));

/** `l.5 cm`, `O,5 mL`: a letter alone before a point or comma may be a digit; "x" and "F." are not. */
const isLetterAlone = (token: Token | undefined): boolean =>
  token?.kind === "word" && token.text.length === 1 && !isTimes(token.text) && UNITS.get(token.text) !== "Fr";

/** `2·5`, `5'5`: signs that some write as a decimal point; an apostrophe also stands before a text. */
const isOtherPoint = (token: Token | undefined): boolean =>
  token?.kind === "sign" &&
  (/^[·∙⋅•‧・]$/.test(token.text) || (/^['’`]$/.test(token.text) && token.against !== undefined));

function numbersOf(tokens: readonly Token[]): PrintedNumber[] {
  const found: PrintedNumber[] = [];
  /** Words that were the unit of the number before them. */
  const unitWords = new Set<Token>();
  let joined: PrintedNumber["joined"];
  let unitBefore: "Fr" | undefined;
  let awaitsUnit = false;

  const add = (text: string, negative: boolean, broken: boolean): void => {
    found.push({ text, unit: unitBefore, negative, broken, joined });
    awaitsUnit = unitBefore === undefined;
    unitBefore = undefined;
    joined = "loosely";
  };

  for (const [i, token] of tokens.entries()) {
    const { kind, text, against } = token;
    const last = found.at(-1);
    if (kind === "number") {
      const word = against?.kind === "word" ? against : undefined;
      const afterTimes = word !== undefined && endsInTimes(word.text);
      const afterUnit = word !== undefined && unitWords.has(word);
      // ".8" is a decimal behind a space or a bracket; "Ch.14" is a shortened word; "14Fr.5mL" may be either.
      const isPoint = text.startsWith(".");
      const isShort = isPoint && ((word !== undefined && !afterTimes) || against?.text === ".");
      const explained =
        word === undefined ||
        afterTimes ||
        (isPoint ? !afterUnit : afterUnit || JOINING_WORDS.has(word.text) || UNITS.get(word.text) === "Fr");
      // " ,5 mL" may be half a millilitre.
      const afterLooseComma =
        against?.text === "," && (against.against === undefined || isLetterAlone(against.against));
      const isUnsure = afterLooseComma || isOtherPoint(against) || (isPoint && isLetterAlone(word));
      const negative = i === 1 && tokens[0]!.text === "-";
      add(isShort ? text.slice(1) : text, negative, !explained || against?.kind === "foreign" || isUnsure);
    } else if (kind === "foreign") {
      if (against?.kind === "number" && last) last.broken = true;
      else add(text, false, true);
    } else if (kind === "word") {
      const unit = UNITS.get(text) ?? UNITS.get(withoutTimes(text));
      const times = endsInTimes(text);
      const joins = JOINING_WORDS.has(text);
      if (awaitsUnit && last && unit !== undefined) {
        last.unit = unit;
        unitWords.add(token);
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
    } else {
      if (isTimes(text)) joined = undefined;
      else if (kind === "joiner") joined = "firmly";
      if (kind !== "sign" || isTimes(text)) awaitsUnit = false;
    }
  }
  return found;
}

/** `14 Fr/2.3`: behind a size this is no second size. */
export const isTooSmallForASize = ({ text, broken }: PrintedNumber): boolean =>
  !broken && Number(text.replace(",", ".")) < SMALLEST_FRENCH;

const shareable = ({ unit }: PrintedNumber): PrintUnit | undefined =>
  unit === "gauge" || unit === "other" ? undefined : unit;

/** `3-5 mL`: both are mL. `REF 12345, 14 Fr`: a number far too large for the unit is something else. */
function shareUnits(list: readonly PrintedNumber[]): void {
  for (let i = list.length - 1; i > 0; i--) {
    const [to, from] = [list[i - 1]!, list[i]!];
    const unit = shareable(from);
    if (unit === undefined || from.joined === undefined || to.unit !== undefined) continue;
    if (from.joined === "firmly" || !(Number(to.text.replace(",", ".")) > MOST[unit])) to.unit = unit;
  }
  for (let i = 1; i < list.length; i++) {
    const [from, to] = [list[i - 1]!, list[i]!];
    const unit = shareable(from);
    if (unit === undefined || to.joined !== "firmly" || to.unit !== undefined) continue;
    if (unit !== "Fr" || !isTooSmallForASize(to)) to.unit = unit;
  }
}

/** The numbers of a text in their order, and its words; small letters, accents dropped. */
export function readPrintedNumbers(raw: string): {
  readonly numbers: readonly PrintedNumber[];
  readonly words: readonly string[];
} {
  const tokens = tokensOf(
    plainCharacters(raw)
      .toLowerCase()
      .normalize("NFD")
      .replace(/[\u0300-\u036f]/g, ""),
  );
  const numbers = numbersOf(tokens);
  shareUnits(numbers);
  return { numbers, words: tokens.filter(({ kind }) => kind === "word").map(({ text }) => text) };
}
