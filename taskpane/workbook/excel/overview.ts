/** What Excel's workbook holds, told in the port's words. */
import type { NameOverview, Overview, SheetOverview, TableOverview } from "../port";
import { areaOf, PLACE } from "./place";

/** A pane belongs to one workbook of Excel's for as long as it is there. */
const THE_ONE = "this workbook";

export async function overview(): Promise<Overview> {
  const seen = await Excel.run(async (context) => {
    const { workbook } = context;
    workbook.load("name");
    workbook.worksheets.load("items/id,items/name,items/visibility");
    workbook.names.load("items/name,items/formula,items/type,items/value,items/visible");
    await context.sync();
    const [sheets, names] = [await sheetsOf(context), await namesOf(context)];
    return { title: workbook.name, ...sheets, names };
  });
  /* Excel's library does not tell the date system. */
  return { ...seen, book: THE_ONE, dateSystem: null, selection: await selection() };
}

async function sheetsOf(context: Excel.RequestContext) {
  const found = context.workbook.worksheets.items.map((sheet) => {
    const used = sheet.getUsedRangeOrNullObject(true);
    used.load(PLACE);
    sheet.protection.load("protected");
    sheet.tables.load("items/name,items/showHeaders,items/showTotals");
    return { sheet, used };
  });
  await context.sync();
  const tables = found.flatMap(({ sheet }) =>
    sheet.tables.items.map((table) => {
      const range = table.getRange();
      range.load(PLACE);
      table.autoFilter.load("isDataFiltered");
      table.columns.load("items/name");
      const header = table.showHeaders ? table.getHeaderRowRange() : null;
      header?.load("values");
      return { sheet, table, range, header };
    }),
  );
  await context.sync();
  return {
    /* Chart sheets are not among Excel's worksheets, so they are not told of. */
    sheets: found.map(({ sheet, used }): SheetOverview => ({
      id: sheet.id,
      name: sheet.name,
      kind: "worksheet",
      hidden: sheet.visibility !== Excel.SheetVisibility.visible,
      isProtected: sheet.protection.protected,
      used: used.isNullObject ? null : areaOf(used),
    })),
    tables: tables.map(({ sheet, table, range, header }): TableOverview => ({
      name: table.name,
      sheet: sheet.id,
      area: areaOf(range),
      /* The header cells say the names as people see them, line breaks and all. */
      columns: header ? header.values[0]!.map(String) : table.columns.items.map((column) => column.name),
      hasHeader: table.showHeaders,
      hasTotals: table.showTotals,
      isFiltered: table.autoFilter.isDataFiltered,
    })),
  };
}

async function namesOf(context: Excel.RequestContext): Promise<readonly NameOverview[]> {
  const visible = context.workbook.names.items.filter((name) => name.visible);
  const found = visible.map((name) => {
    const cells = name.type === Excel.NamedItemType.range ? name.getRangeOrNullObject() : null;
    cells?.load("cellCount");
    return { name, cells };
  });
  if (found.some(({ cells }) => cells)) await context.sync();
  for (const { cells } of found) if (cells && !cells.isNullObject && cells.cellCount === 1) cells.load("values");
  if (found.some(({ cells }) => cells)) await context.sync();
  return found.map(({ name, cells }): NameOverview => {
    const isOneCell = cells && !cells.isNullObject && cells.cellCount === 1;
    const isPlain = name.type !== Excel.NamedItemType.range && name.type !== Excel.NamedItemType.error;
    const value: unknown = isOneCell ? cells.values[0]![0] : isPlain ? name.value : null;
    const isValue = typeof value === "number" || typeof value === "boolean" || (typeof value === "string" && value);
    return { name: name.name, refersTo: name.formula as string, value: isValue ? value : null };
  });
}

/** Asked by itself: with a chart or a shape selected Excel refuses the whole request. */
async function selection(): Promise<Overview["selection"]> {
  try {
    return await Excel.run(async (context) => {
      const areas = context.workbook.getSelectedRanges().areas;
      areas.load("items/rowIndex,items/columnIndex,items/rowCount,items/columnCount,items/worksheet/id");
      await context.sync();
      const first = areas.items[0];
      return first ? { sheet: first.worksheet.id, area: areaOf(first) } : null;
    });
  } catch {
    return null;
  }
}
