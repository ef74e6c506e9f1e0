/** Whether rows that a change added, changed or removed still stand as it left them: rows may have been sorted since. */
import { cellAddress } from "../../../src/columns/formula";
import { bottom, dataRows, SHEET_ROWS } from "../area";
import { asText, isSame } from "./expectations";
import type { Area, Block, Overview, TableOverview, Value, Workbook } from "../port";
import { filterHides, noRowLeft, noTable, notEmpty, Refusal } from "./refusal";
import type { AppendTarget, ChangeRowTarget, RemoveTarget } from "./row-targets";
import type { Standing, Written } from "./standing";

type Reader = Pick<Workbook, "read">;

/** Formulas follow their row by themselves and say nothing of whose row it is. */
function typedCells(block: Pick<Block, "values" | "formulas">): (Value | undefined)[][] {
  return block.values!.map((row, r) => row.map((value, c) => (block.formulas![r]![c] === null ? value : undefined)));
}

const areAlike = (one: readonly (Value | undefined)[], other: readonly (Value | undefined)[]): boolean =>
  one.every((value, c) => {
    const there = other[c];
    return value === undefined || there === undefined ? value === there : isSame(value, there);
  });

/** The leftmost cell that somebody typed tells whose row it is. */
function isSomebodyElse(was: readonly (Value | undefined)[], is: readonly (Value | undefined)[]): boolean {
  const first = was.findIndex((value) => value !== undefined && asText(value) !== "");
  return first >= 0 && !areAlike([was[first]], [is[first]]);
}

const tableOf = (name: string, overview: Overview): TableOverview | undefined =>
  overview.tables.find((one) => one.name.toLowerCase() === name.toLowerCase());

export async function rowsStanding<W extends Written>(
  written: W,
  target: AppendTarget | ChangeRowTarget,
  reader: Reader,
  overview: Overview,
): Promise<Standing<W> | Refusal> {
  const table = tableOf(target.table, overview);
  if (!table) return noTable(target.table);
  const gone = new Refusal(
    `The rows are no longer where they were put in "${table.name}" (sorted or moved meanwhile). Nothing was taken back: do it by hand.`,
  );
  const { area } = target;
  const top = table.area.top + (table.hasHeader ? 1 : 0);
  const data = { ...table.area, top, rows: dataRows(table) };
  if (table.area.left !== area.left || table.area.columns < area.columns) return gone;
  if (area.top < top || bottom(area) > bottom(data)) return gone;
  const block = await reader.read({ sheet: table.sheet, area: { ...data, columns: area.columns } }, [
    "values",
    "formulas",
  ]);
  const now = typedCells(block);
  const then = typedCells({ values: written.values!, formulas: written.formulas });
  const differing: string[] = [];
  for (const [r, was] of then.entries()) {
    const is = now[area.top - top + r]!;
    if (areAlike(was, is)) continue;
    if (isSomebodyElse(was, is) || now.some((row) => areAlike(was, row))) return gone;
    was.forEach((value, c) => {
      if (!areAlike([value], [is[c]])) differing.push(cellAddress(area.top + r, area.left + c));
    });
  }
  return { written, area, differing };
}

/** Where removed rows would go back to. The area is that of all data rows now. */
export async function gapStanding<W extends Written>(
  written: W,
  target: RemoveTarget,
  reader: Reader,
  overview: Overview,
): Promise<Standing<W> | Refusal> {
  const table = tableOf(target.table, overview);
  if (!table) return noTable(target.table);
  const { left, columns } = target.area;
  if (table.area.left !== left || table.area.columns !== columns || table.hasTotals || !table.hasHeader)
    return new Refusal(`The columns of "${table.name}" have changed meanwhile. The rows were not put back.`);
  if (table.isFiltered) return new Refusal(filterHides(table.name));
  const area: Area = { ...table.area, top: table.area.top + 1, rows: table.area.rows - 1 };
  const needed = { ...area, top: bottom(area), rows: target.removed.length };
  if (bottom(needed) > SHEET_ROWS) return noRowLeft;
  const below =
    needed.rows > 0 ? await reader.read({ sheet: table.sheet, area: needed }, ["values", "formulas"]) : null;
  const filled = below && firstFilled(below);
  if (filled) return notEmpty(filled);
  if (!target.emptiesFirst) return { written, area, differing: [] };
  const emptied = { ...area, rows: 1 };
  const block = await reader.read({ sheet: table.sheet, area: emptied }, ["values", "formulas"]);
  const differing = typedCells(block)[0]!.flatMap((value, c) =>
    value === undefined || asText(value) === "" ? [] : [cellAddress(area.top, area.left + c)],
  );
  return { written, area, differing };
}

function firstFilled({ area, values, formulas }: Block): string | null {
  for (let r = 0; r < area.rows; r++)
    for (let c = 0; c < area.columns; c++)
      if (values![r]![c] !== null || formulas![r]![c] !== null) return cellAddress(area.top + r, area.left + c);
  return null;
}
