/** The port on a workbook in memory: honest enough to hold the other hosts to. */
import { cellAddress, inA1, inTable } from "../../../src/columns/formula";
import { bottom, right } from "../area";
import { checkedTargets, standings, toTakeBack } from "../change/beforehand";
import { goToShown } from "../change/in-sight";
import type { Change, Progress, Receipt, Sorted, TakenBack, Workbook } from "../port";
import {
  claimedBy,
  type ColumnsTarget,
  type FormulaTarget,
  inTheWay,
  noRoom,
  type NamedCellTarget,
  type RefreshTarget,
  Refusal,
  type RowTarget,
  type SheetTarget,
  type ShowRowsTarget,
  spillInTheWay,
  type Target,
} from "../change/target";
import { atTheEnd, doneOf, inReverse, isNameUsed } from "../change/written";
import { type Standing, type Written } from "../change/standing";
import { GENERAL, type Calculate } from "./book";
import type { WorkbookDescription } from "./description";
import { FakeLiveBook } from "./live-book";
import { addSheet } from "./add-sheet";
import { changeColumn, reenterFormulas, refreshColumn } from "./refresh";
import { sortTarget } from "../change/sorted";
import { appendRows, changeRow, removeRows, showRows, sortRows, writeNamed, type TakeBack } from "./rows";
import { STOPPED } from "../change/refusal";

export interface FakeOptions {
  /** Works out what formulas give; without it a new formula's cell shows nothing. */
  readonly calculate?: Calculate;
  /** Awaited between blocks of rows: makes the fake slow, lets a test press stop or edit meanwhile. */
  readonly between?: (done: number, of: number) => void | Promise<void>;
  readonly rowsPerBlock?: number;
}

/** How a cell looked before something was written into it. */
interface Look {
  readonly row: number;
  readonly column: number;
  readonly format: string;
  readonly bold: boolean;
}

export class FakeWorkbook extends FakeLiveBook implements Workbook {
  private readonly memory = new WeakMap<Receipt, readonly Written[]>();
  private readonly looks = new WeakMap<Target, readonly Look[]>();
  private readonly takeBacks = new WeakMap<Target, TakeBack>();

  constructor(
    description: WorkbookDescription,
    private readonly options: FakeOptions = {},
  ) {
    super(description, options.calculate);
  }

  can(): true {
    return true;
  }

  async apply(change: Change, watch: Progress): Promise<Receipt> {
    const refused = (refusal: Refusal): Receipt => ({ outcome: "refused", sentence: refusal.sentence, done: [] });
    const targets = await checkedTargets(change, this, (target) => this.obstacle(target));
    if (targets instanceof Refusal) return refused(targets);

    const of = targets.reduce((sum, target) => sum + work(target), 0);
    let done = 0;
    const step = async (amount: number) => {
      done += amount;
      watch.report(done, of);
      await this.options.between?.(done, of);
    };
    await step(0);
    const written: Written[] = [];
    for (const target of targets) {
      if (watch.signal.aborted) break;
      if (target.kind === "addColumns") written.push(await this.addColumns(target, watch, step));
      else written.push(this.write(target));
      const spilled = target.kind === "writeFormula" ? this.failedSpill(target) : null;
      if (spilled) {
        await this.rollBack(written);
        return refused(spilled);
      }
      if (target.kind !== "addColumns") await step(1);
    }
    this.tell();
    if (watch.signal.aborted) {
      await this.rollBack(written);
      return { outcome: "stopped", sentence: STOPPED, done: [] };
    }
    const receipt: Receipt = { outcome: "done", sentence: "Done.", done: written.map(doneOf) };
    this.memory.set(receipt, await Promise.all(written.map((one) => atTheEnd(one, this))));
    await goToShown(targets, this);
    return receipt;
  }

  async sort(table: string, by: string): Promise<Sorted> {
    const target = sortTarget(await this.overview(), table, by);
    if (target instanceof Refusal) return { outcome: "refused", sentence: target.sentence };
    sortRows(this.sheet(target.sheet), target);
    this.tell();
    return { outcome: "sorted", rows: target.data.rows };
  }

