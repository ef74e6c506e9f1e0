/**
 * A column of kinds as many people typed it, each word once: the one word for that kind that every list shares. A word
 * to which nobody has given a kind stays as it stands.
 */
import { textOf, type SheetValue } from "../columns/sheet-block";
import { wordKey } from "../columns/spelling";
import type { KindKey } from "../settings/kinds";

/**
 * The word of each row that is to be changed; null: it stays as it is.
 * @param said by a word's key: the kind that it is
 */
export function mendKinds(
  values: readonly SheetValue[],
  said: Readonly<Record<string, KindKey>>,
): readonly (KindKey | null)[] {
  return values.map((value) => {
    const text = textOf(value);
    const kind = Object.hasOwn(said, wordKey(text)) ? said[wordKey(text)]! : "not known";
    return kind === "not known" || kind === text ? null : kind;
  });
}
