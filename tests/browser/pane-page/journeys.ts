/**
 * Every state of the pane, and how it is reached. States that follow from each other share a page: a journey goes from
 * one to the next.
 */
import type { Locator, Page } from "playwright-core";
import { clinicSettingNamed, type ClinicSettingName } from "../../../src/settings/index";
import { texts } from "../../../taskpane/texts";
import { clinicSettings } from "../../../taskpane/texts/clinic-settings";
import { convertSizes } from "../../../taskpane/texts/convert-sizes";
import { explain } from "../../../taskpane/texts/explain";
import { forms } from "../../../taskpane/texts/forms";
import { recordCheck } from "../../../taskpane/texts/record-check";
import { recordChange } from "../../../taskpane/texts/record-change";
import { addPerson } from "../../../taskpane/texts/add-person";
import { tubeOut } from "../../../taskpane/texts/tube-out";
import { setUp } from "../../../taskpane/texts/set-up";
import { showOnly } from "../../../taskpane/texts/show-only";
import { addPerson as addPersonJob } from "../../../taskpane/ui/add-person/job";
import { clinicSettings as clinicSettingsJob } from "../../../taskpane/ui/clinic-settings/job";
import { convertSizes as convertSizesJob } from "../../../taskpane/ui/convert-sizes/job";
import { explain as explainJob } from "../../../taskpane/ui/explain/job";
import type { RecordingJob } from "../../../taskpane/ui/forms/recording-job";
import { guide } from "../../../taskpane/ui/guide/job";
import { help } from "../../../taskpane/ui/help/job";
import { print } from "../../../taskpane/ui/print/job";
import { recordChange as recordChangeJob } from "../../../taskpane/ui/record-change/job";
import { recordCheck as recordCheckJob } from "../../../taskpane/ui/record-check/job";
import { setUp as setUpJob } from "../../../taskpane/ui/set-up/job";
import { showOnly as showOnlyJob } from "../../../taskpane/ui/show-only/job";
import { today } from "../../../taskpane/ui/today/job";
import { tubeOut as tubeOutJob } from "../../../taskpane/ui/tube-out/job";
import { goTo, openFolds } from "../places";

export interface State {
  readonly name: string;
  readonly reach: (page: Page) => Promise<unknown>;
}

export interface Journey {
  readonly search: string;
  readonly states: readonly State[];
}

export const tickTwo = async (page: Page) => {
  await page.getByRole("checkbox", { name: "Change due" }).check();
  await page.getByRole("checkbox", { name: "Change", exact: true }).check();
};
export const pressAdd = (page: Page) => page.getByRole("button", { name: /^Add \d+ columns?$/ }).click();
const shown = (page: Page): Locator => page.locator(".pane-body > section:not([hidden])");
const press = (within: Locator, name: string) => within.getByRole("button", { name, exact: true }).click();
const label = (name: ClinicSettingName): string => clinicSettingNamed(name).label;

async function fill(within: Locator, entries: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, value] of Object.entries(entries)) {
    const field = within.getByLabel(name, { exact: true });
    const isList = await field.evaluate((element) => element instanceof HTMLSelectElement);
    await (isList ? field.selectOption(value) : field.fill(value));
  }
}

async function job(page: Page, form: RecordingJob): Promise<Locator> {
  await goTo(page, today);
  const start = shown(page).getByRole("button", { name: form.label, exact: true });
  const back = shown(page).getByRole("button", { name: texts.today.back, exact: true }).filter({ visible: true });
  await start.or(back).first().waitFor();
  if ((await back.count()) > 0) await back.click();
  await start.click();
  return shown(page).locator(".part .part:not([hidden])");
}

async function call(page: Page): Promise<Locator> {
  await goTo(page, tubeOutJob);
  return shown(page).locator(".part:not([hidden])");
}

async function lookUp(within: Locator, id: string): Promise<void> {
  await within.getByLabel(forms.person.id, { exact: true }).fill(id);
  await press(within, forms.person.find);
}

const heading = (page: Page, name: string) => shown(page).getByRole("heading", { name, exact: true }).waitFor();

