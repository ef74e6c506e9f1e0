/**
 * A lot as people write it, and as it is compared: as a text. Letter case, white space and kinds of dashes do not count;
 * everything else does, leading zeros too, because makers use them.
 */
import { readGs1 } from "../supplies/gs1";
import { SheetError } from "../worksheet/error";

const DASHES = /[\u2010-\u2015\u2212\uFE58\uFE63\uFF0D]/gu;
/** Signs without a width, which come along with pasting. */
const UNSEEN = /\p{Cf}/gu;
/** What people write before a lot, with something between. */
const BEFORE = /^\s*(?:LOT|BATCH|CHARGE|LOTE|LOTTO)(?:\s*(?:NO|NR))?[\s.:#]+(?=.*\d)/iu;

/** Identity of a lot: two texts with one key are one lot. */
export const lotKey = (text: string): string =>
  text
    .normalize("NFKC")
    .replace(UNSEEN, "")
    .replace(DASHES, "-")
    .replace(BEFORE, "")
    .replace(/\s+/gu, "")
    .toUpperCase();

/** What stands between several lots in one cell. */
const BETWEEN = /[,;/+&|\n\r\t ]+/u;
/** A scanner's mark, its separator, or the brackets of the printed line. */
const LABEL = /^\s*[(\]\u001d]|\u001d/u;

/** Every lot that a text may stand for: the whole of it, its parts where several were written, the lot of a label. */
export function lotsIn(text: string, year: number): readonly string[] {
  const label = readGs1(text, year);
  const ofLabel = label instanceof SheetError ? undefined : label.get("10");
  const parts = text.normalize("NFKC").split(BETWEEN);
  const all = [...(ofLabel === undefined ? [] : [ofLabel]), text, ...parts].map(lotKey);
  return [...new Set(all)].filter((key) => key !== "");
}

/** The lot that is looked for, or why there is none in what was typed. */
export type Wanted = { readonly lot: string; readonly isFromLabel: boolean } | { readonly problem: string };

/**
 * @param typed by hand, or as a scanner sends a GS1 label
 * @param year round which a label's years are read
 */
export function wantedLot(typed: string, year: number): Wanted {
  const text = typed.trim();
  const label = readGs1(text, year);
  if (!(label instanceof SheetError)) {
    const lot = label.get("10");
    return lot === undefined
      ? { problem: "this label holds no lot: type it from the print" }
      : { lot, isFromLabel: true };
  }
  if (LABEL.test(text)) return { problem: label.message };
  return { lot: text.replace(/\s+/gu, " "), isFromLabel: false };
}
