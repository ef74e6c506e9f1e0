/** Repair: formulas of ours that show #NAME?, found in the whole workbook and entered again. Nothing else is touched. */
import { cellAddress } from "../../../src/columns/formula";
import { repaired } from "../../../src/formula/repair";
import { CellError } from "../../../src/worksheet/error";
import type { SheetFunction } from "../../../src/worksheet/define";
import { repair as words } from "../../texts/repair";
import type { Change, Place, Receipt, Step, Value, Workbook } from "../../workbook/port";
import type { Afterwards } from "../action";

export interface Broken {
  readonly sheet: string;
  readonly address: string;
  readonly place: Place;
  readonly before: string;
  readonly after: string;
}

export interface RepairSurvey {
  readonly broken: readonly Broken[];
  /** Sheets that are protected: what is broken there stays. */
  readonly locked: readonly string[];
  /** Null where there is nothing to do. */
  readonly change: Change | null;
}

/** So many rows of formulas are read at once. */
const PAGE = 5_000;

type Reenter = Extract<Step, { kind: "reenterFormulas" }>;

export async function surveyRepair(workbook: Workbook, functions: readonly SheetFunction[]): Promise<RepairSurvey> {
  const names = new Set(functions.map(({ name }) => name));
  const { sheets } = await workbook.overview();
  const broken: Broken[] = [];
  const locked = new Set<string>();
  const steps: Reenter[] = [];
  for (const { id, name, used, isProtected } of sheets) {
    if (!used) continue;
    for (let top = used.top; top < used.top + used.rows; top += PAGE) {
      const area = { ...used, top, rows: Math.min(PAGE, used.top + used.rows - top) };
      const { values = [], formulas = [] } = await workbook.read({ sheet: id, area }, ["values", "formulas"]);
      for (let column = 0; column < area.columns; column++) {
        const again = formulas.map((row, r) => mended(row[column] ?? null, values[r]?.[column] ?? null, names));
        const found = again.flatMap((after, r): Broken[] => {
          if (after === null) return [];
          const at = { top: area.top + r, left: area.left + column, rows: 1, columns: 1 };
          const before = formulas[r]![column]!;
          return [
            { sheet: name, address: cellAddress(at.top, at.left), place: { sheet: id, area: at }, before, after },
          ];
        });
        if (found.length === 0) continue;
        if (isProtected) locked.add(name);
        else
          steps.push({
            kind: "reenterFormulas",
            sheet: id,
            column: area.left + column,
            row: area.top,
            formulas: again,
          });
        broken.push(...found);
      }
    }
  }
  return { broken, locked: [...locked], change: steps.length === 0 ? null : { steps, expects: [] } };
}

/** Our formula entered anew where the host has lost it; null where there is nothing to mend. */
function mended(formula: string | null, value: Value, names: ReadonlySet<string>): string | null {
  if (formula === null) return null;
  const isLost = value instanceof CellError && value.code === "#NAME?";
  const after = repaired(formula, names);
  return after !== null && (isLost || after !== formula) ? after : null;
}

export function afterRepair(survey: RepairSurvey, { outcome, sentence, done }: Receipt): Afterwards {
  const canTakeBack = done.some(({ changed }) => changed);
  const where = done.find(({ place }) => place !== null)?.place ?? null;
  if (outcome !== "done") return { outcome, sentences: [sentence], where, canTakeBack };
  const of = survey.broken.filter(({ sheet }) => !survey.locked.includes(sheet)).length;
  return { outcome, sentences: [words.after(of)], where, canTakeBack };
}
