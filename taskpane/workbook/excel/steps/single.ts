/** Steps that touch one cell or one name. */
import { noRoom, type Refusal, type FormulaTarget, type NameTarget } from "../../change/target";
import type { Written } from "../../change/standing";
import { areaOf, PLACE, rangeOf } from "../place";

/** The format a cell had before a formula was put into it. */
export interface FormulaWritten extends Written {
  readonly formatBefore: string;
}

/** Writes one formula; a result that finds no room to spill is taken out again and refused. */
export const writeFormula = (target: FormulaTarget): Promise<FormulaWritten | Refusal> =>
  Excel.run(async (context) => {
    const cell = rangeOf(context.workbook.worksheets.getItem(target.sheet), target.area);
    cell.load("numberFormat");
    await context.sync();
    const formatBefore = cell.numberFormat[0]![0] as string;
    /* The format first: into a cell formatted as text a formula goes as a text. */
    if (target.step.format !== undefined) cell.numberFormat = [[target.step.format]];
    cell.formulas = [[target.step.formula]];
    cell.load("values,formulas");
    const spill = cell.getSpillingToRangeOrNullObject();
    spill.load(PLACE);
    await context.sync();
    if (cell.values[0]![0] === "#SPILL!") {
      cell.clear(Excel.ClearApplyTo.contents);
      cell.numberFormat = [[formatBefore]];
      await context.sync();
      return noRoom;
    }
    const area = spill.isNullObject ? target.area : areaOf(spill);
    const formulas = [[cell.formulas[0]![0] as string]];
    return { target: { ...target, area }, changed: true, formulas, formatBefore };
  });

/** Emptying the first cell of a spill empties all of it. */
export const removeFormula = (target: FormulaTarget, formatBefore: string): Promise<void> =>
  Excel.run(async (context) => {
    const { row, column } = target.step;
    const cell = context.workbook.worksheets.getItem(target.sheet).getRangeByIndexes(row, column, 1, 1);
    cell.clear(Excel.ClearApplyTo.contents);
    cell.numberFormat = [[formatBefore]];
    await context.sync();
  });

export const defineName = (target: NameTarget): Promise<Written> =>
  Excel.run(async (context) => {
    const { names } = context.workbook;
    const present = names.getItemOrNullObject(target.step.name);
    present.load("formula");
    await context.sync();
    if (!present.isNullObject) return { target, changed: false, formulas: [[present.formula as string]] };
    const made = names.add(target.step.name, target.step.refersTo);
    made.load("formula");
    await context.sync();
    return { target, changed: true, formulas: [[made.formula as string]] };
  });

export const removeName = (name: string): Promise<void> =>
  Excel.run(async (context) => {
    const present = context.workbook.names.getItemOrNullObject(name);
    await context.sync();
    if (!present.isNullObject) present.delete();
    await context.sync();
  });
