/** Every contradiction of a list, grouped by what is said of it. */
import type { RowCells } from "../columns/recipes/recipe";
import type { Role } from "../columns/role";
import { guessKind } from "../columns/kind-guess";
import { textOf } from "../columns/sheet-block";
import type { KindKey } from "../settings/kinds";
import { CellError } from "../worksheet/error";
import { rowRules } from "./rules";

export interface FoundGroup {
  readonly reason: string;
  /** The cell to look at in each row. */
  readonly at: Role;
  /** Counted from 0 within the list. */
  readonly rows: readonly number[];
}

/**
 * @param rows their cells by what the columns mean; a row without anything in it is passed over
 * @param columns what the list has columns for
 * @param asOf today as a day number
 * @param kindOf what a word for the kind means in this list; left out: as it is guessed
 */
export function checkRows(
  rows: readonly RowCells[],
  columns: ReadonlySet<Role>,
  asOf: number,
  kindOf: (word: string) => KindKey | null = guessKind,
): readonly FoundGroup[] {
  const rules = rowRules.filter(({ reads }) => reads.every((role) => columns.has(role)));
  const groups = new Map<string, { at: Role; rows: number[] }>();
  for (const rule of rules) {
    rows.forEach((row, at) => {
      if (isEmpty(row)) return;
      const kind = row.kind === undefined || row.kind instanceof CellError ? null : kindOf(textOf(row.kind));
      const reason = rule.finds(row, { asOf, kind });
      if (reason === null) return;
      const group = groups.get(reason);
      if (group) group.rows.push(at);
      else groups.set(reason, { at: rule.at, rows: [at] });
    });
  }
  return [...groups].map(([reason, group]) => ({ reason, ...group }));
}

const isEmpty = (row: RowCells): boolean =>
  Object.values(row).every((cell) => cell === null || (!(cell instanceof CellError) && textOf(cell).trim() === ""));