  async takeBack(receipt: Receipt, options: { readonly force?: boolean } = {}): Promise<TakenBack> {
    const back = await toTakeBack(receipt, this.memory, this, options.force ?? false);
    if (!("found" in back)) return back;
    await this.remove(back.found);
    this.memory.delete(receipt);
    this.tell();
    return { outcome: "taken back" };
  }

  private async obstacle(target: Target): Promise<Refusal | null> {
    const claimed = claimedBy(target);
    if (!claimed) return null;
    const { area } = claimed;
    const sheet = this.sheet(claimed.sheet);
    for (let row = area.top; row < bottom(area); row++)
      for (let column = area.left; column < right(area); column++) {
        const spill = sheet.spillAt(row, column);
        if (spill && !(spill.area.top === row && spill.area.left === column))
          return spillInTheWay(cellAddress(row, column));
      }
    return inTheWay(await this.read(claimed, ["values", "formulas", "merges"]));
  }

  private write(target: Exclude<Target, ColumnsTarget>): Written {
    if (target.kind === "defineName") return this.defineName(target);
    if (target.kind === "writeFormula") return this.writeFormula(target);
    if (target.kind === "addSheet") return this.addSheet(target);
    if (target.kind === "refreshColumn") return this.refresh(target);
    if (target.kind === "reenterFormulas") {
      this.takeBacks.set(target, reenterFormulas(this.sheet(target.sheet), target));
      const { top, left, rows } = target.area;
      const sheet = this.sheet(target.sheet);
      return {
        target,
        changed: true,
        formulas: Array.from({ length: rows }, (_, r) => [sheet.cell(top + r, left)?.formula ?? null]),
      };
    }
    if (target.kind === "changeColumn") {
      this.takeBacks.set(target, changeColumn(this.sheet(target.sheet), target));
      return { target, changed: true, formulas: [] };
    }
    this.takeBacks.set(target, this.inRows(target));
    return { target, changed: true, formulas: [] };
  }

  private addSheet(target: SheetTarget): Written {
    const { sheet } = target.step;
    const made = addSheet(this.book, sheet);
    const placed = { ...target, sheet: made.id };
    this.takeBacks.set(placed, () => this.book.removeSheet(made));
    return { target: placed, changed: true, formulas: [] };
  }

  private refresh(target: RefreshTarget): Written {
    const sheet = this.sheet(target.sheet);
    this.takeBacks.set(target, refreshColumn(sheet, target));
    const { top, left, rows } = target.area;
    const formulas = Array.from({ length: rows }, (_, r) => [sheet.cell(top + r, left)?.formula ?? null]);
    return { target, changed: true, formulas };
  }

  private inRows(target: RowTarget | NamedCellTarget | ShowRowsTarget): TakeBack {
    switch (target.kind) {
      case "appendRows":
        return appendRows(this.book, target);
      case "changeRow":
        return changeRow(this.book, target);
      case "removeRows":
        return removeRows(this.book, target);
      case "writeNamed":
        return writeNamed(this.sheet(target.sheet), target);
      case "showRows":
        return showRows(this.book, this.sheet(target.sheet), target);
    }
  }

  private async addColumns(target: ColumnsTarget, watch: Progress, step: (amount: number) => Promise<void>) {
    const sheet = this.sheet(target.sheet);
    this.rememberLooks(target);
    const table = target.table === null ? null : this.book.table(target.table)!.table;
    if (table) {
      table.area = { ...table.area, columns: table.area.columns + target.columns.length };
      table.columns.push(...target.columns.map((column) => column.header));
    }
    target.columns.forEach((column, c) => {
      const beside = sheet.cell(target.headerRow, target.area.left - 1);
      sheet.type(target.headerRow, target.area.left + c, column.header);
      sheet.made(target.headerRow, target.area.left + c).bold = beside?.bold ?? false;
    });
    const block = this.options.rowsPerBlock ?? 500;
    for (let from = target.data.top; from < bottom(target.data) && !watch.signal.aborted; from += block) {
      const to = Math.min(from + block, bottom(target.data));
      for (let row = from; row < to; row++)
        target.columns.forEach((column, c) => {
          const cell = sheet.made(row, target.data.left + c);
          cell.format = column.format;
          if ("values" in column) {
            const value = column.values[row - target.data.top] ?? null;
            cell.value = value === "" ? null : value;
          } else
            sheet.type(
              row,
              target.data.left + c,
              "=" + (table ? inTable(column.formula, table.name) : inA1(column.formula, row, target.listLeft)),
            );
        });
      await step((to - from) * target.columns.length);
    }
    const { formulas } = await this.read({ sheet: target.sheet, area: target.data }, ["formulas"]);
    return { target, changed: true, formulas: formulas! };
  }

