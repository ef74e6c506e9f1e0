/** The page worked by its keys alone: Tab from stop to stop, and at every stop the keyboard is seen and not lost. */
import type { Locator, Page } from "playwright-core";
import { expect } from "vitest";

/** Further than any stop lies. */
const MOST_TABS = 150;

/** Presses of the mouse, so that a test can say that there was none. */
export async function countPointer(page: Page): Promise<() => Promise<number>> {
  await page.evaluate(() => {
    const counted = window as unknown as { pressed: number };
    counted.pressed = 0;
    window.addEventListener("pointerdown", (event) => event.isTrusted && counted.pressed++, true);
  });
  return () => page.evaluate(() => (window as unknown as { pressed: number }).pressed);
}

/** What is wrong where the keyboard stands; an empty text where nothing is. The grid draws its own mark in the cell. */
const wrongHere = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const here = document.activeElement as HTMLElement | null;
    if (!here || here === document.body) return "the keyboard stands nowhere";
    if (here.closest(".grid-holder")) return "";
    const what = here.outerHTML.slice(0, 120);
    if (!here.checkVisibility({ visibilityProperty: true })) return `${what} cannot be seen`;
    const { outlineStyle, outlineWidth } = getComputedStyle(here);
    if (outlineStyle === "none" || parseFloat(outlineWidth) < 2) return `${what} has no mark of the keyboard`;
    const box = here.getBoundingClientRect();
    const isInWindow = box.bottom > 0 && box.right > 0 && box.top < innerHeight && box.left < innerWidth;
    if (!isInWindow) return `${what} lies outside of the window`;
    /* The line at the pane's foot must not lie over it: its upper edge is in sight. */
    const top = Math.max(box.top, 0) + 2;
    const over = document.elementFromPoint(Math.min(box.left + 8, innerWidth - 1), Math.min(top, innerHeight - 1));
    return over && (here.contains(over) || over.contains(here)) ? "" : `${what} lies under something else`;
  });

/** After something was done the keyboard stands in the same part of the page, in sight; what is written takes a moment. */
export async function isKept(page: Page, part: "bar" | "sheet" | "pane" = "pane"): Promise<void> {
  const where = () => page.evaluate((id) => document.getElementById(id)!.contains(document.activeElement), part);
  await expect.poll(async () => [await where(), await wrongHere(page)], { interval: 100 }).toEqual([true, ""]);
}

const stands = (wished: Locator): Promise<boolean> =>
  wished.evaluateAll((all) => all.some((one) => one === document.activeElement));

/** Tab, or Shift and Tab, until the keyboard stands on what is wished; every stop between is looked at. */
export async function tabTo(page: Page, wished: Locator, key: "Tab" | "Shift+Tab" = "Tab"): Promise<void> {
  /* What is still being looked up, or refused until then, is no stop yet. */
  await expect.poll(() => wished.first().isEnabled()).toBe(true);
  for (let i = 0; i < MOST_TABS; i++) {
    if (await stands(wished)) return expect(await wrongHere(page)).toBe("");
    await page.keyboard.press(key);
    expect(await wrongHere(page)).toBe("");
  }
  throw new Error(`${key} never reached ${String(wished)}`);
}

/** Reaches a press, presses it, and looks where the keyboard stands then. */
export async function pressWith(page: Page, wished: Locator, key: "Enter" | "Space" = "Enter"): Promise<void> {
  await tabTo(page, wished);
  await page.keyboard.press(key);
}

/** Types into a field, or chooses a word of a list by its letters. */
export async function typeInto(page: Page, field: Locator, text: string): Promise<void> {
  await tabTo(page, field);
  await page.keyboard.type(text);
}
