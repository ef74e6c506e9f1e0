/**
 * The saved copy, read again as a stranger's file and compared with what was meant. Where the two differ the copy is not
 * offered: a fault of ours must not end in somebody's workbook.
 */
import { addressOf } from "../addresses";
import type { DefinedNameEdit, FilterEdit } from "../edits";
import { renameColumns, type ColumnRename } from "../formula/structuredReferences";
import type { CellValue, DefinedName, FilterState, OpenedPackage, PackageCell, PackageTable } from "../opened";
import { open } from "../openPackage";
import { factsOf } from "../parts/workbookParts";
import { refuse, Refused } from "../refusal";
import type { PatchedSheet } from "./patchSheet";
import type { SheetPlan } from "./plan";
import { tableRef, type TablePlan } from "./planTables";

export interface Meaning {
  readonly changedParts: ReadonlySet<string>;
  readonly sheets: ReadonlyMap<string, { readonly plan: SheetPlan; readonly patched: PatchedSheet }>;
  readonly tables: readonly TablePlan[];
  readonly names: readonly DefinedNameEdit[];
  readonly renames: readonly ColumnRename[];
}

export function readBack(before: OpenedPackage, bytes: Uint8Array, meaning: Meaning): void {
  const comparers = new Map<string, SheetComparer>();
  for (const [name, { plan, patched }] of meaning.sheets) {
    if (meaning.changedParts.has(plan.sheet.partName))
      comparers.set(name, new SheetComparer(before, name, patched, meaning.renames));
  }
  let after: OpenedPackage;
  try {
    after = open(bytes, before.parts.limits, {
      earlier: before,
      onCell: (sheetName, cell) => (comparers.get(sheetName) ?? differs(`the sheet "${sheetName}"`)).next(cell),
    });
  } catch (problem) {
    if (problem instanceof Refused && !problem.message.startsWith(NOT_SAVED)) differs(problem.message);
    throw problem;
  }
  compareParts(before, after, meaning);
  for (const [name, comparer] of comparers) {
    comparer.end(after);
    const { plan, patched } = meaning.sheets.get(name) as { plan: SheetPlan; patched: PatchedSheet };
    compareSurroundings(before, after, plan, patched);
  }
  compareTables(before, after, meaning);
  compareFilters(before, after, meaning);
  compareNames(before, after, meaning);
}

const NOT_SAVED =
  "The changed workbook did not read back as it was meant, so it was not saved; the file you opened is as it was.";

function differs(where: string): never {
  return refuse(`${NOT_SAVED} (${where})`);
}

/** Old cells are drawn along as the new ones come by. */
class SheetComparer {
  private readonly old: Iterator<PackageCell>;
  private oldCell: PackageCell | undefined;
  private readonly meant: ReadonlyMap<number, PatchedSheet["meant"][number]>;

  constructor(
    before: OpenedPackage,
    private readonly sheetName: string,
    patched: PatchedSheet,
    private readonly renames: readonly ColumnRename[],
  ) {
    this.old = before.cells(sheetName)[Symbol.iterator]();
    this.meant = new Map(patched.meant.map((cell) => [placeOf(cell), cell]));
    this.advance();
  }

  next(cell: PackageCell): void {
    const place = placeOf(cell);
    while (this.oldCell && placeOf(this.oldCell) < place) this.gone();
    const old = this.oldCell && placeOf(this.oldCell) === place ? this.oldCell : undefined;
    if (old) this.advance();
    const meant = this.meant.get(place);
    const isRight = meant ? this.isAsMeant(cell, meant, old) : old !== undefined && this.isAsBefore(cell, old);
    if (!isRight) this.fail(cell);
    if (meant) this.found.add(place);
  }

  end(after: OpenedPackage): void {
    while (this.oldCell) this.gone();
    for (const [place, meant] of this.meant) {
      const isThere = this.found.has(place);
      if (!isThere && ((meant.value ?? null) !== null || meant.formula !== undefined)) this.fail(meant);
      if (
        isThere &&
        meant.numberFormat !== undefined &&
        !isSameFormat(after.numberFormat(meant.styleIndex), meant.numberFormat)
      )
        this.fail(meant);
    }
  }

  private readonly found = new Set<number>();

  /** An old cell that is no more: only where nothing was meant to be left. */
  private gone(): void {
    const old = this.oldCell as PackageCell;
    const meant = this.meant.get(placeOf(old));
    if (!meant || meant.formula !== undefined || (meant.value === undefined ? old.value : meant.value) !== null)
      this.fail(old);
    this.advance();
  }

