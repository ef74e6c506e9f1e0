/** The port on Excel, through Microsoft's library as of 2022 (requirement set ExcelApi 1.14 and below). */
import { cellAddress } from "../../../src/columns/formula";
import { checkedTargets, toTakeBack } from "../change/beforehand";
import { goToShown } from "../change/in-sight";
import type {
  Area,
  Block,
  Change,
  Facet,
  Overview,
  Place,
  Progress,
  Receipt,
  Sorted,
  StepKind,
  Stop,
  TakenBack,
  Workbook,
} from "../port";
import {
  claimedBy,
  inTheWay,
  Refusal,
  spillInTheWay,
  type ColumnsTarget,
  type FormulaTarget,
  type NameTarget,
  type SheetTarget,
  type Target,
} from "../change/target";
import type { Written } from "../change/standing";
import { atTheEnd, doneOf, inReverse, isNameUsed, isReformed, isRemembered } from "../change/written";
import { addSheet, removeSheet } from "./steps/add-sheet";
import { addColumns, noTraces, removeColumns } from "./steps/columns";
import { sortTarget } from "../change/sorted";
import { listen } from "./events";
import { defineName, removeFormula, removeName, writeFormula } from "./steps/single";
import { overview } from "./overview";
import { standOf } from "./place";
import { read } from "./read";
import { select } from "./select";
import { rowStep, workOf, type CellsTarget } from "./steps/row-steps";
import { errorSentence, TOO_OLD } from "./sentences";
import { sortTable } from "./steps/sort-table";

/** A step as far as it came, with what is needed to undo it. */
interface Made extends Written {
  readonly undo: (area: Area | null) => Promise<void>;
}

/** `Table.resize` came with this set; Excel 2021 has it. */
const NEEDED = "1.13";

export class ExcelWorkbook implements Workbook {
  private readonly memory = new WeakMap<Receipt, readonly Made[]>();

  can(_kind: StepKind): true | string {
    return Office.context.requirements.isSetSupported("ExcelApi", NEEDED) || TOO_OLD;
  }

  overview(): Promise<Overview> {
    return overview();
  }

  read(place: Place, what: readonly Facet[]): Promise<Block> {
    return read(place, what);
  }

  async apply(change: Change, watch: Progress): Promise<Receipt> {
    const made: Made[] = [];
    try {
      const targets = await checkedTargets(change, this, async (target) => {
        const claimed = claimedBy(target);
        return claimed && this.obstacle(claimed.sheet, claimed.area);
      });
      if (targets instanceof Refusal) return refused(targets.sentence);
      const outcome = await this.carryOut(targets, made, watch);
      if (outcome instanceof Refusal) return await this.abandon(made, outcome);
      const receipt: Receipt = { outcome: "done", sentence: "Done.", done: made.map(doneOf) };
      this.memory.set(receipt, await this.remembered(made));
      await goToShown(targets, this);
      return receipt;
    } catch (error) {
      return made.length > 0 ? this.abandon(made, errorSentence(error)) : refused(errorSentence(error));
    }
  }

  async sort(table: string, by: string): Promise<Sorted> {
    try {
      const target = sortTarget(await this.overview(), table, by);
      if (target instanceof Refusal) return { outcome: "refused", sentence: target.sentence };
      await sortTable(target);
      return { outcome: "sorted", rows: target.data.rows };
    } catch (error) {
      return { outcome: "refused", sentence: errorSentence(error) };
    }
  }

  async takeBack(receipt: Receipt, options: { readonly force?: boolean } = {}): Promise<TakenBack> {
    try {
      const back = await toTakeBack(receipt, this.memory, this, options.force ?? false);
      if (!("found" in back)) return back;
      await this.remove(back.found);
      this.memory.delete(receipt);
      return { outcome: "taken back" };
    } catch (error) {
      return { outcome: "failed", sentence: errorSentence(error) };
    }
  }

  reveal(place: Place): Promise<void> {
    return Excel.run(async (context) => {
      const { sheet, area } = await standOf(context, place);
      sheet.load("visibility");
      await context.sync();
      if (sheet.visibility !== Excel.SheetVisibility.visible) sheet.visibility = Excel.SheetVisibility.visible;
      sheet.activate();
      await select(context, sheet, area);
    });
  }

  onChange(tell: () => void): Stop {
    return listen(tell);
  }

  private async obstacle(sheet: string, area: Area): Promise<Refusal | null> {
    const block = await this.read({ sheet, area }, ["values", "formulas", "merges"]);
    const first = block.values!.flatMap((row, r) => row.flatMap((value, c) => (value === null ? [] : [{ r, c }])))[0];
    if (!first) return inTheWay(block);
    const [row, column] = [area.top + first.r, area.left + first.c];
    const spills = await Excel.run(async (context) => {
      const cell = context.workbook.worksheets.getItem(sheet).getRangeByIndexes(row, column, 1, 1);
      const parent = cell.getSpillParentOrNullObject();
      parent.load("address");
      await context.sync();
      return !parent.isNullObject;
    });
    return spills ? spillInTheWay(cellAddress(row, column)) : inTheWay(block);
  }

