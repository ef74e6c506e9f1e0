/**
 * Reads what is printed on a tube or its box: `14 Fr x 2.3 cm, 5 mL`.
 *
 * Only a number with its unit is read. Two values of one unit (`3-5 mL`, `5 mL, max 7 mL`) are not chosen between:
 * the larger may overfill a balloon, the smaller may let the tube out.
 */
import { SheetError } from "../worksheet/error";
import { numberOfText, plainCharacters } from "../worksheet/numbers";
import { LARGEST_FRENCH } from "./french";

export const printUnits = ["Fr", "mm", "cm", "mL"] as const;
export type PrintUnit = (typeof printUnits)[number];

/** What each unit measures, and the largest number that may be meant without its own unit beside it. */
const MEANING: Readonly<Record<PrintUnit, { readonly plural: string; readonly most: number }>> = {
  Fr: { plural: "sizes", most: LARGEST_FRENCH },
  mm: { plural: "diameters", most: 60 },
  cm: { plural: "lengths", most: 60 },
  mL: { plural: "volumes", most: 60 },
};

const SPELLINGS: Readonly<Record<string, PrintUnit>> = {
  ...Object.fromEntries(["f", "fr", "fg", "ch", "char", "charr", "french", "charriere"].map((word) => [word, "Fr"])),
  ...{ mm: "mm", cm: "cm" },
  ...Object.fromEntries(["ml", "mls", "cc", "ccs", "millilitre", "millilitres"].map((word) => [word, "mL"])),
};
const GAUGE = new Set(["g", "ga", "gauge"]);

interface PrintedNumber {
  readonly text: string;
  /** Its own unit, or one shared with a number it is joined to. */
  unit: PrintUnit | "gauge" | undefined;
  readonly negative: boolean;
  /** How it hangs together with the number before it. */
  readonly joined: "firmly" | "loosely" | undefined;
}

const TOKEN = /(\d+(?:[.,]\d+)*)|([a-z]+)|([-\u2013\u2014/~±])|([,;&+])|\S/g;
const JOINING_WORDS = new Set(["to", "or", "and", "bis"]);

const unitOf = (word: string): PrintUnit | "gauge" | undefined => (GAUGE.has(word) ? "gauge" : SPELLINGS[word]);

function numbersIn(text: string): PrintedNumber[] {
  const found: PrintedNumber[] = [];
  let joined: PrintedNumber["joined"];
  let unitBefore: PrintUnit | undefined;
  let first = true;
  let negative = false;
  let awaitsUnit = false;
  for (const [, digits, word, joiner, comma] of text.matchAll(TOKEN)) {
    if (digits !== undefined) {
      found.push({ text: digits, unit: unitBefore, negative, joined });
      awaitsUnit = unitBefore === undefined;
      joined = unitBefore = undefined;
      negative = false;
    } else if (word !== undefined) {
      const unit = unitOf(word);
      const last = found.at(-1);
      if (awaitsUnit && last && unit !== undefined) last.unit = unit;
      // "CH 14", "Fr 14": only a French size is also written behind its unit.
      unitBefore = !awaitsUnit && unit === "Fr" && joined !== "firmly" ? "Fr" : undefined;
      joined = JOINING_WORDS.has(word) ? "firmly" : undefined;
      awaitsUnit = false;
    } else if (joiner !== undefined) {
      negative = first && joiner === "-";
      joined = "firmly";
      awaitsUnit = false;
    } else if (comma !== undefined) {
      joined ??= "loosely";
      awaitsUnit = false;
    }
    first = false;
  }
  return found;
}

/** `3-5 mL`: both are mL. `REF 12345, 14 Fr`: a number far too large for the unit is something else. */
function shareUnits(list: readonly PrintedNumber[]): void {
  const share = (to: PrintedNumber, from: PrintedNumber, joined: PrintedNumber["joined"]): void => {
    if (joined === undefined || to.unit !== undefined || from.unit === undefined || from.unit === "gauge") return;
    if (joined === "firmly" || Number(to.text.replace(",", ".")) <= MEANING[from.unit].most) to.unit = from.unit;
  };
  for (let i = list.length - 1; i > 0; i--) share(list[i - 1]!, list[i]!, list[i]!.joined);
  for (let i = 1; i < list.length; i++)
    share(list[i]!, list[i - 1]!, list[i]!.joined === "firmly" ? "firmly" : undefined);
}

export type Print = Readonly<Record<PrintUnit, number | "" | SheetError>>;

function valueOf(unit: PrintUnit, list: readonly PrintedNumber[]): number | "" | SheetError {
  const values = new Set<number>();
  for (const printed of list) {
    if (unit === "Fr" && printed.unit === "gauge") return new SheetError("G means gauge; write Fr");
    if (printed.unit !== unit) continue;
    const value = numberOfText(printed.text);
    if (value instanceof SheetError) return value;
    if (value === null || value <= 0 || printed.negative || (unit === "Fr" && value > LARGEST_FRENCH)) {
      return new SheetError(`"${printed.text} ${unit}" cannot be meant: read the tube again`);
    }
    values.add(value);
  }
  const [only] = values;
  if (values.size > 1) return new SheetError(`two ${MEANING[unit].plural}: enter them yourself`);
  return only ?? "";
}

export function readPrint(raw: string): Print | SheetError {
  if (raw.includes("?")) return new SheetError(`"${raw}" is in doubt: read the tube again`);
  const list = numbersIn(
    plainCharacters(raw)
      .toLowerCase()
      .normalize("NFD")
      .replace(/[\u0300-\u036f]/g, ""),
  );
  shareUnits(list);
  return { Fr: valueOf("Fr", list), mm: valueOf("mm", list), cm: valueOf("cm", list), mL: valueOf("mL", list) };
}
