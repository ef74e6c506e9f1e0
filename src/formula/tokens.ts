/**
 * Formula text cut into pieces: enough to find names, references and structured references, and never to mistake a text
 * in quotes for one of them. The pieces put together again are the formula, character by character.
 */
export type TokenKind =
  /** "…" with doubled quotes inside. */
  | "text"
  /** 'A sheet''s name' as it stands before "!". */
  | "sheet"
  /** […] with nested brackets; an apostrophe escapes the next character (ECMA-376 part 1, 18.17.6). */
  | "bracket"
  /** A name, function, cell address, number: letters, digits, "_", ".", "$", "\", "?". */
  | "word"
  /** Operators, spaces, brackets of calls, "!", ":". */
  | "other";

export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
}

const WORD = /[\p{L}\p{N}_.$\\?\u0300-\u036f]+/uy;
/** #REF! and its like are one piece: their letters are no name. */
const FAULT = /#(?:REF!|VALUE!|NAME\?|DIV\/0!|N\/A|NUM!|NULL!|SPILL!|CALC!|GETTING_DATA|FIELD!|BLOCKED!|CONNECT!)/y;

function endOfQuoted(formula: string, from: number, quote: string): number {
  let at = from + 1;
  while (at < formula.length) {
    if (formula[at] === quote) {
      if (formula[at + 1] !== quote) return at + 1;
      at++;
    }
    at++;
  }
  return formula.length;
}

function endOfBracket(formula: string, from: number): number {
  let depth = 0;
  for (let at = from; at < formula.length; at++) {
    const character = formula[at];
    if (character === "'") at++;
    else if (character === "[") depth++;
    else if (character === "]" && --depth === 0) return at + 1;
  }
  return formula.length;
}

function tokenAt(formula: string, at: number): Token {
  const cut = (kind: TokenKind, end: number): Token => ({ kind, text: formula.slice(at, end) });
  const character = formula[at]!;
  if (character === '"') return cut("text", endOfQuoted(formula, at, '"'));
  if (character === "'") return cut("sheet", endOfQuoted(formula, at, "'"));
  if (character === "[") return cut("bracket", endOfBracket(formula, at));
  FAULT.lastIndex = at;
  const fault = FAULT.exec(formula);
  if (fault) return { kind: "other", text: fault[0] };
  WORD.lastIndex = at;
  const word = WORD.exec(formula);
  return word ? { kind: "word", text: word[0] } : cut("other", at + 1);
}

export function tokens(formula: string): Token[] {
  const all: Token[] = [];
  for (let at = 0; at < formula.length;) {
    const token = tokenAt(formula, at);
    all.push(token);
    at += token.text.length;
  }
  return all;
}

export const untokened = (all: readonly Token[]): string => all.map((token) => token.text).join("");

/** The next token that is not a space. */
function nextSolid(all: readonly Token[], after: number): Token | undefined {
  for (let at = after + 1; at < all.length; at++) if (all[at]!.text.trim() !== "") return all[at];
  return undefined;
}

/** A word followed by "(". */
export const isFunctionName = (all: readonly Token[], at: number): boolean =>
  all[at]!.kind === "word" && nextSolid(all, at)?.text === "(";
