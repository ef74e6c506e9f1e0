/** A formula that is typed, pasted or put into a cell by a command. */
import { withSheetsSpelled } from "../../../../src/formula/sheet-names";
import { tokens } from "../../../../src/formula/tokens";
import { cutForSentence, malformed } from "../../change/malformed";
import { formOf } from "../formulas/forms";
import type { Asks } from "../interface";

/** As it is entered, or why nothing is. */
export type Entered = { readonly text: string } | { readonly refused: string; readonly asks?: Asks };

/** What is said of it, typed or pasted. */
export const notEntered = (reason: string): string => `${reason} Nothing was entered.`;
export const notPasted = (reason: string): string => `${reason} Nothing was pasted.`;

/**
 * Turned down where it is none, or where the engine would show an error or a wrong result for it; its sheets are spelled
 * as they are called, because the engine knows them in no other way.
 * @param formula with its "="
 */
export function enteredFormula(formula: string, sheets: readonly string[]): Entered {
  const refused = (reason: string) => ({ refused: reason });
  const fault = malformed(formula, sheets);
  if (fault !== undefined) return refused(fault);
  const { unread } = formOf(tokens(formula));
  if (unread !== undefined)
    return refused(`${cutForSentence(formula)} asks for ${unread}, which this page cannot work out. Use Excel for it.`);
  return { text: withSheetsSpelled(formula, sheets)! };
}
