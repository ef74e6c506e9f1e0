/** Table columns named in formulas, `Tubes[[#This Row],[Fr]]`: kept true when a column gets another name. */
import { afterBrackets } from "./references";

export interface ColumnRename {
  readonly table: string;
  readonly from: string;
  readonly to: string;
}

/** These take an apostrophe before them inside a structured reference (Microsoft: "Using structured references with Excel tables"). */
const TAKE_APOSTROPHE = "[]#'@";

export function columnSpecifier(name: string): string {
  let text = "";
  for (const character of name) text += TAKE_APOSTROPHE.includes(character) ? `'${character}` : character;
  return text;
}

/** The formula with the columns' new names; the same text where it names none of them. */
export function renameColumns(formula: string, renames: readonly ColumnRename[]): string {
  let renamed = "";
  let from = 0;
  for (let at = 0; at < formula.length; at++) {
    const character = formula[at];
    if (character === '"') at = afterString(formula, at);
    else if (character === "[") {
      const end = afterBrackets(formula, at);
      const table = wordBefore(formula, at).toLowerCase();
      const here = renames.filter((one) => one.table.toLowerCase() === table);
      if (here.length > 0) {
        renamed += formula.slice(from, at + 1) + renameInside(formula.slice(at + 1, end - 1), here);
        from = end - 1;
      }
      at = end - 1;
    }
  }
  return renamed + formula.slice(from);
}

function afterString(text: string, at: number): number {
  const close = text.indexOf('"', at + 1);
  return close < 0 ? text.length : close;
}

function wordBefore(text: string, at: number): string {
  let start = at;
  while (start > 0 && !" +-*/^&=<>(),;{}!:'\"\n\r\t".includes(text[start - 1] as string)) start--;
  return text.slice(start, at);
}

/** What stands between the outer brackets: one column or item, or several in brackets of their own. */
function renameInside(inside: string, renames: readonly ColumnRename[]): string {
  if (!inside.includes("[") || isAllEscaped(inside)) {
    const renamed = renameOne(inside, renames);
    return renamed === undefined ? inside : needsOwnBrackets(renamed) ? `[${renamed}]` : renamed;
  }
  let text = "";
  let from = 0;
  for (let at = 0; at < inside.length; at++) {
    if (inside[at] !== "[") continue;
    const end = afterBrackets(inside, at);
    const renamed = renameOne(inside.slice(at + 1, end - 1), renames);
    if (renamed !== undefined) {
      text += inside.slice(from, at + 1) + renamed;
      from = end - 1;
    }
    at = end - 1;
  }
  return text + inside.slice(from);
}

function isAllEscaped(inside: string): boolean {
  for (let at = 0; at < inside.length; at++) {
    if (inside[at] === "'") at++;
    else if (inside[at] === "[") return false;
  }
  return true;
}

function renameOne(specifier: string, renames: readonly ColumnRename[]): string | undefined {
  if (specifier.startsWith("#")) return undefined;
  const name = plainName(specifier).toLowerCase();
  const rename = renames.find((one) => one.from.toLowerCase() === name);
  return rename && columnSpecifier(rename.to);
}

function plainName(specifier: string): string {
  let name = "";
  for (let at = 0; at < specifier.length; at++) {
    if (specifier[at] === "'" && at + 1 < specifier.length) at++;
    name += specifier[at];
  }
  return name;
}

/** Anything but letters, digits, blanks and _ asks for brackets of its own (same source). */
function needsOwnBrackets(specifier: string): boolean {
  for (let at = 0; at < specifier.length; at++) {
    const code = specifier.charCodeAt(at);
    const isPlain =
      (code >= 48 && code <= 57) ||
      (code >= 65 && code <= 90) ||
      (code >= 97 && code <= 122) ||
      code === 95 ||
      code === 32;
    if (!isPlain && code < 128) return true;
  }
  return false;
}
