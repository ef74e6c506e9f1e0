/** The port on the embedded grid. */
import { ICommandService, type Workbook as GridWorkbook } from "@univerjs/core";
import type { IWorkbookData } from "@univerjs/core";
import { RemoveDefinedNameMutation, SetDefinedNameMutation } from "@univerjs/engine-formula";
import {
  SetSelectionsOperation,
  SetWorksheetActiveOperation,
  SetWorksheetShowCommand,
  SheetsSelectionsService,
} from "@univerjs/sheets";
import { cellAddress } from "../../../src/columns/formula";
import { CellError } from "../../../src/worksheet/error";
import { overlaps, parseArea, right } from "../area";
import { unmet } from "../expectations";
import type {
  Area,
  Block,
  Change,
  Facet,
  NameOverview,
  Overview,
  Place,
  Progress,
  Receipt,
  SheetId,
  Stop,
  TakenBack,
  Workbook,
} from "../port";
import { inTheWay, Refusal, spillInTheWay, targetsOf, type FormulaTarget, type Target } from "../target";
import { differenceSentence, doneOf, inReverse, isNameUsed, standing, type Standing, type Written } from "../written";
import { setGridToday } from "../../../functions/grid";
import { calculated } from "./calculation";
import { OneStep, registerChanges } from "./changes";
import type { Engine } from "./engine";
import type { BookFacts } from "./facts";
import { structuredToA1 } from "./formulas/structured";
import { mendReader } from "./mended";
import { engineNames, moveToday, refersTo, TODAY_IN_GRID } from "./names";
import { isTodayName } from "./open/names";
import { placeKey, spillText, type OpeningResults } from "./save/sheetEdits";
import { fileValue, sameResult } from "./save/values";
import type { CellValue } from "../package";
import { areaOf, SheetReader } from "./sheetReader";
import { geometryNow, tablesNow, type TableNow } from "./tables";
import { addColumns, defineName, narrowTable, restore, writeFormula, type Before, type Desk } from "./write";

/** With what taking back restores; null for a name. */
interface Remembered extends Written {
  readonly before: Before | null;
}

/** Told once for many changes that come together. */
const GATHER = 60;

export class GridWorkbookPort implements Workbook {
  private facts!: BookFacts;
  private unitId = "";
  private todayNames = new Set<string>();
  private readonly memory = new WeakMap<Receipt, readonly Remembered[]>();
  private readonly listeners = new Set<() => void>();
  private telling: ReturnType<typeof setTimeout> | undefined;
  private counter = 0;
  private works = 0;
  /** Cells are read anew only after a change: the overview is asked for often. */
  private readers = new Map<SheetId, SheetReader>();

  constructor(
    private readonly engine: Engine,
    private today: number,
  ) {
    mendReader();
    registerChanges(engine);
    setGridToday(today);
    engine.injector.get(ICommandService).onCommandExecuted((command) => {
      if (!/mutation|set-selections|worksheet-active|set-worksheet-activ/.test(command.id)) return;
      this.readers.clear();
      this.tell();
    });
  }

  /** Results that differed from the file's right after opening, by sheet and place: the calendar's doing, nobody's. */
  readonly atOpening = new Map<SheetId, OpeningResults>();

  /** Puts a workbook into the grid in place of the one there; resolves when its first results stand. */
  async open(snapshot: Partial<IWorkbookData>, facts: BookFacts, hasLiving: boolean): Promise<void> {
    if (hasLiving) await calculated(this.engine, () => this.load(snapshot, facts));
    else this.load(snapshot, facts);
    this.rememberResults();
  }

