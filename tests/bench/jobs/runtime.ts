/** Worksheet functions as Excel calls them, one cell at a time, in Microsoft's own runtime. */
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { Browser, Page } from "playwright-core";
import { serveFiles, type Served } from "../../browser/serve";
import { inTurn, median } from "../measure";
import { inBrowser } from "../page/in-browser";
import type { How, Job } from "../report/row";

const RUNTIME = createRequire(import.meta.url).resolve("@microsoft/office-js/dist/custom-functions-runtime.js");
const SIZES = [5_000, 10_000, 20_000];

/** What Excel's side of the bridge is here: it counts answers. */
interface Host {
  answered: number;
  _richApiNativeBridge: { onMessageFromHost(json: string): void };
}

const HOST = `
  window.answered = 0;
  window._richApiNativeBridge = {
    sendMessageToHost(json) {
      const { id, message } = JSON.parse(json);
      const body = typeof message.body === "string" ? JSON.parse(message.body) : message.body;
      for (const action of body.Actions)
        if (action.Name === "SetInvocationArrayResults") window.answered += action.ArgumentInfo.Arguments[0].length;
      const response = { statusCode: 200, headers: {}, body: '{"Results":[]}' };
      setTimeout(() => this.onMessageFromHost(JSON.stringify({ id, type: 2, flags: 0, message: response })), 0);
    },
  };`;

/** The peer: a function that gives its argument back, registered as ours are. */
const PEER = `CustomFunctions.associate("GIVEBACK", (cells) => cells);`;

/** The runtime insists on its own file name. */
const serveRuntime = async (): Promise<Served> =>
  serveFiles({
    "index.html":
      '<!doctype html><script src="custom-functions-runtime.js"></script><script src="functions.js"></script>' +
      '<script src="peer.js"></script>',
    "custom-functions-runtime.js": await readFile(RUNTIME, "utf8"),
    "functions.js": await readFile(new URL("../../../dist/functions.js", import.meta.url), "utf8"),
    "peer.js": PEER,
  });

async function openRuntime(browser: Browser, url: string): Promise<Page> {
  const page = await browser.newPage();
  await page.addInitScript({ content: HOST });
  await page.goto(url);
  return page;
}

/** Milliseconds from the calls to the last answer. */
const calls = (page: Page, name: string, args: readonly unknown[], count: number): Promise<number> =>
  page.evaluate(
    async ([wanted, given, many]) => {
      const host = window as unknown as Host;
      const entries = Array.from({ length: many }, (_, i) => ({
        messageCategory: 1,
        messageType: 1000,
        message: [i, wanted, given, "Sheet1!A1", 0],
      }));
      const json = JSON.stringify({ type: 3, message: { entries } });
      host.answered = 0;
      const start = performance.now();
      host._richApiNativeBridge.onMessageFromHost(json);
      while (host.answered < many) await new Promise((later) => setTimeout(later, 1));
      return performance.now() - start;
    },
    [name, args, count] as const,
  );

async function measure({ quick, row }: How, browser: Browser, url: string): Promise<void> {
  const page = await openRuntime(browser, url);
  for (const count of quick ? SIZES.slice(0, 1) : SIZES) {
    const figures = await inTurn(
      {
        change: () => calls(page, "CHANGEDUE", [[[46_000]], [[3]], null, null], count),
        size: () => calls(page, "FRTOMM", [[[14]]], count),
        peer: () => calls(page, "GIVEBACK", [[[14]]], count),
      },
      quick ? 2 : 5,
    );
    for (const [what, which] of [
      ["CHANGEDUE", "change"],
      ["FRTOMM", "size"],
    ] as const)
      row({
        what,
        size: `${count.toLocaleString("en-GB")} calls`,
        unit: "ms",
        ours: median(figures[which]),
        peer: "a function that gives its argument back",
        theirs: median(figures.peer),
        limits: [{ what: "ratio", most: 1.3 }],
      });
  }
  await page.close();
}

export const runtime: Job = {
  name: "runtime",
  title: "One formula in each cell, in Microsoft's runtime",
  about:
    "A column of single formulas is as many calls. Microsoft's custom-functions runtime in a real browser with " +
    "dist/functions.js, calls handed over as Excel hands them over, until the last answer; beside it, in the same page in turn, a function that " +
    "does nothing.",
  leavesOut: "what Excel itself takes on its side of the bridge, which only a real Excel can tell.",
  run: (how) => inBrowser([serveRuntime], (browser, url) => measure(how, browser, url!)),
};
