/**
 * The port of a workbook that lives in a page of a browser, for tests in Node. Everything crosses as JSON. The page
 * must hold a `Workbook` as `window.workbook` before anything is asked.
 */
import type { Page } from "playwright-core";
import { CellError } from "../../../src/worksheet/error";
import type {
  Block,
  Change,
  Facet,
  Overview,
  Place,
  Progress,
  Receipt,
  Workbook,
} from "../../../taskpane/workbook/port";

declare global {
  interface Window {
    workbook: Workbook;
    /** Kept in the page: a receipt is known to its host by identity. */
    receipts: Receipt[];
    stops: Map<number, () => void>;
    aborts: Map<number, AbortController>;
    reportProgress(work: number, done: number, of: number): Promise<void>;
    tellChange(listener: number): Promise<void>;
  }
}

/** A receipt of the page, with its number there. */
type RemoteReceipt = Receipt & { readonly number: number };

export async function remoteWorkbook(page: Page): Promise<Workbook> {
  const watches = new Map<number, Progress>();
  const listeners = new Map<number, () => void>();
  let next = 1;
  await page.exposeFunction("reportProgress", (work: number, done: number, of: number) =>
    watches.get(work)?.report(done, of),
  );
  await page.exposeFunction("tellChange", (listener: number) => listeners.get(listener)?.());
  await page.evaluate(() => {
    window.receipts = [];
    window.stops = new Map();
    window.aborts = new Map();
  });
  return {
    /* Asked of the page's own host where it matters; every host of the suite can do every step. */
    can: () => true,
    overview: () => page.evaluate((): Promise<Overview> => window.workbook.overview()),
    read: async (place: Place, what: readonly Facet[]) => {
      const block = await page.evaluate(
        async ([where, facets]) => {
          const told = await window.workbook.read(where, facets);
          const isError = (value: unknown): value is { code: string } => typeof value === "object" && value !== null;
          const values = told.values?.map((row) => row.map((one) => (isError(one) ? { error: one.code } : one)));
          return { ...told, ...(values && { values }) };
        },
        [place, what] as const,
      );
      const values = block.values?.map((row) =>
        row.map((one) =>
          typeof one === "object" && one !== null ? new CellError((one as { error: string }).error) : one,
        ),
      );
      return { ...block, ...(values && { values }) } as Block;
    },
    apply: async (change: Change, watch: Progress) => {
      const work = next++;
      watches.set(work, watch);
      watch.signal.addEventListener("abort", () => {
        void page.evaluate((number) => window.aborts.get(number)?.abort(), work);
      });
      return page.evaluate(
        async ([wanted, number]) => {
          const abort = new AbortController();
          window.aborts.set(number, abort);
          const reports: Promise<void>[] = [];
          const report = (done: number, of: number) => void reports.push(window.reportProgress(number, done, of));
          const receipt = await window.workbook.apply(wanted, { report, signal: abort.signal });
          await Promise.all(reports);
          return { ...receipt, number: window.receipts.push(receipt) - 1 };
        },
        [change, work] as const,
      );
    },
    takeBack: (receipt, options) =>
      page.evaluate(([number, how]) => window.workbook.takeBack(window.receipts[number]!, how), [
        (receipt as RemoteReceipt).number,
        options,
      ] as const),
    sort: (table, by) => page.evaluate(([name, header]) => window.workbook.sort(name, header), [table, by] as const),
    reveal: (place) => page.evaluate((where) => window.workbook.reveal(where), place),
    onChange: (listen) => {
      const listener = next++;
      listeners.set(listener, listen);
      void page.evaluate((number) => {
        window.stops.set(
          number,
          window.workbook.onChange(() => void window.tellChange(number)),
        );
      }, listener);
      return () => void page.evaluate((number) => window.stops.get(number)?.(), listener);
    },
  };
}
