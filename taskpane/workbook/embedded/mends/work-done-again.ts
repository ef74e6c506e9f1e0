/**
 * Where the grid (0.25.1) does the same work over and over.
 * - A text inside a formula ("balloon") is tried as a number, a date and an amount of money each time that the formula is
 *   worked out; a text that was none of these stays none. Of a caseload's recalculation this was a quarter (measured).
 * - The ends of what may be entered ("from Day_Birth to As_of") are worked out anew for every cell, also where they ask
 *   for no cell: twice 5,000 formulas for each column of dates.
 */
import { ValueObjectFactory } from "@univerjs/engine-formula";
import { DataValidationCustomFormulaService } from "@univerjs/sheets-data-validation";
import type { IRange } from "@univerjs/core";
import { relativeForm } from "../formulas/references";

/** Texts of formulas are few and come again; more are texts of cells that pass by. */
const KEPT = 20_000;

let isHastened = false;

export function hastenTexts(): void {
  if (isHastened) return;
  isHastened = true;
  const factory = ValueObjectFactory as unknown as {
    create(raw: unknown, ignoresNumbers?: boolean): { isString?(): boolean };
  };
  const { create } = factory;
  const plain = new Set<string>();
  factory.create = function (raw, ignoresNumbers = false) {
    if (typeof raw !== "string" || ignoresNumbers) return create.call(factory, raw, ignoresNumbers);
    if (plain.has(raw)) return create.call(factory, raw, true);
    const value = create.call(factory, raw, false);
    if (value.isString?.()) {
      if (plain.size >= KEPT) plain.clear();
      plain.add(raw);
    }
    return value;
  };
}

type OfCell = (unitId: string, sheetId: string, ruleId: string, row: number, column: number) => unknown;

interface Ends {
  _registerFormula(unitId: string, sheetId: string, ruleId: string, formula: string, ranges: IRange[]): string;
  _ensureMaps(
    unitId: string,
    sheetId: string,
  ): Readonly<Record<"ruleFormulaMap" | "ruleFormulaMap2", ReadonlyMap<string, End>>>;
  getCellFormulaValue: OfCell;
  getCellFormula2Value: OfCell;
  getCellFormulaValueSync: OfCell;
  getCellFormula2ValueSync: OfCell;
}

interface End {
  readonly formula: string;
  readonly originRow: number;
  readonly originCol: number;
}

/** It reads no cell by its address: names and numbers only. */
const isSameForAll = (formula: string): boolean =>
  relativeForm(formula, 0, 0) === relativeForm(formula, 1, 1) && !/\$/.test(formula);

let areEndsHastened = false;

export function hastenEnds(): void {
  if (areEndsHastened) return;
  areEndsHastened = true;
  const ends = DataValidationCustomFormulaService.prototype as unknown as Ends;
  const { _registerFormula: register } = ends;
  ends._registerFormula = function (this: Ends, unitId, sheetId, ruleId, formula, ranges) {
    const [{ startRow, startColumn }] = ranges as [IRange];
    const one = { startRow, startColumn, endRow: startRow, endColumn: startColumn };
    return register.call(this, unitId, sheetId, ruleId, formula, isSameForAll(formula) ? [one] : ranges);
  };
  const which = {
    getCellFormulaValue: "ruleFormulaMap",
    getCellFormula2Value: "ruleFormulaMap2",
    getCellFormulaValueSync: "ruleFormulaMap",
    getCellFormula2ValueSync: "ruleFormulaMap2",
  } as const;
  for (const [name, map] of Object.entries(which) as [keyof typeof which, (typeof which)[keyof typeof which]][]) {
    const ask = ends[name];
    ends[name] = function (this: Ends, unitId, sheetId, ruleId, row, column) {
      const end = this._ensureMaps(unitId, sheetId)[map].get(ruleId);
      const isSame = end !== undefined && isSameForAll(end.formula);
      return isSame
        ? ask.call(this, unitId, sheetId, ruleId, end.originRow, end.originCol)
        : ask.call(this, unitId, sheetId, ruleId, row, column);
    };
  }
}
