/** Whether an answer on screen still rests on what stands in the workbook. */
import { asText } from "../../workbook/change/expectations";
import type { Overview, Workbook } from "../../workbook/port";
import { headerKey } from "./recognise";
import { namesOf, type Caseload, type CaseloadRow } from "./read";

/** Reads one row: cheap enough for every change that a host tells of. */
export async function stillStands(
  { tubes, changes, names }: Caseload,
  row: CaseloadRow,
  overview: Overview,
  workbook: Pick<Workbook, "read">,
): Promise<boolean> {
  const table = overview.tables.find(({ name }) => name === tubes.table);
  const log = overview.tables.find(({ name }) => name === changes.table);
  if (!table || !log || table.area.rows !== tubes.area.rows || log.area.rows !== changes.area.rows) return false;
  if (table.columns.join("\n") !== tubes.columns.join("\n")) return false;
  const fresh = namesOf(overview);
  if ([...names].some(([name, value]) => fresh.get(name) !== value)) return false;
  const area = { ...table.area, top: table.area.top + 1 + row.index, rows: 1 };
  const { values } = await workbook.read({ sheet: table.sheet, area }, ["values"]);
  return tubes.columns.every(
    (header, column) => asText(values?.[0]?.[column] ?? null) === asText(row.values.get(headerKey(header)) ?? null),
  );
}
