/**
 * Every state of the pane in a real browser, narrow and wide, light, dark and in forced colours: nothing for axe to
 * find and nothing scrolls sideways. `npm run shots` takes a picture of each.
 *
 * The pane stands on workbooks in memory (pane-page/), so that each state can be reached; the whole page on real files
 * is tested elsewhere.
 */
import { rm } from "node:fs/promises";
import axe from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { sheetNames } from "../../src/caseload/names";
import { texts } from "../../taskpane/texts";
import { forms } from "../../taskpane/texts/forms";
import { tubeOut } from "../../taskpane/texts/tube-out";
import type { Workbook } from "../../taskpane/workbook/port";
import { addColumns } from "../../taskpane/ui/add-columns/job";
import { convertSizes } from "../../taskpane/ui/convert-sizes/job";
import { guide } from "../../taskpane/ui/guide/job";
import { help } from "../../taskpane/ui/help/job";
import { pictures } from "../../taskpane/ui/pictures/job";
import { showOnly } from "../../taskpane/ui/show-only/job";
import { today } from "../../taskpane/ui/today/job";
import { tubeOut as tubeOutJob } from "../../taskpane/ui/tube-out/job";
import { buildPage } from "./build-page";
import { launchBrowser } from "./launch";
import { journeys, tickTwo } from "./pane-page/journeys";
import { goTo, openFolds } from "./places";
import { serveFolder, type Served } from "./serve";
import { shot, TAKES_SHOTS } from "./shots";

let browser: Browser;
let served: Served;
let folder: string;

beforeAll(async () => {
  [browser, folder] = await Promise.all([launchBrowser(), buildPage("pane-page")]);
  served = await serveFolder(folder);
});

afterAll(async () => {
  await browser?.close();
  await served?.close();
  if (folder) await rm(folder, { recursive: true });
});

/** Whatever a page complained of; each test must leave it empty. */
const faults: string[] = [];

afterEach(() => {
  const heard = faults.splice(0);
  /* The favourite icon is asked for by the browser itself. */
  expect(heard.filter((fault) => !fault.includes("404"))).toEqual([]);
});

type Colours = "light" | "dark" | "forced";

async function openPane(search: string, width = 380): Promise<Page> {
  /* Nothing in the pane moves. Under reduced motion every colour would change by a transition of its own (look.css). */
  const page = await browser.newPage({ viewport: { width, height: 800 } });
  page.on("pageerror", (error) => faults.push(String(error)));
  page.on("console", (message) => message.type() === "error" && faults.push(message.text()));
  await page.goto(`${served.url}?${search}`);
  return page;
}

interface Look {
  readonly width: number;
  readonly colours: Colours;
  readonly rules: axe.RunOptions;
}

const EVERY_RULE: axe.RunOptions = {
  runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
};

const only = (...values: string[]): axe.RunOptions => ({ runOnly: { type: "rule", values } });

/* Other colours and another width change neither what stands on the page nor its names: only what these rules look at. */
const RULES_OF_COLOUR = only("color-contrast", "link-in-text-block");
const RULES_OF_WIDTH = only("target-size", "scrollable-region-focusable");

async function wear(page: Page, { width, colours }: Look): Promise<void> {
  if (page.viewportSize()?.width !== width) await page.setViewportSize({ width, height: 800 });
  await page.emulateMedia({
    colorScheme: colours === "dark" ? "dark" : "light",
    forcedColors: colours === "forced" ? "active" : "none",
  });
}

/* Width is for the style sheets alone, so that each state is reached once, in the first look. */
const looks: readonly Look[] = [
  { width: 320, colours: "light", rules: EVERY_RULE },
  { width: 320, colours: "dark", rules: RULES_OF_COLOUR },
  { width: 320, colours: "forced", rules: RULES_OF_COLOUR },
  { width: 1280, colours: "light", rules: RULES_OF_WIDTH },
];

