/** The workbook that stands in the grid: loading it, and telling what it holds now. */
import { CommandType, ICommandService, type Workbook as GridWorkbook } from "@univerjs/core";
import type { IWorkbookData } from "@univerjs/core";
import { SetSelectionsOperation, SetWorksheetActiveOperation, SheetsSelectionsService } from "@univerjs/sheets";
import { CellError } from "../../../../src/worksheet/error";
import { bottom, overlaps, parseArea } from "../../area";
import type { Area, Block, Facet, NameOverview, NewSheet, Overview, Place, SheetId, Stop } from "../../port";
import { setGridToday } from "../../../../functions/grid";
import { calculated, leaveTablesOut } from "./calculation";
import { registerChanges } from "../steps/changes";
import { isSeen } from "../by-hand/commands";
import type { Engine } from "../engine";
import type { BookFacts } from "./facts";
import { leaveFetchingOut } from "../mends/image-fetches";
import { hastenEnds, hastenTexts } from "../mends/work-done-again";
import { dropLateResults } from "../mends/late-results";
import { mendDependencies } from "../mends/slow-dependencies";
import { mendReader } from "../mends/spoilt-formulas";
import { engineNames, moveToday, refersTo } from "./names";
import { loadFilters, NO_FILTERS, type OpeningFilters } from "../open/filters";
import { OwedResults } from "./owed";
import { WorkedOut } from "../reader/worked-out";
import { OutdatedResults } from "../save/outdated";
import { placeKey, spillText, type OpeningResults } from "../save/sheet-edits";
import { fileValue, sameResult } from "../save/values";
import { inSlices, ranToItsEnd, type CellValue, type Sliced } from "../../package";
import { areaOf, SheetReader } from "./sheet-reader";
import { tablesNow, type TableNow } from "./tables";

/** Told once for many changes that come together. */
const GATHER = 60;

/** So many times what was read in slices may turn out to be of two moments; then it is read without a breath. */
const MOST_TRIES = 2;
const ROWS_AT_A_TIME = 500;

export class LiveBook {
  protected facts!: BookFacts;
  protected unitId = "";
  protected todayNames = new Set<string>();
  private readonly listeners = new Set<() => void>();
  private results: WorkedOut | undefined;
  private readonly owed: OwedResults;
  readonly outdated: OutdatedResults;
  private changes = 0;
  private isInSlices = false;
  private telling: ReturnType<typeof setTimeout> | undefined;
  /** Cells are read anew only after a change: the overview is asked for often. */
  private readers = new Map<SheetId, SheetReader>();

  constructor(
    protected readonly engine: Engine,
    protected today: number,
  ) {
    mendReader();
    mendDependencies();
    hastenTexts();
    hastenEnds();
    registerChanges(engine);
    dropLateResults(engine);
    this.owed = new OwedResults(engine);
    this.outdated = new OutdatedResults(engine, this);
    setGridToday(today);
    engine.injector.get(ICommandService).onCommandExecuted(({ id, type }) => {
      const isMoved = id === SetSelectionsOperation.id || id === SetWorksheetActiveOperation.id;
      if (!isMoved && (type !== CommandType.MUTATION || !isSeen(id))) return;
      this.readers.clear();
      this.changes++;
      this.tell();
    });
  }

  /** Results that differed from the file's right after opening, by sheet and place: the calendar's doing, nobody's. */
  readonly atOpening = new Map<SheetId, OpeningResults>();
  private openingFilters = NO_FILTERS;
  /** What sheets were added as; undo may have taken some of them out again. */
  protected readonly addedSheets = new Map<SheetId, NewSheet>();

  /** Puts a workbook into the grid in place of the one there; resolves when its first results stand. */
  async open(snapshot: Partial<IWorkbookData>, facts: BookFacts, hasLiving: boolean): Promise<void> {
    const load = () => this.load(snapshot, facts);
    if (hasLiving) await calculated(this.engine, load);
    else load();
    this.rememberResults();
  }

