/** The port on the embedded grid. */
import { RemoveDefinedNameMutation, SetDefinedNameMutation } from "@univerjs/engine-formula";
import { cellAddress, inA1 } from "../../../../src/columns/formula";
import { CellError } from "../../../../src/worksheet/error";
import { bottom, overlaps, right } from "../../area";
import { checkedTargets, toTakeBack } from "../../change/beforehand";
import { everyCell } from "../../change/new-sheet";
import { goToShown } from "../../change/in-sight";
import type { Change, Place, Progress, Receipt, Sorted, TakenBack, Workbook } from "../../port";
import {
  type ColumnsTarget,
  claimedBy,
  inTheWay,
  noRoom,
  Refusal,
  spillInTheWay,
  type FormulaTarget,
  type NameTarget,
  type Target,
} from "../../change/target";
import { atTheEnd, doneOf, inReverse, isNameUsed, isReformed } from "../../change/written";
import { type Written } from "../../change/standing";
import { calculated, type Watch } from "./calculation";
import { OneStep } from "../steps/changes";
import { LiveBook } from "./live-book";
import { structuredToA1 } from "../formulas/structured";
import { leavingKeyboard } from "../mends/taken-keyboard";
import { engineNames, TODAY_IN_GRID } from "./names";
import { isTodayName } from "../open/names";
import { reveal } from "../page/reveal";
import { removalObstacle } from "../steps/obstacles";
import { risingOrder, sortTarget } from "../../change/sorted";
import { reorder } from "../steps/sorting";
import { carryOut, type ForEngine, type TakeBack } from "../steps/steps";
import { geometryNow } from "./tables";
import { tieOf } from "../steps/ties";
import { defineName, type Desk } from "../steps/write";
import { STOPPED } from "../../change/refusal";

/** Null for a name. */
interface Remembered extends Written {
  readonly takeBack: TakeBack | null;
}

function hasResults(target: Target): boolean {
  if (target.kind === "addSheet")
    return everyCell(target.step.sheet).every(({ formula, value }) => formula === undefined || value !== undefined);
  if (target.kind === "refreshColumn") return target.step.results?.length === target.area.rows;
  return (
    target.kind === "addColumns" &&
    target.columns.every((column) => "values" in column || column.results?.length === target.data.rows)
  );
}

const LOCKED_STRUCTURE =
  "This workbook is protected against new sheets. Take that protection off in Excel (Review, Protect Workbook), then try again.";

const HELD = "The workbook is being opened or saved. Nothing was changed; try again once that is done.";

export class GridWorkbookPort extends LiveBook implements Workbook {
  private readonly memory = new WeakMap<Receipt, readonly Remembered[]>();
  private counter = 0;
  private works = 0;
  /** It is being opened or saved. */
  private isHeld = false;

  /** The pane is changing the workbook: what a person may not do by hand is not asked of it. */
  get isAtWork(): boolean {
    return this.works > 0;
  }

  can(): true {
    return true;
  }

  /** While this goes on the pane changes nothing; undefined, and nothing done, while something is going on already. */
  async alone<T>(work: () => Promise<T>): Promise<T | undefined> {
    if (this.isHeld || this.isAtWork) return undefined;
    this.isHeld = true;
    try {
      return await work();
    } finally {
      this.isHeld = false;
    }
  }

  async apply(change: Change, watch: Progress): Promise<Receipt> {
    if (this.isHeld) return { outcome: "refused", sentence: HELD, done: [] };
    return this.atWork(() => this.carryOut(change, watch));
  }

