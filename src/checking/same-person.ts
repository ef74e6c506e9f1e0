/** Rows that may be one person's, and should be told apart or put together. */
import { textOf, type SheetValue } from "../columns/sheet-block";

export interface SameIdentifier {
  readonly reason: string;
  /** Counted from 0 within the list. */
  readonly rows: readonly number[];
}

const plain = (text: string): string => text.replace(/\s+/gu, "").toLowerCase();

/**
 * Identifiers that stand twice. Written alike they are one person with two devices, which is right where the access
 * differs; written otherwise ("d-017 " and "D-017") lists count them as two people.
 * @param access where the feed ends, row by row; null where the list has no such column
 */
export function sameIdentifiers(
  identifiers: readonly SheetValue[],
  access: readonly SheetValue[] | null,
): readonly SameIdentifier[] {
  const rows = new Map<string, number[]>();
  identifiers.forEach((value, row) => {
    const key = plain(textOf(value));
    if (key !== "") rows.set(key, [...(rows.get(key) ?? []), row]);
  });
  const twice = [...rows.values()].filter((same) => same.length > 1);
  const spelledApart = twice.filter((same) => new Set(same.map((row) => textOf(identifiers[row]!))).size > 1);
  const sameAccess = twice.filter((same) => {
    if (spelledApart.includes(same)) return false;
    const ends = same.map((row) => (access === null ? "" : plain(textOf(access[row] ?? null))));
    return new Set(ends).size < ends.length;
  });
  return [
    { reason: "the same identifier, but for capitals or spaces", rows: spelledApart.flat() },
    {
      reason: access === null ? "the same identifier twice" : "the same identifier twice with the same access",
      rows: sameAccess.flat(),
    },
  ].filter(({ rows: found }) => found.length > 0);
}
