/**
 * A real browser for tests, on a machine that has nothing but Node.
 *
 * On Linux the browser comes as an npm package with its own libraries; elsewhere the installed Chrome or Edge is used.
 * BROWSER_PATH overrides both.
 */
import { existsSync } from "node:fs";
import { chromium as playwright, type Browser, type BrowserServer, type LaunchOptions } from "playwright-core";

/** The environment's name for the address of the browser that a whole run of tests shares. */
export const SHARED = "BROWSER_OF_THIS_RUN";

/** Whoever waits in a page this long waits for ever. Every page that launchBrowser's browser opens has this limit. */
export const A_HANG = 120_000;

async function packaged(): Promise<string> {
  // The package unpacks its own shared libraries only where it believes itself on Amazon Linux 2023 with Node 20.
  process.env["AWS_LAMBDA_JS_RUNTIME"] ??= "nodejs20.x";
  const { default: chromium } = await import("@sparticuz/chromium");
  return chromium.executablePath();
}

/** Ways to a browser, best first. */
async function ways(): Promise<readonly LaunchOptions[]> {
  const own = process.env["BROWSER_PATH"];
  const args = ["--no-sandbox", "--font-render-hinting=none"];
  if (own !== undefined) {
    if (!existsSync(own)) throw new Error(`No browser at ${own} (BROWSER_PATH)`);
    return [{ executablePath: own, args }];
  }
  if (process.platform === "linux" && process.arch === "x64")
    return [{ executablePath: await packaged(), args: [...args, "--headless=shell"], headless: true }];
  return [
    { channel: "chrome", args },
    { channel: "msedge", args },
  ];
}

async function byFirstWay<T>(start: (options: LaunchOptions) => Promise<T>): Promise<T> {
  const faults: unknown[] = [];
  for (const options of await ways()) {
    try {
      return await start(options);
    } catch (fault) {
      // The next one may be installed.
      faults.push(fault);
    }
  }
  const cause = new AggregateError(faults);
  throw new Error("No browser found: install Chrome or Edge, or set BROWSER_PATH to a Chromium", { cause });
}

function patient(browser: Browser): Browser {
  const open = browser.newContext.bind(browser);
  // newPage comes by here too
  browser.newContext = async (options) => {
    const context = await open(options);
    context.setDefaultTimeout(A_HANG);
    return context;
  };
  return browser;
}

/** A browser that several processes can connect to. */
export const startBrowserServer = (): Promise<BrowserServer> =>
  byFirstWay((options) => playwright.launchServer({ ...options, timeout: A_HANG }));

/** For a file of tests that uses what all pages of a browser share: the clipboard. */
export const launchOwnBrowser = async (): Promise<Browser> =>
  patient(await byFirstWay((options) => playwright.launch({ ...options, timeout: A_HANG })));

/** The browser of this run of tests, or else one of its own; fails with a sentence where there is none. */
export async function launchBrowser(): Promise<Browser> {
  const shared = process.env[SHARED];
  return shared === undefined ? launchOwnBrowser() : patient(await playwright.connect(shared, { timeout: A_HANG }));
}
