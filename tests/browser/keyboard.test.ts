/**
 * A morning without the mouse on the invented caseload: set up, a check, a tube out, one kind alone and all again, sizes
 * converted. At every stop the keyboard is in sight, and after every press it stands where one can go on.
 */
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { setUp as setUpWords } from "../../taskpane/texts/set-up";
import { convertSizes as convertWords } from "../../taskpane/texts/convert-sizes";
import { entryForm as formWords } from "../../taskpane/texts/entry-form";
import { forms as words } from "../../taskpane/texts/forms";
import { recordCheck } from "../../taskpane/texts/record-check";
import { tubeOut } from "../../taskpane/texts/tube-out";
import { shell as pageWords } from "../../taskpane/texts/shell";
import { ownList } from "../../taskpane/texts/own-list";
import { pane as paneWords } from "../../taskpane/texts/pane";
import { showOnly as showWords } from "../../taskpane/texts/show-only";
import { convertSizes } from "../../taskpane/ui/convert-sizes/job";
import type { RecordingJob } from "../../taskpane/ui/forms/recording-job";
import type { Job } from "../../taskpane/ui/pane/define-job";
import { recordCheck as recordCheckJob } from "../../taskpane/ui/record-check/job";
import { setUp } from "../../taskpane/ui/set-up/job";
import { showOnly } from "../../taskpane/ui/show-only/job";
import { today } from "../../taskpane/ui/today/job";
import { tubeOut as tubeOutJob } from "../../taskpane/ui/tube-out/job";
import { inPane, isOpen, openPage, type Desk } from "./caseload/desk";
import { countPointer, isKept, pressWith, tabTo, typeInto } from "./caseload/keys";
import { launchBrowser } from "./launch";
import { pressesTo } from "./places";
import { serveDist, type Served } from "./serve";

let browser: Browser;
let served: Served;
let desk: Desk;
let page: Page;
let pointer: () => Promise<number>;

