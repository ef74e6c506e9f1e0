/** The embedded grid's life in the page: it starts late, says sentences, and knows what is unsaved. */
import { useCallback, useEffect, useState, type RefObject } from "react";
import { shell as words } from "../../texts/shell";
import type { CreateGrid, DayFirst, Grid, Opened, Refusal } from "../../workbook/embedded/interface";
import { dayNumberOf } from "../parts/dates";
import { download, XLSX } from "../parts/download";
import { readFile } from "./files";
import { useCalendar } from "./useCalendar";
import { useNews, type News, type Said } from "./useNews";
import { useWork, type AtWork } from "./useWork";

export interface GridState {
  /** Null until it stands. */
  readonly grid: Grid | null;
  readonly failure: string | null;
  readonly name: string;
  readonly isChanged: boolean;
  readonly isBusy: boolean;
  /** A workbook stands in the grid because somebody asked for it. */
  readonly hasBegun: boolean;
  readonly today: number;
  readonly dayFirst: DayFirst;
  /** A date was typed that can be read two ways. */
  readonly hasAskedDayFirst: boolean;
  readonly said: Said | null;
  /** A file is being opened or saved, and takes its time. */
  readonly atWork: AtWork | null;
  readonly say: News["say"];
  readonly hush: News["hush"];
  openFile(file: File): Promise<void>;
  openBytes(bytes: Uint8Array, name: string): Promise<void>;
  /** A workbook that was made here. True once it stands. */
  openMade(bytes: Uint8Array, name: string): Promise<boolean>;
  openEmpty(): Promise<void>;
  /** Ends an open entry, then says whether anything is unsaved; null where the entry was turned down. */
  endEntry(): Promise<"saved" | "unsaved" | null>;
  /** True once the file has been handed over. */
  save(): Promise<boolean>;
  setDayFirst(dayFirst: DayFirst): void;
}

interface Started {
  readonly grid: Grid | null;
  /** Why it could not be started. */
  readonly failure: string | null;
}

/** Fetches the grid and starts it on an empty workbook; gone with the page's part. */
function useStarted(
  holder: RefObject<HTMLElement | null>,
  loadGrid: () => Promise<CreateGrid>,
  { sayRefusal, hushRefusal }: Pick<News, "sayRefusal" | "hushRefusal">,
  onStart: (grid: Grid, opened: Opened | Refusal) => void,
): Started {
  const [started, setStarted] = useState<Started>({ grid: null, failure: null });
  useEffect(() => {
    let made: Grid | null = null;
    let isGone = false;
    const start = async (): Promise<void> => {
      const createGrid = await loadGrid();
      if (isGone || !holder.current) return;
      made = await createGrid(holder.current, {
        today: dayNumberOf(new Date()),
        dayFirst: null,
        say: sayRefusal,
        hush: hushRefusal,
      });
      if (isGone) return made.dispose();
      onStart(made, await made.openEmpty());
      setStarted({ grid: made, failure: null });
    };
    start().catch((error: unknown) => {
      const failure = words.cannotStart(error instanceof Error ? error.message : String(error));
      if (!isGone) setStarted((before) => ({ ...before, failure }));
    });
    return () => {
      isGone = true;
      made?.dispose();
    };
  }, [holder, hushRefusal, loadGrid, onStart, sayRefusal]);
  return started;
}

/** Unsaved changes are marked in the page's title, and asked about before the page is left. */
function useUnsavedMark(name: string, isChanged: boolean): void {
  useEffect(() => {
    document.title = words.pageTitle(name, isChanged);
  }, [isChanged, name]);
  useEffect(() => {
    if (!isChanged) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener("beforeunload", ask);
    return () => window.removeEventListener("beforeunload", ask);
  }, [isChanged]);
}

export function useGrid(holder: RefObject<HTMLElement | null>, loadGrid: () => Promise<CreateGrid>): GridState {
  const [name, setName] = useState<string>(words.noFile);
  const [isChanged, setChanged] = useState(false);
  const [isBusy, setBusy] = useState(false);
  const [hasBegun, setBegun] = useState(false);
  /* Not chosen: a text that could be read two ways is refused until somebody says which part is the day. */
  const [dayFirst, setDayFirst] = useState<DayFirst>(null);
  const news = useNews(isBusy);
  const { say } = news;
  const onStart = useCallback((made: Grid, opened: Opened | Refusal) => {
    setName(opened.outcome === "opened" ? opened.name : words.noFile);
    made.onChanged(() => setChanged(made.isChanged()));
  }, []);
  const { grid, failure } = useStarted(holder, loadGrid, news, onStart);
  const today = useCalendar(useCallback((now: number) => grid?.setToday(now), [grid]));
  useUnsavedMark(name, isChanged);
  const { atWork, busily, watched } = useWork(setBusy, say);

  function take(outcome: Opened | Refusal, opened: string): boolean {
    if (outcome.outcome === "refused") {
      say("problem", [outcome.sentence]);
      return false;
    }
    setName(outcome.name);
    setChanged(grid?.isChanged() ?? false);
    setBegun(true);
    if (outcome.remarks.length > 0) say("plain", [opened, words.remarks, ...outcome.remarks]);
    else say("heard", [opened]);
    return true;
  }

  async function open(bytes: Uint8Array, fileName: string): Promise<boolean> {
    if (!grid) return false;
    return busily(async () => {
      say("plain", [words.opening(fileName)]);
      const opened = await watched(words.opening(fileName), (watching) => grid.open(bytes, fileName, watching));
      return take(opened, words.opened(fileName));
    }, false);
  }

  async function openFile(file: File): Promise<void> {
    const bytes = await readFile(file);
    if (typeof bytes === "string") return say("problem", [bytes]);
    await open(bytes, file.name);
  }

  async function save(): Promise<boolean> {
    if (!grid) return false;
    return busily(async () => {
      say("plain", [words.saving]);
      const saved = await watched(words.saving, (watching) => grid.save(watching));
      if (saved.outcome === "refused") {
        say("problem", [saved.sentence]);
        return false;
      }
      download(saved.bytes, saved.name, XLSX);
      grid.markSaved();
      setChanged(grid.isChanged());
      const told = words.saved(saved.name);
      say("done", saved.report.length > 0 ? [told, words.savedWith, ...saved.report] : [told]);
      return true;
    }, false);
  }

  return {
    grid,
    failure,
    name,
    isChanged,
    isBusy,
    hasBegun,
    today,
    dayFirst,
    hasAskedDayFirst: news.hasAsked,
    said: news.said,
    atWork,
    say,
    hush: news.hush,
    openBytes: async (bytes, fileName) => void (await open(bytes, fileName)),
    openMade: open,
    openFile,
    openEmpty: async () => {
      if (grid) await busily(async () => take(await grid.openEmpty(), words.newOpened), false);
    },
    endEntry: async () => {
      if (grid && !(await grid.endEntry())) return null;
      return grid?.isChanged() ? "unsaved" : "saved";
    },
    save,
    setDayFirst: (choice) => {
      grid?.setDayFirst(choice);
      setDayFirst(choice);
    },
  };
}
