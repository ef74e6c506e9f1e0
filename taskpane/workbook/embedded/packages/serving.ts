/** The thread that holds the packages: opens, checks, patches, packs and reads back, while the page goes on. */
import {
  dataOf,
  isRefusal,
  patchUnhurried,
  Stopped,
  type CellEdit,
  type PackageEdits,
  type Watching,
} from "../../package";
import type { NewTableColumn, OpenedPackage, WorkbookData } from "../../package";
import { portions, type Asked, type Portion, type SentColumn, type SentEdits, type Told } from "./messages";
import { openFile } from "./opened";

/** What a worker sees of itself; the types of the page know no worker. */
export interface OwnThread {
  onmessage: ((event: MessageEvent<Asked>) => void) | null;
  postMessage(message: Told, transfer?: Transferable[]): void;
}

/** Answers whatever is asked from now on. */
export function serve(thread: OwnThread): void {
  const serving = new Serving(thread);
  thread.onmessage = ({ data }) => serving.hear(data);
  thread.postMessage({ tell: "ready" });
}

type Work = Extract<Asked, { readonly ask: "open" | "patch" }>;

class Serving {
  private readonly books = new Map<number, OpenedPackage>();
  private readonly stops = new Map<number, AbortController>();
  /** Cells of edits that are still to come, by work and sheet. */
  private readonly cells = new Map<number, Map<string, Map<string, CellEdit>>>();

  constructor(private readonly thread: OwnThread) {}

  hear(asked: Asked): void {
    if (asked.ask === "release") this.books.delete(asked.book);
    else if (asked.ask === "stop") this.stops.get(asked.job)?.abort();
    else if (asked.ask === "cells") this.keep(asked);
    else void this.work(asked);
  }

  private keep({ job, sheet, cells }: Extract<Asked, { readonly ask: "cells" }>): void {
    const bySheet = this.cells.get(job) ?? new Map<string, Map<string, CellEdit>>();
    this.cells.set(job, bySheet);
    const own = bySheet.get(sheet) ?? new Map<string, CellEdit>();
    bySheet.set(sheet, own);
    for (const [address, edit] of cells) own.set(address, edit);
  }

  private async work(asked: Work): Promise<void> {
    const { job } = asked;
    const stop = new AbortController();
    this.stops.set(job, stop);
    const watching = { signal: stop.signal, tell: (share: number) => this.tell({ tell: "share", job, share }) };
    try {
      if (asked.ask === "open") await this.open(job, asked.bytes, watching);
      else await this.patch(asked, watching);
    } catch (problem) {
      if (problem instanceof Stopped) this.tell({ tell: "stopped", job });
      else this.tell({ tell: "failed", job, message: problem instanceof Error ? problem.message : String(problem) });
    } finally {
      this.stops.delete(job);
      this.cells.delete(job);
    }
  }

  private async open(job: number, bytes: Uint8Array, watching: Watching): Promise<void> {
    const file = await openFile(bytes, watching);
    if (isRefusal(file)) return this.tell({ tell: "refused", job, refusal: file });
    this.books.set(job, file.opened);
    const { data, buffers } = this.sent(dataOf(file.opened), job);
    this.tell({ tell: "opened", job, data, display: file.display }, buffers);
  }

  private async patch(
    { job, book, edits }: Extract<Asked, { readonly ask: "patch" }>,
    watching: Watching,
  ): Promise<void> {
    const patched = await patchUnhurried(this.books.get(book)!, this.received(edits, job), watching);
    if (isRefusal(patched)) return this.tell({ tell: "refused", job, refusal: patched });
    this.tell({ tell: "patched", job, patched }, [patched.bytes.buffer as ArrayBuffer]);
  }

  private tell(message: Told, transfer: Transferable[] = []): void {
    this.thread.postMessage(message, transfer);
  }

  /** Lists go ahead in portions; columns of numbers are copied, because saving compares with them. */
  private sent(data: WorkbookData, job: number): { readonly data: WorkbookData; readonly buffers: Transferable[] } {
    const portion = (one: Portion): void => this.tell({ tell: "portion", job, portion: one });
    for (const items of portions(data.strings)) portion({ sheet: "", list: "strings", items });
    const buffers: Transferable[] = [];
    const stores = new Map(
      [...data.stores].map(([sheet, store]) => {
        for (const items of portions(store.texts)) portion({ sheet, list: "texts", items });
        for (const items of portions(store.formulas)) portion({ sheet, list: "formulas", items });
        const columns = Object.fromEntries(
          Object.entries(store).map(([name, value]) => {
            if (!ArrayBuffer.isView(value)) return [name, value];
            const copy = (value as Uint8Array).slice();
            buffers.push(copy.buffer as ArrayBuffer);
            return [name, copy];
          }),
        );
        return [sheet, { ...store, ...columns, texts: [], formulas: [] }];
      }),
    );
    return { data: { ...data, strings: [], stores }, buffers };
  }

  private received(edits: SentEdits, job: number): PackageEdits {
    const sheets = new Map(edits.sheets);
    for (const [name, own] of this.cells.get(job) ?? []) sheets.set(name, { ...sheets.get(name), cells: own });
    const tables = edits.tables?.map(({ addColumns, ...rest }) => ({
      ...rest,
      ...(addColumns && { addColumns: addColumns.map(receivedColumn) }),
    }));
    return { ...edits, sheets, ...(tables && { tables }) };
  }
}

const receivedColumn = ({ results, ...rest }: SentColumn): NewTableColumn => ({
  ...rest,
  ...(results && { valueAt: (row: number) => results.values[row - results.firstRow] ?? null }),
});
