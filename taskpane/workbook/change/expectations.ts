/** Checks, just before a change is applied, that the workbook is still as it was when the change was planned. */
import { areaAddress, dataRows } from "../area";
import { CellError } from "../../../src/worksheet/error";
import type { Expectation, Overview, Value, Workbook } from "../port";
import { noTable, notEmpty, Refusal, sheetWithCells } from "./refusal";
import { cellAddress } from "../../../src/columns/formula";

/** A value as an expectation names it: a blank is "". */
export function asText(value: Value): string {
  if (value === null) return "";
  if (value instanceof CellError) return value.code;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return String(value);
}

/** The first expectation that does not hold any more, as a sentence; null when all hold. */
export async function unmet(
  expects: readonly Expectation[],
  workbook: Pick<Workbook, "read">,
  overview: Overview,
): Promise<Refusal | null> {
  for (const expectation of expects) {
    const refusal =
      expectation.kind === "table"
        ? changedTable(expectation, overview)
        : expectation.kind === "row"
          ? await changedRow(expectation, workbook, overview)
          : await changedCells(expectation, workbook, overview);
    if (refusal) return refusal;
  }
  return null;
}

function changedTable(expected: Extract<Expectation, { kind: "table" }>, overview: Overview): Refusal | null {
  const table = overview.tables.find((one) => one.name.toLowerCase() === expected.table.toLowerCase());
  if (!table) return noTable(expected.table);
  if (table.columns.length !== expected.columns.length || table.columns.some((name, i) => name !== expected.columns[i]))
    return new Refusal(`The columns of "${table.name}" have changed meanwhile. Look at the preview again.`);
  if (dataRows(table) !== expected.dataRows)
    return new Refusal(
      `"${table.name}" now has ${dataRows(table)} rows, not ${expected.dataRows}. Look at the preview again.`,
    );
  return null;
}

async function changedRow(
  expected: Extract<Expectation, { kind: "row" }>,
  workbook: Pick<Workbook, "read">,
  overview: Overview,
): Promise<Refusal | null> {
  const table = overview.tables.find((one) => one.name.toLowerCase() === expected.table.toLowerCase());
  if (!table) return noTable(expected.table);
  const moved = (header: string) =>
    new Refusal(
      `That row of "${table.name}" no longer holds what was read ("${header}"): it was changed or moved meanwhile. Look it up again.`,
    );
  const headers = Object.keys(expected.values);
  if (expected.row < 0 || expected.row >= dataRows(table)) return moved(headers[0] ?? "");
  const { area, sheet, hasHeader } = table;
  const row = { ...area, top: area.top + (hasHeader ? 1 : 0) + expected.row, rows: 1 };
  const { values } = await workbook.read({ sheet, area: row }, ["values"]);
  const differing = headers.find((header) => {
    const now = values![0]![table.columns.indexOf(header)];
    return now === undefined || !isSame(now, expected.values[header]!);
  });
  return differing === undefined ? null : moved(differing);
}

/** A number is not the text of that number; a blank is a blank, however it came to be one. */
export const isSame = (one: Value, other: Value): boolean =>
  one === other || ((one === null || one === "") && (other === null || other === ""));

async function changedCells(
  expected: Extract<Expectation, { kind: "texts" | "empty" }>,
  workbook: Pick<Workbook, "read">,
  overview: Overview,
): Promise<Refusal | null> {
  const sheet = sheetWithCells(expected.sheet, overview);
  if (sheet instanceof Refusal) return sheet;
  const { area } = expected;
  const facets = expected.kind === "empty" ? (["values", "formulas"] as const) : (["values"] as const);
  const block = await workbook.read({ sheet: expected.sheet, area }, facets);
  for (let row = 0; row < area.rows; row++)
    for (let column = 0; column < area.columns; column++) {
      const value = block.values?.[row]?.[column] ?? null;
      const address = cellAddress(area.top + row, area.left + column);
      if (expected.kind === "empty") {
        if (value !== null || (block.formulas?.[row]?.[column] ?? null) !== null) return notEmpty(address);
      } else if (asText(value) !== (expected.texts[row]?.[column] ?? ""))
        return new Refusal(`Cell ${address} in ${areaAddress(area)} has changed meanwhile. Look at the preview again.`);
    }
  return null;
}