beforeAll(async () => {
  [browser, served] = await Promise.all([launchBrowser(), serveDist()]);
  desk = await openPage(browser, served.url);
  ({ page } = desk);
  pointer = await countPointer(page);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

const button = (within: Page | Locator, name: string | RegExp): Locator =>
  within.getByRole("button", typeof name === "string" ? { name, exact: true } : { name });
const part = (): Locator => inPane(page).locator(".part:not([hidden])").last();
const heading = (name: string): Locator => inPane(page).getByRole("heading", { name, exact: true });

/** F6 from wherever the keyboard stands to the first press of another part: the grid keeps Tab for its cells. */
async function go(wished: "bar" | "sheet" | "pane"): Promise<void> {
  for (let i = 0; i < 3; i++) {
    await page.keyboard.press("F6");
    if (await page.evaluate((id) => document.getElementById(id)!.contains(document.activeElement), wished))
      return isKept(page, wished);
  }
  throw new Error(`F6 never reached the ${wished}`);
}
async function goBy(wanted: Job): Promise<void> {
  await go("pane");
  for (const press of pressesTo(wanted)) await pressWith(page, button(page.locator(".pane"), press).first());
  await isKept(page);
}
async function job(form: RecordingJob): Promise<void> {
  await goBy(today);
  await pressWith(page, button(inPane(page), form.label));
  await isKept(page);
}
async function confirm(id: string): Promise<void> {
  await typeInto(page, part().getByLabel(words.person.id, { exact: true }), id);
  await page.keyboard.press("Enter");
  await button(part(), words.person.yes).waitFor();
  await isKept(page);
  await pressWith(page, button(part(), words.person.yes));
  await heading(words.person.confirmed(id)).waitFor();
  await isKept(page);
}

describe.sequential("with the keyboard alone", () => {
  test("the example opens from the first screen", async () => {
    await pressWith(page, button(page, pageWords.first.try));
    await isOpen(page, pageWords.example);
    await isKept(page, "sheet");
    /* That it is open is heard, and seen by its name: there is nothing to put away. */
    expect(await button(page, pageWords.closeShort).count()).toBe(0);
  });

  test("the invented caseload is set up", async () => {
    await goBy(setUp);
    await isKept(page);
    const spare = inPane(page).getByRole("checkbox", { name: setUpWords.columns.groups.spare.label });
    await tabTo(page, spare);
    await page.keyboard.press("Space");
    expect(await spare.isChecked()).toBe(false);
    await page.keyboard.press("Space");
    await pressWith(page, button(inPane(page), setUpWords.preview.make));
    await isOpen(page, "Invented caseload.xlsx");
    await heading(setUpWords.done.title).waitFor();
    await isKept(page);
    await goBy(today);
  });

  test("a check is recorded: somebody else first, a fault, a question, then written and taken back", async () => {
    await job(recordCheckJob);
    await typeInto(page, part().getByLabel(words.person.id, { exact: true }), "nobody");
    await page.keyboard.press("Enter");
    await part().getByText(words.person.nobody("nobody")).waitFor();
    await isKept(page);
    await tabTo(page, part().getByLabel(words.person.id, { exact: true }), "Shift+Tab");
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type("D-038");
    await page.keyboard.press("Enter");
    await pressWith(page, button(part(), words.person.no));
    await isKept(page);
    await confirm("D-041");
    await typeInto(page, part().getByLabel(recordCheck.out, { exact: true }), "five");
    await pressWith(page, button(part(), recordCheck.record));
    /* The keyboard stands on what has to be put right: the next Tab and Enter lead to the field. */
    await part().getByText(formWords.mend(1)).waitFor();
    await isKept(page);
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    const out = part().getByLabel(recordCheck.out, { exact: true });
    expect(await out.evaluate((field) => field === document.activeElement)).toBe(true);
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type("3");
    await typeInto(page, part().getByLabel(recordCheck.looked, { exact: true }), "clear");
    await typeInto(page, part().getByLabel(recordCheck.putIn, { exact: true }), "4");
    await pressWith(page, button(part(), recordCheck.record));
    await part().getByText(words.form.asks).waitFor();
    await isKept(page);
    await pressWith(page, button(part(), words.form.anyway));
    await heading(words.form.done).waitFor();
    await isKept(page);
    expect(await heading(words.form.done).evaluate((here) => here === document.activeElement)).toBe(true);
    await pressWith(page, button(part(), paneWords.takeBack));
    await heading(paneWords.takenBack).waitFor();
    await isKept(page);
    await pressWith(page, button(part(), words.form.another));
    await heading(words.person.title).waitFor();
    await isKept(page);
  });

  test("a tube is out: what to do is what the keyboard stands on", async () => {
    await goBy(tubeOutJob);
    await confirm("D-041");
    expect(await page.evaluate(() => document.activeElement!.textContent)).toContain(words.person.confirmed("D-041"));
    /* Another person: at the top, before what is said of this one. */
    await tabTo(page, button(part(), tubeOut.another), "Shift+Tab");
    await page.keyboard.press("Enter");
    await heading(words.person.title).waitFor();
    await isKept(page);
  });

  test("sizes are converted, of a list that the arrow keys find", async () => {
    await goBy(convertSizes);
    /* The workbook opens on its list, so that this one is found: correcting it is folded away. */
    await pressWith(page, inPane(page).locator("summary", { hasText: ownList.correct }).filter({ visible: true }));
    const list = inPane(page).getByRole("combobox", { name: ownList.choose });
    await tabTo(page, list);
    const chosen = () => list.evaluate((field) => (field as HTMLSelectElement).selectedOptions[0]!.label);
    while (!(await chosen()).startsWith('table "Tubes_in_use"')) {
      const before = await chosen();
      await page.keyboard.press("ArrowDown");
      await expect.poll(chosen).not.toBe(before);
      /* Each list is looked at meanwhile. */
      await expect
        .poll(() =>
          inPane(page)
            .getByText(/rows\.$/)
            .count(),
        )
        .toBeGreaterThan(0);
      expect(await list.evaluate((field) => field === document.activeElement)).toBe(true);
    }
    await pressWith(page, button(inPane(page), convertWords.preview.add));
    await heading(convertWords.result.title.done).waitFor();
    await isKept(page);
    await pressWith(page, button(inPane(page), paneWords.takeBack));
    await heading(paneWords.takenBack).waitFor();
    await isKept(page);
    await pressWith(page, button(inPane(page), convertWords.result.again));
    await isKept(page);
  });

  test("one kind alone is shown, and all again", async () => {
    await goBy(showOnly);
    const list = inPane(page).getByRole("combobox").first();
    await typeInto(page, list, 'table "Tubes');
    await pressWith(page, inPane(page).locator("summary", { hasText: showWords.by.kind }).filter({ visible: true }));
    const bumper = inPane(page).getByRole("checkbox", { name: /^bumper \d+ rows$/ });
    await pressWith(page, bumper, "Space");
    await isKept(page);
    await pressWith(page, button(inPane(page), /^Show \d+ rows$/));
    await inPane(page)
      .getByText(/^\d+ of 50 rows are shown now/)
      .waitFor();
    await isKept(page);
    await pressWith(page, button(inPane(page), showWords.showAll));
    await inPane(page)
      .getByText(/^All 50 rows are shown again/)
      .waitFor();
    await isKept(page);
  });

  test("Escape closes the question about unsaved changes, and the keyboard is back where it was", async () => {
    await go("bar");
    const start = button(page, pageWords.new);
    await tabTo(page, start);
    await page.keyboard.press("Enter");
    const dialog = page.getByRole("dialog", { name: pageWords.leave.title });
    await dialog.waitFor();
    for (let i = 0; i < 4; i++) {
      await page.keyboard.press("Tab");
      expect(
        await dialog.evaluate(
          (one) => one.contains(document.activeElement) || document.activeElement === document.body,
        ),
      ).toBe(true);
    }
    await page.keyboard.press("Escape");
    await dialog.waitFor({ state: "detached" });
    expect(await start.evaluate((here) => here === document.activeElement)).toBe(true);
  });

  test("Escape gives up what is being typed into a cell, and the keyboard stays in the sheet", async () => {
    await go("pane");
    const row = page.locator(".selected-row");
    await tabTo(page, row.locator("summary"), "Shift+Tab");
    await page.keyboard.press("Enter");
    await go("sheet");
    /* Beside the title, which takes four columns. */
    await page.keyboard.press("ArrowRight");
    await page.keyboard.type("meant");
    await page.keyboard.press("Enter");
    await page.keyboard.press("ArrowUp");
    await row.getByText("meant", { exact: true }).waitFor();
    await page.keyboard.type("a slip");
    await page.keyboard.press("Escape");
    await isKept(page, "sheet");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowUp");
    await row.getByText("meant", { exact: true }).waitFor();
    expect(await row.innerText()).not.toContain("slip");
  });

  test("without a press of the mouse, and with nothing to complain of", async () => {
    expect(await pointer()).toBe(0);
    expect(desk.faults).toEqual([]);
  });
});
