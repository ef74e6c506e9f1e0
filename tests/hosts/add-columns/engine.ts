/** Formulas worked out by the embedded grid's own engine, and cells as these tests write them. */
import { inA1, type ColumnSlot, type FormulaTemplate } from "../../../src/columns/formula";
import type { KindSource, Using } from "../../../src/columns/recipes/recipe";
import { settingNamed } from "../../../src/settings/index";
import { CellError, SheetError } from "../../../src/worksheet/error";
import { CASES_AS_OF, type CaseCell } from "../change-cases";
import { atRest } from "../grid/at-rest";
import { startHeadless } from "../grid/headless";

const NUMBER = 2;
const TEXT = 1;
const BOOLEAN = 3;

const typed = (value: CaseCell) => {
  if (value === null) return {};
  if (typeof value === "string" && value.startsWith("=NA")) return { f: value };
  if (typeof value === "string") return { v: value, t: TEXT };
  return typeof value === "boolean" ? { v: value ? 1 : 0, t: BOOLEAN } : { v: value, t: NUMBER };
};

export const using = (kinds: KindSource): Using => ({
  kinds,
  value: (name) => settingNamed(name).default,
  written: (name) => String(settingNamed(name).default),
  asOf: CASES_AS_OF,
  lengths: [1.7, 2, 2.3, 2.5],
});
export const everyone = using({ from: "everyone", kind: "balloon gastrostomy" });

/** Rows of inputs from column A on, one formula a row behind them: what the engine makes of it. */
export const workedOut = (rows: readonly (readonly CaseCell[])[], template: FormulaTemplate): Promise<unknown[]> =>
  workedOutInTurn(rows, [template]);

/** Several columns of formulas, each able to read those before it: what the engine makes of the last. */
export async function workedOutInTurn(
  rows: readonly (readonly CaseCell[])[],
  templates: readonly FormulaTemplate[],
): Promise<unknown[]> {
  const engine = startHeadless();
  const width = rows[0]!.length;
  const cellData = Object.fromEntries(
    rows.map((row, r) => [
      r,
      {
        ...Object.fromEntries(row.map((value, c) => [c, typed(value)])),
        ...Object.fromEntries(templates.map((template, i) => [width + i, { f: `=${inA1(template, r, 0)}` }])),
      },
    ]),
  );
  const sheet = {
    id: "s",
    name: "List",
    rowCount: rows.length + 5,
    columnCount: width + templates.length + 5,
    cellData,
  };
  const book = engine.api.createWorkbook({ id: "b", name: "b", sheetOrder: ["s"], sheets: { s: sheet } });
  book.insertDefinedName("As_of", String(CASES_AS_OF));
  engine.api.getFormula().executeCalculation();
  await atRest();
  const sheetNow = book.getActiveSheet();
  const values = rows.map((_, r) => sheetNow.getRange(r, width + templates.length - 1).getRawValue());
  engine.univer.dispose();
  return values;
}

export const slot = (header: string, index: number): ColumnSlot => ({ header, index });

export const asRow = (value: CaseCell) => (value === "=NA()" ? new CellError("#N/A") : value);

/** An answer as the engine's cell shows it. */
export const shown = (answer: unknown): unknown =>
  answer instanceof SheetError || answer instanceof CellError ? answer.code : answer;
