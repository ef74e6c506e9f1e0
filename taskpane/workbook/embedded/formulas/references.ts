/** What the engine makes of formulas that it moves itself. */
import { tokens } from "../../../../src/formula/tokens";

export { relativeForm, shifted } from "../../../../src/formula/moving";
export { referredAreas } from "../../../../src/formula/referred";

/**
 * Whether the engine may move this formula itself, as it does for groups that share one: it drops the doubled quotes
 * inside a text (measured: ="a""b"&A1 becomes ="a"b"&A2).
 */
export const isMovedByEngine = (formula: string): boolean =>
  !formula.includes('""') ||
  tokens(formula).every((token) => token.kind !== "text" || !token.text.slice(1, -1).includes('"'));