  async sort(table: string, by: string): Promise<Sorted> {
    if (this.isHeld) return { outcome: "refused", sentence: HELD };
    return this.atWork(async () => {
      const target = sortTarget(this.overviewNow(), table, by);
      if (target instanceof Refusal) return { outcome: "refused", sentence: target.sentence };
      const { sheet, data } = target;
      const range = {
        startRow: data.top,
        endRow: bottom(data) - 1,
        startColumn: data.left,
        endColumn: right(data) - 1,
      };
      const tie = tieOf(this.engine, this, sheet, range);
      if (tie !== undefined) return { outcome: "refused", sentence: tie };
      const reader = this.reader(sheet);
      const keys = Array.from({ length: data.rows }, (_, r) => reader.value(data.top + r, data.left + target.column));
      const from = risingOrder(keys).map((row) => data.top + row);
      reorder(this.engine, this, sheet, range, (row) => from[row - data.top]!);
      return { outcome: "sorted", rows: data.rows };
    });
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
    const refused = (refusal: Refusal): Receipt => ({ outcome: "refused", sentence: refusal.sentence, done: [] });
    const targets = await checkedTargets(change, this, (target) => this.obstacle(target));
    if (targets instanceof Refusal) return refused(targets);

    const of = workOf(targets);
    let told = 0;
    const report = (done: number) => watch.report((told = Math.max(told, Math.min(done, of))), of);
    report(0);
    const step = new OneStep(this.engine, this.unitId);
    const desk = this.desk(step);
    const stopped = (): Receipt => {
      step.rollBack();
      return { outcome: "stopped", sentence: STOPPED, done: [] };
    };
    let done = 0;
    const remembered: Remembered[] = [];
    for (let next = 0; next < targets.length;) {
      await breath();
      if (watch.signal.aborted) return stopped();
      const together = stretch(targets, next).map((target) => this.named(target));
      const share = (part: number) => report(done + Math.floor(part * workOf(together)));
      const made = await this.make(desk, together, { share, signal: watch.signal });
      if (watch.signal.aborted) return stopped();
      if (made instanceof Refusal) {
        step.rollBack();
        return refused(made);
      }
      remembered.push(...made);
      next += together.length;
      done += workOf(together);
      report(done);
    }
    step.commit();
    const receipt: Receipt = { outcome: "done", sentence: "Done.", done: remembered.map(doneOf) };
    this.memory.set(receipt, await Promise.all(remembered.map((one) => atTheEnd(one, this))));
    await leavingKeyboard(() => goToShown(targets, this));
    return receipt;
  }

  /** A sheet that comes in goes by an id of its own from the start. */
  private named(target: Target): Target {
    if (target.kind !== "addSheet") return target;
    const sheet = `added-${Date.now().toString(36)}-${this.counter++}`;
    this.addedSheets.set(sheet, target.step.sheet);
    return { ...target, sheet };
  }

  /** One step, or several on rows: the engine then works out what hangs on them once. */
  private async make(desk: Desk, targets: readonly Target[], watch: Watch): Promise<Remembered[] | Refusal> {
    const [target] = targets;
    if (target?.kind === "defineName") {
      const present = this.names().some((name) => name.name.toLowerCase() === target.step.name.toLowerCase());
      if (!present) this.define(desk, target);
      return [{ target, changed: !present, formulas: [[target.step.refersTo]], takeBack: null }];
    }
    const takeBacks: TakeBack[] = [];
    const rest: (() => void)[] = [];
    const begin = () => {
      for (const one of targets)
        if (one.kind !== "defineName") takeBacks.push(carryOut(desk, one, this.forEngine, (work) => rest.push(work)));
    };
    if (targets.every(needsNoWaiting)) {
      await this.inSlices(async () => {
        begin();
        for (const [i, work] of rest.entries()) {
          await breath();
          if (watch.signal?.aborted) return;
          work();
          watch.share?.((i + 1) / rest.length);
        }
      });
      if (watch.signal?.aborted) return [];
    } else
      await calculated(
        this.engine,
        () => {
          begin();
          for (const work of rest) work();
        },
        watch,
      );
    const made: Remembered[] = [];
    for (const [i, one] of targets.entries()) {
      const placed = one.kind === "writeFormula" ? this.placed(one) : one;
      if (placed instanceof Refusal) return placed;
      const remembered = { target: placed, changed: true, takeBack: takeBacks[i]! };
      made.push(
        placed.kind === "addColumns"
          ? {
              ...remembered,
              get formulas() {
                return addedFormulas(placed);
              },
            }
          : { ...remembered, formulas: await this.formulasOf(placed) },
      );
    }
    return made;
  }

  private async formulasOf(target: Target): Promise<Written["formulas"]> {
    if (isReformed(target)) return (await this.read(target, ["formulas"])).formulas!;
    if (target.kind !== "writeFormula") return [];
    const area = { ...target.area, rows: 1, columns: 1 };
    return (await this.read({ sheet: target.sheet, area }, ["formulas"])).formulas!;
  }

  async takeBack(receipt: Receipt, options: { readonly force?: boolean } = {}): Promise<TakenBack> {
    if (this.isHeld) return { outcome: "failed", sentence: HELD };
    return this.atWork(() => this.undo(receipt, options.force ?? false));
  }

  private async undo(receipt: Receipt, force: boolean): Promise<TakenBack> {
    const back = await toTakeBack(receipt, this.memory, this, force);
    if (!("found" in back)) return back;
    const { found } = back;
    const step = new OneStep(this.engine, this.unitId);
    const desk = this.desk(step);
    const written = found.filter((one) => one.written.takeBack !== null);
    const removing = () => {
      // a sheet that is gone already has no area
      for (const one of inReverse(written)) if (one.area) one.written.takeBack!(desk, one.area);
    };
    if (written.some(({ written: { target } }) => isInRows(target) || isBack(target)))
      await calculated(this.engine, removing);
    else removing();
    for (const { written: one } of inReverse(found))
      if (one.target.kind === "defineName") await this.removeName(desk, one.target);
    step.commit();
    this.memory.delete(receipt);
    return { outcome: "taken back" };
  }

