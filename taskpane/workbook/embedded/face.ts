/** The embedded spreadsheet's face (interface.ts) on a running engine. */
import { IContextService, IUniverInstanceService } from "@univerjs/core";
import { inSlices, isRefusal, Stopped, type Watching } from "../package";
import { knowsFunction, type Engine } from "./engine";
import { enteredFormula } from "./by-hand/entered-formula";
import { NO_ENTRY, type OpenEntry } from "./page/entry";
import { guard } from "./by-hand/guard";
import type { Asks, DayFirst, Grid, GridOptions, Opened, Refusal, Saved } from "./interface";
import { emptyBook } from "./open/empty";
import { readSnapshot } from "./open/snapshot";
import { isOwnBook } from "./book/own-book";
import { packagesHere } from "./packages/here";
import type { Packages } from "./packages/interface";
import type { ReadFormula } from "./by-hand/pasting";
import { watchRowsByHand } from "./by-hand/rows";
import { saveBook } from "./save";
import { selectedRow } from "./page/selected-row";
import { watchSorting } from "./steps/sorting";
import type { LiveBook } from "./book/live-book";
import { tieOf } from "./steps/ties";
import { watchTyping } from "./by-hand/typing";
import { Unsaved } from "./book/unsaved";
import { GridWorkbookPort } from "./book/workbook";

/** Lets the page paint between the parts of a long work. */
const breath = (milliseconds = 0): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** Two pictures of a screen that paints 60 times a second. */
const PAINT = 34;

/** The engine's caches outlive a grid and go by this name: it is never used twice. */
let books = 0;
const unitId = () => `book${++books}`;

/** What a page needs to know of the grid on it. */
export interface OnPage {
  readonly dayFirst: () => DayFirst;
  readonly readFormula: ReadFormula;
  readonly say: (sentence: string, asks?: Asks) => void;
  readonly unitId: () => string;
  readonly workbook: LiveBook;
}

const AT_WORK: Refusal = {
  outcome: "refused",
  sentence:
    "The workbook is still being changed, opened or saved. Wait until that is done, or stop it in the pane, then try again.",
};

const NOT_OPENED = "Stopped. Nothing was opened; what was here is still here.";
const NOT_SAVED = "Stopped. Nothing was saved.";

async function orStopped<T>(work: Promise<T>, sentence: string): Promise<T | Refusal> {
  try {
    return await work;
  } catch (problem) {
    if (problem instanceof Stopped) return { outcome: "refused", sentence };
    throw problem;
  }
}

/** The share that is done when a file is read and the grid is to be filled. */
const READ = 0.7;

/** @param page what only a page has, once the first workbook stands: it gives the entry that is being typed */
export function gridOn(
  engine: Engine,
  options: GridOptions,
  page: (grid: OnPage) => Promise<OpenEntry> = async () => NO_ENTRY,
  starting: Promise<Packages> = Promise.resolve(packagesHere()),
): Grid {
  const grid = new Running(engine, options, page, starting);
  const { workbook, unsaved } = grid;
  return {
    workbook,
    open: async (file, name, watching = {}) =>
      (await workbook.alone(() => orStopped(grid.open(file, name, watching), NOT_OPENED))) ?? AT_WORK,
    openEmpty: async () => (await workbook.alone(() => grid.openEmpty())) ?? AT_WORK,
    save: async (watching = {}) => (await workbook.alone(() => orStopped(grid.save(watching), NOT_SAVED))) ?? AT_WORK,
    hasEntry: () => grid.entry.isOpen(),
    endEntry: async () => (await grid.endEntry()) === undefined,
    markSaved: () => grid.markSaved(),
    isChanged: () => unsaved.isChanged || grid.entry.isOpen(),
    onChanged: (listen) => unsaved.listen(listen),
    setToday: (serial) => workbook.setToday(serial),
    dayFirst: () => grid.dayFirst,
    setDayFirst: (choice) => void (grid.dayFirst = choice),
    selectedRow: () => selectedRow(workbook),
    // without a page there is no pointer (grid.ts)
    onPointer: () => () => undefined,
    focus() {
      engine.injector.get(IUniverInstanceService).focusUnit(workbook.book.getUnitId());
      engine.injector.get(IContextService).setContextValue("FOCUSING_SHEET", true);
    },
    dispose() {
      void starting.then((packages) => packages.dispose());
      engine.univer.dispose();
    },
  };
}

/** The workbook that stands in the grid, opened, watched and saved. */
class Running {
  readonly workbook: GridWorkbookPort;
  readonly unsaved: Unsaved;
  dayFirst: DayFirst;
  entry = NO_ENTRY;
  /** It was opened from a file. */
  private isFile = false;
  private isWatching = false;
  /** How many changes there were when what is being saved was put together. */
  private changesSaved: number | undefined;
  /** What was said last, and how many times anything was. */
  private told = "";
  private times = 0;

