/** What a ready-made caseload's formulas and names read like in the grid, told from its description (src/caseload). */
import type { OptionalGroup } from "../../../../src/caseload/column";
import { countedDayFormula, countedDays } from "../../../../src/caseload/counted-days";
import type { RowsTable } from "../../../../src/caseload/names";
import { readiness, readyFormula } from "../../../../src/caseload/ready";
import { boundColumns, columnsOf } from "../../../../src/caseload/tables";
import { cellAddress } from "../../../../src/columns/formula";
import { relativeForm } from "../formulas/references";
import { tokens } from "../formulas/tokens";

export const allGroups: readonly OptionalGroup[] = ["fit", "plan", "spare"];

/** The groups that a list has, by its headings; null where only a part of one is there. */
export function groupsAmong(headings: ReadonlySet<string>): readonly OptionalGroup[] | null {
  const own = allGroups.map((group) => {
    const columns = columnsOf("tubes", allGroups).filter(({ onlyWith }) => onlyWith === group);
    const present = columns.filter(({ header }) => headings.has(header)).length;
    return present === columns.length ? group : present === 0 ? undefined : null;
  });
  return own.includes(null) ? null : own.filter((group) => group !== undefined && group !== null);
}

/** Without what a program may write otherwise when it saves: spaces, letter case. Texts in quotes stay as they are. */
export const squeezed = (formula: string): string =>
  tokens(formula)
    .map(({ kind, text }) => (kind === "text" ? text : text.replace(/\s+/g, "").toUpperCase()))
    .join("");

/** The same for all rows: by heading, in squeezed R1C1 style. */
export function columnFormulas(
  table: RowsTable,
  groups: readonly OptionalGroup[],
  /** Where each column stands on the sheet, counted from 0. */
  placeOf: (header: string) => number,
): ReadonlyMap<string, string> {
  const row = 1000;
  const found = new Map<string, string>();
  for (const { header, formula } of boundColumns(columnsOf(table, groups))) {
    if (!formula) continue;
    // a cell of the same row, as a structured reference reads in the grid (formulas/structured.ts)
    const address = (column: string) => `$${cellAddress(row, placeOf(column))}`;
    const text = formula.map((part) => (typeof part === "string" ? part : address(part.header))).join("");
    found.set(header, squeezed(relativeForm(text, row, placeOf(header))));
  }
  return found;
}

/** Cells of the settings sheet that work something out for all rows: by name, squeezed. */
export const namedFormulas: ReadonlyMap<string, string> = new Map([
  ...Object.values(readiness).map((one) => [one.name, squeezed(readyFormula(one))] as const),
  ...Object.entries(countedDays).map(([name, one]) => [name, squeezed(countedDayFormula(one))] as const),
]);