  reveal(place: Place): Promise<void> {
    const { sheet, area } = this.stand(place);
    const isHidden = this.book.getSheetBySheetId(sheet)?.isSheetHidden() === 1;
    return reveal(this.engine, { unitId: this.unitId, subUnitId: sheet }, area, isHidden);
  }

  private async obstacle(target: Target): Promise<Refusal | null> {
    if (target.kind === "removeRows") {
      const sentence = removalObstacle(this.desk(new OneStep(this.engine, this.unitId)), this, target);
      return sentence === undefined ? null : new Refusal(sentence);
    }
    if (target.kind === "addSheet")
      return this.bookFacts.file?.opened.structureIsLocked ? new Refusal(LOCKED_STRUCTURE) : null;
    const claimed = claimedBy(target);
    if (!claimed) return null;
    const { sheet, area } = claimed;
    const spill = this.reader(sheet)
      .spills()
      .find((one) => overlaps(one, area));
    if (spill) {
      const row = Math.max(spill.top, area.top);
      const column = Math.max(spill.left, area.left);
      const isAnchor = row === spill.top && column === spill.left;
      if (!isAnchor) return spillInTheWay(cellAddress(row, column));
    }
    return inTheWay(await this.read(claimed, ["values", "formulas", "merges"]));
  }

  desk(step: OneStep): Desk {
    return {
      engine: this.engine,
      unitId: this.unitId,
      today: this.today,
      step,
      styles: this.book.getStyles(),
      reader: (sheet) => this.reader(sheet),
      sheets: () => this.book.getSheets(),
      table: (name) => this.tableNamed(name)!,
      filteredAtOpening: (sheet, table) => this.filteredAtOpening(sheet, table),
      unique: () => `added${Date.now().toString(36)}${this.counter++}`,
    };
  }

  private define(desk: Desk, target: NameTarget): void {
    const { name, refersTo } = target.step;
    const isToday = isTodayName(name, refersTo);
    if (isToday) this.todayNames.add(name.toLowerCase());
    defineName(desk, target, isToday ? TODAY_IN_GRID : refersTo);
  }

  private readonly forEngine: ForEngine = (formula, sheetName, row, column) => {
    const text = formula.replace(/^=/, "");
    const tables = this.tables().map(geometryNow);
    return `=${structuredToA1(text, tables, { sheetName, row, column }) ?? text}`;
  };

  /** Where a formula's result stands, or that it had no room. */
  private placed(target: FormulaTarget): FormulaTarget | Refusal {
    const reader = this.reader(target.sheet);
    const { top, left } = target.area;
    const value = reader.value(top, left);
    if (value instanceof CellError && value.code === "#SPILL!") return noRoom;
    return { ...target, area: reader.spillAt(top, left) ?? target.area };
  }

  private async removeName(desk: Desk, { step: { name } }: NameTarget): Promise<void> {
    if (await isNameUsed(name, this)) return;
    const held = engineNames(this.engine, this.unitId).find((other) => other.name === name);
    if (!held) return;
    const params = { ...held, unitId: this.unitId };
    desk.step.do({ id: RemoveDefinedNameMutation.id, params }, { id: SetDefinedNameMutation.id, params });
  }
}

/** As they were written: asked for when somebody takes them back, because to read 300,000 cells takes seconds. */
const addedFormulas = ({ data, columns, listLeft }: ColumnsTarget): Written["formulas"] =>
  Array.from({ length: data.rows }, (_, r) =>
    columns.map((added) => ("formula" in added ? `=${inA1(added.formula, data.top + r, listLeft)}` : null)),
  );

/** Results of formulas that come back are worked out before anybody looks. */
const isBack = ({ kind }: Target): boolean => kind === "changeColumn" || kind === "reenterFormulas";

const isInRows = ({ kind }: Target): boolean =>
  kind === "appendRows" || kind === "changeRow" || kind === "removeRows" || kind === "writeNamed";

/** With the results at hand nobody waits for the engine, which goes over the same formulas in its own time. */
const needsNoWaiting = (target: Target): boolean => hasResults(target) || target.kind === "showRows";

/** The target there, with those on rows that come right behind it. */
function stretch(targets: readonly Target[], from: number): readonly Target[] {
  let end = from + 1;
  if (isInRows(targets[from]!)) while (end < targets.length && isInRows(targets[end]!)) end++;
  return targets.slice(from, end);
}

const workOf = (targets: readonly Target[]): number => targets.reduce((sum, target) => sum + work(target), 0);

const work = (target: Target): number => (target.kind === "addColumns" ? target.data.rows * target.columns.length : 1);

/** Lets the page paint and hear. */
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