  constructor(
    private readonly engine: Engine,
    private readonly options: GridOptions,
    private readonly page: (grid: OnPage) => Promise<OpenEntry>,
    private readonly starting: Promise<Packages>,
  ) {
    this.dayFirst = options.dayFirst;
    this.workbook = new GridWorkbookPort(engine, options.today);
    this.unsaved = new Unsaved(
      engine,
      () => this.workbook.book.getUnitId(),
      () => this.isFile,
    );
  }

  private readonly say = (sentence: string, asks?: Asks): void => {
    this.told = sentence;
    this.times++;
    this.options.say(sentence, asks);
  };

  async open(bytes: Uint8Array, name: string, watching: Watching): Promise<Opened | Refusal> {
    const { engine, workbook } = this;
    const packages = await this.starting;
    const share = (done: number) => watching.tell?.(done * READ);
    const file = await packages.open(bytes, { ...watching, tell: share });
    if (isRefusal(file)) return { outcome: "refused", sentence: file.refused };
    const { opened, display } = file;
    if (!this.isWatching) await this.openEmpty();
    const snapshot = readSnapshot(opened, display, name, unitId(), {
      knowsFunction: knowsFunction(engine),
      today: workbook.todayNow,
    });
    const reading = await inSlices(snapshot, watching, READ, 1).catch((problem: unknown) => {
      packages.release(opened);
      throw problem;
    });
    watching.tell?.(1);
    await breath();
    const before = workbook.bookFacts.file?.opened;
    await workbook.open(reading.snapshot, reading.facts, reading.hasLiving);
    if (before) packages.release(before);
    await this.begin(true);
    return { outcome: "opened", name, remarks: [...reading.remarks, ...workbook.filtersAtOpening.remarks] };
  }

  async openEmpty(): Promise<Opened> {
    const { snapshot, facts } = emptyBook(unitId());
    const before = this.isFile ? this.workbook.bookFacts.file?.opened : undefined;
    await this.workbook.open(snapshot, facts, false);
    if (before) (await this.starting).release(before);
    await this.begin(false);
    return { outcome: "opened", name: facts.title, remarks: [] };
  }

  /** Another workbook stands in the grid, and nothing of it is changed yet. */
  private async begin(isFile: boolean): Promise<void> {
    this.isFile = isFile;
    await this.watch();
    this.unsaved.clear();
    this.changesSaved = undefined;
  }

  /** The grid makes its services, its functions too, with its first workbook. */
  private async watch(): Promise<void> {
    if (this.isWatching) return;
    this.isWatching = true;
    const { engine, workbook, say } = this;
    watchTyping(engine, { workbook, dayFirst: () => this.dayFirst, say, hush: this.options.hush });
    watchRowsByHand(engine, { workbook, isOwn: () => isOwnBook(workbook.bookFacts), say });
    this.guard();
    watchSorting(engine, workbook);
    this.entry = await this.page({
      dayFirst: () => this.dayFirst,
      readFormula: (formula) => enteredFormula(formula, workbook.sheetNames()),
      say,
      unitId: () => workbook.unit,
      workbook,
    });
    this.entry.onChanged(() => this.unsaved.tell());
  }

  private guard(): void {
    const { engine, workbook, say } = this;
    guard(engine, {
      isFile: () => this.isFile,
      say,
      isTied: (sheetId, range) =>
        tieOf(engine, workbook, sheetId ?? workbook.book.getActiveSheet()!.getSheetId(), range),
      isOurs: () => workbook.isAtWork,
      isProtected: (sheetId, from) => {
        const id = sheetId ?? workbook.book.getActiveSheet()?.getSheetId();
        const facts = workbook.bookFacts.sheets.find((sheet) => sheet.id === id);
        return facts?.isProtected && !(from === "filters" && facts.allowsFiltering) ? facts.name : undefined;
      },
    });
  }

  /** Why the entry was turned down; undefined where it stands in its cell, or where there was none. */
  async endEntry(): Promise<string | undefined> {
    const before = this.times;
    await this.entry.end();
    return this.times === before ? undefined : this.told;
  }

  async save(watching: Watching): Promise<Saved | Refusal> {
    const { workbook, unsaved } = this;
    // from here on nothing is painted until the file is there: what the page says of it has to be on the screen
    await breath(PAINT);
    const refused = await this.endEntry();
    if (refused !== undefined) return { outcome: "refused", sentence: `${refused} The workbook was not saved.` };
    let isWorkedOut = await workbook.workedOut();
    while (isWorkedOut && unsaved.isChanged && workbook.outdated.mark()) isWorkedOut = await workbook.workedOut();
    return saveBook(this.engine, workbook, await this.starting, {
      isWorkedOut,
      watching,
      onCollected: () => (this.changesSaved = unsaved.changes),
    });
  }

  markSaved(): void {
    // what was entered while the file was written is not in it
    if (this.changesSaved === undefined || this.unsaved.changes === this.changesSaved) this.unsaved.clear();
    this.changesSaved = undefined;
  }
}
