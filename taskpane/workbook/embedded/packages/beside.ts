/** Packages on a thread of their own, as the page sees them. */
import {
  breath,
  parseRange,
  Stopped,
  workbookOf,
  type OpenedWorkbook,
  type PackageEdits,
  type Patched,
  type Refusal,
  type StoredFormula,
  type TableEdit,
  type Watching,
  type WorkbookData,
} from "../../package";
import type { OpenedFile, Packages } from "./interface";
import {
  portions,
  type Asked,
  type Portion,
  type SentColumn,
  type SentEdits,
  type SentTable,
  type Told,
} from "./messages";

/** What is needed of a worker. */
export interface Thread {
  onmessage: ((event: MessageEvent<Told>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  postMessage(message: Asked): void;
  terminate(): void;
}

interface Job {
  readonly watching: Watching;
  /** Lists of the data that came so far. */
  readonly lists: Map<string, unknown[]>;
  readonly done: (answer: unknown) => void;
  readonly failed: (problem: Error) => void;
}

const listKey = ({ sheet, list }: Pick<Portion, "sheet" | "list">): string => `${list} ${sheet}`;

/** Undefined where the thread does not start: then everything is done on this one. */
export function packagesBeside(thread: Thread): Promise<Packages | undefined> {
  return new Promise((resolve) => {
    thread.onerror = () => {
      thread.terminate();
      resolve(undefined);
    };
    thread.onmessage = ({ data }) => {
      if (data.tell === "ready") resolve(new Beside(thread));
    };
  });
}

class Beside implements Packages {
  private readonly jobs = new Map<number, Job>();
  private readonly books = new Map<OpenedWorkbook, number>();
  private lastJob = 0;

  constructor(private readonly thread: Thread) {
    thread.onmessage = ({ data }) => this.hear(data);
    thread.onerror = ({ message }) => {
      for (const { failed } of this.jobs.values()) failed(new Error(message));
      this.jobs.clear();
    };
  }

  async open(bytes: Uint8Array, watching: Watching = {}): Promise<OpenedFile | Refusal> {
    return this.job(watching, async (job) => this.thread.postMessage({ ask: "open", job, bytes }));
  }

  async patch(opened: OpenedWorkbook, edits: PackageEdits, watching: Watching = {}): Promise<Patched | Refusal> {
    const book = this.books.get(opened);
    if (book === undefined) throw new Error("This workbook is not held.");
    return this.job(watching, async (job) => {
      const sheets = new Map<string, NonNullable<ReturnType<NonNullable<PackageEdits["sheets"]>["get"]>>>();
      for (const [sheet, { cells, ...rest }] of edits.sheets ?? []) {
        sheets.set(sheet, rest);
        for (const some of portions([...(cells ?? [])])) {
          this.thread.postMessage({ ask: "cells", job, sheet, cells: some });
          await breath();
        }
      }
      const tables = edits.tables?.map((table) => sentTable(table, opened));
      const { definedNames, newSheets } = edits;
      const sent: SentEdits = {
        sheets,
        ...(newSheets && { newSheets }),
        ...(tables && { tables }),
        ...(definedNames && { definedNames }),
      };
      this.thread.postMessage({ ask: "patch", job, book, edits: sent });
    });
  }

  release(opened: OpenedWorkbook): void {
    const book = this.books.get(opened);
    if (book === undefined) return;
    this.books.delete(opened);
    this.thread.postMessage({ ask: "release", book });
  }

  dispose(): void {
    this.thread.terminate();
  }

  private async job<T>(watching: Watching, ask: (job: number) => Promise<void>): Promise<T> {
    const number = ++this.lastJob;
    const stop = () => this.thread.postMessage({ ask: "stop", job: number });
    if (watching.signal?.aborted) throw new Stopped();
    watching.signal?.addEventListener("abort", stop, { once: true });
    try {
      return await new Promise<T>((resolve, reject) => {
        this.jobs.set(number, {
          watching,
          lists: new Map(),
          done: (answer) => resolve(answer as T),
          failed: reject,
        });
        ask(number).catch(reject);
      });
    } finally {
      this.jobs.delete(number);
      watching.signal?.removeEventListener("abort", stop);
    }
  }

  private hear(told: Told): void {
    if (told.tell === "ready") return;
    const job = this.jobs.get(told.job);
    if (!job) return;
    if (told.tell === "share") job.watching.tell?.(told.share);
    else if (told.tell === "portion") {
      const key = listKey(told.portion);
      const list = job.lists.get(key) ?? [];
      job.lists.set(key, list);
      for (const item of told.portion.items) list.push(item);
    } else if (told.tell === "opened") {
      const opened = workbookOf(whole(told.data, job.lists));
      this.books.set(opened, told.job);
      job.done({ opened, display: told.display } satisfies OpenedFile);
    } else if (told.tell === "patched") job.done(told.patched);
    else if (told.tell === "refused") job.done(told.refusal);
    else if (told.tell === "stopped") job.failed(new Stopped());
    else job.failed(new Error(told.message));
  }
}

/** With the lists that came ahead. */
function whole(data: WorkbookData, lists: ReadonlyMap<string, readonly unknown[]>): WorkbookData {
  const listOf = (list: Portion["list"], sheet: string) => lists.get(listKey({ sheet, list })) ?? [];
  const stores = new Map(
    [...data.stores].map(([sheet, store]) => [
      sheet,
      {
        ...store,
        texts: listOf("texts", sheet) as string[],
        formulas: listOf("formulas", sheet) as StoredFormula[],
      },
    ]),
  );
  return { ...data, stores, strings: listOf("strings", "") as string[] };
}

/** A function cannot be sent: what it gives for the rows that the table has then is. */
function sentTable({ addColumns, ...rest }: TableEdit, opened: OpenedWorkbook): SentTable {
  const table = opened.tables.find(({ name }) => name === rest.table);
  const range = table && parseRange(table.ref);
  const firstRow = range && table ? range.top + table.headerRowCount : 1;
  const lastRow = rest.lastRow ?? (range && table ? range.bottom - table.totalsRowCount : 0);
  const column = ({ valueAt, ...own }: NonNullable<TableEdit["addColumns"]>[number]): SentColumn => ({
    ...own,
    ...(valueAt && {
      results: {
        firstRow,
        values: Array.from({ length: Math.max(0, lastRow - firstRow + 1) }, (_, row) => valueAt(firstRow + row)),
      },
    }),
  });
  return { ...rest, ...(addColumns && { addColumns: addColumns.map(column) }) };
}