/** Given to the page as text, once: its own policy lets no foreign script in. */
async function findings(page: Page, rules = EVERY_RULE): Promise<string[]> {
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe.source);
  return page.evaluate(async (options) => {
    /* What stands half under a foot that stays in sight is scrolled into reach; its size is not the foot's doing. */
    for (const foot of document.querySelectorAll<HTMLElement>(".job-foot")) foot.style.position = "static";
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(document, options);
    for (const foot of document.querySelectorAll<HTMLElement>(".job-foot")) foot.style.position = "";
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`));
  }, rules);
}

const sideways = (page: Page): Promise<number> =>
  page.evaluate(() =>
    Math.max(
      ...[document.documentElement, ...document.querySelectorAll(".pane-body")].map(
        (e) => e.scrollWidth - e.clientWidth,
      ),
    ),
  );

const quietLineInSight = (page: Page): Promise<boolean> =>
  page.locator(".pane-foot").evaluate((line) => {
    const { top, bottom } = line.getBoundingClientRect();
    return top >= 0 && bottom <= window.innerHeight && (line.textContent ?? "").length > 100;
  });

/** The whole of the pane in one picture: as high as what it holds. */
async function picture(page: Page, name: string): Promise<void> {
  if (!TAKES_SHOTS) return;
  const { width, height } = page.viewportSize()!;
  const whole = await page.evaluate(() => {
    const body = document.querySelector(".pane-body")!;
    return body.scrollHeight - body.clientHeight + window.innerHeight;
  });
  await page.setViewportSize({ width, height: Math.min(Math.max(whole, height), 8_000) });
  await shot(page, name);
  await page.setViewportSize({ width, height });
}

const named = journeys.map((journey) => ({ ...journey, names: journey.states.map(({ name }) => name).join(", ") }));

describe("every state, narrow and wide, light, dark and in forced colours", () => {
  test.each(named)("$names", async ({ search, states }) => {
    const page = await openPane(search);
    for (const { name, reach } of states) {
      await wear(page, looks[0]!);
      await reach(page);
      for (const look of looks) {
        const said = `${name}-${look.width}-${look.colours}`;
        await wear(page, look);
        expect(await findings(page, look.rules), said).toEqual([]);
        expect(await sideways(page), said).toBe(0);
        expect(await quietLineInSight(page), said).toBe(true);
        await picture(page, said);
      }
      expect(await page.locator("body").innerText(), name).not.toMatch(/\b(?:ok|okay|safe)\b/i);
    }
    await page.close();
  });
});

test("at 200% zoom of a small window and in a script that runs from right to left nothing scrolls sideways", async () => {
  const page = await openPane("scenario=table&dir=rtl", 320);
  await page.setViewportSize({ width: 320, height: 300 });
  await tickTwo(page);
  expect(await sideways(page)).toBe(0);
  expect(await quietLineInSight(page)).toBe(true);
  expect(await findings(page)).toEqual([]);
  await shot(page, "right-to-left-320");
  await page.close();
});

/** Heights of a whole part in screens of the pane, at the width that Excel gives it. */
const screens = (page: Page): Promise<number> =>
  page.locator(".pane-body").evaluate((body) => body.scrollHeight / body.clientHeight);

test("where columns were guessed, Add columns is two screens long at most, Show only one and a half", async () => {
  const page = await openPane("scenario=table", 350);
  await tickTwo(page);
  await page.getByRole("button", { name: "Add 2 columns" }).waitFor();
  expect(await screens(page)).toBeLessThanOrEqual(2);
  await goTo(page, showOnly);
  await page.getByRole("checkbox", { name: /^balloon, gastrostomy/ }).waitFor();
  expect(await screens(page)).toBeLessThanOrEqual(1.5);
  await page.goto(`${served.url}?scenario=caseload`);
  await goTo(page, showOnly);
  await page.locator("summary", { hasText: texts.showOnly.by.status }).waitFor();
  /* A ready-made caseload has seven headings to choose by, and an order. */
  expect(await screens(page)).toBeLessThanOrEqual(1.7);
  await page.close();
});

/** Presses Tab until the wished element has the keyboard. */
async function tabTo(page: Page, role: "button" | "checkbox" | "combobox" | "textbox", name: RegExp): Promise<void> {
  const wished = page.getByRole(role, { name }).first();
  for (let pressed = 0; pressed < 120; pressed++) {
    if (await wished.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab never reached ${role} ${String(name)}`);
}

