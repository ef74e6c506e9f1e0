/** The browser's page as built: its bar, its sentences and its questions around the real grid. */
import axe from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { functions } from "../../src/index";
import { texts } from "../../taskpane/texts";
import { print } from "../../taskpane/ui/print/job";
import { tubeOut } from "../../taskpane/ui/tube-out/job";
import { launchBrowser } from "./launch";
import { bytesOf } from "./nurse/workbook-page";
import { goTo } from "./places";
import { serveDist, type Served } from "./serve";
import { shot } from "./shots";

const words = texts.shell;

let browser: Browser;
let served: Served;
let page: Page;

beforeAll(async () => {
  [browser, served] = await Promise.all([launchBrowser(), serveDist()]);
});

afterAll(async () => {
  await browser?.close();
  await served?.close();
});

afterEach(() => page.close());

interface Wish {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
}

async function openPage({ width = 1280, height = 800, dark = false }: Wish = {}): Promise<void> {
  page = await browser.newPage({ viewport: { width, height }, colorScheme: dark ? "dark" : "light" });
}

const press = (name: string) => page.getByRole("button", { name, exact: true }).click();

const openExample = async () => {
  await page.goto(served.url);
  await press(words.first.try);
  await page.getByRole("heading", { name: words.example }).waitFor();
  await page.getByRole("checkbox", { name: "Change due" }).waitFor();
};

const addOne = async () => {
  await page.getByRole("checkbox", { name: "Size in mm" }).check();
  await page.getByRole("button", { name: "Add 1 column" }).click();
  await page.getByRole("heading", { name: texts.addColumns.result.title.done }).waitFor();
};

const choose = (name: string, bytes: Buffer) =>
  page.locator("header input[type=file]").setInputFiles({ name, mimeType: "application/octet-stream", buffer: bytes });

const picture = (name: string) => shot(page, `page-${name}`);

/** The grid draws its own tools; what is ours has nothing for axe to find. */
const findings = () => findingsIn({ include: [["#root"]], exclude: [[".grid-holder"]] });
const allFindings = () => findingsIn({ include: [["body"]] });

