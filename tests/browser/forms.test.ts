/**
 * The small forms as somebody uses them who is called away, makes slips, and shares the workbook with others: what is
 * wrong leads to its field, what does not apply is not there, a date is read back in words, and nothing that was typed
 * is lost. The pane stands on the invented caseload in memory; its today is 1 June 2026.
 *
 * D-041: a low-profile balloon tube, nothing in doubt. D-038: another.
 */
import { rm } from "node:fs/promises";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, afterEach, expect, test } from "vitest";
import { shownHeaders } from "../../src/caseload/headers";
import { sheetNames } from "../../src/caseload/names";
import { columnLetters } from "../../src/columns/formula";
import { clinicSettingNamed, type ClinicSettingName } from "../../src/settings/index";
import { clinicSettings as settingWords } from "../../taskpane/texts/clinic-settings";
import { entryForm as formWords } from "../../taskpane/texts/entry-form";
import { guide as guideWords } from "../../taskpane/texts/guide";
import { forms as words } from "../../taskpane/texts/forms";
import { addPerson } from "../../taskpane/texts/add-person";
import { recordCheck } from "../../taskpane/texts/record-check";
import { recordChange } from "../../taskpane/texts/record-change";
import { today as todayWords } from "../../taskpane/texts/today";
import { addPerson as addPersonJob } from "../../taskpane/ui/add-person/job";
import { clinicSettings } from "../../taskpane/ui/clinic-settings/job";
import type { RecordingJob } from "../../taskpane/ui/forms/recording-job";
import { guide as guideJob } from "../../taskpane/ui/guide/job";
import { help } from "../../taskpane/ui/help/job";
import { recordChange as recordChangeJob } from "../../taskpane/ui/record-change/job";
import { recordCheck as recordCheckJob } from "../../taskpane/ui/record-check/job";
import { today } from "../../taskpane/ui/today/job";
import { tubeOut } from "../../taskpane/ui/tube-out/job";
import { buildPage } from "./build-page";
import { confirm, fill, press } from "./caseload/forms";
import { rowOfInvented } from "./caseload/saved";
import { launchBrowser } from "./launch";
import { goTo } from "./places";
import { serveFolder, type Served } from "./serve";

let browser: Browser;
let served: Served;
let folder: string;
let page: Page;

beforeAll(async () => {
  [browser, folder] = await Promise.all([launchBrowser(), buildPage("pane-page")]);
  served = await serveFolder(folder);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  if (folder) await rm(folder, { recursive: true });
});
beforeEach(async () => {
  page = await browser.newPage({ viewport: { width: 380, height: 800 } });
  await page.goto(`${served.url}?scenario=caseload`);
});
afterEach(() => page.close());

const shown = (): Locator => page.locator(".pane-body > section:not([hidden])");
const part = (): Locator => shown().locator(".part .part:not([hidden])");
const field = (label: string): Locator => part().getByLabel(label, { exact: true });
const hasKeyboard = (element: Locator): Promise<boolean> => element.evaluate((e) => e === document.activeElement);

async function start(job: RecordingJob, id?: string): Promise<void> {
  await goTo(page, today);
  await press(shown(), job.label);
  if (id !== undefined) await confirm(part(), id);
}

/** Somebody else types into the row of D-041 meanwhile. */
const typedElsewhere = (header: "Lot" | "Born", text: string): Promise<void> =>
  page.evaluate(
    ([sheet, at, what]) =>
      (window as unknown as { workbook: { type(sheet: string, at: string, what: string): void } }).workbook.type(
        sheet!,
        at!,
        what!,
      ),
    [sheetNames.tubes, `${columnLetters(shownHeaders.tubes.indexOf(header))}${rowOfInvented("D-041", 46_174)}`, text],
  );

const valuesOf = async (labels: readonly string[]): Promise<Record<string, string>> =>
  Object.fromEntries(await Promise.all(labels.map(async (label) => [label, await field(label).inputValue()] as const)));

const device = words.device;
const SIXTEEN: Readonly<Record<string, string>> = {
  [recordChange.out]: "2026-05-28",
  [recordChange.reason]: "balloon burst",
  [recordChange.where]: "ward",
  [recordChange.unplanned]: "yes",
  [recordChange.nights]: "1",
  [recordChange.hoursOut]: "0.5",
  [recordChange.changedBy]: "nurse in clinic",
  [recordCheck.note]: "came by ambulance",
  [recordChange.deviceIn]: "2026-05-28",
  [device.knownFrom]: "label",
  [`${device.size}, ${words.units.Fr}`]: "14",
  [device.length]: "2.3",
  [device.fill]: "5",
  [device.most]: "10",
  [recordChange.lot]: "1E7",
  [recordChange.confirmedBy]: "pH",
};