  private rememberResults(): void {
    this.atOpening.clear();
    const { file, sheets } = this.facts;
    if (!file) return;
    for (const sheet of sheets) {
      if (sheet.kind !== "worksheet") continue;
      const reader = this.reader(sheet.id);
      const results = new Map<string, CellValue>();
      const spills = new Map(reader.spills().map((area) => [placeKey(area.top, area.left), spillText(reader, area)]));
      for (const cell of file.opened.cells(sheet.name)) {
        if (!cell.formula) continue;
        const value = fileValue(reader.value(cell.row - 1, cell.column - 1));
        if (!sameResult(value, cell.value)) results.set(placeKey(cell.row - 1, cell.column - 1), value);
      }
      this.atOpening.set(sheet.id, { results, spills });
    }
  }

  load(snapshot: Partial<IWorkbookData>, facts: BookFacts): void {
    if (this.unitId !== "") this.engine.api.disposeUnit(this.unitId);
    this.readers.clear();
    this.facts = facts;
    this.todayNames = new Set(facts.todayNames);
    this.unitId = this.engine.api.createWorkbook(snapshot).getId();
    this.tell();
  }

  get book(): GridWorkbook {
    return this.engine.api.getWorkbook(this.unitId)!.getWorkbook();
  }

  get bookFacts(): BookFacts {
    return this.facts;
  }

  get unit(): string {
    return this.unitId;
  }

  /** The pane is changing the workbook: what a person may not do by hand is not asked of it. */
  get isAtWork(): boolean {
    return this.works > 0;
  }

  /** Names that are a plain day here and TODAY() in a file, in lower case. */
  get namesForToday(): ReadonlySet<string> {
    return this.todayNames;
  }

  setToday(today: number): void {
    this.today = today;
    moveToday(this.engine, today, this.todayNames.size > 0);
  }

  reader(sheet: SheetId): SheetReader {
    const known = this.readers.get(sheet);
    if (known) return known;
    const reader = new SheetReader(this.engine, this.book, sheet);
    this.readers.set(sheet, reader);
    return reader;
  }

  tables(): TableNow[] {
    return tablesNow(this.engine, this.unitId, this.facts, (sheet) => this.reader(sheet));
  }

  /** The text the grid paints: for reading aloud, never for calculating. */
  paintedText(sheet: SheetId, row: number, column: number): string | undefined {
    return this.engine.api.getWorkbook(this.unitId)?.getSheetBySheetId(sheet)?.getRange(row, column).getDisplayValue();
  }

  can(): true {
    return true;
  }

  async overview(): Promise<Overview> {
    return this.overviewNow();
  }

  overviewNow(): Overview {
    const book = this.book;
    const active = book.getActiveSheet();
    const selected = this.engine.injector.get(SheetsSelectionsService).getCurrentLastSelection()?.range;
    return {
      title: this.facts.title,
      dateSystem: this.facts.dateSystem,
      sheets: this.sheetsNow().map((sheet) => ({
        ...sheet,
        used: sheet.kind === "worksheet" ? this.reader(sheet.id).used() : null,
      })),
      tables: this.tables().map(({ facts, area, columns }) => ({
        name: facts.name,
        sheet: facts.sheet,
        area,
        columns,
        hasHeader: facts.geometry.headerRows > 0,
        hasTotals: facts.geometry.totalsRows > 0,
        isFiltered: this.isFiltered(facts.sheet, area, facts.filteredRows),
      })),
      names: this.names(),
      selection: active && selected ? { sheet: active.getSheetId(), area: areaOf(selected) } : null,
    };
  }