const ownList: readonly Journey[] = [
  {
    search: "scenario=table",
    states: [
      { name: "list-found", reach: (page) => page.getByRole("checkbox").first().waitFor() },
      {
        name: "preview",
        reach: async (page) => {
          await tickTwo(page);
          await page.getByRole("button", { name: "Add 2 columns" }).waitFor();
        },
      },
      {
        name: "done",
        reach: async (page) => {
          await pressAdd(page);
          await heading(page, texts.addColumns.result.title.done);
        },
      },
      {
        name: "taken-back",
        reach: async (page) => {
          await press(shown(page), texts.pane.takeBack);
          await heading(page, texts.pane.takenBack);
        },
      },
    ],
  },
  {
    search: "scenario=table",
    states: [
      {
        name: "everyone",
        reach: async (page) => {
          await tickTwo(page);
          await openFolds(page);
          await page.getByLabel(/^Kind of tube/).selectOption("everyone");
          await page.getByLabel(texts.addColumns.kinds.everyone).waitFor();
        },
      },
      {
        name: "functions",
        reach: async (page) => {
          await goTo(page, guide);
          const entries = shown(page).locator(".part:not([hidden]) details.entry > summary");
          await entries.first().waitFor();
          for (const place of [0, 1, -1]) await entries.nth(place).click();
          await page.locator("details.put > summary").first().click();
        },
      },
      {
        name: "functions-none-found",
        reach: async (page) => {
          await page.getByRole("searchbox").fill("zebra");
          await page.getByText(texts.guide.none).first().waitFor();
        },
      },
      {
        name: "help",
        reach: async (page) => {
          await goTo(page, help);
          await heading(page, texts.help.privacy);
        },
      },
      {
        name: "convert-found",
        reach: async (page) => {
          await goTo(page, convertSizesJob);
          await heading(page, texts.pane.preview);
          await shown(page).getByText(convertSizes.put.beside, { exact: true }).waitFor();
        },
      },
      {
        name: "convert-done",
        reach: async (page) => {
          await press(shown(page), convertSizes.preview.add);
          await heading(page, convertSizes.result.title.done);
        },
      },
      {
        name: "show-only-chosen",
        reach: async (page) => {
          await goTo(page, showOnlyJob);
          await shown(page)
            .getByRole("checkbox", { name: /^balloon, gastrostomy/ })
            .check();
          await shown(page)
            .getByText(/^Shows \d+ of 64 rows/)
            .waitFor();
        },
      },
      {
        name: "show-only-shown",
        reach: async (page) => {
          await shown(page)
            .getByRole("button", { name: /^Show \d+ rows$/ })
            .click();
          await shown(page)
            .getByText(/ are shown now; the others are hidden\.$/)
            .waitFor();
        },
      },
    ],
  },
  {
    search: "scenario=table",
    states: [
      {
        name: "number-refused",
        reach: async (page) => {
          await tickTwo(page);
          await openFolds(page);
          await page.getByLabel("Balloon, gastrostomy: change due after").fill("40");
          await page.getByText(texts.addColumns.numbers.mend).waitFor();
        },
      },
    ],
  },
  {
    search: "scenario=plain",
    states: [
      {
        name: "list-corrected",
        reach: async (page) => {
          await page.getByRole("checkbox").first().waitFor();
          await page
            .locator("details.fold")
            .first()
            .evaluate((details: HTMLDetailsElement) => (details.open = true));
          await page.getByLabel(texts.ownList.headerRow).fill("4");
          await page.getByRole("button", { name: texts.ownList.use }).click();
          await page.getByRole("checkbox").first().waitFor();
        },
      },
    ],
  },
  {
    search: "scenario=empty",
    states: [
      { name: "no-list", reach: (page) => page.getByText(texts.ownList.title, { exact: true }).waitFor() },
      {
        name: "today-without-caseload",
        reach: async (page) => {
          await goTo(page, today);
          await shown(page).getByText(texts.today.noCaseload).waitFor();
        },
      },
      {
        name: "tube-out-without-caseload",
        reach: async (page) => {
          await call(page);
          await shown(page).getByText(forms.noCaseload).waitFor();
        },
      },
      {
        name: "settings-without-sheet",
        reach: async (page) => {
          await goTo(page, clinicSettingsJob);
          await shown(page).getByText(clinicSettings.none.lead).waitFor();
          await shown(page).locator("details.entry > summary").nth(1).click();
        },
      },
      {
        name: "set-up",
        reach: async (page) => {
          await goTo(page, setUpJob);
          await shown(page).getByText(setUp.preview.caution).waitFor();
        },
      },
      {
        name: "set-up-opened",
        reach: async (page) => {
          await press(shown(page), setUp.preview.make);
          await heading(page, setUp.done.title);
        },
      },
      {
        name: "explain-nothing",
        reach: async (page) => {
          await goTo(page, explainJob);
          await press(shown(page), explain.press);
          await shown(page).locator(".part:not([hidden]) h3, .part:not([hidden]) p:not(.note)").first().waitFor();
        },
      },
    ],
  },
  {
    search: "scenario=protected",
    states: [{ name: "protected", reach: (page) => page.locator(".notice.problem").first().waitFor() }],
  },
  {
    search: "scenario=full",
    states: [{ name: "no-room", reach: (page) => heading(page, texts.ownList.title) }],
  },
  {
    search: "scenario=table&slow=1",
    states: [
      {
        name: "working",
        reach: async (page) => {
          await tickTwo(page);
          await pressAdd(page);
          await page.getByRole("progressbar").waitFor();
        },
      },
    ],
  },
  {
    search: "scenario=table&slow=1",
    states: [
      {
        name: "stopped",
        reach: async (page) => {
          await tickTwo(page);
          await pressAdd(page);
          await page.getByRole("button", { name: texts.pane.stop }).click();
          await heading(page, texts.addColumns.result.title.stopped);
        },
      },
    ],
  },
];

