/** Goes to a job of the pane by the presses that lead there. */
import type { Page } from "playwright-core";
import type { Job } from "../../taskpane/ui/pane/define-job";
import { call, places } from "../../taskpane/ui/pane/places";

/** What is pressed one after the other to come to a job. */
export function pressesTo(job: Job): readonly string[] {
  const place = [call, ...places].find(({ jobs }) => jobs.includes(job))!;
  return place.jobs.length === 1 ? [place.label] : [place.label, job.label];
}

export async function goTo(page: Page, job: Job): Promise<void> {
  for (const press of pressesTo(job)) {
    await page.locator(".pane").getByRole("button", { name: press, exact: true }).first().click();
  }
}

/** Opens whatever is folded in the part that is shown: what was guessed, what is one press away. */
export async function openFolds(page: Page): Promise<void> {
  await page
    .locator(".pane-body > section:not([hidden]) details.fold")
    .evaluateAll((folds: HTMLDetailsElement[]) => folds.forEach((fold) => (fold.open = true)));
}
