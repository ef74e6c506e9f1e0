/** What stands beside the cells, compared after saving: tables, filters, defined names. */
import type { FilterEdit } from "../../edits";
import { renameColumns } from "../../../../../src/formula/renaming";
import type { OpenedPackage } from "../../opened";
import type { DefinedName, FilterState, PackageTable } from "../../contents";
import { tableRef } from "../plan/plan-tables";
import { differs, type Meaning } from "./meaning";

export function compareTables(before: OpenedPackage, after: OpenedPackage, meaning: Meaning): void {
  if (before.tables.length !== after.tables.length) differs("the tables");
  before.tables.forEach((was, index) => {
    const is = after.tables[index] as PackageTable;
    const plan = meaning.tables.find((one) => one.table.name === was.name);
    const names = was.columns.map((column) => plan?.names.get(column.id) ?? column.name);
    const formulas = was.columns.map((column) => column.calculatedColumnFormula ?? "");
    const meant = {
      name: was.name,
      id: was.id,
      ref: plan ? tableRef(plan) : was.ref,
      names: [...names, ...(plan?.added.map((column) => column.header) ?? [])],
      formulas: [
        ...formulas.map((text) => renameColumns(text, meaning.renames)),
        ...(plan?.added.map((column) => column.calculatedColumnFormula ?? "") ?? []),
      ],
    };
    const found = {
      name: is.name,
      id: is.id,
      ref: is.ref,
      names: is.columns.map((column) => column.name),
      formulas: is.columns.map((column) => column.calculatedColumnFormula ?? ""),
    };
    if (JSON.stringify(meant) !== JSON.stringify(found)) differs(`the table "${was.name}"`);
    // ids that the file itself gives twice stay as they are
    const twice = (columns: PackageTable["columns"]) => columns.length - new Set(columns.map(({ id }) => id)).size;
    if (twice(is.columns) > twice(was.columns)) differs(`the table "${was.name}"`);
  });
}

export function compareFilters(before: OpenedPackage, after: OpenedPackage, meaning: Meaning): void {
  for (const [name, { plan }] of meaning.sheets) {
    const filterOf = (opened: OpenedPackage): FilterState | undefined =>
      opened.sheets.find((one) => one.name === name)?.filter;
    if (!isFilterAsMeant(filterOf(before), filterOf(after), plan.filter)) differs(`the filter of the sheet "${name}"`);
  }
  before.tables.forEach((was, index) => {
    const plan = meaning.tables.find((one) => one.table.name === was.name);
    if (!isFilterAsMeant(was.filter, after.tables[index]?.filter, plan?.filter))
      differs(`the filter of the table "${was.name}"`);
  });
}

function isFilterAsMeant(
  was: FilterState | undefined,
  is: FilterState | undefined,
  edit: FilterEdit | undefined,
): boolean {
  if (!edit) return JSON.stringify(is?.columns ?? []) === JSON.stringify(was?.columns ?? []);
  if (edit.remove) return is === undefined;
  const meant = new Map(was?.columns.map((column) => [column.offset, JSON.stringify(column)]));
  for (const [offset, criteria] of edit.columns ?? []) {
    if (criteria === null) meant.delete(offset);
    else
      meant.set(
        offset,
        JSON.stringify({ offset, values: criteria.values, showsBlanks: criteria.showsBlanks ?? false }),
      );
  }
  const found = is?.columns ?? [];
  return found.length === meant.size && found.every((column) => meant.get(column.offset) === JSON.stringify(column));
}

export function compareNames(before: OpenedPackage, after: OpenedPackage, meaning: Meaning): void {
  const keyOf = (name: Pick<DefinedName, "name" | "sheetName">): string =>
    `${name.sheetName ?? ""}!${name.name.toLowerCase()}`;
  const meant = new Map(before.definedNames.map((name) => [keyOf(name), renameColumns(name.text, meaning.renames)]));
  for (const edit of meaning.names) {
    if (edit.text === null) meant.delete(keyOf(edit));
    else meant.set(keyOf(edit), edit.text);
  }
  const found = new Map(after.definedNames.map((name) => [keyOf(name), name.text]));
  if (found.size !== meant.size) differs("the defined names");
  for (const [key, text] of meant) if (found.get(key) !== text) differs(`the name ${key.slice(key.indexOf("!") + 1)}`);
}
