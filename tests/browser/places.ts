/** Goes to a place of the pane, and there to a part, by their presses. */
import type { Page } from "playwright-core";
import { pane as words } from "../../taskpane/texts/pane";

export type Part = keyof typeof words.leads;

/** Under which place each part stands; null for the press at the pane's head. */
export const placeOf: Readonly<Record<Part, "today" | "list" | "pictures" | "more" | null>> = {
  tubeOut: null,
  today: "today",
  addColumns: "list",
  mend: "list",
  checkSheet: "list",
  showOnly: "list",
  convert: "list",
  pictures: "pictures",
  settings: "more",
  setUp: "more",
  guide: "more",
  explain: "more",
  help: "more",
};

/** What is pressed one after the other to come to a part. */
export function pressesTo(part: Part): readonly string[] {
  const place = placeOf[part];
  if (place === null || place === part) return [words[part]];
  return [words[place], words[part]];
}

export async function goTo(page: Page, part: Part): Promise<void> {
  for (const press of pressesTo(part)) {
    await page.locator(".pane").getByRole("button", { name: press, exact: true }).first().click();
  }
}

/** Opens whatever is folded in the part that is shown: what was guessed, what is one press away. */
export async function openFolds(page: Page): Promise<void> {
  await page
    .locator(".pane-body > section:not([hidden]) details.fold")
    .evaluateAll((folds: HTMLDetailsElement[]) => folds.forEach((fold) => (fold.open = true)));
}
