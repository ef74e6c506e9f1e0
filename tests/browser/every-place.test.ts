/**
 * Every place of the pane, on every sheet of the invented caseload (twenty times round in `npm run endurance`), in the
 * real page. After each press the page is asked a question: a page that works without end would never answer, and a
 * person would lose all that was not saved.
 */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { chance } from "../../src/caseload/invented/random";
import { sheetNames, tableNames } from "../../src/caseload/names";
import { columnLetters } from "../../src/columns/formula";
import { convertSizes as convertWords } from "../../taskpane/texts/convert-sizes";
import { ownList } from "../../taskpane/texts/own-list";
import { shell as pageWords } from "../../taskpane/texts/shell";
import { pane as paneWords } from "../../taskpane/texts/pane";
import { repair as repairWords } from "../../taskpane/texts/repair";
import { setUp as setUpWords } from "../../taskpane/texts/set-up";
import { today as todayWords } from "../../taskpane/texts/today";
import { convertSizes } from "../../taskpane/ui/convert-sizes/job";
import { call, places } from "../../taskpane/ui/pane/places";
import { today } from "../../taskpane/ui/today/job";
import { recordings } from "../../taskpane/ui/today/recordings";
import { shortOrLong } from "../budget";
import { go, goSheet, inPane, isOpen, openPage, type Desk } from "./caseload/desk";
import { builtAs } from "./caseload/saved";
import { launchBrowser } from "./launch";
import { goTo } from "./places";
import { serveDist, type Served } from "./serve";

const ROUNDS = shortOrLong(1, 20);
/** A page that has not answered by then has stopped. */
const PATIENCE_MS = 60_000;
/** What a place says while it is still looking or being fetched. */
const LOOKING: readonly string[] = [
  ...[ownList.looking, repairWords.looking],
  ...[paneWords.loading, paneWords.waiting, setUpWords.loading],
];

let browser: Browser;
let served: Served;
let desk: Desk;
let page: Page;

beforeAll(async () => {
  [browser, served] = await Promise.all([launchBrowser(), serveDist()]);
  desk = await openPage(browser, served.url);
  ({ page } = desk);
  await page.getByRole("button", { name: pageWords.first.start, exact: true }).click();
  await isOpen(page, "Invented caseload.xlsx");
});
/* A page that has stopped would not close either: closing the browser ends it. */
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

/**
 * Presses in the pane, if anything is to be pressed, and comes back once the place in sight has found what it looks for.
 * By one script in the page: fifteen hundred presses of a mouse would take minutes. A page that has stopped does not even
 * refuse, so the clock is ours.
 */
async function answers(after: string, label?: string): Promise<void> {
  let clock: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>((_, refuse) => {
    clock = setTimeout(() => refuse(new Error(`The page did not answer after ${after}.`)), PATIENCE_MS);
  });
  const answer = page.evaluate(
    async ([wanted, looking]) => {
      const inSight = () => document.querySelector<HTMLElement>(".pane-body > section:not([hidden])");
      if (wanted !== undefined) {
        const ways = document.querySelectorAll<HTMLElement>(".pane-head button, .places button");
        const presses = [...ways, ...inSight()!.querySelectorAll("button")];
        const press = presses.find((one) => one.textContent === wanted && one.checkVisibility());
        if (!press) throw new Error(`Nothing in the pane says “${wanted}”`);
        (press as HTMLElement).click();
      }
      // parts that are kept but not in sight rest, even while they look
      const isLooking = () => looking.some((words) => inSight()!.innerText.includes(words));
      do await new Promise((next) => setTimeout(next));
      while (isLooking());
    },
    [label, LOOKING] as const,
  );
  answer.catch(() => undefined);
  await Promise.race([answer, late]).finally(() => clearTimeout(clock));
}

/** Presses that lead through all places and their jobs; what a place shows first comes last in it. */
const presses: readonly string[] = [
  ...recordings.flatMap(({ label }) => [today.label, label, todayWords.back]),
  ...[call, ...places].flatMap(({ label, jobs: [first, ...others] }) => [
    label,
    ...(others.length === 0 ? [] : [...others, first].map((job) => job.label)),
  ]),
];

test("a first cell that is none, typed letter by letter, does not stop the page", async () => {
  await goSheet(page, sheetNames.tubes);
  await goTo(page, convertSizes);
  const place = inPane(page);
  await place.getByLabel(convertWords.put.spill).check();
  const start = place.getByLabel(convertWords.put.start);
  await start.fill("");
  await answers("emptying the first cell");
  const beside = columnLetters(builtAs().tables.find(({ name }) => name === tableNames.tubes)!.headers.length + 1);
  await start.pressSequentially(`${beside}8`);
  await answers("typing a first cell");
  await place.getByText(new RegExp(`its answers fill ${beside}8:${beside}\\d+`)).waitFor();
});

test(`${ROUNDS} times round through all places on every sheet`, async () => {
  const by = chance(20_261_126);
  for (let round = 1; round <= ROUNDS; round++) {
    for (const sheet of Object.values(sheetNames)) {
      await goSheet(page, sheet);
      await go(page, `${by.pick([..."ABCDEFGH"])}${by.whole(1, 60)}`);
      for (const press of presses) await answers(`“${press}” on “${sheet}”, round ${round}`, press);
    }
  }
  expect(desk.faults).toEqual([]);
});
