/** The pane's small forms, filled in as a person fills them in: by their labels. */
import type { Locator, Page } from "playwright-core";
import { forms as words } from "../../../taskpane/texts/forms";
import { today as todayWords } from "../../../taskpane/texts/today";
import type { RecordingJob } from "../../../taskpane/ui/forms/recording-job";
import { today } from "../../../taskpane/ui/today/job";
import { tubeOut } from "../../../taskpane/ui/tube-out/job";
import { goTo } from "../places";
import { inPane } from "./desk";

/** The telephone call. */
export async function startCall(page: Page): Promise<Locator> {
  await goTo(page, tubeOut);
  return inPane(page).locator(".part:not([hidden])");
}

/** One of the forms under Today, whatever was shown before. */
export async function startJob(page: Page, job: RecordingJob): Promise<Locator> {
  await goTo(page, today);
  const back = inPane(page).getByRole("button", { name: todayWords.back, exact: true });
  const start = inPane(page).getByRole("button", { name: job.label, exact: true });
  await back.or(start).filter({ visible: true }).first().waitFor();
  if (await back.filter({ visible: true }).count()) await back.filter({ visible: true }).click();
  await start.click();
  return inPane(page).locator(".part .part:not([hidden])");
}

/** Looks somebody up and says yes to who was read back; gives what was read back. */
export async function confirm(part: Locator, id: string): Promise<string> {
  await part.getByLabel(words.person.id, { exact: true }).fill(id);
  await part.getByRole("button", { name: words.person.find, exact: true }).click();
  const yes = part.getByRole("button", { name: words.person.yes, exact: true });
  await yes.waitFor();
  const readBack = await part.locator("dl.pairs").first().innerText();
  await yes.click();
  return readBack;
}

/** By label: a list's word is chosen, anything else is typed. */
export async function fill(part: Locator, entries: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(entries)) {
    const field = part.getByLabel(label, { exact: true });
    const isList = await field.evaluate((element) => element instanceof HTMLSelectElement);
    await (isList ? field.selectOption(value) : field.fill(value));
  }
}

export const press = (part: Locator, name: string): Promise<void> =>
  part.getByRole("button", { name, exact: true }).click();

/** Presses, says yes where something is asked again, and waits until it is written; gives what was asked. */
export async function record(part: Locator, name: string): Promise<string[]> {
  await press(part, name);
  const anyway = part.getByRole("button", { name: words.form.anyway, exact: true });
  const done = part.getByRole("heading", { name: words.form.done, exact: true });
  await anyway.or(done).first().waitFor();
  const asked: string[] = [];
  if (await anyway.isVisible()) {
    asked.push(...(await part.locator(".notice.caution").last().locator("li").allInnerTexts()));
    await anyway.click();
  }
  await done.waitFor();
  return asked;
}
