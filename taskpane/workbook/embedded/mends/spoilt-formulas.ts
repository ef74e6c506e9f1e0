/**
 * Faults of the engine's formula reader (0.25.1), mended here because they spoil a workbook silently:
 * - after a text with an unfinished "[" or with "[" and "'" in it, also while somebody is typing one, it never leaves
 *   the bracket again, and every later formula of the session is #NAME?;
 * - moving a formula (copying, filling) it drops the doubled quotes inside a text: ="a""b"&A1 becomes ="a"b"&A2;
 * - a name is written out into the formulas that use it, and those are not found again when it comes to stand for other
 *   cells: =COUNTIF(Ids,A4) goes on counting in the old ones, in a workbook opened later too (measured);
 * - it keeps what it has read by its text, and working LET out takes that apart: in a workbook opened later, the same
 *   LET is #N/A or #VALUE! (measured).
 * tests/hosts/grid/mended.test.ts says whether a new version still needs this.
 */
import { AstTreeBuilder, LexerNode, LexerTreeBuilder } from "@univerjs/engine-formula";
import { isMovedByEngine, shifted } from "../formulas/references";

interface Names {
  readonly unitId: string | null;
  getValueByName(unitId: string, name: string): { readonly name: string } | null;
}

interface Reader {
  _simpleCheckDefinedName(formula: string, names: Names): boolean;
  _handleDefinedName(sequence: unknown, names: Names): { definedNames?: string[] };
  _resetTemp(): void;
  _squareBracketState: number;
  _tableBracketState: boolean;
  moveFormulaRefOffset(formula: string, columns: number, rows: number, ignoreAbsolute?: boolean): string;
}

const words = (formula: string): readonly string[] => formula.match(/[\p{L}_\\][\p{L}\p{N}_.\\]*/gu) ?? [];

const TAKEN_APART = /^(?:LET|LAMBDA)$/i;

const holdsLet = (node: LexerNode): boolean =>
  TAKEN_APART.test(node.getToken().trim()) ||
  node.getChildren().some((child) => typeof child !== "string" && holdsLet(child));

function copied(node: LexerNode): LexerNode {
  const copy = Object.assign(new LexerNode(), node) as LexerNode;
  copy.setChildren(node.getChildren().map((child) => (typeof child === "string" ? child : copied(child))));
  for (const child of copy.getChildren()) if (typeof child !== "string") child.setParent(copy);
  return copy;
}

let isMended = false;

export function mendReader(): void {
  if (isMended) return;
  isMended = true;
  const reader = LexerTreeBuilder.prototype as unknown as Reader;
  const { _resetTemp: reset, moveFormulaRefOffset: move, _handleDefinedName: writeOut } = reader;
  // asked whether a formula that was read before has to be read again; the engine keeps it apart by workbook later on
  reader._simpleCheckDefinedName = function (formula, { unitId, getValueByName }) {
    return unitId !== null && words(formula).some((word) => getValueByName(unitId, word) !== null);
  };
  reader._handleDefinedName = function (this: Reader, sequence, names) {
    const found = new Set<string>();
    const getValueByName: Names["getValueByName"] = (unitId, word) => {
      const value = names.getValueByName(unitId, word);
      if (value) found.add(value.name);
      return value;
    };
    const written = writeOut.call(this, sequence, { ...names, getValueByName });
    return written?.definedNames ? { ...written, definedNames: [...written.definedNames, ...found] } : written;
  };
  reader._resetTemp = function (this: Reader) {
    reset.call(this);
    this._squareBracketState = 0;
    this._tableBracketState = false;
  };
  const worker = AstTreeBuilder.prototype;
  const { parse } = worker;
  worker.parse = function (this: AstTreeBuilder, read) {
    return parse.call(this, holdsLet(read) ? copied(read) : read);
  };
  reader.moveFormulaRefOffset = function (this: Reader, formula, columns, rows, ignoreAbsolute) {
    if (ignoreAbsolute || isMovedByEngine(formula)) return move.call(this, formula, columns, rows, ignoreAbsolute);
    return `=${shifted(formula.replace(/^=/, ""), rows, columns)}`;
  };
}
