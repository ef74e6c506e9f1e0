/**
 * A column of French sizes as many people typed it, each wording once: what it becomes as a number, or why it is not
 * read and wants a person who says what it is. Sizes are read by the worksheet functions' own reader alone.
 */
import { readFrench } from "../sizes/french";
import { MMTOFR } from "../sizes/mmtofr";
import { textOf, type SheetValue } from "../columns/sheet-block";
import { wordKey } from "../columns/spelling";
import { LARGEST_USUAL_FRENCH, SMALLEST_FRENCH } from "../columns/recipes/size-mm";
import { call } from "../worksheet/call";
import { CellError, SheetError } from "../worksheet/error";

/** Longer texts are cut short when they are shown. */
const LONGEST = 60;

export interface SizeWording {
  /** Identity of the wording: letter case and white space count alike. */
  readonly key: string;
  /** As first written in the column. */
  readonly text: string;
  /** Counted from 0 within the column. */
  readonly rows: readonly number[];
  /** French; null where it is not read. */
  readonly reads: number | null;
  /** Why it is not read, or should be looked at; null where neither. */
  readonly reason: string | null;
  /** Holds a plain number that the functions read: nothing has to be changed. */
  readonly isPlain: boolean;
  /** Read as a diameter in millimetres it would be so many French: a hint, because neighbouring sizes measure alike. */
  readonly asMillimetres: number | null;
}

interface Read {
  readonly reads: number | null;
  readonly reason: string | null;
}

/** What is said of a size outside of what tubes have. */
const LOOKS_LIKE_MM = "looks like mm?";

function readSize(value: SheetValue): Read {
  if (value instanceof CellError) return { reads: null, reason: "is an error" };
  const read = value === null ? null : readFrench(value);
  if (read instanceof SheetError) return { reads: null, reason: read.bare().said({ cell: "it" }) };
  if (read === null) return { reads: null, reason: null };
  const isUsual = read >= SMALLEST_FRENCH && read <= LARGEST_USUAL_FRENCH;
  return { reads: read, reason: isUsual ? null : LOOKS_LIKE_MM };
}

/** What a person's own text for a wording becomes: French, or why it is none; null where nothing is written. */
export function sizeSaid(text: string): number | string | null {
  if (text.trim() === "") return null;
  const { reads, reason } = readSize(text);
  return reads ?? reason;
}

const shownAs = (value: SheetValue): string => {
  const text = textOf(value).replace(/\s+/gu, " ").trim();
  return text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text;
};

/**
 * Every wording of the column, those that are not read first, then by how often they stand there. Blanks are left out.
 * @param shownDates by row: numbers that their cells show as dates, which are no sizes
 */
export function sizeWordings(
  values: readonly SheetValue[],
  shownDates: ReadonlyMap<number, { readonly text: string; readonly reason: string }> = new Map(),
): readonly SizeWording[] {
  const found = new Map<string, SizeWording & { readonly rows: number[] }>();
  values.forEach((value, row) => {
    const date = shownDates.get(row);
    const text = date?.text ?? textOf(value);
    if (text.trim() === "" || value === 0) return;
    const isNumber = typeof value === "number";
    const key = date ? `date ${text}` : isNumber ? `number ${text}` : wordKey(text);
    const known = found.get(key);
    if (known) {
      known.rows.push(row);
      return;
    }
    const { reads, reason } = date ? { reads: null, reason: date.reason } : readSize(value);
    const mm = reads === null && !date ? call(MMTOFR, [value]) : null;
    found.set(key, {
      key,
      text: date?.text ?? shownAs(value),
      rows: [row],
      reads,
      reason,
      isPlain: isNumber && reads !== null,
      asMillimetres: typeof mm === "number" ? mm : null,
    });
  });
  return [...found.values()].sort(
    (a, b) => Number(a.reads !== null) - Number(b.reads !== null) || b.rows.length - a.rows.length,
  );
}

/**
 * The French number of each row that is to be changed; null: it stays as it is.
 * @param said by a wording's key: what a person says that it is
 */
export function mendSizes(
  rows: number,
  wordings: readonly SizeWording[],
  said: Readonly<Record<string, string>>,
): readonly (number | null)[] {
  const results = new Array<number | null>(rows).fill(null);
  for (const { key, rows: standing, reads, isPlain } of wordings) {
    const own = Object.hasOwn(said, key) ? sizeSaid(said[key]!) : null;
    const becomes = typeof own === "number" ? own : isPlain || own !== null ? null : reads;
    if (becomes !== null) for (const row of standing) results[row] = becomes;
  }
  return results;
}
