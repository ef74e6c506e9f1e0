/** What each cell of a column of lots says about the lots that are looked for. Whatever cannot be read rules nothing out. */
import type { SheetValue } from "../columns/sheet-block";
import { CellError } from "../worksheet/error";
import { lotKey, lotsIn } from "./lot-text";
import { mayHaveBecomeDay, mayHaveBecomeNumber } from "./made-into";
import { likeness, type Likeness } from "./similar";

export interface LotCell {
  readonly value: SheetValue;
  /** The cell shows its number as a date. */
  readonly isDate: boolean;
}

export type WhyOpen = "no lot" | "not a lot" | "a date stands there" | "made into a number" | "made into a date";

export type Verdict =
  | { readonly is: "found" }
  | { readonly is: "similar"; readonly lot: string; readonly why: Likeness }
  /** Cannot be ruled out. */
  | { readonly is: "open"; readonly why: WhyOpen }
  | { readonly is: "other" };

const textOf = (value: SheetValue): string =>
  value === null ? "" : value instanceof CellError ? value.code : String(value).trim();

/** Lots without any digit are not known to be in use (from memory): such a text is a remark, such as "see letter" or "?". */
const isLot = (key: string): boolean => /\d/u.test(key);

/** No spreadsheet shows a day before 1900 for what somebody typed, and a blank may arrive as 0. */
const isNothing = ({ value }: LotCell): boolean => textOf(value) === "" || value === 0;

/**
 * @param wanted lots as texts
 * @param year round which the years of labels are read
 */
export function finder(wanted: readonly string[], year: number): (cell: LotCell) => Verdict {
  const keys = wanted.map(lotKey);
  const remembered = new Map<string, Verdict>();

  const ofText = (text: string): Verdict => {
    const lots = lotsIn(text, year);
    if (lots.some((lot) => keys.includes(lot))) return { is: "found" };
    for (const key of keys)
      for (const lot of lots) {
        const why = isLot(lot) ? likeness(key, lot) : null;
        if (why !== null) return { is: "similar", lot: text.replace(/\s+/gu, " ").trim(), why };
      }
    return lots.some(isLot) ? { is: "other" } : { is: "open", why: "not a lot" };
  };

  const ofNumber = (value: number, isDate: boolean): Verdict => {
    if (isDate)
      return {
        is: "open",
        why: keys.some((key) => mayHaveBecomeDay(key, value)) ? "made into a date" : "a date stands there",
      };
    if (keys.includes(String(value))) return { is: "found" };
    if (keys.some((key) => mayHaveBecomeNumber(key, value) || mayHaveBecomeDay(key, value)))
      return { is: "open", why: "made into a number" };
    return ofText(String(value));
  };

  return (cell) => {
    if (isNothing(cell)) return { is: "open", why: "no lot" };
    const { value, isDate } = cell;
    if (value instanceof CellError || typeof value === "boolean") return { is: "open", why: "not a lot" };
    if (typeof value === "number") return ofNumber(value, isDate);
    const known = remembered.get(value!);
    if (known) return known;
    const verdict = ofText(value!);
    remembered.set(value!, verdict);
    return verdict;
  };
}
