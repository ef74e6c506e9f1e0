/**
 * Our Excel adapter on Microsoft's own Excel library, as scripts of a page of a real browser: one change there and back.
 * Everything else that the adapter does is tested on the same library without a page (tests/hosts/excel).
 */
import { readFile } from "node:fs/promises";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Browser } from "playwright-core";
import { formula } from "../../src/columns/formula";
import { Book } from "../../taskpane/workbook/fake/book";
import type { Change, Workbook } from "../../taskpane/workbook/port";
import { CLINIC } from "../hosts/contract/workbooks";
import { LIBRARY, type Bridge } from "../hosts/excel/library";
import { Model } from "../hosts/excel/model";
import { Protocol } from "../hosts/excel/protocol";
import { launchBrowser } from "./launch";
import { asScript } from "./modules";
import { serveFiles, type Served } from "./serve";

const HTML = `<!doctype html><title>Excel</title><link rel="icon" href="data:,">
<script src="excel.js"></script><script src="workbook.js"></script>`;
const WORKBOOK = `
  import { ExcelWorkbook } from "./taskpane/workbook/excel/workbook";
  window.workbook = new ExcelWorkbook();`;

let browser: Browser;
let served: Served;

beforeAll(async () => {
  const [library, workbook] = await Promise.all([readFile(LIBRARY, "utf8"), asScript(WORKBOOK)]);
  served = await serveFiles({ "index.html": HTML, "excel.js": library, "workbook.js": workbook });
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

it("a column is added to a table, and taken back", async () => {
  const book = new Book(CLINIC);
  const model = new Model(book);
  const protocol = new Protocol(() => model.root());
  const page = await browser.newPage();
  const problems: string[] = [];
  page.on("pageerror", (error) => problems.push(String(error)));
  await page.exposeFunction("askHost", (body: string) => protocol.answer(body));
  await page.addInitScript(() => {
    const { askHost } = window as unknown as { askHost(body: string): Promise<unknown> };
    const bridge: Bridge = {
      sendMessageToHost(json) {
        const { id, message } = JSON.parse(json) as { id: number; message: { body: unknown } };
        const body = typeof message.body === "string" ? message.body : JSON.stringify(message.body);
        void askHost(body).then((answer) => {
          const response = { statusCode: 200, headers: {}, body: JSON.stringify(answer) };
          this.onMessageFromHost?.(JSON.stringify({ id, type: 2, flags: 0, message: response }));
        });
      },
    };
    Object.assign(window, { _richApiNativeBridge: bridge });
  });
  await page.goto(served.url);

  const table = book.sheets.flatMap(({ tables }) => tables)[0]!;
  const before = [...table.columns];
  const half = { header: "Half", formula: formula`${{ header: before[0]!, index: 0 }}&""`, format: "General" };
  const change: Change = { steps: [{ kind: "addColumns", to: { table: table.name }, columns: [half] }], expects: [] };
  const outcome = await page.evaluate(async (wanted) => {
    const { workbook } = window as unknown as { workbook: Workbook };
    const watch = { report: () => undefined, signal: new AbortController().signal };
    const receipt = await workbook.apply(wanted, watch);
    const there = (await workbook.overview()).tables.map(({ columns }) => columns);
    return { receipt: receipt.outcome, there, back: (await workbook.takeBack(receipt)).outcome };
  }, change);
  expect(outcome.receipt).toBe("done");
  expect(outcome.there).toContainEqual([...before, "Half"]);
  expect(outcome.back).toBe("taken back");
  expect(book.table(table.name)!.table.columns).toEqual(before);
  expect(problems).toEqual([]);
});
