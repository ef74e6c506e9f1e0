/** Our Excel adapter in a page of a real browser, on Microsoft's own library; below the library stands the model. */
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect } from "vitest";
import { parseArea } from "../../../taskpane/workbook/area";
import { Book } from "../../../taskpane/workbook/fake/book";
import type { WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import type { Progress, Workbook } from "../../../taskpane/workbook/port";
import { launchBrowser } from "../../browser/launch";
import { ORIGIN, serveModules } from "../../browser/modules";
import type { ContractHost } from "../contract/contract";
import { remoteWorkbook } from "../contract/remote";
import { EVENTS, Model } from "./model";
import { Protocol } from "./protocol";

const LIBRARY = createRequire(import.meta.url).resolve("@microsoft/office-js/dist/excel-win32-16.01.js");

const HTML = `<!doctype html>
<script src="excel.js"></script>
<script type="module">
  import { ExcelWorkbook } from "/taskpane/workbook/excel/workbook";
  window.workbook = new ExcelWorkbook();
</script>`;

let browser: Browser;
let library: string;

beforeAll(async () => {
  browser = await launchBrowser();
  library = await readFile(LIBRARY, "utf8");
});
afterAll(() => browser?.close());

export interface Opened extends ContractHost {
  readonly workbook: Workbook;
  readonly book: Book;
  readonly model: Model;
  readonly protocol: Protocol;
  readonly page: Page;
  readonly problems: string[];
}

/** Every member that the adapter has used in any page of this run: "Range.values", "Range.values=", "Table.resize". */
export const usedMembers = new Set<string>();

/** Stands in for Excel below the library: every request crosses to Node and is answered from the model. */
export async function open(description: WorkbookDescription): Promise<Opened> {
  const book = new Book(description);
  const model = new Model(book);
  const protocol = new Protocol(() => model.root());
  const page = await browser.newPage();
  const problems: string[] = [];
  page.on("pageerror", (error) => problems.push(String(error)));
  await page.exposeFunction("askHost", (body: string) => protocol.answer(body));
  await page.addInitScript(() => {
    interface Bridge {
      sendMessageToHost(json: string): void;
      onMessageFromHost?(json: string): void;
    }
    const bridge: Bridge = {
      sendMessageToHost(json) {
        const { id, message } = JSON.parse(json) as { id: number; message: { body: unknown } };
        const body = typeof message.body === "string" ? message.body : JSON.stringify(message.body);
        const { askHost } = window as unknown as { askHost(body: string): Promise<unknown> };
        void askHost(body).then((answer) => {
          const response = { statusCode: 200, headers: {}, body: JSON.stringify(answer) };
          this.onMessageFromHost?.(JSON.stringify({ id, type: 2, flags: 0, message: response }));
        });
      },
    };
    Object.assign(window, { _richApiNativeBridge: bridge });
  });
  await serveModules(page, HTML, { "excel.js": library });
  await page.goto(ORIGIN);
  await page.waitForFunction(() => "workbook" in window);

  /** Excel tells the library of an event, if it was asked to. */
  const tell = async (event: number, args: object) => {
    if (!model.registered.has(event)) return;
    const entry = { messageCategory: 65_536, messageType: event, targetId: "Workbook", message: JSON.stringify(args) };
    await page.evaluate(
      (json) => {
        const bridge = (window as unknown as { _richApiNativeBridge: { onMessageFromHost(json: string): void } })
          ._richApiNativeBridge;
        bridge.onMessageFromHost(json);
      },
      JSON.stringify({ type: 3, message: { entries: [entry] } }),
    );
  };
  return {
    workbook: await remoteWorkbook(page),
    book,
    model,
    protocol,
    page,
    problems,
    type: async (sheet, address, typed) => {
      const place = parseArea(address)!;
      book.sheet(sheet)!.type(place.top, place.left, typed);
      const worksheetId = book.sheet(sheet)!.id;
      await tell(EVENTS["Worksheets.DataChanged"]!, {
        worksheetId,
        address,
        changeType: "RangeEdited",
        source: "Local",
      });
    },
    isBold: (sheet, address) => {
      const place = parseArea(address)!;
      return book.sheet(sheet)!.cell(place.top, place.left)?.bold ?? false;
    },
    close: async () => {
      for (const member of protocol.used) usedMembers.add(member);
      await page.close();
      expect(problems).toEqual([]);
    },
  };
}

export const using = (description: WorkbookDescription, work: (host: Opened) => Promise<void>) => async () => {
  const host = await open(description);
  await work(host);
  await host.close!();
};

export const watch = (): Progress => ({ report: () => undefined, signal: new AbortController().signal });