async function tabToFold(page: Page, name: string): Promise<void> {
  const wished = page.locator("summary", { hasText: name });
  for (let pressed = 0; pressed < 120; pressed++) {
    if (await wished.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab never reached ${name}`);
}

test("columns are added and taken back with the keyboard alone", async () => {
  const page = await openPane("scenario=table");
  await page.getByRole("checkbox").first().waitFor();
  await tabTo(page, "checkbox", /^Change due$/);
  await page.keyboard.press("Space");
  await tabTo(page, "combobox", /^RIG/);
  await page.keyboard.type("not known");
  await tabToFold(page, texts.addColumns.numbers.look);
  await page.keyboard.press("Enter");
  await tabTo(page, "textbox", /^Balloon, gastrostomy: change due after$/);
  await page.keyboard.type("4");
  await tabTo(page, "button", /^Add 1 column$/);
  await page.keyboard.press("Enter");

  const heading = page.getByRole("heading", { name: texts.addColumns.result.title.done });
  await heading.waitFor();
  expect(await heading.evaluate((element) => element === document.activeElement)).toBe(true);
  await expect.poll(() => page.getByRole("status").innerText()).toContain(texts.addColumns.result.title.done);
  const headers = () =>
    page.evaluate(async () => (await (window as unknown as PageWithWorkbook).workbook.overview()).tables[0]!.columns);
  expect((await headers()).at(-1)).toBe("Change due");

  await tabTo(page, "button", new RegExp(`^${texts.pane.takeBack}$`));
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: texts.pane.takenBack }).waitFor();
  expect((await headers()).at(-1)).toBe("Notes");
  await page.close();
});

interface PageWithWorkbook {
  readonly workbook: { overview(): Promise<{ readonly tables: readonly { readonly columns: readonly string[] }[] }> };
}

test("a press on a row number shows that row", async () => {
  const page = await openPane("scenario=table");
  await tickTwo(page);
  await openFolds(page);
  const press = page.getByRole("button", { name: /^Go to row \d+$/ }).first();
  const row = Number((await press.innerText()).trim());
  await press.click();
  const top = await page.evaluate(async () => {
    const { workbook } = window as unknown as {
      workbook: { overview(): Promise<{ selection: { area: { top: number } } }> };
    };
    return (await workbook.overview()).selection.area.top;
  });
  expect(top).toBe(row - 1);
  await page.close();
});

test("a formula is put into the selected empty cell, and refused in one that is not empty", async () => {
  const page = await openPane("scenario=table");
  await goTo(page, guide);
  await page.getByText("TUBE.FRTOMM", { exact: true }).click();
  await page.locator("details.put > summary").click();
  await page.getByRole("button", { name: texts.guide.put }).click();
  await page.getByText(texts.guide.notEmpty("D5")).first().waitFor();
  await page.close();
});

interface CountedPage {
  readonly workbook: { type(sheet: string, address: string, typed: string): void } & Record<string, unknown>;
  readonly asked: Record<"overview" | "read", number>;
}

test("what is not in sight rests while the sheet is edited, and is not left with an answer that was outrun", async () => {
  const page = await openPane("scenario=caseload");
  const placeOfD041 = await page.evaluate(async (name) => {
    const { workbook } = window as unknown as { workbook: Workbook };
    const sheet = (await workbook.overview()).sheets.find((one) => one.name === name)!.id;
    const { values } = await workbook.read({ sheet, area: { top: 0, left: 0, rows: 80, columns: 1 } }, ["values"]);
    return `E${values!.findIndex(([id]) => id === "D-041") + 1}`;
  }, sheetNames.tubes);
  const shown = page.locator(".pane-body > section:not([hidden])");
  for (const job of [addColumns, convertSizes, showOnly, tubeOutJob]) await goTo(page, job);
  await shown.getByLabel(forms.person.id, { exact: true }).fill("D-041");
  await shown.getByRole("button", { name: forms.person.find, exact: true }).click();
  await shown.getByRole("button", { name: forms.person.yes, exact: true }).click();
  await shown.getByText(/put in the spare/).waitFor();
  await goTo(page, help);
  await page.evaluate(() => {
    const counted = window as unknown as CountedPage;
    Object.assign(counted, { asked: { overview: 0, read: 0 } });
    for (const what of ["overview", "read"] as const) {
      const ask = (counted.workbook[what] as (...given: unknown[]) => unknown).bind(counted.workbook);
      counted.workbook[what] = (...given: unknown[]) => {
        /* The one cell that is selected is asked about in a sentence, cell by cell: nothing that rests. */
        const { area } = (given[0] ?? {}) as { area?: { rows: number; columns: number } };
        if (!area || area.rows * area.columns > 1) counted.asked[what]++;
        return ask(...given);
      };
    }
  });
  const asked = () => page.evaluate(() => ({ ...(window as unknown as CountedPage).asked }));
  /* A column of its own beside the list, and then a header of the list: each job's list is another one forms. */
  for (const [i, address] of ["A1", "D7", "D8"].entries()) {
    await page.evaluate(
      ([sheet, at]) => (window as unknown as CountedPage).workbook.type(sheet!, at!, "mine"),
      [sheetNames.tubes, address],
    );
    await expect.poll(async () => (await asked()).overview).toBe(i + 1);
  }
  expect((await asked()).read).toBe(0);

  await page.evaluate(
    ([sheet, at]) => (window as unknown as CountedPage).workbook.type(sheet!, at!, "another"),
    [sheetNames.tubes, placeOfD041],
  );
  await expect.poll(async () => (await asked()).overview).toBe(4);
  await goTo(page, tubeOutJob);
  await shown.getByText(tubeOut.outrun).waitFor();
  expect(await shown.getByText(/put in the spare/).count()).toBe(0);
  await page.close();
});

test.each([
  { job: pictures, shown: "svg.picture" },
  { job: today, shown: ".bar-of-counts" },
])("$job.label: what was read of one workbook is not shown while another is being read", async ({ job, shown }) => {
  const page = await openPane("scenario=caseload");
  await goTo(page, job);
  await page.locator(shown).first().waitFor();
  await page.evaluate((sheet) => {
    const { workbook } = window as unknown as { workbook: Workbook & CountedPage["workbook"] };
    const overview = workbook.overview.bind(workbook);
    /* Another file stands there, and reading it takes its time. */
    workbook.overview = async () => ({ ...(await overview()), book: "another" });
    workbook.read = () => new Promise(() => undefined);
    workbook.type(sheet, "A1", "another");
  }, sheetNames.tubes);
  await page.locator(shown).first().waitFor({ state: "detached" });
  await page.close();
});