test("what is wrong stands at the top in the labels that are seen, and each line leads to its field", async () => {
  await start(recordChangeJob, "D-041");
  await fill(part(), { [recordChange.out]: "2026-06-02", [`${device.size}, ${words.units.Fr}`]: "14G" });
  await press(part(), recordChange.record);
  const summary = part().getByRole("group", { name: formWords.mend(3) });
  await summary.waitFor();
  await expect.poll(() => hasKeyboard(summary)).toBe(true);
  const links = summary.getByRole("link");
  expect(await links.allInnerTexts()).toEqual([
    `${recordChange.out}: this day is in the future.`,
    `${recordChange.reason}: choose one.`,
    `${device.size}, ${words.units.Fr}: G means gauge; write Fr.`,
  ]);
  /* Above every field. */
  const first = await field(recordChange.out).boundingBox();
  expect((await summary.boundingBox())!.y).toBeLessThan(first!.y);
  for (const [i, label] of [recordChange.out, recordChange.reason, `${device.size}, ${words.units.Fr}`].entries()) {
    await links.nth(i).press("Enter");
    expect(await hasKeyboard(field(label))).toBe(true);
    expect(await field(label).getAttribute("aria-invalid")).toBe("true");
  }
  await fill(part(), { [recordChange.reason]: "planned" });
  expect(await part().getByRole("link").count()).toBe(2);
});

test("what is required is marked, for eyes and for ears", async () => {
  await start(addPersonJob);
  const required = part().locator(".field", { has: page.locator(".mark", { hasText: formWords.required }) });
  expect(await required.locator("label").allInnerTexts()).toEqual([
    addPerson.id,
    addPerson.status,
    addPerson.access,
    device.heldBy,
    device.shape,
  ]);
  expect(await part().locator("[required]").count()).toBe(5);
});

test("what does not apply is not there", async () => {
  await start(addPersonJob);
  const applies = (label: string) => field(label).count();
  expect([await applies(device.fill), await applies(device.length)]).toEqual([0, 0]);
  await fill(part(), { [device.heldBy]: "balloon", [device.shape]: "low-profile" });
  expect([await applies(device.fill), await applies(device.most), await applies(device.length)]).toEqual([1, 1, 1]);
  await fill(part(), { [device.heldBy]: "bumper", [device.shape]: "long" });
  expect([await applies(device.fill), await applies(device.most), await applies(device.length)]).toEqual([0, 0, 0]);

  await press(shown(), todayWords.back);
  await start(recordCheckJob, "D-041");
  expect(await applies(recordCheck.water)).toBe(0);
  await fill(part(), { [recordCheck.putIn]: "5" });
  expect(await applies(recordCheck.water)).toBe(1);
});

test("a date is read back in words, and tied to its field", async () => {
  await start(recordCheckJob, "D-041");
  const on = field(recordCheck.checkedOn);
  expect(await on.inputValue()).toBe("2026-06-01");
  await part().getByText("Monday 1 June 2026", { exact: true }).waitFor();
  await on.fill("2026-05-03");
  const readBack = part().getByText("Sunday 3 May 2026", { exact: true });
  await readBack.waitFor();
  expect((await on.getAttribute("aria-describedby"))!.split(" ")).toContain(await readBack.getAttribute("id"));
});

test("a refused recording keeps all sixteen entries, and can be recorded at the second press", async () => {
  await start(recordChangeJob, "D-041");
  await fill(part(), SIXTEEN);
  await fill(part(), { [recordChange.pH]: "4" });
  const typed = await valuesOf(Object.keys(SIXTEEN));
  expect(Object.keys(typed)).toHaveLength(16);
  /* The lot of the tube that is in: nothing that was read back. */
  await typedElsewhere("Lot", "another lot");
  const pressed = async () => {
    await press(part(), recordChange.record);
    const anyway = part().getByRole("button", { name: words.form.anyway, exact: true });
    const end = part().getByRole("heading", { name: new RegExp(`^(?:${words.form.refused}|${words.form.done})$`) });
    await anyway.or(end).first().waitFor();
    if (await anyway.isVisible()) await anyway.click();
    await end.waitFor();
    return end.innerText();
  };
  expect(await pressed()).toBe(words.form.refused);
  await part().getByText(words.form.stillHere).waitFor();
  expect(await valuesOf(Object.keys(SIXTEEN))).toEqual(typed);
  expect(await hasKeyboard(part().getByRole("heading", { name: words.form.refused }))).toBe(true);
  expect(await pressed()).toBe(words.form.done);
});

