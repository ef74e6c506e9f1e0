/** Sheets as formulas name them: Excel takes them in any case and writes them as they are called. */
import { tokens, untokened, type Token } from "./tokens";

/** Without the quotes that stand around it in a formula. */
export const sheetNameIn = ({ kind, text }: Token): string =>
  kind === "sheet" ? text.slice(1, -1).replaceAll("''", "'") : text;

/**
 * The formula with each sheet spelled as it is called; those of other workbooks, and several at once, stay as they are.
 * @returns undefined where it names one that is not there
 */
export function withSheetsSpelled(formula: string, sheets: readonly string[]): string | undefined {
  if (!formula.includes("!")) return formula;
  const all = tokens(formula);
  let isMissing = false;
  const spelled = all.map((token, at): Token => {
    if (all[at + 1]?.text !== "!" || (token.kind !== "word" && token.kind !== "sheet")) return token;
    const name = sheetNameIn(token);
    if (/[[:]/.test(name) || all[at - 1]?.kind === "bracket" || sheets.includes(name)) return token;
    const called = sheets.find((one) => one.toLowerCase() === name.toLowerCase());
    isMissing ||= called === undefined;
    if (called === undefined) return token;
    return { kind: token.kind, text: token.kind === "sheet" ? `'${called.replaceAll("'", "''")}'` : called };
  });
  return isMissing ? undefined : untokened(spelled);
}
