import { refreshedFormula, type ChangeColumnTarget, type ReenterTarget, type RefreshTarget } from "../change/refreshed";
import type { Area } from "../port";
import { GENERAL, type Sheet } from "./book";

/** Writes a column anew; gives the way back, for wherever it stands then. */
export function refreshColumn(sheet: Sheet, target: RefreshTarget): (area: Area) => void {
  const { top, left, rows } = target.area;
  const formers = Array.from({ length: rows }, (_, r) => ({
    formula: sheet.cell(top + r, left)?.formula ?? null,
    value: sheet.value(top + r, left),
  }));
  for (let row = top; row < top + rows; row++) sheet.type(row, left, refreshedFormula(target, row));
  return (area) =>
    formers.forEach(({ formula, value }, r) => {
      const row = area.top + r;
      sheet.type(row, area.left, formula ?? value);
      Object.assign(sheet.made(row, area.left), { value, formula });
    });
}

/** Enters formulas again; gives the way back, for wherever they stand then. */
export function reenterFormulas(sheet: Sheet, { area: { top, left }, step }: ReenterTarget): (area: Area) => void {
  const formers = step.formulas.map((_, r) => ({ ...sheet.cell(top + r, left) }));
  step.formulas.forEach((formula, r) => formula !== null && sheet.type(top + r, left, formula));
  return (area) =>
    formers.forEach(({ value = null, formula = null }, r) => {
      if (step.formulas[r] !== null) Object.assign(sheet.made(area.top + r, area.left), { value, formula });
    });
}

/** Writes values into some cells of a column; gives the way back, for wherever it stands then. */
export function changeColumn(sheet: Sheet, { area: { top, left }, step }: ChangeColumnTarget): (area: Area) => void {
  const formers = step.values.map((_, r) => ({ format: GENERAL, ...sheet.cell(top + r, left) }));
  step.values.forEach((value, r) => {
    if (value === undefined) return;
    const cell = sheet.made(top + r, left);
    Object.assign(cell, { value: value === "" ? null : value, formula: null, format: step.format ?? cell.format });
  });
  return (area) =>
    formers.forEach(({ value = null, formula = null, format }, r) => {
      if (step.values[r] !== undefined) Object.assign(sheet.made(area.top + r, area.left), { value, formula, format });
    });
}