async function findingsIn(where: { readonly include: string[][]; readonly exclude?: string[][] }): Promise<string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async (here) => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(here, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    });
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`));
  }, where);
}

/** How many pages of A4 the page for paper takes; nothing on it is wider than the sheet. */
async function onPaper(): Promise<number> {
  await page.locator(".paper").waitFor({ state: "attached" });
  /* 210 mm less the margins of 12 mm, at 96 pixels an inch. */
  await page.emulateMedia({ media: "print" });
  await page.setViewportSize({ width: Math.floor((186 / 25.4) * 96), height: 1000 });
  const over = await page.locator(".paper").evaluate((paper) => paper.scrollWidth - paper.clientWidth);
  expect(over).toBe(0);
  await page.emulateMedia({ media: null });
  await page.setViewportSize({ width: 1280, height: 800 });
  /* Printing ends with "afterprint", which takes the page for paper away. */
  const pages = (await page.pdf({ format: "A4" })).toString("latin1").match(/\/Type \/Page\b/g)!.length;
  await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
  await page.locator(".paper").waitFor({ state: "detached" });
  return pages;
}

const sideways = () => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

test("the first screen is there before the grid is, and a choice waits for it", async () => {
  await openPage();
  let letGo = () => {};
  const held = new Promise<void>((resolve) => (letGo = resolve));
  await page.route("**/grid.js", async (route) => {
    await held;
    await route.continue();
  });
  await page.goto(served.url);
  await page.getByRole("heading", { level: 1, name: words.first.question }).waitFor();
  // no sheet, no pane and nothing to save before a list is open
  expect(await page.getByRole("button", { name: words.save, exact: true }).count()).toBe(0);
  expect(await page.getByRole("navigation").count()).toBe(0);
  expect(await findings()).toEqual([]);
  await press(words.first.empty);
  await page.locator(".first").getByText(words.starting).waitFor();
  await picture("starting");
  letGo();
  await page.getByRole("button", { name: words.save, exact: true }).waitFor();
  expect(await page.getByText(words.unsaved, { exact: true }).count()).toBe(0);
});

test.each([
  { width: 1280, dark: false },
  { width: 320, dark: true },
])("first screen, the invented list, then two columns more, at %o", async ({ width, dark }) => {
  await openPage({ width, dark });
  await page.goto(served.url);
  await page.getByRole("heading", { level: 1, name: words.first.question }).waitFor();
  const name = `${width}${dark ? "-dark" : ""}`;
  expect(await findings()).toEqual([]);
  expect(await sideways()).toBe(0);
  await picture(`first-${name}`);
  await openExample();
  expect(await findings()).toEqual([]);
  expect(await sideways()).toBe(0);
  await picture(`example-${name}`);
  if (width < 700) await press(words.toSheet);
  await press(words.showMe.next);
  await page.getByRole("heading", { name: words.showMe.done }).waitFor();
  expect(await findings()).toEqual([]);
  // the page did that by itself: nobody has anything to save
  expect(await page.getByText(words.unsaved, { exact: true }).count()).toBe(0);
  await picture(`shown-${name}`);
});

test.each([
  { width: 1280, height: 800, dark: false },
  { width: 390, height: 844, dark: true },
])("the invented caseload at %o, the day first, nothing unsaved", async ({ width, height, dark }) => {
  await openPage({ width, height, dark });
  await page.goto(served.url);
  await press(words.first.start);
  await page.getByRole("heading", { level: 1, name: "Invented caseload.xlsx" }).waitFor();
  const row = page.locator(".worst button").first();
  await row.waitFor();
  expect(await page.getByText(words.unsaved, { exact: true }).count()).toBe(0);
  expect(await findings()).toEqual([]);
  expect(await sideways()).toBe(0);
  await picture(`today-${width}${dark ? "-dark" : ""}`);
  // on a telephone the sheet is behind the pane until a row leads to it
  const sheet = page.getByRole("main", { name: words.sheet });
  expect(await sheet.isVisible()).toBe(width > 700);
  await row.click();
  await expect.poll(() => sheet.isVisible()).toBe(true);
  await picture(`row-${width}${dark ? "-dark" : ""}`);
});

test("from the day at a glance: why a cell says so, a number entered where it is missed, two pages for paper", async () => {
  await openPage({ width: 1280, height: 800 });
  await page.addInitScript(() => (window.print = () => undefined));
  await page.goto(served.url);
  await press(words.first.start);
  await page.locator(".worst button").first().click();
  const box = (await page.locator("canvas[id^='univer-sheet-main-canvas']").boundingBox())!;
  const tooltip = page.getByRole("tooltip");
  /* The most urgent row stands in row 4; the grid hears a pointer that moves. */
  await expect
    .poll(async () => {
      for (const x of [150, 154]) await page.mouse.move(box.x + x, box.y + 130);
      return tooltip.textContent({ timeout: 2_000 }).catch(() => "");
    })
    .toMatch(/^B4 shows "/);
  await page.keyboard.press("Escape");
  await tooltip.waitFor({ state: "detached" });

  const pane = page.locator(".pane");
  await pane.getByText(texts.today.enter.calls).click();
  await pane.getByLabel(/^Number in hours/).fill("01632 960 001");
  await pane.getByRole("button", { name: texts.clinicSettings.forms.calls.write }).click();
  await pane.getByRole("heading", { name: texts.clinicSettings.result.title.done }).waitFor();
  await pane.getByRole("button", { name: texts.today.back }).click();

  await goTo(page, print);
  await pane.getByRole("button", { name: texts.today.printWeek }).click();
  expect(await onPaper()).toBeLessThanOrEqual(2);
  await goTo(page, tubeOut);
  const part = page.locator(".pane-body > section:not([hidden])");
  await part.getByRole("textbox").fill("D-041");
  await part.getByRole("button", { name: texts.forms.person.find }).click();
  await part.getByRole("button", { name: texts.forms.person.yes }).click();
  await part.getByRole("button", { name: texts.print.page }).click();
  await page.locator(".paper").getByText("01632 960 001").waitFor({ state: "attached" });
  expect(await onPaper()).toBe(1);
});

test.each([320, 1280])("the reference, %i px wide: searched, and one function a screen", async (width) => {
  await openPage({ width, dark: width === 320 });
  await page.goto(`${served.url}reference.html`);
  const entries = page.locator("nav li:visible");
  const all = await entries.count();
  expect(all).toBe(functions.length);
  await page.getByRole("searchbox").fill("balloon half");
  await expect.poll(() => entries.count()).toBeLessThan(all);
  expect(await allFindings()).toEqual([]);
  expect(await sideways()).toBe(0);
  await page.getByRole("link", { name: "BALLOONHALF", exact: true }).click();
  await page.getByRole("heading", { name: "BALLOONHALF" }).waitFor();
  expect(await page.locator("article:visible").count()).toBe(1);
  expect(await entries.count()).toBe(0);
  expect(await allFindings()).toEqual([]);
  expect(await sideways()).toBe(0);
  await picture(`reference-${width}`);
});

test("a file that is no workbook is refused with a sentence, and what was there stays", async () => {
  await openPage();
  await openExample();
  await choose("letter.xlsx", Buffer.from("Dear colleague"));
  const problem = page.locator(".say.problem");
  await problem.waitFor();
  expect((await problem.innerText()).length).toBeGreaterThan(30);
  expect(await page.getByRole("heading", { level: 1 }).innerText()).toBe(words.example);
  expect(await findings()).toEqual([]);
  await picture("refused");
  /* Put away with the keyboard, which stays in the sheet beside it. */
  await page.getByRole("button", { name: words.closeShort, exact: true }).press("Enter");
  await problem.waitFor({ state: "detached" });
  expect(await page.evaluate(() => document.getElementById("sheet")!.contains(document.activeElement))).toBe(true);
});

test("unsaved changes are marked, asked about, and saved on request", async () => {
  await openPage();
  await openExample();
  await addOne();
  await page.getByText(words.unsaved, { exact: true }).waitFor();
  expect(await page.title()).toMatch(/^•/);
  await picture("added");

  await page.getByRole("button", { name: words.new, exact: true }).click();
  const dialog = page.getByRole("dialog", { name: words.leave.title });
  await dialog.waitFor();
  expect(await findings()).toEqual([]);
  await picture("leave");
  await page.keyboard.press("Escape");
  await dialog.waitFor({ state: "detached" });
  const isOnNew = () =>
    page.getByRole("button", { name: words.new, exact: true }).evaluate((e) => e === e.ownerDocument.activeElement);
  expect(await isOnNew()).toBe(true);
  await page.getByRole("button", { name: words.new, exact: true }).press("Enter");
  await dialog.getByRole("button", { name: words.leave.stay }).press("Enter");
  expect(await isOnNew()).toBe(true);
  expect(await page.getByRole("heading", { level: 1 }).innerText()).toBe(words.example);

  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: words.save, exact: true }).click();
  const saved = await download;
  expect(saved.suggestedFilename()).toBe(words.example);
  expect(
    Buffer.from(await bytesOf(saved))
      .subarray(0, 2)
      .toString(),
  ).toBe("PK");
  await page.getByText(words.unsaved, { exact: true }).waitFor({ state: "detached" });
  await picture("saved");
});

test("leaving the page with unsaved changes asks", async () => {
  await openPage();
  await openExample();
  await addOne();
  await page.getByText(words.unsaved, { exact: true }).waitFor();
  const asked: string[] = [];
  page.on("dialog", (dialog) => {
    asked.push(dialog.type());
    void dialog.accept();
  });
  await page.goto("about:blank");
  expect(asked).toEqual(["beforeunload"]);
});

test("F6 leads the keyboard from bar to sheet to pane, and the sheet answers to it", async () => {
  await openPage();
  await openExample();
  const where = () =>
    page.evaluate(() =>
      ["bar", "sheet", "pane"].find((id) => document.getElementById(id)?.contains(document.activeElement)),
    );
  await page.getByRole("button", { name: words.save, exact: true }).focus();
  await page.keyboard.press("F6");
  expect(await where()).toBe("sheet");
  await page.locator(".selected-row > summary").evaluate((summary: HTMLElement) => {
    (summary.parentElement as HTMLDetailsElement).open = true;
  });
  for (let i = 0; i < 4; i++) await page.keyboard.press("ArrowDown");
  await page.getByRole("table", { name: words.rowTitle(5, "Invented example") }).waitFor();
  expect(await page.getByRole("row", { name: /D-002/ }).innerText()).toContain("Identifier");
  await picture("selected-row");
  await page.keyboard.press("F6");
  expect(await where()).toBe("pane");
  await page.keyboard.press("Shift+F6");
  expect(await where()).toBe("sheet");
});
