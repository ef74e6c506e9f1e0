/** What worked-out columns give for cells that stand in no workbook yet: by their own formulas, so that no rule stands twice. */
import { inA1, type ColumnSlot } from "../columns/formula";
import { Reader } from "../formula/reader/reader";
import type { SheetValue } from "../columns/sheet-block";
import type { CaseloadColumn, Slots } from "./column";
import type { ByHeader, Header } from "./headers";

const SHEET = "Row";

/**
 * @param columns each behind those that it reads
 * @param cells all other cells that they read
 * @param names what their names mean, as a formula writes it
 * @returns what the last column gives
 */
export function givenFrom(
  columns: readonly CaseloadColumn[],
  cells: ByHeader<SheetValue>,
  names: Readonly<Record<string, string>>,
): SheetValue {
  const typed = Object.entries(cells);
  const headers = [...typed.map(([header]) => header as Header), ...columns.map(({ header }) => header)];
  const slot = (header: Header): ColumnSlot => {
    const index = headers.indexOf(header);
    if (index < 0) throw new Error(`${header} is not given`);
    return { header, index };
  };
  const slots: Slots = Object.assign((header: Header) => [slot(header)], {
    has: (header: Header) => headers.includes(header),
  });
  const reader = new Reader({
    sheets: [SHEET],
    tables: [],
    names: Object.entries(names).map(([name, refersTo]) => ({ name, refersTo })),
    today: undefined,
    ours: () => undefined,
  });
  typed.forEach(([, value], column) => reader.put({ sheet: SHEET, row: 0, column }, value ?? null));
  for (const { header, formula } of columns) {
    const column = headers.indexOf(header);
    reader.fill({ sheet: SHEET, row: 0, column }, 0, inA1(formula!(slots), 0, 0));
  }
  if (reader.unknown.length > 0) throw new Error(`A formula is not known: ${JSON.stringify(reader.unknown)}`);
  reader.work();
  return reader.at({ sheet: SHEET, row: 0, column: headers.length - 1 });
}
