/** The cells of a changed sheet: those that were edited are as meant, all others as before. */
import { addressOf } from "../addresses";
import { renameColumns, type ColumnRename } from "../../../../src/formula/renaming";
import type { CellValue, OpenedPackage, PackageCell } from "../opened";
import { differs } from "./meaning";
import type { PatchedSheet } from "./patchSheet";

/** Old cells are drawn along as the new ones come by. */
export class SheetComparer {
  private readonly old: Iterator<PackageCell>;
  private oldCell: PackageCell | undefined;
  private readonly found = new Set<number>();
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

/** Codes are compared as written, save that a workbook may say "General" in its own case. */
function isSameFormat(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase();
}
