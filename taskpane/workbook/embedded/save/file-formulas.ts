/** The formulas that a sheet's file holds, in the form in which the grid tells that two are one. */
import { parseRange, type OpenedWorkbook, type Sliced } from "../../package";
import type { Area } from "../../port";
import { cellInGrid, type Readers } from "../formulas/readable";
import { relativeForm } from "../formulas/references";
import { RepeatedFormulas } from "../formulas/repeated";
import type { TableGeometry } from "../formulas/structured";
import { KnownTexts } from "./formulas";

interface Source {
  readonly opened: OpenedWorkbook;
  readonly sheetName: string;
  readonly readers: Readers;
  readonly tables: readonly TableGeometry[];
}

export interface FileFormulas {
  /** By cell of the store; null where only the file can read it. */
  readonly forms: ReadonlyMap<number, string | null>;
  /** How the file writes them. */
  readonly known: KnownTexts;
  /** Where formulas spill more than one cell. */
  readonly arrays: readonly Area[];
}

const ROWS_AT_A_TIME = 200;

/** In slices: the share of the rows that has been read. All of them first, so that a formula moved upwards is found too. */
export function* formulasInFile({ opened, sheetName, readers, tables }: Source): Sliced<FileFormulas> {
  const store = opened.store(sheetName);
  const { rowCount, rowNumbers, firstCells, formulaOf, columns } = store.data;
  const texts = store.groupTexts();
  const repeated = new RepeatedFormulas<string>(sheetName, readers);
  const known = new KnownTexts(tables);
  const forms = new Map<number, string | null>();
  const arrays: Area[] = [];

  function formOf(cell: number, row: number, column: number): string | null {
    const stored = store.formula(cell)!;
    const shared = repeated.findShared(texts.followed(stored), column);
    if (shared !== undefined) return shared;
    const formula = store.cellFormula(stored, row + 1, column + 1, texts);
    const spilled = formula.isDynamic ? manyCells(formula.ref ?? "") : undefined;
    if (spilled) arrays.push(spilled);
    const taught = repeated.find(formula, row, column);
    if (taught !== undefined) return taught;
    const read = cellInGrid(formula, { sheetName, row, column }, readers);
    const form = read && relativeForm(read.text, row, column);
    if (read && form !== null) {
      known.note(formula.text, form, row, column);
      repeated.note(formula, read, form, { row, column, shared: texts.named(stored.group) });
    }
    return form;
  }

  for (let place = 0; place < rowCount; place++) {
    const row = rowNumbers[place]! - 1;
    for (let cell = firstCells[place]!; cell < firstCells[place + 1]!; cell++)
      if (formulaOf[cell] !== 0) forms.set(cell, formOf(cell, row, columns[cell]! - 1));
    if (place % ROWS_AT_A_TIME === 0) yield place / rowCount;
  }
  return { forms, known, arrays };
}

/** The area that a reference names, where it is more than one cell. */
function manyCells(reference: string): Area | undefined {
  const range = parseRange(reference);
  if (!range || (range.bottom === range.top && range.right === range.left)) return undefined;
  const { top, left, bottom, right } = range;
  return { top: top - 1, left: left - 1, rows: bottom - top + 1, columns: right - left + 1 };
}
