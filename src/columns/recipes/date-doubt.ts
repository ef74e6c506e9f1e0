/** Why somebody should look at a date that can be read. */
import { settingNamed } from "../../settings/index";
import type { Cell } from "../../worksheet/cell";
import { readDate } from "../../worksheet/dates";
import { CellError } from "../../worksheet/error";

const OLDEST_YEARS = settingNamed("Past_Years").default;

/** A fragment; null where there is nothing to say, or no date. */
export function dateDoubt(called: string, cell: Cell | CellError, asOf: number): string | null {
  const day = cell === null || cell instanceof CellError ? null : readDate(cell);
  if (typeof day !== "number") return null;
  if (day > asOf) return `${called} is in the future`;
  return asOf - day > OLDEST_YEARS * 365.25 ? `${called} is over ${OLDEST_YEARS} years ago: a year, not a date?` : null;
}
