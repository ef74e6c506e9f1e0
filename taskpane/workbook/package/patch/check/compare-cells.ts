/** The cells of a changed sheet: those that were edited are as meant, all others as before. */
import { addressOf } from "../../addresses";
import { renameColumns, type ColumnRename } from "../../../../../src/formula/renaming";
import type { OpenedPackage } from "../../opened";
import type { CellValue, PackageCell } from "../../contents";
import type { GroupTexts, SharedFormula } from "../../sheet/groups";
import { type CellStore, KIND, type StoredFormula } from "../../sheet/store";
import { differs } from "./meaning";
import type { PatchedSheet } from "../cells/patch-sheet";

/** Goes through both sheets side by side; a sign of life now and then: the share that is done. */
export function compareCells(
  before: OpenedPackage,
  after: OpenedPackage,
  sheetName: string,
  patched: PatchedSheet,
  renames: readonly ColumnRename[],
): Generator<number, void, void> {
  return new SheetComparer(before, after, sheetName, patched, renames).run();
}

/** A place in a sheet, going from cell to cell. */
class Cursor {
  private readonly groups: GroupTexts;
  private rowAt = 0;
  cell = 0;

  constructor(readonly store: CellStore) {
    this.groups = store.groupTexts();
    this.settle();
  }

  get isThere(): boolean {
    return this.cell < this.store.data.count;
  }

  get place(): number {
    const { rowNumbers, columns } = this.store.data;
    return placeOf({ row: rowNumbers[this.rowAt] as number, column: columns[this.cell] as number });
  }

  advance(): void {
    this.cell++;
    this.settle();
  }

  /** To be asked of every cell with the text of a shared group, in order. */
  read(): PackageCell {
    return this.store.cell(this.cell, this.store.data.rowNumbers[this.rowAt] as number, this.groups);
  }

  /** What a formula without a text of its own follows. */
  followed(formula: StoredFormula): SharedFormula | undefined {
    return formula.kind === "shared" ? this.groups.followed(formula) : undefined;
  }

  private settle(): void {
    const { firstCells, rowCount } = this.store.data;
    while (this.rowAt < rowCount && this.cell >= (firstCells[this.rowAt + 1] as number)) this.rowAt++;
  }
}

const CELLS_AT_A_TIME = 20_000;

const isSameStart = (one: SharedFormula, other: SharedFormula): boolean =>
  one.row === other.row && one.column === other.column && one.text === other.text;

class SheetComparer {
  private readonly old: Cursor;
  private readonly now: Cursor;
  private readonly meant: PatchedSheet["meant"];
  private nextMeant = 0;
  private readonly hasRenames: boolean;

  constructor(
    before: OpenedPackage,
    private readonly after: OpenedPackage,
    private readonly sheetName: string,
    patched: PatchedSheet,
    private readonly renames: readonly ColumnRename[],
  ) {
    this.old = new Cursor(before.store(sheetName));
    this.now = new Cursor(after.store(sheetName));
    this.meant = [...patched.meant].sort((one, other) => placeOf(one) - placeOf(other));
    this.hasRenames = renames.length > 0;
  }

  *run(): Generator<number, void, void> {
    const { old, now } = this;
    const all = now.store.data.count;
    for (; now.isThere; now.advance()) {
      const { place } = now;
      while (old.isThere && old.place < place) this.gone();
      const hasOld = old.isThere && old.place === place;
      const meant = this.meantAt(place);
      if (!meant && hasOld && this.isSameRaw()) old.advance();
      else {
        const cell = now.read();
        const was = hasOld ? old.read() : undefined;
        if (hasOld) old.advance();
        const isRight = meant ? this.isAsMeant(cell, meant, was) : was !== undefined && this.isAsBefore(cell, was);
        if (!isRight || (meant && !this.hasFormat(meant))) this.fail(cell);
      }
      if (now.cell % CELLS_AT_A_TIME === 0) yield now.cell / all;
    }
    while (old.isThere) this.gone();
    this.meantAt(Number.POSITIVE_INFINITY);
  }

  /** What was meant there; what was meant before there is no cell, and must be none that holds something. */
  private meantAt(place: number): PatchedSheet["meant"][number] | undefined {
    for (; this.nextMeant < this.meant.length; this.nextMeant++) {
      const meant = this.meant[this.nextMeant]!;
      const at = placeOf(meant);
      if (at > place) return undefined;
      if (at === place) {
        this.nextMeant++;
        return meant;
      }
      if ((meant.value ?? null) !== null || meant.formula !== undefined) this.fail(meant);
    }
    return undefined;
  }

  private hasFormat({ numberFormat, styleIndex }: PatchedSheet["meant"][number]): boolean {
    return numberFormat === undefined || isSameFormat(this.after.numberFormat(styleIndex), numberFormat);
  }

  /** Whether the two hold the same to the letter, and nothing that reads differently elsewhere. */
  private isSameRaw(): boolean {
    const [one, other] = [this.old.store, this.now.store];
    const [a, b] = [this.old.cell, this.now.cell];
    const kind = one.data.kinds[a];
    if (kind !== other.data.kinds[b] || one.data.styles[a] !== other.data.styles[b]) return false;
    if (kind === KIND.number || kind === KIND.boolean) {
      if (one.data.numbers[a] !== other.data.numbers[b]) return false;
    } else if (kind === KIND.shared && one.strings === other.strings) {
      if (one.data.numbers[a] !== other.data.numbers[b]) return false;
    } else if (!sameValue(one.value(a), other.value(b))) return false;
    const [was, is] = [one.formula(a), other.formula(b)];
    if (!was || !is) return was === is;
    if (this.hasRenames) return false;
    const [followed, follows] = [this.old.followed(was), this.now.followed(is)];
    if (followed && follows) return isSameStart(followed, follows);
    return was.kind === "normal" && is.kind === "normal" && was.group === undefined && was.text === is.text;
  }

  /** An old cell that is no more: only where nothing was meant to be left. */
  private gone(): void {
    const old = this.old.read();
    const meant = this.meantAt(placeOf(old));
    if (!meant || meant.formula !== undefined || (meant.value === undefined ? old.value : meant.value) !== null)
      this.fail(old);
    this.old.advance();
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