  async read(place: Place, what: readonly Facet[]): Promise<Block> {
    const { sheet, area } = this.stand(place);
    const reader = this.reader(sheet);
    const rows = <T>(each: (row: number, column: number) => T): T[][] =>
      Array.from({ length: area.rows }, (_, r) =>
        Array.from({ length: area.columns }, (_, c) => each(area.top + r, area.left + c)),
      );
    return {
      sheet,
      area,
      ...(what.includes("values") && { values: rows((r, c) => reader.value(r, c)) }),
      ...(what.includes("formulas") && { formulas: rows((r, c) => reader.formula(r, c)) }),
      ...(what.includes("formats") && { formats: rows((r, c) => reader.format(r, c)) }),
      ...(what.includes("hidden") && {
        hidden: Array.from({ length: area.rows }, (_, r) => reader.isHidden(area.top + r)),
      }),
      ...(what.includes("merges") && { merges: reader.merges().filter((merge) => overlaps(merge, area)) }),
    };
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
    const targets = targetsOf(change, overview);
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
        await calculated(this.engine, writing, { share, signal: watch.signal });
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

  onChange(listen: () => void): Stop {
    this.listeners.add(listen);
    return () => this.listeners.delete(listen);
  }

  private tell(): void {
    this.telling ??= setTimeout(() => {
      this.telling = undefined;
      for (const listen of [...this.listeners]) listen();
    }, GATHER);
  }

  /** Sheets in the order of the tabs; chart sheets keep their place among them. */
  private sheetsNow(): Omit<Overview["sheets"][number], "used">[] {
    const known = new Map(this.facts.sheets.map((sheet) => [sheet.id, sheet]));
    const now = this.book.getSheets().map((sheet) => ({
      id: sheet.getSheetId(),
      name: sheet.getName(),
      kind: "worksheet" as const,
      hidden: sheet.isSheetHidden() === 1,
      isProtected: known.get(sheet.getSheetId())?.isProtected ?? false,
    }));
    const charts = this.facts.sheets
      .map((sheet, index) => ({ sheet, index }))
      .filter(({ sheet }) => sheet.kind === "chart sheet");
    const all: Omit<Overview["sheets"][number], "used">[] = [...now];
    for (const { sheet, index } of charts) {
      const { id, name, kind, isHidden, isProtected } = sheet;
      all.splice(index, 0, { id, name, kind, hidden: isHidden, isProtected });
    }
    return all;
  }

  private names(): NameOverview[] {
    const live = engineNames(this.engine, this.unitId).map((name): NameOverview => {
      if (this.todayNames.has(name.name.toLowerCase())) {
        return { name: name.name, refersTo: "=TODAY()", value: this.today };
      }
      return { name: name.name, refersTo: refersTo(name), value: this.nameValue(refersTo(name)) };
    });
    return [...live, ...this.facts.darkNames.map((name) => ({ ...name, value: null }))];
  }

  /** The one value behind a name: a constant or a cell. */
  private nameValue(text: string): NameOverview["value"] {
    const plain = text.slice(1).trim();
    if (/^[-+]?\d+(?:\.\d+)?$/.test(plain)) return Number(plain);
    if (/^(?:TRUE|FALSE)$/i.test(plain)) return plain.toUpperCase() === "TRUE";
    if (/^"(?:[^"]|"")*"$/.test(plain)) return plain.slice(1, -1).replaceAll('""', '"');
    const mark = plain.lastIndexOf("!");
    const area = mark < 0 ? null : parseArea(plain.slice(mark + 1));
    const sheetName = plain.slice(0, mark).replace(/^'|'$/g, "").replaceAll("''", "'");
    const sheet = this.book.getSheetBySheetName(sheetName);
    if (!area || !sheet || area.rows * area.columns !== 1) return null;
    const value = this.reader(sheet.getSheetId()).value(area.top, area.left);
    return value instanceof CellError ? null : value;
  }

  private isFiltered(sheet: SheetId, area: Area, filteredRows: readonly number[]): boolean {
    const reader = this.reader(sheet);
    for (let row = area.top; row < area.top + area.rows; row++) {
      if (reader.worksheet.getRowFiltered(row)) return true;
    }
    return filteredRows.some((row) => reader.isHidden(row));
  }

  private stand(place: Place): { sheet: SheetId; area: Area } {
    if ("sheet" in place) return place;
    const table = this.tables().find(({ facts }) => facts.name.toLowerCase() === place.table.toLowerCase());
    if (!table) throw new Error(`no table ${place.table}`);
    return { sheet: table.facts.sheet, area: table.area };
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