  /** Carries out one target after the other; what is made is noted for undoing, begun or done. */
  private async carryOut(targets: readonly Target[], made: Made[], watch: Progress): Promise<true | Refusal> {
    const of = targets.reduce((sum, target) => sum + work(target), 0);
    let done = 0;
    const goesOn = (amount: number): boolean => {
      done += amount;
      watch.report(done, of);
      return !watch.signal.aborted;
    };
    if (!goesOn(0)) return STOPPED;
    for (const target of targets) {
      const refusal = await this.make(target, made, goesOn);
      if (refusal) return refusal;
      if (watch.signal.aborted) return STOPPED;
    }
    return true;
  }

  private async make(target: Target, made: Made[], goesOn: (amount: number) => boolean): Promise<Refusal | null> {
    if (target.kind === "addColumns") await this.makeColumns(target, made, goesOn);
    else if (target.kind === "addSheet") {
      await this.makeSheet(target, made);
      goesOn(1);
    } else if (target.kind === "defineName" || target.kind === "writeFormula") {
      const one = target.kind === "defineName" ? await this.makeName(target) : await this.makeFormula(target);
      if (one instanceof Refusal) return one;
      made.push(one);
      goesOn(1);
    } else return this.makeRows(target, made, goesOn);
    return null;
  }

  private async makeRows(
    target: CellsTarget,
    made: Made[],
    goesOn: (amount: number) => boolean,
  ): Promise<Refusal | null> {
    const { carryOut, undo } = rowStep(target);
    made.push({ target, changed: true, formulas: [], undo: (area) => undo(area ?? target.area) });
    return carryOut(goesOn);
  }

  /** What cells hold now that all steps are done: a later step may have changed an earlier one's row. */
  private async remembered(made: readonly Made[]): Promise<readonly Made[]> {
    const all: Made[] = [];
    for (const one of made) {
      const { target } = one;
      if (target.kind === "changeColumn") {
        all.push(await atTheEnd(one, this));
        continue;
      }
      const isKept = isRemembered(target) || isReformed(target);
      const block = isKept ? await this.read(target, ["values", "formulas"]) : null;
      all.push(block ? { ...one, values: block.values!, formulas: block.formulas! } : one);
    }
    return all;
  }

  private async makeColumns(target: ColumnsTarget, made: Made[], goesOn: (cells: number) => boolean): Promise<void> {
    const traces = noTraces();
    const undo = (area: Area | null) =>
      Excel.run((context) => removeColumns(context, target.table, target.sheet, area ?? target.area, traces));
    const at = made.push({ target, changed: true, formulas: [], undo }) - 1;
    await Excel.run((context) => addColumns(context, target, traces, goesOn));
    const { formulas } = await this.read({ sheet: target.sheet, area: target.data }, ["formulas"]);
    made[at] = { target, changed: true, formulas: formulas!, undo };
  }

  /** Noted as soon as the sheet is there: what fails or is stopped later takes it away again. */
  private async makeSheet(target: SheetTarget, made: Made[]): Promise<void> {
    await addSheet(target, (sheet) => {
      made.push({ target: { ...target, sheet }, changed: true, formulas: [], undo: () => removeSheet(sheet) });
    });
  }

  private async makeFormula(target: FormulaTarget): Promise<Made | Refusal> {
    const written = await writeFormula(target);
    if (written instanceof Refusal) return written;
    return { ...written, undo: () => removeFormula(target, written.formatBefore) };
  }

  private async makeName(target: NameTarget): Promise<Made> {
    const undo = async (): Promise<void> => {
      if (!(await isNameUsed(target.step.name, this))) await removeName(target.step.name);
    };
    return { ...(await defineName(target)), undo };
  }

  /** Takes back all that was made so far; where that fails too, the receipt says what stands. */
  private async abandon(made: readonly Made[], why: Refusal | string): Promise<Receipt> {
    try {
      await this.remove(made.filter((one) => one.changed).map((written) => ({ written, area: null })));
      if (why instanceof Refusal && why !== STOPPED) return refused(why.sentence);
      const sentence = `${typeof why === "string" ? why : why.sentence} Everything was taken back.`;
      return { outcome: "stopped", sentence, done: [] };
    } catch (error) {
      const sentence = `${typeof why === "string" ? why : why.sentence} Not everything could be taken back: ${errorSentence(error)}`;
      const receipt: Receipt = { outcome: "stopped", sentence, done: made.map(doneOf) };
      this.memory.set(receipt, made);
      return receipt;
    }
  }

  /** @param found with the area where a step's cells stand now; null for where they were put */
  private async remove(found: readonly { readonly written: Made; readonly area: Area | null }[]): Promise<void> {
    for (const { written, area } of inReverse(found)) await written.undo(area);
  }
}

const STOPPED = new Refusal("Stopped.");

const refused = (sentence: string): Receipt => ({ outcome: "refused", sentence, done: [] });

function work(target: Target): number {
  if (target.kind === "addColumns") return target.data.rows * target.columns.length;
  const isOne = target.kind === "defineName" || target.kind === "writeFormula" || target.kind === "addSheet";
  return isOne ? 1 : workOf(target);
}
