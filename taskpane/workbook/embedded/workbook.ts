/** The port on the embedded grid. */
import { ICommandService } from "@univerjs/core";
import { RemoveDefinedNameMutation, SetDefinedNameMutation } from "@univerjs/engine-formula";
import { SetSelectionsOperation, SetWorksheetActiveOperation, SetWorksheetShowCommand } from "@univerjs/sheets";
import { cellAddress } from "../../../src/columns/formula";
import { CellError } from "../../../src/worksheet/error";
import { overlaps, right } from "../area";
import { unmet } from "../expectations";
import type { Change, Place, Progress, Receipt, TakenBack, Workbook } from "../port";
import { inTheWay, Refusal, spillInTheWay, targetsOf, type FormulaTarget, type Target } from "../target";
import { differenceSentence, doneOf, inReverse, isNameUsed, standing, type Standing, type Written } from "../written";
import { calculated } from "./calculation";
import { OneStep } from "./changes";
import { LiveBook } from "./liveBook";
import { structuredToA1 } from "./formulas/structured";
import { engineNames, TODAY_IN_GRID } from "./names";
import { isTodayName } from "./open/names";
import { geometryNow } from "./tables";
import { addColumns, defineName, narrowTable, restore, writeFormula, type Before, type Desk } from "./write";

/** With what taking back restores; null for a name. */
interface Remembered extends Written {
  readonly before: Before | null;
}

const hasResults = (target: Target): boolean =>
  target.kind === "addColumns" && target.columns.every(({ results }) => results?.length === target.data.rows);

export class GridWorkbookPort extends LiveBook implements Workbook {
  private readonly memory = new WeakMap<Receipt, readonly Remembered[]>();
  private counter = 0;
  private works = 0;

  /** The pane is changing the workbook: what a person may not do by hand is not asked of it. */
  get isAtWork(): boolean {
    return this.works > 0;
  }

  can(): true {
    return true;
  }

  async apply(change: Change, watch: Progress): Promise<Receipt> {
    return this.atWork(() => this.carryOut(change, watch));
  }

  private async atWork<T>(work: () => Promise<T>): Promise<T> {
    this.works++;
    try {
      return await work();
    } finally {
      this.works--;
    }
  }

  private async carryOut(change: Change, watch: Progress): Promise<Receipt> {
    const overview = await this.overview();
    const refused = (refusal: Refusal): Receipt => ({ outcome: "refused", sentence: refusal.sentence, done: [] });
    const changed = await unmet(change.expects, this, overview);
    if (changed) return refused(changed);
    const targets = await targetsOf(change, overview, this);
    if (targets instanceof Refusal) return refused(targets);
    for (const target of targets) {
      const obstacle = await this.obstacle(target);
      if (obstacle) return refused(obstacle);
    }

    const of = targets.reduce((sum, target) => sum + work(target), 0);
    let told = 0;
    const report = (done: number) => watch.report((told = Math.max(told, Math.min(done, of))), of);
    report(0);
    const step = new OneStep(this.engine, this.unitId);
    const desk = this.desk(step);
    const stopped = (): Receipt => {
      step.rollBack();
      return { outcome: "stopped", sentence: "Stopped. Everything was taken back.", done: [] };
    };
    let done = 0;
    const remembered: Remembered[] = [];
    for (const target of targets) {
      await breath();
      if (watch.signal.aborted) return stopped();
      let before: Before | null = null;
      const writing = () => (before = this.write(desk, target));
      if (target.kind === "defineName") {
        const present = this.names().some((name) => name.name.toLowerCase() === target.step.name.toLowerCase());
        if (!present) writing();
        remembered.push({ target, changed: !present, formulas: [[target.step.refersTo]], before: null });
      } else {
        const share = (part: number) => report(done + Math.floor(part * work(target)));
        // With the results at hand nobody waits for the engine, which goes over the same formulas in its own time.
        if (hasResults(target)) writing();
        else await calculated(this.engine, writing, { share, signal: watch.signal });
        if (watch.signal.aborted) return stopped();
        const placed = target.kind === "writeFormula" ? this.placed(target) : target;
        if (placed instanceof Refusal) {
          step.rollBack();
          return refused(placed);
        }
        const area = placed.kind === "addColumns" ? placed.data : target.area;
        const { formulas } = await this.read({ sheet: target.sheet, area }, ["formulas"]);
        remembered.push({ target: placed, changed: true, formulas: formulas!, before });
      }
      done += work(target);
      report(done);
    }
    step.commit();
    const receipt: Receipt = { outcome: "done", sentence: "Done.", done: remembered.map(doneOf) };
    this.memory.set(receipt, remembered);
    return receipt;
  }

  async takeBack(receipt: Receipt, options: { readonly force?: boolean } = {}): Promise<TakenBack> {
    const remembered = receipt.done.length === 0 ? [] : this.memory.get(receipt);
    if (!remembered) return { outcome: "failed", sentence: "This was taken back already, or done in another session." };
    const overview = await this.overview();
    const found: Standing<Remembered>[] = [];
    for (const one of remembered.filter((candidate) => candidate.changed)) {
      const stands = await standing(one, this, overview);
      if (stands instanceof Refusal) return { outcome: "failed", sentence: stands.sentence };
      found.push(stands);
    }
    const cells = found.flatMap((one) => one.differing);
    if (cells.length > 0 && !options.force) return { outcome: "differs", sentence: differenceSentence(cells), cells };
    const step = new OneStep(this.engine, this.unitId);
    const desk = this.desk(step);
    for (const one of inReverse(found)) await this.remove(desk, one);
    step.commit();
    this.memory.delete(receipt);
    return { outcome: "taken back" };
  }

