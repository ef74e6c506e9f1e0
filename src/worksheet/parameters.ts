/**
 * The kinds of argument (catalogue: "How arguments are read"). Each gives a `Param`: help and limits as data, and a
 * reader that turns one cell into a checked value, null for a blank, or a sentence.
 */
import type { Cell, Matrix } from "./cell";
import { FIRST_DAY, LAST_DAY } from "../maths/calendar";
import { readDate } from "./dates";
import type { Param, PlainNumbers } from "./define";
import { SheetError } from "./error";
import { numberOfText } from "./numbers";

/** Whether an argument may be left out, and what then. */
interface Optional<T> {
  readonly optional?: boolean;
  readonly fallback?: T;
  readonly fallbackHelp?: string;
}

export interface NumberRule {
  readonly unit?: string;
  /** Other spellings of the unit that may stand behind the number in a text. */
  readonly unitTexts?: readonly string[];
  readonly min?: number;
  readonly max?: number;
  readonly above?: number;
  readonly below?: number;
  readonly whole?: boolean;
  /** Excel sends 0 for a blank: where 0 cannot be meant, it is one. */
  readonly zeroIsBlank?: boolean;
  /** What a number below or above the limits probably is, as a question: "kJ?". Said in the refusal. */
  readonly slipBelow?: string;
  readonly slipAbove?: string;
}

function limitsInWords({ min, max, above, below, whole }: NumberRule): string | undefined {
  const parts = [
    whole ? "whole number" : undefined,
    above !== undefined ? `above ${above}` : undefined,
    min !== undefined ? `at least ${min}` : undefined,
    below !== undefined ? `below ${below}` : undefined,
    max !== undefined ? `at most ${max}` : undefined,
  ].filter((part) => part !== undefined);
  return parts.length > 0 ? parts.join(", ") : undefined;
}

type WithFallback<O, T> = O extends { fallback: T } ? T : O extends { optional: true } ? T | undefined : T;

function param<T, O extends Optional<T>>(
  options: O,
  rest: Omit<Param<T>, "optional" | "fallback" | "fallbackHelp">,
): Param<WithFallback<O, T>> {
  const { fallback, fallbackHelp, optional = fallback !== undefined } = options;
  return {
    ...rest,
    optional,
    ...(fallback !== undefined && { fallback }),
    ...(fallbackHelp !== undefined && { fallbackHelp }),
  } as Param<WithFallback<O, T>>;
}

/** The rule with every limit filled in. */
export const plainNumbers = (rule: NumberRule): PlainNumbers => ({
  min: rule.min ?? -Infinity,
  max: rule.max ?? Number.MAX_VALUE,
  above: rule.above ?? -Infinity,
  below: rule.below ?? Infinity,
  whole: rule.whole ?? false,
  zeroIsBlank: rule.zeroIsBlank ?? false,
});

/** Is this number within the rule? Never where it is not finite, or stands for a blank. */
export const isPlain = (rule: PlainNumbers, value: number): boolean =>
  value >= rule.min &&
  value <= rule.max &&
  value > rule.above &&
  value < rule.below &&
  (!rule.whole || Math.floor(value) === value) &&
  (value !== 0 || !rule.zeroIsBlank);

