/** All that is to happen to one sheet, cell by cell, whoever asked for it. */
import { contains, parseAddress, parseRange, type Range } from "../../addresses";
import type {
  CellEdit,
  CellRule,
  ColumnFill,
  FillFormula,
  FilterEdit,
  FormulaEdit,
  SheetEdits,
  StyleEdit,
  ColumnWidth,
} from "../../edits";
import { MovableFormula } from "../../../../../src/formula/moving";
import type { ColumnRename } from "../../../../../src/formula/renaming";
import { LAST_COLUMN, LAST_ROW } from "../../../xlsx/limits";
import type { OpenedPackage } from "../../opened";
import type { CellValue, PackageSheet } from "../../contents";
import { factsOf } from "../../parts/workbook-parts";
import { refuse } from "../../../xlsx/refusal";
import type { SheetFacts } from "../../sheet/inspect";

export interface PlannedCell {
  readonly row: number;
  readonly column: number;
  /** Undefined: the content stays. */
  readonly value?: CellValue | undefined;
  readonly formula?: FormulaEdit | undefined;
  readonly style?: StyleEdit | undefined;
  /** A new cell is styled like the cell of this column in its row. */
  readonly likeColumn?: number;
  /** Made by us beside a table: what stands there must not be lost. */
  readonly onlyWhereEmpty?: boolean;
}

/** Cells that somebody else's content must not lie in, except where it lay before. */
export interface Claim {
  readonly range: Range;
  readonly except?: Range;
  readonly sentence: string;
}

export interface SheetPlan {
  readonly sheet: PackageSheet;
  readonly facts: SheetFacts;
  readonly rows: Map<number, Map<number, PlannedCell>>;
  readonly hiddenRows: Map<number, boolean>;
  readonly widths: ColumnWidth[];
  readonly claims: Claim[];
  readonly rules: CellRule[];
  /** Formulas in the sheet follow these. */
  renames: readonly ColumnRename[];
  filter?: FilterEdit;
}

export class Plans {
  readonly sheets = new Map<string, SheetPlan>();

  constructor(private readonly opened: OpenedPackage) {}

  of(sheetName: string): SheetPlan {
    const present = this.sheets.get(sheetName);
    if (present) return present;
    const sheet = this.opened.sheets.find((one) => one.name === sheetName);
    if (sheet?.kind !== "worksheet") return refuse(`There is no sheet "${sheetName}" with cells in this workbook.`);
    const plan: SheetPlan = {
      sheet,
      facts: factsOf(this.opened, sheetName),
      rows: new Map(),
      hiddenRows: new Map(),
      widths: [],
      claims: [],
      rules: [],
      renames: [],
    };
    this.sheets.set(sheetName, plan);
    return plan;
  }
}

export function planSheet(plan: SheetPlan, edits: SheetEdits): void {
  for (const fill of edits.fills ?? []) planFill(plan, fill);
  for (const [ref, edit] of edits.cells ?? []) planCell(plan, ref, edit);
  for (const [row, isHidden] of edits.hiddenRows ?? []) plan.hiddenRows.set(row, isHidden);
  plan.widths.push(...(edits.columnWidths ?? []));
  plan.rules.push(...(edits.rules ?? []));
  if (edits.filter) plan.filter = edits.filter;
}

export function putCell(plan: SheetPlan, cell: PlannedCell): void {
  const { row, column } = cell;
  if (row < 1 || row > LAST_ROW || column < 1 || column > LAST_COLUMN) {
    refuse(
      `The sheet "${plan.sheet.name}" ends at column XFD and row ${LAST_ROW.toLocaleString("en-GB")}: there is no room for more.`,
    );
  }
  let inRow = plan.rows.get(row);
  if (!inRow) plan.rows.set(row, (inRow = new Map()));
  inRow.set(column, cell);
}

function planCell(plan: SheetPlan, ref: string, edit: CellEdit): void {
  const place = parseAddress(ref) ?? refuse(`"${ref}" is no cell of the sheet "${plan.sheet.name}".`);
  putCell(plan, { ...place, value: edit.value, formula: edit.formula, style: edit.style });
}

function planFill(plan: SheetPlan, fill: ColumnFill): void {
  const textOf = fill.formula && fillText(fill.formula, fill.firstRow);
  for (let row = fill.firstRow; row <= fill.lastRow; row++) {
    const text = textOf?.(row) ?? null;
    putCell(plan, {
      row,
      column: fill.column,
      value: fill.valueAt(row),
      formula: text === null ? undefined : { text },
      style: fill.style,
    });
  }
}

function fillText(formula: FillFormula, firstRow: number): (row: number) => string | null {
  if ("same" in formula) return () => formula.same;
  if ("of" in formula) return (row) => formula.of(row);
  const movable = new MovableFormula(formula.fromFirst);
  return (row) => movable.moved(row - firstRow, 0);
}

/** The ranges that the planned cells of a sheet can touch: a sheet may have ten thousand merges and one edit. */
export function touched(plan: SheetPlan, refs: readonly string[]): Range[] {
  const ranges = refs.map(parseRange).filter((range) => range !== undefined);
  const rows = [...plan.rows.keys()];
  if (rows.length > 1000) return ranges.filter((range) => reaches(range, rows));
  return ranges.filter((range) => rows.some((row) => row >= range.top && row <= range.bottom));
}

function reaches(range: Range, rows: readonly number[]): boolean {
  const first = rows.reduce((least, row) => Math.min(least, row), LAST_ROW);
  const last = rows.reduce((most, row) => Math.max(most, row), 1);
  return range.top <= last && range.bottom >= first;
}

export function isPlanned(plan: SheetPlan, row: number, column: number): boolean {
  return plan.rows.get(row)?.has(column) === true;
}

export function rangeAt(ranges: readonly Range[], row: number, column: number): Range | undefined {
  return ranges.find((range) => contains(range, row, column));
}
