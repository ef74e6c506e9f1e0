/**
 * A word of somebody's list, as a formula meets it and as a formula writes it. Measured in the grid's engine (Univer
 * 0.25.1): "=" takes * and ? as wildcards, a text such as "1/2" inside a formula becomes a number, array constants
 * break at commas inside words, and TRIM also takes other white space than Excel's. So words are compared by EXACT,
 * and written so that both hosts read them alike.
 */
import type { Cell } from "../worksheet/cell";
import type { CellError } from "../worksheet/error";
import { quoted } from "./formula";

/** Longer texts are notes, not kinds. */
const LONGEST = 100;

/** What LOWER(TRIM(cell)) gives in Excel; null where a cell cannot be compared as a word. */
export function spelled(cell: Cell | CellError): string | null {
  if (cell === null) return "";
  if (typeof cell === "number") return Number.isSafeInteger(cell) && Math.abs(cell) < 1e11 ? String(cell) : null;
  if (typeof cell !== "string") return null;
  return cell.replace(/ +/g, " ").replace(/^ | $/g, "").toLowerCase();
}

/** Identity of a word for people: letter case and every kind of white space count alike. */
export const wordKey = (word: string): string => word.replace(/\s+/gu, " ").trim().toLowerCase();

/** Why a word cannot stand in a formula; null where it can. */
export const unwritable = (word: string): string | null =>
  word.length > LONGEST ? `longer than ${LONGEST} characters: a note, not a kind` : null;

/** The spellings under which both hosts' TRIM may hand a word over. */
export const spellings = (word: string): readonly string[] => [...new Set([word, wordKey(word)])];

const codeOf = (character: string): number => character.codePointAt(0)!;

/** A word as a formula writes it: `"balloon"`, `"1"&"/2"`, `"a"&CHAR(10)&"b"`. */
export function written(word: string): string {
  const parts: string[] = [];
  let plain = "";
  const close = () => {
    if (plain !== "") parts.push(quoted(plain));
    plain = "";
  };
  for (const character of word) {
    if (codeOf(character) < 32) {
      close();
      parts.push(`CHAR(${codeOf(character)})`);
    } else plain += character;
  }
  close();
  const [first] = parts;
  // In one piece, a text with a digit may be read as a number, date or amount of money.
  if (parts.length === 1 && first !== undefined && /\p{Nd}/u.test(word) && [...word].length > 1) {
    const [head, ...tail] = [...word];
    return `${quoted(head!)}&${quoted(tail.join(""))}`;
  }
  return parts.join("&");
}
