/** Which rows a filter lets through. */
import { asText } from "./expectations";
import type { Area, Criterion, Overview, SheetId, Step, TableOverview, Value } from "../port";
import { noHeader, noTable, Refusal, unwritableSheet } from "./refusal";

export interface ShowRowsTarget {
  readonly kind: "showRows";
  readonly step: Extract<Step, { kind: "showRows" }>;
  readonly sheet: SheetId;
  /** The table's name, or null for a plain list. */
  readonly table: string | null;
  /** Header and data rows. */
  readonly area: Area;
  readonly criteria: readonly Criterion[];
}

export function showRowsTarget(
  step: ShowRowsTarget["step"],
  overview: Overview,
  tables: Map<string, TableOverview>,
): ShowRowsTarget | Refusal {
  const found = "table" in step.of ? tableOf(step.of.table, tables) : { ...step.of.list, table: null };
  if (found instanceof Refusal) return found;
  const unwritable = unwritableSheet(found.sheet, overview);
  if (unwritable) return unwritable;
  const { columns } = found.area;
  if (step.criteria.some(({ column }) => !Number.isInteger(column) || column < 0 || column >= columns))
    return new Refusal("A column to look in is no longer there. Choose the list again.");
  return { kind: "showRows", step, ...found, criteria: step.criteria };
}

function tableOf(name: string, tables: Map<string, TableOverview>) {
  const key = name.toLowerCase();
  const table = tables.get(key);
  if (!table) return noTable(name);
  if (!table.hasHeader) return noHeader(table.name);
  const { area, sheet } = table;
  return { sheet, table: table.name, area: table.hasTotals ? { ...area, rows: area.rows - 1 } : area };
}

/** Texts are compared as a filter's list does: whatever the capitals. */
const filterText = (value: Value): string => asText(value).toLowerCase();

export function lets({ keeps }: Criterion, value: Value): boolean {
  return keeps.some((kept) => filterText(kept) === filterText(value));
}