  private writeFormula(target: FormulaTarget): Written {
    const { row, column, formula, format } = target.step;
    const sheet = this.sheet(target.sheet);
    this.rememberLooks(target);
    sheet.type(row, column, formula);
    if (format !== undefined) sheet.made(row, column).format = format;
    const spill = sheet.spillAt(row, column);
    const placed = spill ? { ...target, area: spill.area } : target;
    this.looks.set(placed, this.looks.get(target)!);
    return { target: placed, changed: true, formulas: [[formula]] };
  }

  private failedSpill(target: FormulaTarget): Refusal | null {
    const value = this.sheet(target.sheet).value(target.step.row, target.step.column);
    return value !== null && typeof value === "object" && value.code === "#SPILL!" ? noRoom : null;
  }

  private rememberLooks(target: ColumnsTarget | FormulaTarget): void {
    const { area } = target;
    const sheet = this.sheet(target.sheet);
    const looks: Look[] = [];
    for (let row = area.top; row < bottom(area); row++)
      for (let column = area.left; column < right(area); column++) {
        const { format, bold } = sheet.cell(row, column) ?? { format: GENERAL, bold: false };
        looks.push({ row, column, format, bold });
      }
    this.looks.set(target, looks);
  }

  private defineName(target: Extract<Target, { kind: "defineName" }>): Written {
    const { name, refersTo } = target.step;
    const present = this.book.name(name);
    if (!present) this.book.names.push({ name, refersTo, value: null });
    return { target, changed: !present, formulas: [[refersTo]] };
  }

  /** Nobody else had a hand in it yet: all stands as it was just written. */
  private async rollBack(written: readonly Written[]): Promise<void> {
    const found = await standings(await Promise.all(written.map((one) => atTheEnd(one, this))), this);
    if (found instanceof Refusal) throw new Error(found.sentence);
    await this.remove(found);
  }

  private async remove(found: readonly Standing[]): Promise<void> {
    for (const { written: one, area } of inReverse(found)) {
      const { target } = one;
      const takeBack = this.takeBacks.get(target);
      if (takeBack) {
        if (target.kind !== "addSheet" || area) takeBack(area!);
        continue;
      }
      if (target.kind === "defineName") {
        if (await isNameUsed(target.step.name, this)) continue;
        this.book.names = this.book.names.filter((name) => name.name !== target.step.name);
        continue;
      }
      if (target.kind !== "addColumns" && target.kind !== "writeFormula") continue;
      const sheet = this.sheet(target.sheet);
      sheet.clear(area!);
      for (const { row, column, ...look } of this.looks.get(target) ?? []) Object.assign(sheet.made(row, column), look);
      if (target.kind === "writeFormula" || target.table === null) continue;
      const { table } = this.book.table(target.table)!;
      const first = table.columns.indexOf(target.columns[0]!.header);
      table.columns.splice(first, target.columns.length);
      table.area = { ...table.area, columns: table.columns.length };
    }
  }
}

const work = (target: Target): number => (target.kind === "addColumns" ? target.data.rows * target.columns.length : 1);

/** An in-memory workbook that holds what is described. */
export const fakeWorkbook = (description: WorkbookDescription, options?: FakeOptions): FakeWorkbook =>
  new FakeWorkbook(description, options);
