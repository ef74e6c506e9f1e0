/** The embedded grid's life in the page: it starts late, says sentences, and knows what is unsaved. */
import { useCallback, useEffect, useRef, useState, type RefObject } from "react";
import { shell as words } from "../../texts/shell";
import { pane as paneTexts } from "../../texts/pane";
import type { CreateGrid, DayFirst, Grid, Opened, Refusal } from "../../workbook/embedded/interface";
import type { Watching } from "../../workbook/embedded/interface";
import { dayNumberOf, untilMidnight } from "../parts/dates";
import { download, XLSX } from "../parts/download";
import { readFile } from "./files";

const NEWS_MS = 8_000;

export interface Said {
  readonly kind: "plain" | "problem" | "done";
  readonly sentences: readonly string[];
  /** Told apart so that the same sentence is spoken again. */
  readonly at: number;
}

export interface AtWork {
  readonly title: string;
  /** From 0 to 1. */
  readonly share: number;
  readonly isStopping: boolean;
  stop(): void;
}

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
  readonly said: Said | null;
  /** A file is being opened or saved, and takes its time. */
  readonly atWork: AtWork | null;
  say(kind: Said["kind"], sentences: readonly string[]): void;
  hush(): void;
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

export function useGrid(holder: RefObject<HTMLElement | null>, loadGrid: () => Promise<CreateGrid>): GridState {
  const [grid, setGrid] = useState<Grid | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  const [name, setName] = useState<string>(words.noFile);
  const [isChanged, setChanged] = useState(false);
  const [isBusy, setBusy] = useState(false);
  const [hasBegun, setBegun] = useState(false);
  const [today, setToday] = useState(() => dayNumberOf(new Date()));
  /* Not chosen: a text that could be read two ways is refused until somebody says which part is the day. */
  const [dayFirst, setDayFirstHere] = useState<DayFirst>(null);
  const [said, setSaid] = useState<Said | null>(null);
  const [atWork, setAtWork] = useState<AtWork | null>(null);
  const count = useRef(0);
  /** Which of the sentences was the grid's own last one. */
  const refusal = useRef(0);

  const say = useCallback((kind: Said["kind"], sentences: readonly string[]) => {
    setSaid({ kind, sentences, at: ++count.current });
  }, []);

  useEffect(() => {
    let made: Grid | null = null;
    let isGone = false;
    void (async () => {
      try {
        const createGrid = await loadGrid();
        if (isGone || !holder.current) return;
        made = await createGrid(holder.current, {
          today: dayNumberOf(new Date()),
          dayFirst: null,
          say: (sentence) => {
            say("problem", [sentence]);
            refusal.current = count.current;
          },
          hush: () => setSaid((now) => (now?.at === refusal.current ? null : now)),
        });
        if (isGone) return made.dispose();
        const opened = await made.openEmpty();
        setName(opened.outcome === "opened" ? opened.name : words.noFile);
        made.onChanged(() => setChanged(made!.isChanged()));
        setGrid(made);
      } catch (error) {
        if (!isGone) setFailure(words.cannotStart(error instanceof Error ? error.message : String(error)));
      }
    })();
    return () => {
      isGone = true;
      made?.dispose();
    };
  }, [holder, loadGrid, say]);

  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    const nextDay = () => {
      timer = setTimeout(
        () => {
          const now = dayNumberOf(new Date());
          setToday(now);
          grid?.setToday(now);
          nextDay();
        },
        untilMidnight(new Date()) + 1_000,
      );
    };
    nextDay();
    return () => clearTimeout(timer);
  }, [grid]);

  /* News of something that went well need not stay; whatever has to be read does. */
  useEffect(() => {
    if (!said || said.kind === "problem" || said.sentences.length > 1 || isBusy) return;
    const timer = setTimeout(() => setSaid((now) => (now === said ? null : now)), NEWS_MS);
    return () => clearTimeout(timer);
  }, [isBusy, said]);

  useEffect(() => {
    if (!isChanged) return;
    const ask = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener("beforeunload", ask);
    return () => window.removeEventListener("beforeunload", ask);
  }, [isChanged]);

  useEffect(() => {
    document.title = words.pageTitle(name, isChanged);
  }, [isChanged, name]);

  /** One thing at a time; whatever goes wrong becomes a sentence. */
  async function busily<T>(work: () => Promise<T>, otherwise: T): Promise<T> {
    setBusy(true);
    try {
      return await work();
    } catch (error) {
      say("problem", [paneTexts.unexpected(error instanceof Error ? error.message : String(error))]);
      return otherwise;
    } finally {
      setBusy(false);
    }
  }

  /** Tells how far it is, and can be stopped. */
  async function watched<T>(title: string, work: (watching: Watching) => Promise<T>): Promise<T> {
    const stopping = new AbortController();
    const stop = () => {
      stopping.abort();
      setAtWork((now) => now && { ...now, isStopping: true });
    };
    try {
      return await work({
        signal: stopping.signal,
        tell: (share) => setAtWork({ title, share, isStopping: stopping.signal.aborted, stop }),
      });
    } finally {
      setAtWork(null);
    }
  }

  function take(outcome: Opened | Refusal, opened: string): boolean {
    if (outcome.outcome === "refused") {
      say("problem", [outcome.sentence]);
      return false;
    }
    setName(outcome.name);
    setChanged(grid?.isChanged() ?? false);
    setBegun(true);
    say("plain", outcome.remarks.length > 0 ? [opened, words.remarks, ...outcome.remarks] : [opened]);
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

  const openBytes = async (bytes: Uint8Array, fileName: string) => void (await open(bytes, fileName));

  return {
    grid,
    failure,
    name,
    isChanged,
    isBusy,
    hasBegun,
    today,
    dayFirst,
    said,
    atWork,
    say,
    hush: () => setSaid(null),
    openBytes,
    openMade: open,
    openFile: async (file) => {
      const bytes = await readFile(file);
      if (typeof bytes === "string") return say("problem", [bytes]);
      await openBytes(bytes, file.name);
    },
    openEmpty: async () => {
      if (grid) await busily(async () => take(await grid.openEmpty(), words.newOpened), false);
    },
    endEntry: async () => {
      if (grid && !(await grid.endEntry())) return null;
      return grid?.isChanged() ? "unsaved" : "saved";
    },
    save: async () => {
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
        say(
          "done",
          saved.report.length > 0
            ? [words.saved(saved.name), words.savedWith, ...saved.report]
            : [words.saved(saved.name)],
        );
        return true;
      }, false);
    },
    setDayFirst: (choice) => {
      grid?.setDayFirst(choice);
      setDayFirstHere(choice);
    },
  };
}