/** D-041: one tube, nothing in doubt; D-040: a GJ; D-045: two tubes; D-046: two rows that contradict each other. */
const readyMade: readonly Journey[] = [
  {
    search: "scenario=caseload",
    states: [
      { name: "today", reach: (page) => shown(page).locator(".worst button").first().waitFor() },
      {
        name: "today-enter-numbers",
        reach: async (page) => {
          await openFolds(page);
          await heading(page, texts.clinicSettings.forms.calls.title);
        },
      },
      {
        name: "print",
        reach: async (page) => {
          await goTo(page, print);
          await shown(page).getByRole("button", { name: texts.today.printWeek }).waitFor();
        },
      },
      {
        name: "tube-out",
        reach: async (page) => {
          await call(page);
          await heading(page, forms.person.title);
        },
      },
      {
        name: "tube-out-nobody",
        reach: async (page) => {
          await lookUp(await call(page), "D-999");
          await shown(page).getByText(forms.person.nobody("D-999")).waitFor();
        },
      },
      {
        name: "tube-out-two-tubes",
        reach: async (page) => {
          await lookUp(await call(page), "D-045");
          await heading(page, forms.person.readBack);
        },
      },
      {
        name: "tube-out-rows-in-doubt",
        reach: async (page) => {
          const part = await call(page);
          await press(part, forms.person.no);
          await lookUp(part, "D-046");
          await heading(page, forms.person.readBack);
        },
      },
      {
        name: "tube-out-put-back",
        reach: async (page) => {
          const part = await call(page);
          await press(part, forms.person.no);
          await lookUp(part, "D-041");
          await press(part, forms.person.yes);
          await part.getByText(/put in the spare/).waitFor();
        },
      },
      {
        name: "tube-out-hospital",
        reach: async (page) => {
          const part = await call(page);
          await press(part, tubeOut.another);
          await lookUp(part, "D-040");
          await press(part, forms.person.yes);
          await part.getByText(/Do not put the spare in/).waitFor();
        },
      },
    ],
  },
  {
    search: "scenario=caseload",
    states: [
      {
        name: "check-refused",
        reach: async (page) => {
          const part = await job(page, recordCheckJob);
          await lookUp(part, "D-041");
          await press(part, forms.person.yes);
          await fill(part, { [recordCheck.out]: "five" });
          await press(part, recordCheck.record);
          await part.getByText(/to put right first/).waitFor();
        },
      },
      {
        name: "check-filled",
        reach: async (page) => {
          const part = await job(page, recordCheckJob);
          await fill(part, { [recordCheck.out]: "2", [recordCheck.putIn]: "5", [recordCheck.looked]: "clear" });
          await part.getByText(forms.form.previewLead).waitFor();
        },
      },
      {
        name: "check-recorded",
        reach: async (page) => {
          const part = await job(page, recordCheckJob);
          await press(part, recordCheck.record);
          await part.getByRole("heading", { name: forms.form.done, exact: true }).waitFor();
        },
      },
      {
        name: "change-refused",
        reach: async (page) => {
          const part = await job(page, recordChangeJob);
          await lookUp(part, "D-038");
          await press(part, forms.person.yes);
          await press(part, recordChange.record);
          await part.getByText(/to put right first/).waitFor();
        },
      },
      {
        name: "change-asked-again",
        reach: async (page) => {
          const part = await job(page, recordChangeJob);
          await fill(part, {
            [recordChange.reason]: "planned",
            [recordChange.changedBy]: "carer",
            [recordChange.access]: "GJ",
            [forms.device.heldBy]: "bumper",
            [recordChange.confirmedBy]: "pH",
            [recordChange.pH]: "6",
          });
          await press(part, recordChange.record);
          await part.getByText(forms.form.asks).waitFor();
        },
      },
      {
        name: "person-refused",
        reach: async (page) => {
          const part = await job(page, addPersonJob);
          await fill(part, { [addPerson.id]: "D-041" });
          await press(part, addPerson.record);
          await part.getByText(/to put right first/).waitFor();
        },
      },
      {
        name: "person-asked-again",
        reach: async (page) => {
          const part = await job(page, addPersonJob);
          await fill(part, {
            [addPerson.id]: "N-1",
            [addPerson.status]: "active",
            [addPerson.access]: "G",
            [forms.device.heldBy]: "balloon",
            [forms.device.shape]: "long",
            [`${forms.device.size}, ${forms.units.Fr}`]: "14",
          });
          await press(part, addPerson.record);
          await part.getByText(forms.form.asks).waitFor();
        },
      },
    ],
  },
  {
    search: "scenario=caseload",
    states: [
      {
        name: "settings",
        reach: async (page) => {
          await goTo(page, clinicSettingsJob);
          await heading(page, clinicSettings.all.title);
          await shown(page).locator("details.entry > summary").nth(1).click();
        },
      },
      {
        name: "settings-refused",
        reach: async (page) => {
          await fill(shown(page), { [label("Agreed_By")]: "the team", [label("Agreed_On")]: "2027-01-01" });
          await press(shown(page), clinicSettings.forms.agreement.write);
          await shown(page).locator(".notice.problem").first().waitFor();
        },
      },
      {
        name: "settings-written",
        reach: async (page) => {
          await fill(shown(page), { [label("Agreed_On")]: "2026-05-20" });
          await press(shown(page), clinicSettings.forms.agreement.write);
          await heading(page, clinicSettings.result.title.done);
        },
      },
      {
        name: "caseload-show-only-chosen",
        reach: async (page) => {
          await goTo(page, showOnlyJob);
          await shown(page).locator("summary", { hasText: showOnly.by.kind }).click();
          await shown(page)
            .getByRole("checkbox", { name: /^bumper/ })
            .check();
          await shown(page).getByText(texts.pane.preview).waitFor();
        },
      },
      {
        name: "explain-to-do",
        reach: async (page) => {
          await goTo(page, explainJob);
          await press(shown(page), explain.press);
          await shown(page)
            .getByRole("heading", { name: /^B4 on/ })
            .waitFor();
        },
      },
      {
        name: "remove-invented",
        reach: async (page) => {
          await goTo(page, setUpJob);
          await press(shown(page), setUp.remove.look);
          await shown(page)
            .getByRole("button", { name: /^Remove \d+ rows$/ })
            .waitFor();
        },
      },
      {
        name: "invented-removed",
        reach: async (page) => {
          await shown(page)
            .getByRole("button", { name: /^Remove \d+ rows$/ })
            .click();
          await heading(page, setUp.remove.finished.done);
        },
      },
    ],
  },
];

export const journeys: readonly Journey[] = [...ownList, ...readyMade];
