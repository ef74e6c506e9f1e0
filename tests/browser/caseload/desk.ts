/**
 * The ready-made caseload in the real page, worked on as a nurse works: sheets by their tabs, cells by the name box and
 * the keyboard. The grid is a picture; what its cells show is read from "Read this row".
 */
import axe from "axe-core";
import type { Browser, Locator, Page } from "playwright-core";
import { expect } from "vitest";
import { shell as shellWords } from "../../../taskpane/texts/shell";
import { A_HANG } from "../launch";

export interface Desk {
  readonly page: Page;
  /** Every address that was asked for. */
  readonly requests: string[];
  /** What the page could not bear, or complained of. */
  readonly faults: string[];
}

export const INVENTED = "Invented caseload.xlsx";

/** Noon of the day on which the people are invented: the page's clock goes on from there. */
export const NOON = Date.UTC(2026, 10, 26, 12);

/** The page's today is one fixed day, so that every expected word can be worked out by hand. */
export const setClock = (noon: number): void => {
  const RealDate = Date;
  const shift = noon - RealDate.now();
  class ShiftedDate extends RealDate {
    constructor(...given: [] | ConstructorParameters<DateConstructor>) {
      if (given.length === 0) super(RealDate.now() + shift);
      else super(...(given as unknown as [number]));
    }
    static override now = () => RealDate.now() + shift;
  }
  globalThis.Date = ShiftedDate as unknown as DateConstructor;
};

/** The page as it stands before anything is pressed. */
export async function openPage(browser: Browser, url: string): Promise<Desk> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 1200 },
    acceptDownloads: true,
    reducedMotion: "reduce",
    locale: "en-GB",
    timezoneId: "Europe/London",
  });
  await context.addInitScript(setClock, NOON);
  const page = await context.newPage();
  const [requests, faults]: [string[], string[]] = [[], []];
  page.on("request", (request) => requests.push(request.url()));
  page.on("pageerror", (error) => faults.push(String(error)));
  /* The favourite icon is asked for by the browser itself. */
  page.on("console", (message) => {
    if (message.type() === "error" && !message.location().url.includes("favicon")) faults.push(message.text());
  });
  await page.goto(url);
  await page.getByRole("button", { name: shellWords.first.start, exact: true }).waitFor();
  return { page, requests, faults };
}

/** The invented caseload or an empty sheet, by the press of the first screen; the selected row is read out beside it. */
export async function openDesk(browser: Browser, url: string, by: "start" | "empty" = "start"): Promise<Desk> {
  const desk = await openPage(browser, url);
  await desk.page.getByRole("button", { name: shellWords.first[by], exact: true }).click();
  await (by === "start" ? isOpen(desk.page, INVENTED) : desk.page.locator(".first").waitFor({ state: "detached" }));
  await desk.page.getByText(shellWords.selectedRow, { exact: true }).click();
  return desk;
}

export const fromElsewhere = (requests: readonly string[], url: string): string[] =>
  requests.filter((address) => !address.startsWith(url) && !/^(?:blob|data):/.test(address));

export const isOpen = (page: Page, name: string): Promise<void> =>
  page.getByRole("heading", { level: 1, name }).waitFor();

/** Shows a sheet by its tab below the grid. */
export const goSheet = (page: Page, name: string): Promise<void> =>
  page.locator(".sheet-area").getByText(name, { exact: true }).last().click();

const nameBox = (page: Page): Locator => page.locator("[data-u-comp=defined-name] input").first();

/**
 * Selects a cell by the name box, as with any spreadsheet. While a list of words is closing, the grid does not hear the
 * first try.
 */
export async function go(page: Page, address: string): Promise<void> {
  const box = nameBox(page);
  const tries = 4;
  for (let i = 1; i <= tries; i++) {
    await box.click({ clickCount: 3 });
    await page.keyboard.type(address);
    await page.keyboard.press("Enter");
    const isThere = expect.poll(() => box.inputValue(), { timeout: i === tries ? A_HANG : 2_000 }).toBe(address);
    const heard = await isThere.then(
      () => true,
      (error: unknown) => (i === tries ? Promise.reject(error as Error) : false),
    );
    if (heard) return;
  }
}

/** The grid takes the keyboard a moment after the cell is selected. */
const gridListens = (page: Page) =>
  expect.poll(() => page.evaluate(() => document.activeElement?.id)).toMatch(/^__editor_/);

/** Begins to type into a cell. */
export async function begin(page: Page, address: string, text: string): Promise<void> {
  await go(page, address);
  await gridListens(page);
  await page.keyboard.type(text);
}

export async function type(page: Page, address: string, text: string): Promise<void> {
  await begin(page, address, text);
  await page.keyboard.press("Enter");
}

