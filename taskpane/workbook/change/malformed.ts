/**
 * Why a text that begins with "=" is no formula, in a sentence that says where. Excel calls a file damaged that holds such
 * a one, and throws it out with a message that frightens; so none gets into a cell, and none into a file.
 */
import { LONGEST_FORMULA, LONGEST_TEXT } from "../../../src/formula/limits";
import { read, type Fault, type FaultKind } from "../../../src/formula/parse";
import { sheetNameIn } from "../../../src/formula/sheet-names";
import { tokens, type Token } from "../../../src/formula/tokens";

const SHOWN = 20;
export const cutForSentence = (text: string): string => (text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text);

const reasons: Readonly<Record<FaultKind, (where: string) => string>> = {
  "not closed": (where) => `a quotation mark or a bracket that opens ${where} is never closed`,
  brackets: (where) => `a bracket has no partner ${where}`,
  "value missing": (where) => `a value is missing ${where}`,
  "operator missing": (where) => `a sign such as + or a comma is missing ${where}`,
  word: (where) => `there is no such number, name or cell as stands ${where}`,
  array: (where) => `what stands between { and } cannot be read ${where}`,
  "too deep": () => "it has too many brackets inside brackets",
  empty: () => "nothing stands behind the =",
};

const whereIn = (formula: string, { at }: Fault): string =>
  at >= formula.length ? "at its end" : `at “${cutForSentence(formula.slice(at))}”`;

/** What stands before each "!". */
function sheetsIn(all: readonly Token[]): readonly string[] {
  return all.flatMap(({ text }, at) => {
    const before = all[at - 1];
    if (text !== "!" || !before) return [];
    // Jan:Mar!A1, and not Jan!A1:Jan!B2
    const isSeveral =
      all[at - 2]?.text === ":" && all[at - 3]?.kind === "word" && before.kind === "word" && all[at - 4]?.text !== "!";
    const isOther = before.kind === "bracket" || all[at - (isSeveral ? 4 : 2)]?.kind === "bracket";
    if (isOther) return [`[${sheetNameIn(before)}`];
    return isSeveral ? [sheetNameIn(all[at - 3]!), sheetNameIn(before)] : sheetNameIn(before).split(":");
  });
}

/** The sheets that a formula (with "=") names; of a row of sheets its two ends. */
export const sheetsReadBy = (formula: string): readonly string[] =>
  formula.includes("!") ? sheetsIn(tokens(formula.slice(1))) : [];

/**
 * @param formula with or without its leading "="
 * @param sheets the names of the workbook's sheets; left out, any sheet will do
 * @returns a sentence, or undefined where it is a formula
 */
export function malformed(formula: string, sheets?: readonly string[]): string | undefined {
  const text = formula.startsWith("=") ? formula : `=${formula}`;
  const is = (reason: string): string => `${cutForSentence(text)} is no formula: ${reason}.`;
  const { fault } = read(text);
  if (fault) return is(reasons[fault.is](whereIn(text, fault)));
  if (text.length > LONGEST_FORMULA)
    return is(`it is longer than the ${LONGEST_FORMULA.toLocaleString("en-GB")} characters that Excel reads`);
  const all = tokens(text.slice(1));
  const long = all.find((token) => token.kind === "text" && token.text.length - 2 > LONGEST_TEXT);
  if (long)
    return is(
      `the text ${cutForSentence(long.text)} in it is longer than the ${LONGEST_TEXT} characters that Excel reads`,
    );
  if (!sheets) return undefined;
  const known = new Set(sheets.map((name) => name.toLowerCase()));
  const missing = sheetsIn(all).find((name) => !known.has(name.toLowerCase()));
  if (missing === undefined) return undefined;
  if (missing.includes("["))
    return `${cutForSentence(text)} reads another workbook, which this page cannot do. Use Excel for it.`;
  return `${cutForSentence(text)} reads a sheet “${missing}”, which this workbook does not have.`;
}
