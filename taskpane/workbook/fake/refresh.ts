import { refreshedFormula, type RefreshTarget } from "../change/refreshed";
import type { Area } from "../port";
import type { Sheet } from "./book";

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
