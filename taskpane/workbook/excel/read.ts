/** Reading cells, in pages that stay far below the 5 MB Excel gives at once. */
import type { Area, Block, Facet, Place, Value } from "../port";
import { areaOf, rangeOf, standOf } from "./place";
import { hiddenRows } from "./steps/rows";
import { formulasOf, valuesOf } from "./values";

const CELLS_A_PAGE = 20_000;

export async function read(place: Place, what: readonly Facet[]): Promise<Block> {
  return Excel.run(async (context) => {
    const { id, sheet, area } = await standOf(context, place);
    const asks = (facet: Facet) => what.includes(facet);
    const loads = [
      ...(asks("values") ? ["values", "valueTypes"] : []),
      ...(asks("formulas") ? ["formulas", "values"] : []),
      ...(asks("formats") ? ["numberFormat"] : []),
    ];
    const values: Value[][] = [];
    const formulas: (string | null)[][] = [];
    const formats: string[][] = [];
    for (const page of loads.length > 0 ? pages(area) : []) {
      const range = rangeOf(sheet, page);
      range.load([...new Set(loads)].join(","));
      await context.sync();
      if (asks("values")) values.push(...valuesOf(range));
      if (asks("formulas")) formulas.push(...formulasOf(range));
      if (asks("formats")) formats.push(...(range.numberFormat as string[][]));
    }
    return {
      sheet: id,
      area,
      ...(asks("values") && { values }),
      ...(asks("formulas") && { formulas }),
      ...(asks("formats") && { formats }),
      ...(asks("hidden") && { hidden: await hiddenRows(context, sheet, area) }),
      ...(asks("merges") && { merges: await merges(context, sheet, area) }),
    };
  });
}

function pages(area: Area): readonly Area[] {
  const rows = Math.max(1, Math.floor(CELLS_A_PAGE / area.columns));
  const all: Area[] = [];
  for (let done = 0; done < area.rows; done += rows)
    all.push({ ...area, top: area.top + done, rows: Math.min(rows, area.rows - done) });
  return all;
}

async function merges(context: Excel.RequestContext, sheet: Excel.Worksheet, area: Area): Promise<readonly Area[]> {
  const found = rangeOf(sheet, area).getMergedAreasOrNullObject();
  found.areas.load("items/rowIndex,items/columnIndex,items/rowCount,items/columnCount");
  await context.sync();
  return found.isNullObject ? [] : found.areas.items.map(areaOf);
}
