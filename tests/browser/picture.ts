/** Renews the README's picture from the built page: `npx tsx tests/browser/picture.ts` after `npm run build`. */
import { fileURLToPath } from "node:url";
import { launchBrowser } from "./launch";
import { serveDist } from "./serve";

const OUT = fileURLToPath(new URL("../../docs/images/at-work.png", import.meta.url));
const COLUMNS = ["Change due", "At the latest", "Change", "Size in mm", "Balloon"];

const [browser, served] = [await launchBrowser(), await serveDist()];
const page = await browser.newPage({
  viewport: { width: 1840, height: 860 },
  reducedMotion: "reduce",
  locale: "en-GB",
});
await page.goto(served.url);
await page.getByRole("button", { name: "Try it", exact: true }).click();
await page.getByRole("button", { name: "Look around here", exact: true }).click();
for (const column of COLUMNS) await page.getByRole("checkbox", { name: column, exact: true }).check();
await page.getByRole("button", { name: "Add 5 columns" }).click();
await page.getByRole("heading", { name: "Columns added" }).waitFor();
const close = page.getByRole("button", { name: "Close", exact: true });
if ((await close.count()) > 0) await close.first().click();
// The engine and the fades of its bars come to rest.
await page.waitForTimeout(2500);
await page.screenshot({ path: OUT });
await browser.close();
await served.close();
