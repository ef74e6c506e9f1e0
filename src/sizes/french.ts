/**
 * Reads a French (Charrière) size as people write it: `14 Fr`, `CH14`, `Ch. 14`, `FG 14`, `14,0`, `14 Fr x 2.3 cm`.
 *
 * Never guesses: two sizes, a question mark, gauge or millimetres are refused with a sentence.
 */
import type { Cell } from "../worksheet/cell";
import { SheetError } from "../worksheet/error";
import { numberOfText, plainCharacters } from "../worksheet/numbers";

/** Largest size read. From memory: no device for this use comes near it; larger numbers are another unit. */
export const LARGEST_FRENCH = 60;

const FRENCH_WORDS = new Set(["f", "fr", "fg", "ch", "char", "charr", "french", "charriere"]);
const GAUGE_WORDS = new Set(["g", "ga", "gauge"]);
/** Units whose number is something else on the same print: length, volume, diameter. */
const OTHER_UNITS = new Set(["mm", "cm", "m", "in", "inch", "ml", "cc", "l"]);

const DIGITS = /^\d+(?:[.,]\d+)?/;
const LETTERS = /^[a-z]+/;

type Token =
  | { readonly kind: "number"; readonly text: string; readonly negative: boolean }
  | { readonly kind: "word"; readonly text: string }
  /** Joins two numbers: `12/14`, `14-16`. */
  | { readonly kind: "joiner" };

function tokens(text: string): Token[] {
  const found: Token[] = [];
  let rest = text;
  while (rest !== "") {
    const digits = DIGITS.exec(rest)?.[0];
    const letters = digits === undefined ? LETTERS.exec(rest)?.[0] : undefined;
    if (digits !== undefined) {
      const last = found.at(-1);
      const signed = last?.kind === "joiner" && found.at(-2) === undefined;
      found.push({ kind: "number", text: digits, negative: signed });
    } else if (letters !== undefined) {
      found.push({ kind: "word", text: letters });
    } else if (/^[-/\u2013\u2014]/.test(rest)) {
      found.push({ kind: "joiner" });
    }
    rest = rest.slice((digits ?? letters ?? " ").length);
  }
  return found;
}

const isFrench = (token: Token | undefined): boolean => token?.kind === "word" && FRENCH_WORDS.has(token.text);

/** The unit of the number at `i`: the word behind it, or behind the number it is joined to; else a French word before it. */
function unitAt(list: readonly Token[], i: number): "french" | "gauge" | "other" | undefined {
  const next = list[i + 1];
  if (next?.kind === "word") {
    if (FRENCH_WORDS.has(next.text)) return "french";
    if (GAUGE_WORDS.has(next.text)) return "gauge";
    if (OTHER_UNITS.has(next.text)) return "other";
  }
  let before = i - 1;
  if (list[before]?.kind === "joiner") before -= 1;
  if (isFrench(list[before]) && list[before - 1]?.kind !== "number") return "french";
  const joined = next?.kind === "joiner" || (next?.kind === "word" && next.text === "to");
  if (joined && list[i + 2]?.kind === "number") return unitAt(list, i + 2);
  return undefined;
}

const outside = new SheetError(`must be above 0 and at most ${LARGEST_FRENCH} Fr`);

const inLimits = (size: number): number | SheetError => (size > 0 && size <= LARGEST_FRENCH ? size : outside);

function sizeOfText(raw: string): number | SheetError {
  const plain = numberOfText(raw);
  if (plain instanceof SheetError) return plain;
  if (plain !== null) return inLimits(plain);

  const text = plainCharacters(raw)
    .toLowerCase()
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "");
  if (text.includes("?")) return new SheetError(`"${raw}" is in doubt: look at the tube, then write one size`);

  const list = tokens(text);
  const sizes = new Set<number>();
  let unmarked = 0;
  for (const [i, token] of list.entries()) {
    if (token.kind !== "number") continue;
    const unit = unitAt(list, i);
    if (unit === "gauge") return new SheetError("G means gauge; write Fr");
    if (unit === "other") continue;
    if (token.negative) return outside;
    const value = numberOfText(token.text);
    if (typeof value !== "number") return value ?? outside;
    if (unit === "french") sizes.add(value);
    else unmarked += 1;
  }
  const [size] = sizes;
  if (sizes.size > 1 || unmarked > 1 || (unmarked === 1 && size !== undefined)) {
    return new SheetError(`"${raw}" holds more than one number: write one size`);
  }
  if (size === undefined) return new SheetError(`no French size in "${raw}": write it like 14 Fr`);
  return inLimits(size);
}

/** Reads a cell that holds a French size; the number 0 is a blank. */
export function readFrench(cell: Exclude<Cell, null>): number | null | SheetError {
  if (typeof cell === "number") {
    return cell === 0 ? null : inLimits(cell);
  }
  if (typeof cell === "boolean") return new SheetError("must be a French size such as 14 Fr");
  return sizeOfText(cell);
}
