/** A caseload that 0.1.0 set up, in the real page: it is told what is new, and a new one is made from it by two presses. */
import { fileURLToPath } from "node:url";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { setUp } from "../../taskpane/texts/set-up";
import { setUp as setUpJob } from "../../taskpane/ui/set-up/job";
import { launchBrowser } from "./launch";
import { openFile, openWorkbookPage } from "./nurse/workbook-page";
import { goTo } from "./places";
import { serveDist, type Served } from "./serve";

const FILE = fileURLToPath(new URL("../hosts/fixtures/caseload-0.1.0.xlsx", import.meta.url));
const words = setUp.older;

let browser: Browser;
let served: Served;

beforeAll(async () => {
  [browser, served] = await Promise.all([launchBrowser(), serveDist()]);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

it("shows what would come along before anything is made, and says what to do with both", async () => {
  const { page, faults } = await openWorkbookPage(browser, served.url);
  const press = (name: string) => page.getByRole("button", { name, exact: true }).click();
  await openFile(page, FILE);
  await page.getByText("caseload-0.1.0.xlsx is open.").first().waitFor();
  await goTo(page, setUpJob);
  await page.getByRole("heading", { name: words.title }).waitFor();
  await press(words.look);
  await page.getByText("4 rows of Tubes in use, 15 rows of Balloon checks and 4 rows of Changes come along").waitFor();
  await press(words.make);
  await page.getByText(words.done).last().waitFor();
  expect(await page.getByRole("heading", { name: words.title }).count()).toBe(0);
  await page.getByText(words.opened(words.fileName)).waitFor();
  expect(faults).toEqual([]);
  await page.context().close();
});
