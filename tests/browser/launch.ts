/**
 * A real browser for tests, on a machine that has nothing but Node.
 *
 * On Linux the browser comes as an npm package with its own libraries; elsewhere the installed Chrome or Edge is used.
 * BROWSER_PATH overrides both.
 */
import { existsSync } from "node:fs";
import { chromium as playwright, type Browser } from "playwright-core";

async function packaged(): Promise<string> {
  // The package unpacks its own shared libraries only where it believes itself on Amazon Linux 2023 with Node 20.
  process.env["AWS_LAMBDA_JS_RUNTIME"] ??= "nodejs20.x";
  const { default: chromium } = await import("@sparticuz/chromium");
  return chromium.executablePath();
}

/** Starts a browser; fails with a sentence where there is none. */
export async function launchBrowser(): Promise<Browser> {
  const own = process.env["BROWSER_PATH"];
  const args = ["--no-sandbox", "--font-render-hinting=none"];
  if (own !== undefined) {
    if (!existsSync(own)) throw new Error(`No browser at ${own} (BROWSER_PATH)`);
    return playwright.launch({ executablePath: own, args });
  }
  if (process.platform === "linux" && process.arch === "x64") {
    return playwright.launch({ executablePath: await packaged(), args: [...args, "--headless=shell"], headless: true });
  }
  for (const channel of ["chrome", "msedge"]) {
    try {
      return await playwright.launch({ channel, args });
    } catch {
      // The next one may be installed.
    }
  }
  throw new Error("No browser found: install Chrome or Edge, or set BROWSER_PATH to a Chromium");
}
