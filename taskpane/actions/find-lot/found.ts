/** Whose devices are of the lots that are looked for, which lots are similar, and who cannot be ruled out. Pure. */
import { finder } from "../../../src/lots/find";
import { lotKey } from "../../../src/lots/lot-text";
import type { Change, Criterion, Expectation, Value } from "../../workbook/port";
import type { FoundLots, LotList, LotRow, LotSurvey, Similar } from "./interface";

/** @param lots as texts; several where similar ones are taken along */
export function findLots({ rows, year }: LotSurvey, lots: readonly string[]): FoundLots {
  const look = finder(lots, year);
  const found: LotRow[] = [];
  const open: FoundLots["open"][number][] = [];
  const similar = new Map<string, Similar & { readonly rows: LotRow[] }>();
  for (const row of rows) {
    const verdict = look(row.cell);
    if (verdict.is === "found") found.push(row);
    else if (verdict.is === "open") open.push({ ...row, why: verdict.why });
    else if (verdict.is === "similar") {
      const key = lotKey(verdict.lot);
      const known = similar.get(key);
      if (known) known.rows.push(row);
      else similar.set(key, { lot: verdict.lot, why: verdict.why, rows: [row] });
    }
  }
  return {
    lots,
    found: told(found),
    open,
    similar: [...similar.values()].sort((a, b) => b.rows.length - a.rows.length || (a.lot < b.lot ? -1 : 1)),
    looked: rows.length,
  };
}

/** A lot written in a change as put in is told only where no row of the person's devices has it: else it is that device. */
function told(found: readonly LotRow[]): readonly LotRow[] {
  const key = (id: string): string => id.trim().toLowerCase();
  const devices = found.filter(({ group }) => group === "in use" || group === "past");
  const people = new Set(devices.map(({ id }) => key(id)));
  return found.filter(({ group, id }) => group !== "put in" || !people.has(key(id)));
}

/** The lists in which some of these rows stand, in the order of the rows. */
export const listsOf = (rows: readonly LotRow[]): readonly LotList[] => [
  ...new Map(rows.map(({ list }) => [list.key, list])).values(),
];

const stillSo = ({ table, sheet, area, headers, headerTexts, dataRows }: LotList): Expectation =>
  table === null
    ? { kind: "texts", sheet, area: { ...area, rows: 1 }, texts: [headerTexts] }
    : { kind: "table", table, columns: headers, dataRows };

const showing = (list: LotList, criteria: readonly Criterion[]): Change => ({
  steps: [
    {
      kind: "showRows",
      of: list.table === null ? { list: { sheet: list.sheet, area: list.area } } : { table: list.table },
      criteria,
    },
  ],
  expects: [stillSo(list)],
});

const different = (values: readonly Value[]): readonly Value[] => [
  ...new Map(values.map((value) => [`${typeof value} ${String(value)}`, value])).values(),
];

/**
 * Shows rows of one list and hides the others. A filter goes by the cells of one column: by the lot where all of them have
 * it in the same column, else by whose rows they are, which shows every row of these people.
 */
export function showFound(rows: readonly LotRow[], list: LotList): Change {
  const own = rows.filter((row) => row.list.key === list.key);
  const columns = new Set(own.map(({ column }) => column));
  const [only] = columns;
  const byLot = columns.size === 1 || list.identifier === null;
  return showing(list, [
    byLot
      ? { column: only!, keeps: different(own.filter(({ column }) => column === only).map(({ cell }) => cell.value)) }
      : { column: list.identifier!, keeps: different(own.map(({ idValue }) => idValue)) },
  ]);
}

export const showAllOf = (list: LotList): Change => showing(list, []);
