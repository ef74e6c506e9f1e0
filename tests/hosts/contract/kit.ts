/** What the parts of the contract suite share: the host under test, and the questions asked of it. */
import { expect, it } from "vitest";
import { cellAddress, formula, inA1, inTable, type FormulaTemplate } from "../../../src/columns/formula";
import type { Cell } from "../../../src/worksheet/cell";
import type { WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import type {
  Area,
  Change,
  FormulaColumn,
  NewColumn,
  Place,
  Progress,
  Receipt,
  Value,
  Workbook,
} from "../../../taskpane/workbook/port";
import { parseArea } from "../../../taskpane/workbook/area";

/** One opened workbook. */
export interface ContractHost {
  readonly workbook: Workbook;
  /** What a person types into a cell, behind the pane's back; "=..." is a formula, null empties the cell. */
  type(sheet: string, address: string, typed: Cell): void | Promise<void>;
  /** Is the cell's text bold? */
  isBold?(sheet: string, address: string): boolean | Promise<boolean>;
  close?(): void | Promise<void>;
}

/** What a host may lack. */
export type Lack =
  | "tables"
  | "chart sheets"
  | "filters"
  | "merges"
  | "protection"
  | "spills"
  | "date system"
  | "styles"
  | "change events"
  | "selection"
  /** Rows of tables added, changed and removed. */
  | "rows"
  | "named cells"
  /** Showing only some rows, with the host's own filter. */
  | "showing rows";

/** A plain copy of what a place holds, by address: for "nothing else has changed". */
export interface Kept {
  readonly value: Value;
  readonly formula: string | null;
  readonly format: string;
}

/** One host under test. */
export interface Contract {
  readonly name: string;
  readonly lacks: readonly Lack[];
  open(description: WorkbookDescription): Promise<ContractHost>;
}

/** A check, shown as skipped where the host lacks what it needs. */
export const needing =
  ({ lacks }: Contract) =>
  (...things: Lack[]) =>
    it.skipIf(things.some((thing) => lacks.includes(thing)));

const size = { header: "Size", index: 5 };
export const doubled: FormulaColumn = {
  header: "Doubled",
  formula: formula`IF(${size}="","",${size}*2)`,
  format: "0.0",
};
export const due: FormulaColumn = {
  header: "Change due",
  formula: formula`${{ header: "Last change", index: 1 }}+90`,
  format: "d mmm yyyy",
};

export const addTo = (table: string, columns: readonly NewColumn[]): Change => ({
  steps: [{ kind: "addColumns", to: { table }, columns }],
  expects: [],
});

export const watch = (): Progress => ({ report: () => undefined, signal: new AbortController().signal });

export const apply = (workbook: Workbook, change: Change): Promise<Receipt> => workbook.apply(change, watch());

export async function at(workbook: Workbook, sheet: string, address: string): Promise<Place> {
  const { sheets } = await workbook.overview();
  return { sheet: sheets.find((one) => one.name === sheet)!.id, area: parseArea(address)! };
}

/** A table's formula may be told in structured form, long or short, or in A1 form. */
export function expectFormula(
  told: string | null | undefined,
  template: FormulaTemplate,
  table: string,
  row: number,
  left: number,
): void {
  const long = "=" + inTable(template, table);
  const short = long.replaceAll(`${table}[[#This Row],[`, "[@[");
  const spelled = (told ?? "").replace(/\[@([^[\]]+)\]/g, "[@[$1]]");
  expect([long, short, "=" + inA1(template, row, left)]).toContain(spelled);
}

/** Every cell that holds something, by sheet and address, but those of one area. */
export async function kept(workbook: Workbook, but?: { sheet: string; area: Area }): Promise<Map<string, Kept>> {
  const cells = new Map<string, Kept>();
  for (const sheet of (await workbook.overview()).sheets) {
    if (!sheet.used) continue;
    const block = await workbook.read({ sheet: sheet.id, area: sheet.used }, ["values", "formulas", "formats"]);
    block.values!.forEach((row, r) =>
      row.forEach((value, c) => {
        const formulaText = block.formulas![r]![c]!;
        if (value === null && formulaText === null) return;
        const [y, x] = [block.area.top + r, block.area.left + c];
        const { area } = but ?? {};
        const isMeant =
          but?.sheet === sheet.name &&
          area &&
          y >= area.top &&
          y < area.top + area.rows &&
          x >= area.left &&
          x < area.left + area.columns;
        if (isMeant) return;
        cells.set(`${sheet.name}!${cellAddress(y, x)}`, {
          value,
          formula: formulaText,
          format: block.formats![r]![c]!,
        });
      }),
    );
  }
  return cells;
}

export async function expectRefused(workbook: Workbook, change: Change, says: RegExp): Promise<void> {
  const before = await kept(workbook);
  const overview = await workbook.overview();
  const receipt = await apply(workbook, change);
  expect(receipt).toMatchObject({ outcome: "refused", done: [] });
  expect(receipt.sentence).toMatch(says);
  expect(await kept(workbook)).toEqual(before);
  const after = await workbook.overview();
  expect({ tables: after.tables, names: after.names }).toEqual({ tables: overview.tables, names: overview.names });
}
