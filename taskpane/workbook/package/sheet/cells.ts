/** A worksheet's cells as values and formulas. */
import { addressOf } from "../addresses";
import { MovableFormula } from "../../../../src/formula/moving";
import type { CellFormula, CellValue, PackageCell } from "../opened";
import { decodeEscapes } from "../parts/escapedStrings";
import { isTrue, wholeNumber } from "../parts/values";
import { damaged } from "../xml/damaged";
import type { CellToken, FormulaToken, RowToken } from "./tokens";

/** What cells point to elsewhere in the package. */
export interface CellSurroundings {
  readonly partName: string;
  readonly strings: readonly string[];
  readonly dynamicMarks: ReadonlySet<number>;
  /** Texts of shared formulas, should a cell refer to one before it comes. */
  readonly groups: ReadonlyMap<number, SharedFormula>;
}

export interface SharedFormula {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

export function* readCells(rows: Iterable<RowToken>, around: CellSurroundings): Generator<PackageCell, void, void> {
  const groups = new GroupTexts(around.groups);
  for (const row of rows) for (const token of row.cells) yield readCell(token, around, groups);
}

export function readCell(token: CellToken, around: CellSurroundings, groups: GroupTexts): PackageCell {
  const value = valueOf(token, around);
  const formula = token.formula && formulaOf(token, token.formula, around, groups);
  return {
    ref: addressOf(token.row, token.column),
    row: token.row,
    column: token.column,
    styleIndex: token.styleIndex,
    type: typeOf(value, token.type),
    value,
    ...(formula ? { formula } : {}),
  };
}

/** Shared formulas met so far, each taken apart when it is first needed. */
export class GroupTexts {
  private readonly met = new Map<number, SharedFormula>();
  private readonly movable = new Map<SharedFormula, MovableFormula>();

  constructor(private readonly ahead: ReadonlyMap<number, SharedFormula>) {}

  /** The text of a formula for its own cell; remembers it where it is the first of a group. */
  textFor(token: CellToken, formula: FormulaToken): string {
    if (formula.type !== "shared" || formula.group === undefined) return formula.text;
    const known = this.met.get(formula.group);
    if (formula.text !== "" && (formula.ref !== undefined || !known)) {
      this.met.set(formula.group, { row: token.row, column: token.column, text: formula.text });
      return formula.text;
    }
    const shared = known ?? this.ahead.get(formula.group);
    if (!shared) return formula.text;
    let movable = this.movable.get(shared);
    if (!movable) this.movable.set(shared, (movable = new MovableFormula(shared.text)));
    return movable.moved(token.row - shared.row, token.column - shared.column);
  }
}

function formulaOf(token: CellToken, formula: FormulaToken, around: CellSurroundings, groups: GroupTexts): CellFormula {
  const kind = kindOf(formula.type) ?? damaged(around.partName, formula.start, "a formula is of no known kind");
  return {
    text: groups.textFor(token, formula),
    kind,
    ...(formula.group === undefined ? {} : { group: formula.group }),
    ...(formula.ref === undefined ? {} : { ref: formula.ref }),
    isDynamic: kind === "array" && around.dynamicMarks.has(token.cellMetadata),
  };
}

function kindOf(type: string): CellFormula["kind"] | undefined {
  return type === "normal" || type === "shared" || type === "array" || type === "dataTable" ? type : undefined;
}

function valueOf(token: CellToken, around: CellSurroundings): CellValue {
  const { content } = token;
  if (content === undefined) return null;
  switch (token.type) {
    case "n":
      return numberOf(content, token, around.partName);
    case "s":
      return (
        around.strings[wholeNumber(content, -1)] ??
        damaged(around.partName, token.start, "a cell names a text that is not there")
      );
    case "inlineStr":
      return content;
    case "str":
    case "d":
      return decodeEscapes(content);
    case "b":
      return isTrue(content.trim());
    case "e":
      return { error: content };
    default:
      return damaged(around.partName, token.start, `a cell is of the unknown kind "${token.type.slice(0, 20)}"`);
  }
}

function numberOf(content: string, token: CellToken, partName: string): number | null {
  const text = content.trim();
  if (text === "") return null;
  const value = Number(text);
  return Number.isFinite(value) ? value : damaged(partName, token.start, "a cell's number is none");
}

function typeOf(value: CellValue, type: string): PackageCell["type"] {
  if (value === null) return "blank";
  if (typeof value === "number") return "number";
  if (typeof value === "boolean") return "boolean";
  if (typeof value === "object") return "error";
  return type === "d" ? "date" : "text";
}
