/** A sheet that is added: whether it can be, and whether anybody has had a hand in it since. */
import { cellAddress } from "../../../src/columns/formula";
import { contains, SHEET_COLUMNS, SHEET_ROWS } from "../area";
import type { Area, NewSheet, Overview, SheetCell, SheetId, Step, Value, Workbook } from "../port";
import { isSame } from "./expectations";
import { malformed, sheetsReadBy } from "./malformed";
import { noFormula, Refusal } from "./refusal";

export interface SheetTarget {
  readonly kind: "addSheet";
  readonly step: Extract<Step, { kind: "addSheet" }>;
  /** Null until it is there. */
  readonly sheet: SheetId | null;
  /** From A1 to its last cell; one cell where nothing stands in it. */
  readonly area: Area;
}

const LONGEST_NAME = 31;
/** What a cell holds at most (Excel specifications and limits, "Total number of characters that a cell can contain"). */
const LONGEST_CELL = 32_767;
/** Excel keeps this name for itself ("Rename a worksheet", support.microsoft.com). */
const RESERVED = "history";

/** A cell of a new sheet, told in full. */
export function sheetCell(cell: NewSheet["cells"][number][number]): SheetCell {
  return cell !== null && typeof cell === "object" ? cell : { value: cell };
}

export const everyCell = ({ cells }: NewSheet): readonly (SheetCell & { row: number; column: number })[] =>
  cells.flatMap((inRow, row) => inRow.map((cell, column) => ({ ...sheetCell(cell), row, column })));

function nameFault(name: string, sheets: readonly string[]): string | null {
  if (name === "") return "A sheet needs a name.";
  if (name.length > LONGEST_NAME)
    return `"${name}" is too long for a sheet's name: ${LONGEST_NAME} characters at most. Choose a shorter one.`;
  if (/[\\/?*[\]:]/.test(name) || /^'|'$/.test(name) || name.toLowerCase() === RESERVED)
    return `"${name}" cannot name a sheet: none of \\ / ? * [ ] : may stand in it, and no apostrophe at its ends. Choose another.`;
  const taken = sheets.find((one) => one.toLowerCase() === name.toLowerCase());
  return taken === undefined ? null : `There is a sheet "${taken}" already. Choose another name, or rename that one.`;
}

/** @param sheets names that are taken, those of earlier steps too */
export function sheetTarget(step: SheetTarget["step"], sheets: readonly string[]): SheetTarget | Refusal {
  const { sheet } = step;
  const fault = nameFault(sheet.name, sheets);
  if (fault !== null) return new Refusal(fault);
  const columns = sheet.cells.reduce((most, row) => Math.max(most, row.length), 1);
  if (sheet.cells.length > SHEET_ROWS || columns > SHEET_COLUMNS)
    return new Refusal(`"${sheet.name}" would be larger than a sheet can be. Choose fewer rows.`);
  for (const { row, column, value, formula } of everyCell(sheet)) {
    const wrong = formula === undefined ? undefined : malformed(formula, [...sheets, sheet.name]);
    if (wrong !== undefined) return noFormula(wrong);
    if (typeof value === "string" && value.length > LONGEST_CELL)
      return new Refusal(`The text for ${cellAddress(row, column)} of "${sheet.name}" is longer than a cell can hold.`);
  }
  const area = { top: 0, left: 0, rows: Math.max(1, sheet.cells.length), columns };
  return { kind: "addSheet", step, sheet: null, area };
}

/** What a sheet held when the change was done; formulas as the host tells them. */
interface Held {
  readonly formulas: readonly (readonly (string | null)[])[];
  readonly values?: readonly (readonly Value[])[];
}

/** A sheet that somebody has removed already leaves nothing to take back. */
export async function sheetStanding(
  target: SheetTarget,
  held: Held,
  workbook: Pick<Workbook, "read">,
  overview: Overview,
): Promise<{ readonly area: Area | null; readonly differing: readonly string[] }> {
  const { name } = target.step.sheet;
  const sheet = overview.sheets.find(({ id }) => id === target.sheet);
  if (!sheet) return { area: null, differing: [] };
  const differing: string[] = sheet.name === name ? [] : [`the name of "${sheet.name}"`];
  for (const table of overview.tables) if (table.sheet === sheet.id) differing.push(`the table "${table.name}"`);
  const { area } = target;
  const used = sheet.used ?? area;
  const rows = Math.max(area.rows, used.top + used.rows);
  const columns = Math.max(area.columns, used.left + used.columns);
  const all = { top: 0, left: 0, rows, columns };
  const { values, formulas } = await workbook.read({ sheet: sheet.id, area: all }, ["values", "formulas"]);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const [value, formula] = [values![row]![column]!, formulas![row]![column]!];
      const meant = contains(area, row, column)
        ? { formula: held.formulas[row]?.[column] ?? null, value: held.values?.[row]?.[column] ?? null }
        : { formula: null, value: null };
      // what a formula gives may move with the day
      const isKept = formula === meant.formula && (formula !== null || isSame(value, meant.value));
      if (!isKept) differing.push(`${sheet.name}!${cellAddress(row, column)}`);
    }
  return { area, differing };
}

/**
 * Who reads a sheet that is to be removed: cells and names that would show #REF! afterwards.
 * @param goes cells that are taken back with it
 */
export async function readersOf(
  sheet: SheetId,
  workbook: Pick<Workbook, "read">,
  overview: Overview,
  goes: (sheet: SheetId, row: number, column: number) => boolean,
): Promise<readonly string[]> {
  const name = overview.sheets.find(({ id }) => id === sheet)?.name.toLowerCase();
  if (name === undefined) return [];
  const reads = (formula: string): boolean => sheetsReadBy(formula).some((one) => one.toLowerCase() === name);
  const found = overview.names.filter(({ refersTo }) => reads(refersTo)).map((one) => `the name "${one.name}"`);
  for (const other of overview.sheets) {
    if (other.id === sheet || !other.used) continue;
    const { formulas, area } = await workbook.read({ sheet: other.id, area: other.used }, ["formulas"]);
    formulas!.forEach((row, r) =>
      row.forEach((text, c) => {
        const [y, x] = [area.top + r, area.left + c];
        if (text !== null && reads(text) && !goes(other.id, y, x)) found.push(`${other.name}!${cellAddress(y, x)}`);
      }),
    );
  }
  return found;
}
