/** The invented caseload sorted by its urgency, by one press in the pane of the real page. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { caseloadBook } from "../../src/caseload/index";
import { sheetNames } from "../../src/caseload/names";
import { urgencies, urgencyOf } from "../../src/caseload/urgency";
import { showOnly as words } from "../../taskpane/texts/show-only";
import { showOnly } from "../../taskpane/ui/show-only/job";
import { findings, goSheet, inPane, openDesk, rowOf } from "./caseload/desk";
import { launchBrowser } from "./launch";
import { goTo } from "./places";
import { serveDist, type Served } from "./serve";

let browser: Browser;
let served: Served;
beforeAll(async () => {
  [browser, served] = await Promise.all([launchBrowser(), serveDist()]);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

test("the worst word stands in the first row, and no row stands above a worse one", async () => {
  const { page, faults } = await openDesk(browser, served.url);
  await goSheet(page, sheetNames.tubes);
  await goTo(page, showOnly);
  const place = inPane(page);
  await place.getByRole("button", { name: words.order.press, exact: true }).click();
  await place.getByText(/rows sorted, the most urgent first\./).waitFor({ timeout: 60_000 });
  expect(await findings(page)).toEqual([]);

  /* Counted from 0 there; the first person stands below the header. */
  const first =
    caseloadBook({ asOf: 46_352, people: "none", groups: [] }).sheets.find(({ name }) => name === sheetNames.tubes)!
      .table!.top + 2;
  const places: number[] = [];
  for (let row = first; row < first + 12; row++) {
    const { "To do": toDo } = await rowOf(page, sheetNames.tubes, row);
    places.push(urgencies.indexOf(urgencyOf(toDo!)!));
  }
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(places[0]).toBeLessThan(urgencies.findIndex(({ asks }) => asks !== "act"));
  expect(faults).toEqual([]);
  await page.context().close();
});