  async reveal(place: Place): Promise<void> {
    const { sheet, area } = this.stand(place);
    const commands = this.engine.injector.get(ICommandService);
    const ids = { unitId: this.unitId, subUnitId: sheet };
    if (this.book.getSheetBySheetId(sheet)?.isSheetHidden()) {
      await commands.executeCommand(SetWorksheetShowCommand.id, ids);
    }
    await commands.executeCommand(SetWorksheetActiveOperation.id, ids);
    const range = {
      startRow: area.top,
      endRow: area.top + area.rows - 1,
      startColumn: area.left,
      endColumn: right(area) - 1,
    };
    const here = { ...range, endRow: area.top, endColumn: area.left };
    const primary = { ...here, actualRow: area.top, actualColumn: area.left, isMerged: false, isMergedMainCell: false };
    await commands.executeCommand(SetSelectionsOperation.id, { ...ids, selections: [{ range, primary, style: null }] });
    // painted only where there is a page
    if (commands.hasCommand("sheet.command.scroll-to-cell")) {
      await commands.executeCommand("sheet.command.scroll-to-cell", { range });
    }
  }

  private async obstacle(target: Target): Promise<Refusal | null> {
    if (target.kind === "defineName") return null;
    const { sheet, area } = target;
    const reader = this.reader(sheet);
    const spill = reader.spills().find((one) => overlaps(one, area));
    if (spill) {
      const row = Math.max(spill.top, area.top);
      const column = Math.max(spill.left, area.left);
      const isAnchor = row === spill.top && column === spill.left;
      if (!isAnchor) return spillInTheWay(cellAddress(row, column));
    }
    return inTheWay(await this.read({ sheet, area }, ["values", "formulas", "merges"]));
  }

  desk(step: OneStep): Desk {
    return {
      unitId: this.unitId,
      step,
      styles: this.book.getStyles(),
      reader: (sheet) => this.reader(sheet),
      unique: () => `added${Date.now().toString(36)}${this.counter++}`,
    };
  }

  private write(desk: Desk, target: Target): Before | null {
    switch (target.kind) {
      case "addColumns":
        return addColumns(desk, target, this.gridTable(target.table));
      case "writeFormula":
        return writeFormula(desk, target, this.forEngine(target));
      case "defineName": {
        const { name, refersTo: text } = target.step;
        const isToday = isTodayName(name, text);
        if (isToday) this.todayNames.add(name.toLowerCase());
        defineName(desk, target, isToday ? TODAY_IN_GRID : text);
        return null;
      }
    }
  }

  private gridTable(name: string | null): string | null {
    if (name === null) return null;
    return this.facts.tables.find((table) => table.name.toLowerCase() === name.toLowerCase())?.gridId ?? null;
  }

  private forEngine({ sheet, area, step }: FormulaTarget): string {
    const sheetName = this.book.getSheetBySheetId(sheet)!.getName();
    const text = step.formula.replace(/^=/, "");
    const tables = this.tables().map(geometryNow);
    return `=${structuredToA1(text, tables, { sheetName, row: area.top, column: area.left }) ?? text}`;
  }

  /** Where a formula's result stands, or that it had no room. */
  private placed(target: FormulaTarget): FormulaTarget | Refusal {
    const reader = this.reader(target.sheet);
    const { top, left } = target.area;
    const value = reader.value(top, left);
    if (value instanceof CellError && value.code === "#SPILL!")
      return new Refusal("The result needs the cells beside or below it, and they are not empty. Choose another cell.");
    return { ...target, area: reader.spillAt(top, left) ?? target.area };
  }

  private async remove(desk: Desk, one: Standing<Remembered>): Promise<void> {
    const { target } = one.written;
    if (target.kind === "defineName") {
      const overview = await this.overview();
      const { name } = target.step;
      const others = { ...overview, names: overview.names.filter((other) => other.name !== name) };
      if (await isNameUsed(name, this, others)) return;
      const held = engineNames(this.engine, this.unitId).find((other) => other.name === name);
      if (!held) return;
      const params = { ...held, unitId: this.unitId };
      desk.step.do({ id: RemoveDefinedNameMutation.id, params }, { id: SetDefinedNameMutation.id, params });
      return;
    }
    const area = target.kind === "writeFormula" ? { ...one.area!, rows: 1, columns: 1 } : one.area!;
    restore(desk, target.sheet, area, one.written.before!);
    if (target.kind !== "addColumns" || target.table === null) return;
    const tableId = this.gridTable(target.table);
    const headers = target.columns.map((column) => column.header);
    if (tableId !== null) narrowTable(desk, target.sheet, tableId, area.left, headers);
  }
}

const work = (target: Target): number => (target.kind === "addColumns" ? target.data.rows * target.columns.length : 1);

/** Lets the page paint and hear. */
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