/**
 * Types a word into a cell that has a list: it comes up at the first letter, and must leave the letters to the cell. A row
 * that was begun below the list has its lists a moment later.
 */
export async function typeWord(page: Page, address: string, word: string): Promise<void> {
  const list = page.getByText("Select an item", { exact: true });
  const tries = 4;
  for (let i = 1; i <= tries; i++) {
    await begin(page, address, word.slice(0, 1));
    const isOpen = await list.waitFor({ timeout: i === tries ? A_HANG : 5_000 }).then(
      () => true,
      (error: unknown) => (i === tries ? Promise.reject(error as Error) : false),
    );
    if (isOpen) break;
    await page.keyboard.press("Escape");
  }
  await page.keyboard.type(word.slice(1));
  await page.keyboard.press("Enter");
  await expect.poll(() => nameBox(page).inputValue()).not.toBe(address);
  expect(await page.getByRole("dialog").allInnerTexts()).toEqual([]);
}

/** What a row of the sheet in sight shows, by the headers of its columns. */
export async function rowOf(page: Page, sheet: string, row: number): Promise<Readonly<Record<string, string>>> {
  await go(page, `A${row}`);
  const table = page.getByRole("table", { name: shellWords.rowTitle(row, sheet), exact: true });
  await table.waitFor();
  return table.evaluate((shown) =>
    Object.fromEntries(
      [...shown.querySelectorAll("tbody tr")].map((line) => [
        line.querySelector("th")!.textContent,
        line.lastElementChild!.textContent,
      ]),
    ),
  );
}

/** Waits until a row shows what is expected, and nothing else in the columns named. */
export async function shows(page: Page, sheet: string, row: number, wanted: Readonly<Record<string, string>>) {
  await expect
    .poll(
      async () => {
        const found = await rowOf(page, sheet, row);
        return Object.fromEntries(Object.keys(wanted).map((header) => [header, found[header]]));
      },
      { interval: 300 },
    )
    .toEqual(wanted);
}

const paneSide = (page: Page): Locator => page.getByRole("complementary", { name: shellWords.pane });

/** The part of the pane that is in sight. */
export const inPane = (page: Page): Locator => paneSide(page).locator(".pane-body > section:not([hidden])");

/** Page and pane have nothing for axe to find; the grid draws its own tools. */
export async function findings(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(
      { include: [["#root"]], exclude: [[".grid-holder"]] },
      { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] },
    );
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`));
  });
}

/** Where a cell stands on the page: the grid puts its editor there. The cell must be in sight, below the headers. */
async function boxOf(page: Page, address: string) {
  await go(page, address);
  await page.keyboard.press("F2");
  const box = () =>
    page.evaluate(() => {
      /* The first such canvas is the formula bar's. */
      const editor = document.querySelectorAll("canvas[id^=univer-doc-main-canvas]")[1]!.getBoundingClientRect();
      return { left: editor.left, top: editor.top, width: editor.width };
    });
  await expect.poll(async () => (await box()).width).toBeGreaterThan(0);
  const found = await box();
  await page.keyboard.press("Escape");
  return found;
}

const onGrid = (page: Page, words: string): Locator => page.getByText(words, { exact: true }).first();

/** By the menu, with the rows selected: the first column decides. */
export async function sortDescending(page: Page, area: string): Promise<void> {
  await go(page, area);
  const more = page.locator("[data-u-comp='ribbon-toolbar-more'] button");
  await more.click();
  await page.locator("[data-u-command='sheet.menu.sheets-sort']").last().click();
  await onGrid(page, "Descending").click();
}

/** By the menu of the row's number. */
export async function deleteRow(page: Page, row: number): Promise<void> {
  const { top } = await boxOf(page, `A${row}`);
  const sheet = (await page.locator("[data-u-comp=render-canvas][id^=univer-sheet-main-canvas]").boundingBox())!;
  await page.mouse.click(sheet.x + 20, top + 10, { button: "right" });
  await page
    .getByText(/^Delete (?:selected )?rows?/i)
    .first()
    .click();
}

/** Rows in sight below a row, as the arrow key meets them. */
export async function shownRows(page: Page, below: number, count: number): Promise<number[]> {
  await go(page, `A${below}`);
  const box = nameBox(page);
  const rows: number[] = [];
  for (let i = 0; i < count; i++) {
    const before = await box.inputValue();
    await page.keyboard.press("ArrowDown");
    await expect.poll(() => box.inputValue()).not.toBe(before);
    rows.push(Number((await box.inputValue()).replace(/^[A-Z]+(\d+).*$/, "$1")));
  }
  return rows;
}
