/**
 * Two faults of the engine's formula reader (0.25.1), mended here because both spoil a workbook silently:
 * - after a text with an unfinished "[" or with "[" and "'" in it, also while somebody is typing one, it never leaves
 *   the bracket again, and every later formula of the session is #NAME?;
 * - moving a formula (copying, filling) it drops the doubled quotes inside a text: ="a""b"&A1 becomes ="a"b"&A2.
 * tests/hosts/grid/mended.test.ts says whether a new version still needs this.
 */
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { isMovedByEngine, shifted } from "./formulas/references";

interface Reader {
  _resetTemp(): void;
  _squareBracketState: number;
  _tableBracketState: boolean;
  moveFormulaRefOffset(formula: string, columns: number, rows: number, ignoreAbsolute?: boolean): string;
}

let isMended = false;

export function mendReader(): void {
  if (isMended) return;
  isMended = true;
  const reader = LexerTreeBuilder.prototype as unknown as Reader;
  const { _resetTemp: reset, moveFormulaRefOffset: move } = reader;
  reader._resetTemp = function (this: Reader) {
    reset.call(this);
    this._squareBracketState = 0;
    this._tableBracketState = false;
  };
  reader.moveFormulaRefOffset = function (this: Reader, formula, columns, rows, ignoreAbsolute) {
    if (ignoreAbsolute || isMovedByEngine(formula)) return move.call(this, formula, columns, rows, ignoreAbsolute);
    return `=${shifted(formula.replace(/^=/, ""), rows, columns)}`;
  };
}
