/**
 * Renews the README's picture from the built page: `npx tsx tests/browser/picture.ts` after `npm run build`. It shows the
 * ready-made caseload with its invented people, the most urgent first, and the day at a glance beside it.
 */
import { fileURLToPath } from "node:url";
import { sheetNames } from "../../src/caseload/names";
import { pane as paneWords } from "../../taskpane/texts/pane";
import { shell as shellWords } from "../../taskpane/texts/shell";
import { showOnly as showWords } from "../../taskpane/texts/show-only";
import { showOnly } from "../../taskpane/ui/show-only/job";
import { today } from "../../taskpane/ui/today/job";
import { goSheet, INVENTED, isOpen, NOON, setClock } from "./caseload/desk";
import { launchBrowser } from "./launch";
import { goTo } from "./places";
import { serveDist } from "./serve";

const OUT = fileURLToPath(new URL("../../docs/images/at-work.png", import.meta.url));

const [browser, served] = [await launchBrowser(), await serveDist()];
const context = await browser.newContext({
  viewport: { width: 1600, height: 860 },
  reducedMotion: "reduce",
  locale: "en-GB",
});
await context.addInitScript(setClock, NOON);
const page = await context.newPage();
await page.goto(served.url);
await page.getByRole("button", { name: shellWords.first.start, exact: true }).click();
await isOpen(page, INVENTED);
await goSheet(page, sheetNames.tubes);
await goTo(page, showOnly);
await page.getByRole("button", { name: showWords.order.press, exact: true }).click();
await page
  .getByText(/the most urgent first\. Undo/)
  .first()
  .waitFor();
await goTo(page, today);
await page.locator(".worst button").first().waitFor();
const close = page.getByRole("button", { name: shellWords.closeShort, exact: true });
if ((await close.count()) > 0) await close.first().click();
await page.locator(".pane").getByText(paneWords.quietLine).waitFor();
/* At rest: nothing is drawn any more. */
let [before, now]: [Uint8Array, Buffer] = [Buffer.alloc(0), await page.screenshot()];
while (!now.equals(before)) [before, now] = [now, await page.screenshot({ path: OUT })];
await browser.close();
await served.close();