  private advance(): void {
    this.oldCell = this.old.next().value as PackageCell | undefined;
  }

  private isAsMeant(cell: PackageCell, meant: PatchedSheet["meant"][number], old: PackageCell | undefined): boolean {
    const value = meant.value === undefined ? (old?.value ?? null) : meant.value;
    return (
      sameValue(cell.value, value) &&
      cell.formula?.text === meant.formula &&
      cell.styleIndex === meant.styleIndex &&
      (meant.spill === undefined || cell.formula?.ref === meant.spill)
    );
  }

  private isAsBefore(cell: PackageCell, old: PackageCell): boolean {
    if (cell.styleIndex !== old.styleIndex || cell.type !== old.type || !sameValue(cell.value, old.value)) return false;
    if (!cell.formula || !old.formula) return cell.formula === old.formula;
    const text = this.renames.length === 0 ? old.formula.text : renameColumns(old.formula.text, this.renames);
    const isArray = old.formula.kind === "array" || old.formula.kind === "dataTable";
    return (
      cell.formula.text === text &&
      cell.formula.isDynamic === old.formula.isDynamic &&
      (!isArray || (cell.formula.kind === old.formula.kind && cell.formula.ref === old.formula.ref))
    );
  }

  private fail(cell: { readonly row: number; readonly column: number }): never {
    return differs(`${addressOf(cell.row, cell.column)} on the sheet "${this.sheetName}"`);
  }
}

function placeOf(cell: { readonly row: number; readonly column: number }): number {
  return cell.row * 16_385 + cell.column;
}

function sameValue(one: CellValue, other: CellValue): boolean {
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return one === other;
  return one.error === other.error;
}

/** Every part that nobody changed is still packed as it was, to the byte. */
function compareParts(before: OpenedPackage, after: OpenedPackage, meaning: Meaning): void {
  for (const { name } of before.parts.files.entries) {
    if (meaning.changedParts.has(name)) continue;
    if (after.parts.files.content(name) !== before.parts.files.content(name)) differs(name);
  }
  for (const { name } of after.parts.files.entries) {
    if (!meaning.changedParts.has(name) && before.parts.files.find(name) === undefined) differs(name);
  }
  for (let style = 0; style < before.styleCount; style++) {
    if (after.numberFormat(style) !== before.numberFormat(style)) differs(`cell style ${style}`);
  }
}

function compareSurroundings(
  before: OpenedPackage,
  after: OpenedPackage,
  plan: SheetPlan,
  patched: PatchedSheet,
): void {
  const { name, partName } = plan.sheet;
  const isKept = (local: string): boolean => local !== "sheetData" && !patched.touchedChildren.has(local);
  const textsOf = (opened: OpenedPackage): string[] => {
    const { text } = opened.parts.files.xml(partName);
    const children = factsOf(opened, name).children.filter((child) => isKept(child.name.local));
    return children.map((child) => text.slice(child.start, child.end));
  };
  const was = textsOf(before);
  const is = textsOf(after);
  if (was.length !== is.length || was.some((text, index) => text !== is[index]))
    differs(`the sheet "${name}" beside its cells`);

  const rowsWere = before.layout(name).rows;
  const rowsAre = after.layout(name).rows;
  for (const row of new Set([...rowsWere.keys(), ...rowsAre.keys(), ...plan.hiddenRows.keys()])) {
    const isHidden = plan.hiddenRows.get(row) ?? rowsWere.get(row)?.isHidden ?? false;
    const isSame = rowsWere.get(row)?.height === rowsAre.get(row)?.height;
    if ((rowsAre.get(row)?.isHidden ?? false) !== isHidden || !isSame) differs(`row ${row} of the sheet "${name}"`);
  }
}

function compareTables(before: OpenedPackage, after: OpenedPackage, meaning: Meaning): void {
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
    if (new Set(is.columns.map((column) => column.id)).size !== is.columns.length) differs(`the table "${was.name}"`);
  });
}

function compareFilters(before: OpenedPackage, after: OpenedPackage, meaning: Meaning): void {
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
  if (edit?.remove) return is === undefined;
  const meant = new Map(was?.columns.map((column) => [column.offset, JSON.stringify(column)]));
  for (const [offset, criteria] of edit?.columns ?? []) {
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

function compareNames(before: OpenedPackage, after: OpenedPackage, meaning: Meaning): void {
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

/** Codes are compared as written, save that a workbook may say "General" in its own case. */
function isSameFormat(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase();
}
