import type { SortTarget } from "../../change/sorted";

/** Excel's own sort: whole rows of the table, formulas along. */
export async function sortTable({ table, column }: SortTarget): Promise<void> {
  await Excel.run(async (context) => {
    context.workbook.tables.getItem(table).sort.apply([{ key: column, ascending: true }]);
    await context.sync();
  });
}
