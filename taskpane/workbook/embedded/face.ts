/** The embedded spreadsheet's face (interface.ts) on a running engine. */
import { IContextService, IUniverInstanceService } from "@univerjs/core";
import { inSlices, isRefusal, Stopped, type Watching } from "../package";
import { knowsFunction, type Engine } from "./engine";
import { enteredFormula } from "./by-hand/entered-formula";
import { NO_ENTRY, type OpenEntry } from "./page/entry";
import { guard } from "./by-hand/guard";
import type { DayFirst, Grid, GridOptions, Opened, Refusal, Saved } from "./interface";
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
  readonly say: (sentence: string) => void;
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
  let dayFirst: DayFirst = options.dayFirst;
  let isFile = false;
  /** How many changes there were when what is being saved was put together. */
  let changesSaved: number | undefined;
  let entry = NO_ENTRY;
  /** What was said last, and how many times anything was. */
  let [told, times] = ["", 0];
  const say = (sentence: string): void => {
    [told, times] = [sentence, times + 1];
    options.say(sentence);
  };
  const workbook = new GridWorkbookPort(engine, options.today);
  const unsaved = new Unsaved(
    engine,
    () => workbook.book.getUnitId(),
    () => isFile,
  );

  let isWatching = false;
  /** The grid makes its services, its functions too, with its first workbook. */
  async function watch(): Promise<void> {
    if (isWatching) return;
    isWatching = true;
    watchTyping(engine, { workbook, dayFirst: () => dayFirst, say, hush: options.hush });
    watchRowsByHand(engine, { workbook, isOwn: () => isOwnBook(workbook.bookFacts), say });
    guard(engine, {
      isFile: () => isFile,
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
    watchSorting(engine, workbook);
    entry = await page({
      dayFirst: () => dayFirst,
      readFormula: (formula) => enteredFormula(formula, workbook.sheetNames()),
      say,
      unitId: () => workbook.unit,
      workbook,
    });
    entry.onChanged(() => unsaved.tell());
  }

  async function open(bytes: Uint8Array, name: string, watching: Watching): Promise<Opened | Refusal> {
    const packages = await starting;
    const share = (done: number) => watching.tell?.(done * READ);
    const file = await packages.open(bytes, { ...watching, tell: share });
    if (isRefusal(file)) return { outcome: "refused", sentence: file.refused };
    const { opened, display } = file;
    if (!isWatching) await openEmpty();
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
    isFile = true;
    await watch();
    unsaved.clear();
    changesSaved = undefined;
    return { outcome: "opened", name, remarks: [...reading.remarks, ...workbook.filtersAtOpening.remarks] };
  }

  async function openEmpty(): Promise<Opened> {
    const { snapshot, facts } = emptyBook(unitId());
    const before = isFile ? workbook.bookFacts.file?.opened : undefined;
    await workbook.open(snapshot, facts, false);
    if (before) (await starting).release(before);
    isFile = false;
    await watch();
    unsaved.clear();
    changesSaved = undefined;
    return { outcome: "opened", name: facts.title, remarks: [] };
  }

  /** Why the entry was turned down; undefined where it stands in its cell, or where there was none. */
  async function endEntry(): Promise<string | undefined> {
    const before = times;
    await entry.end();
    return times === before ? undefined : told;
  }

  async function save(watching: Watching): Promise<Saved | Refusal> {
    // from here on nothing is painted until the file is there: what the page says of it has to be on the screen
    await breath(PAINT);
    const refused = await endEntry();
    if (refused !== undefined) return { outcome: "refused", sentence: `${refused} The workbook was not saved.` };
    let isWorkedOut = await workbook.workedOut();
    while (isWorkedOut && unsaved.isChanged && workbook.outdated.mark()) isWorkedOut = await workbook.workedOut();
    return saveBook(engine, workbook, await starting, {
      isWorkedOut,
      watching,
      onCollected: () => (changesSaved = unsaved.changes),
    });
  }

  return {
    workbook,
    open: async (file, name, watching = {}) =>
      (await workbook.alone(() => orStopped(open(file, name, watching), NOT_OPENED))) ?? AT_WORK,
    openEmpty: async () => (await workbook.alone(openEmpty)) ?? AT_WORK,
    save: async (watching = {}) => (await workbook.alone(() => orStopped(save(watching), NOT_SAVED))) ?? AT_WORK,
    hasEntry: () => entry.isOpen(),
    endEntry: async () => (await endEntry()) === undefined,
    markSaved: () => {
      // what was entered while the file was written is not in it
      if (changesSaved === undefined || unsaved.changes === changesSaved) unsaved.clear();
      changesSaved = undefined;
    },
    isChanged: () => unsaved.isChanged || entry.isOpen(),
    onChanged: (listen) => unsaved.listen(listen),
    setToday: (serial) => workbook.setToday(serial),
    dayFirst: () => dayFirst,
    setDayFirst: (choice) => void (dayFirst = choice),
    selectedRow: () => selectedRow(workbook),
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