/** Reads a number by a rule; also used by kinds of argument that look like numbers but accept more. */
export function numberReader(rule: NumberRule): (cell: Exclude<Cell, null>) => number | null | SheetError {
  const plain = plainNumbers(rule);
  const units = [...(rule.unit ? [rule.unit] : []), ...(rule.unitTexts ?? [])];
  const outside = (slip: string | undefined): SheetError =>
    new SheetError(`must be ${limitsInWords({ ...rule, whole: false })}${slip === undefined ? "" : `: ${slip}`}`);
  const tooLow = outside(rule.slipBelow);
  const tooHigh = outside(rule.slipAbove);
  const broken = new SheetError("must be a whole number");
  const unreadable = new SheetError(rule.unit ? `must be one number of ${rule.unit}` : "must be one number");
  const check = (value: number): number | null | SheetError => {
    if (isPlain(plain, value)) return value;
    if (value === 0 && plain.zeroIsBlank) return null;
    if (!Number.isFinite(value)) return unreadable;
    if (value < plain.min || value <= plain.above) return tooLow;
    return value > plain.max || value >= plain.below ? tooHigh : broken;
  };
  return (cell) => {
    if (typeof cell === "number") return check(cell);
    if (typeof cell === "boolean") return unreadable;
    const value = numberOfText(cell, units);
    if (value === null) return unreadable;
    return typeof value === "number" ? check(value) : value;
  };
}

/** A number in one cell, or in each cell of a range. */
export function number<const O extends Optional<number> & NumberRule>(help: string, options: O) {
  const limits = limitsInWords(options);
  return param<number, O>(options, {
    mode: "each",
    help,
    plain: plainNumbers(options),
    read: numberReader(options),
    ...(options.unit && { unit: options.unit }),
    ...(limits && { limits }),
  });
}

/** Day numbers without a time of day. */
export const plainDays: NumberRule = { min: FIRST_DAY, max: LAST_DAY, whole: true };

/** A date in one cell, or in each cell of a range. */
export function date<const O extends Optional<number>>(help: string, options: O) {
  return param<number, O>(options, {
    mode: "each",
    help,
    unit: "date",
    plain: plainNumbers(plainDays),
    read: readDate,
  });
}

/** Any kind of cell that has a reader of its own. */
export function reading<T, const O extends Optional<T>>(
  help: string,
  options: O & { readonly unit?: string; readonly limits?: string; readonly plain?: NumberRule },
  read: Param<T>["read"],
) {
  return param<T, O>(options, {
    mode: "each",
    help,
    read,
    ...(options.plain && { plain: plainNumbers(options.plain) }),
    ...(options.unit && { unit: options.unit }),
    ...(options.limits && { limits: options.limits }),
  });
}

const matched = (cell: Exclude<Cell, null>, words: readonly string[]): string | SheetError => {
  const word = String(cell).trim().toLowerCase();
  return words.find((w) => w.toLowerCase() === word) ?? new SheetError(`must be one of: ${words.join(", ")}`);
};

/** One of a few words, the same for the whole call. The first word is the default when there is one. */
export function choice<const W extends string>(help: string, words: readonly W[], options: { fallback?: W }) {
  return param<W, { fallback?: W }>(options, {
    mode: "choice",
    help,
    words,
    read: (cell) => matched(cell, words) as W | SheetError,
  }) as Param<W>;
}

/** A choice that may be left out, where what happens then is not one of its words. */
export function openChoice<const W extends string>(help: string, words: readonly W[], fallbackHelp: string) {
  return { ...choice(help, words, {}), optional: true, fallbackHelp } as Param<W | undefined>;
}

export const NOT_KNOWN = "not known";

/** An argument that must stand in the formula, but whose cell may be blank: a blank is then "not known". */
export const orNotKnown = <T>(given: Param<T>): Param<T | typeof NOT_KNOWN> => ({ ...given, ifBlank: NOT_KNOWN });

/** Any text; a number is taken as it stands. */
export const text = <const O extends Optional<string>>(help: string, options: O) =>
  reading<string, O>(help, options, (cell) => (cell === 0 ? null : String(cell).trim()));

/** A whole block of cells, read at once. A single cell comes as a block of one. */
export function range<T, const O extends Optional<T>>(
  help: string,
  options: O & { readonly unit?: string; readonly limits?: string },
  readAll: (cells: Matrix) => T | SheetError,
) {
  return param<T, O>(options, {
    mode: "range",
    help,
    read: () => null,
    readAll,
    ...(options.unit && { unit: options.unit }),
    ...(options.limits && { limits: options.limits }),
  });
}