test("whose birth has changed meanwhile is read back again, and the entries of somebody else are nobody's", async () => {
  await start(recordCheckJob, "D-041");
  await fill(part(), { [recordCheck.out]: "4.5", [recordCheck.putIn]: "5", [recordCheck.note]: "mine" });
  await typedElsewhere("Born", "another day");
  await press(part(), recordCheck.record);
  const anyway = part().getByRole("button", { name: words.form.anyway, exact: true });
  const again = part().getByText(words.form.lookAgain("D-041"));
  await anyway.or(again).first().waitFor();
  if (await anyway.isVisible()) await anyway.click();
  await again.waitFor();
  await confirm(part(), "D-041");
  expect(await field(recordCheck.note).inputValue()).toBe("");
});

test("entries stay while somebody looks elsewhere, and come back with the person", async () => {
  await start(recordCheckJob, "D-041");
  await fill(part(), { [recordCheck.out]: "4.5", [recordCheck.note]: "telephone rings" });
  await goTo(page, help);
  await goTo(page, tubeOut);
  await goTo(page, today);
  expect(await field(recordCheck.note).inputValue()).toBe("telephone rings");
  await press(shown(), todayWords.back);
  await press(shown(), recordCheckJob.label);
  expect(await field(recordCheck.note).inputValue()).toBe("telephone rings");
  /* Pressed by mistake. */
  await press(part(), words.form.another);
  await confirm(part(), "D-041");
  expect(await field(recordCheck.note).inputValue()).toBe("telephone rings");
  await press(part(), words.form.another);
  await confirm(part(), "D-038");
  expect(await field(recordCheck.note).inputValue()).toBe("");
});

const label = (name: ClinicSettingName): string => clinicSettingNamed(name).label;

test("settings: numbers that were typed outlive the writing of the agreement", async () => {
  await goTo(page, clinicSettings);
  const settings = shown().locator(".part:not([hidden])");
  await fill(settings, { [label("Call_Day")]: "01632 960001" });
  const agree = settings.getByRole("button", { name: settingWords.forms.agreement.write, exact: true });
  await agree.click();
  const summary = settings.getByRole("group", { name: formWords.mend(2) });
  expect(await summary.getByRole("link").allInnerTexts()).toEqual([
    `${label("Agreed_By")}: give a name, a team or a role.`,
    `${label("Agreed_On")}: give the date.`,
  ]);
  await summary.getByRole("link").first().click();
  expect(await hasKeyboard(settings.getByLabel(label("Agreed_By"), { exact: true }))).toBe(true);
  await fill(settings, { [label("Agreed_By")]: "the invented team", [label("Agreed_On")]: "2026-05-20" });
  await settings.getByText("Wednesday 20 May 2026", { exact: true }).waitFor();
  await agree.click();
  await settings.getByRole("heading", { name: settingWords.result.title.done, exact: true }).waitFor();
  await press(settings, settingWords.result.again);
  expect(await settings.getByLabel(label("Call_Day"), { exact: true }).inputValue()).toBe("01632 960001");
});

test("a formula to be put in the cell: what is missing leads to its field, and another search keeps what was typed", async () => {
  await goTo(page, guideJob);
  const guide = shown().locator(".part:not([hidden])");
  const open = async () => {
    await guide.getByText("TUBE.FRTOMM", { exact: true }).click();
    await guide.locator("details.put > summary").click();
  };
  await open();
  const size = guide.getByRole("textbox", { name: "size" });
  await size.fill("");
  await guide.getByRole("button", { name: guideWords.put, exact: true }).click();
  const link = guide.getByRole("link", { name: guideWords.missing("size") });
  await link.click();
  expect(await hasKeyboard(size)).toBe(true);
  await size.fill("B17");
  await guide.getByRole("searchbox").fill("balloon");
  await guide.getByText("TUBE.BALLOONSTATE", { exact: true }).waitFor();
  await guide.getByRole("searchbox").fill("FRTOMM");
  await open();
  expect(await size.inputValue()).toBe("B17");
});