  protected rememberResults(): void {
    this.atOpening.clear();
    const { file, sheets } = this.facts;
    if (!file) return;
    for (const sheet of sheets) {
      if (sheet.kind !== "worksheet") continue;
      const reader = this.reader(sheet.id);
      const results = new Map<string, CellValue>();
      const spills = new Map(reader.spills().map((area) => [placeKey(area.top, area.left), spillText(reader, area)]));
      const store = file.opened.store(sheet.name);
      const { rowCount, rowNumbers, firstCells, formulaOf, columns } = store.data;
      for (let place = 0; place < rowCount; place++) {
        for (let cell = firstCells[place]!; cell < firstCells[place + 1]!; cell++) {
          if (formulaOf[cell] === 0) continue;
          const [row, column] = [rowNumbers[place]! - 1, columns[cell]! - 1];
          const value = fileValue(reader.value(row, column));
          if (!sameResult(value, store.value(cell))) results.set(placeKey(row, column), value);
        }
      }
      this.atOpening.set(sheet.id, { results, spills });
    }
  }

  load(snapshot: Partial<IWorkbookData>, facts: BookFacts): void {
    if (this.unitId !== "") this.engine.api.disposeUnit(this.unitId);
    this.readers.clear();
    this.outdated.begin();
    this.addedSheets.clear();
    this.facts = facts;
    this.todayNames = new Set(facts.todayNames);
    // the engine's services come with its first workbook
    leaveTablesOut(this.engine);
    this.unitId = this.engine.api.createWorkbook(snapshot).getId();
    leaveTablesOut(this.engine);
    leaveFetchingOut(this.engine);
    const around = { engine: this.engine, unitId: this.unitId, readerOf: (sheet: SheetId) => this.reader(sheet) };
    this.openingFilters = loadFilters(around, facts);
    if (facts.activeSheet !== undefined) this.bringForward(facts.activeSheet);
    this.results ??= new WorkedOut(this.engine, this);
    this.results.begin();
    this.tell();
  }

  /** As the workbook was left. */
  private bringForward(sheet: SheetId): void {
    const params = { unitId: this.unitId, subUnitId: sheet };
    this.engine.injector.get(ICommandService).syncExecuteCommand(SetWorksheetActiveOperation.id, params);
  }

  /** False once the grid is gone. */
  get isThere(): boolean {
    return this.engine.api.getWorkbook(this.unitId) !== null;
  }

  get book(): GridWorkbook {
    return this.engine.api.getWorkbook(this.unitId)!.getWorkbook();
  }

  /** Of sheets with cells: what a formula can name. */
  sheetNames(): readonly string[] {
    return this.book.getSheets().map((sheet) => sheet.getName());
  }

  get bookFacts(): BookFacts {
    return this.facts;
  }

  /** What the grid's filters held at opening. */
  get filtersAtOpening(): OpeningFilters {
    return this.openingFilters;
  }

  get unit(): string {
    return this.unitId;
  }

  /** What a sheet was added as; undefined for all others. */
  addedAs(sheet: SheetId): NewSheet | undefined {
    return this.addedSheets.get(sheet);
  }

  /** Names that are a plain day here and TODAY() in a file, in lower case. */
  get namesForToday(): ReadonlySet<string> {
    return this.todayNames;
  }

  get todayNow(): number {
    return this.today;
  }

  setToday(today: number): void {
    this.today = today;
    moveToday(this.engine, today, this.todayNames.size > 0);
    this.results?.anew();
  }

