/** How far the cells reach that a formula names. */
import { cornerAt } from "./areas";
import { tokens } from "./tokens";
import { LAST_COLUMN, LAST_ROW } from "./words";

export interface ReferredArea {
  /** Undefined: the formula's own sheet. */
  readonly sheetName: string | undefined;
  /** Counted from 1; a whole column ends at the last row of a sheet. */
  readonly bottom: number;
  readonly right: number;
}

/** The cells and ranges that a formula names, as far as their ends go. */
export function referredAreas(formula: string): readonly ReferredArea[] {
  const all = tokens(formula);
  const areas: ReferredArea[] = [];
  all.forEach((_, at) => {
    const one = cornerAt(all, at);
    if (!one) return;
    const start = all[at - 1]?.text === ":" ? at - 2 : at;
    const sheet = all[start - 1]?.text === "!" ? all[start - 2] : undefined;
    const sheetName = sheet?.text.replace(/^'|'$/g, "").replaceAll("''", "'");
    const [bottom, right] = [one.row ? one.row.at + 1 : LAST_ROW, one.column ? one.column.at + 1 : LAST_COLUMN];
    areas.push({ sheetName, bottom, right });
  });
  return areas;
}