  /** Another number after every change, results and looks too. */
  get revision(): number {
    return this.changes;
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

  async overview(): Promise<Overview> {
    return this.overviewNow();
  }

  overviewNow(): Overview {
    const book = this.book;
    const active = book.getActiveSheet();
    const selected = this.engine.injector.get(SheetsSelectionsService).getCurrentLastSelection()?.range;
    return {
      book: this.unitId,
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

  /** What was changed a moment ago is worked out, as far as it is not the engine's work. */
  settle(): void {
    this.results?.settle();
  }

  /** Resolves when every cell holds the result of what the cells hold now: true; false where the engine gave none. */
  async workedOut(): Promise<boolean> {
    do {
      this.settle();
      if (!(await this.owed.paid())) return false;
    } while (this.results?.isWaiting);
    return true;
  }

  /** A long list is read in slices; what is given is of one moment all the same. */
  async read(place: Place, what: readonly Facet[]): Promise<Block> {
    for (let tries = 0; ; tries++) {
      this.settle();
      const { revision, unit } = this;
      const reading = this.reading(place, what);
      const block = tries < MOST_TRIES ? await inSlices(reading) : ranToItsEnd(reading);
      if (this.revision === revision && this.unit === unit) return block;
    }
  }

  private *reading(place: Place, what: readonly Facet[]): Sliced<Block> {
    const { sheet, area } = this.stand(place);
    const reader = this.reader(sheet);
    const rowsOf = function* <T>(each: (row: number, column: number) => T): Sliced<T[][]> {
      const rows: T[][] = [];
      for (let row = area.top; row < bottom(area); row++) {
        const cells = new Array<T>(area.columns);
        for (let c = 0; c < area.columns; c++) cells[c] = each(row, area.left + c);
        rows.push(cells);
        if (rows.length % ROWS_AT_A_TIME === 0) yield rows.length / area.rows;
      }
      return rows;
    };
    const wants = (facet: Facet): boolean => what.includes(facet);
    return {
      sheet,
      area,
      ...(wants("values") && { values: yield* rowsOf((row, column) => reader.value(row, column)) }),
      ...(wants("formulas") && { formulas: yield* rowsOf((row, column) => reader.formula(row, column)) }),
      ...(wants("formats") && { formats: yield* rowsOf((row, column) => reader.format(row, column)) }),
      ...(wants("hidden") && {
        hidden: Array.from({ length: area.rows }, (_, r) => reader.isHidden(area.top + r)),
      }),
      ...(wants("merges") && { merges: reader.merges().filter((merge) => overlaps(merge, area)) }),
    };
  }

  /** Sheets in the order of the tabs; chart sheets keep their place among them. */
  protected sheetsNow(): Omit<Overview["sheets"][number], "used">[] {
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

  protected names(): NameOverview[] {
    const live = engineNames(this.engine, this.unitId).map((name): NameOverview => {
      if (this.todayNames.has(name.name.toLowerCase())) {
        return { name: name.name, refersTo: "=TODAY()", value: this.today };
      }
      return { name: name.name, refersTo: refersTo(name), value: this.nameValue(refersTo(name)) };
    });
    return [...live, ...this.facts.darkNames.map((name) => ({ ...name, value: null }))];
  }

  /** The one value behind a name: a constant or a cell. */
  protected nameValue(text: string): NameOverview["value"] {
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

  protected isFiltered(sheet: SheetId, area: Area, filteredRows: readonly number[]): boolean {
    const reader = this.reader(sheet);
    for (let row = area.top; row < area.top + area.rows; row++) {
      if (reader.worksheet.getRowFiltered(row)) return true;
    }
    return filteredRows.some((row) => reader.isHidden(row));
  }

  tableNamed(name: string): TableNow | undefined {
    return this.tables().find(({ facts }) => facts.name.toLowerCase() === name.toLowerCase());
  }

  protected filteredAtOpening(sheet: SheetId, table: TableNow | null): readonly number[] {
    if (table) return table.facts.filteredRows;
    return this.facts.sheets.find((one) => one.id === sheet)?.filteredRows ?? [];
  }

  protected stand(place: Place): { sheet: SheetId; area: Area } {
    if ("sheet" in place) return place;
    const table = this.tableNamed(place.table);
    if (!table) throw new Error(`no table ${place.table}`);
    return { sheet: table.facts.sheet, area: table.area };
  }

  onChange(listen: () => void): Stop {
    this.listeners.add(listen);
    return () => this.listeners.delete(listen);
  }

  /** Nothing is worked out or told before all of a change is there, which comes in slice by slice. */
  protected async inSlices(work: () => Promise<void>): Promise<void> {
    this.results?.hold();
    this.isInSlices = true;
    try {
      await work();
    } finally {
      this.isInSlices = false;
      this.results?.release();
      this.tell();
    }
  }

  private tell(): void {
    if (this.isInSlices) return;
    this.telling ??= setTimeout(() => {
      this.telling = undefined;
      for (const listen of [...this.listeners]) listen();
    }, GATHER);
  }
}
