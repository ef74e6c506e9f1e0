/** What a person does in the browser workbook, by what stands on the screen. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { shell } from "../../../taskpane/texts/shell";

export const ready = (page: Page): Promise<void> =>
  page.locator(`header button:enabled:has-text("${shell.save}")`).waitFor({ state: "attached" });

export interface WorkbookFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** By its path, as a person chooses it: bytes that are handed over make the page itself unpack them, for a second. */
export async function open(page: Page, { name, bytes }: WorkbookFile): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "bench-open-"));
  const path = join(folder, name);
  writeFileSync(path, bytes);
  page.once("close", () => rmSync(folder, { recursive: true, force: true }));
  await page.locator('input[type="file"]').first().setInputFiles(path);
}

export const isOpen = (page: Page, { name }: WorkbookFile): Promise<void> =>
  page.getByRole("heading", { level: 1, name }).waitFor();

export async function save(page: Page): Promise<void> {
  await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: shell.save, exact: true }).click(),
  ]);
}

const nameBox = (page: Page): Locator => page.locator("[data-u-comp=defined-name] input").first();

/** Selects a cell by the name box; the grid then has the keyboard. */
export async function go(page: Page, address: string): Promise<void> {
  await nameBox(page).click({ clickCount: 3 });
  await page.keyboard.type(address);
  await page.keyboard.press("Enter");
  await page.waitForFunction(
    (wanted) =>
      (document.querySelector("[data-u-comp=defined-name] input") as HTMLInputElement).value === wanted &&
      document.activeElement?.id.startsWith("__editor_"),
    address,
  );
}

/** Shows a sheet by its tab below the grid. */
export const goSheet = (page: Page, name: string): Promise<void> =>
  page.locator(".sheet-area").getByText(name, { exact: true }).last().click();

export const openReadThisRow = (page: Page): Promise<void> =>
  page.getByText(shell.selectedRow, { exact: true }).click();

/** What the selected row's cell under a header shows in "Read this row". */
export const shownIn = (page: Page, header: string): Promise<string | undefined> =>
  page.evaluate((wanted) => {
    const lines = [...document.querySelectorAll("tr")];
    return (
      lines.find((line) => line.querySelector("th")?.textContent === wanted)?.lastElementChild?.textContent ?? undefined
    );
  }, header);

export const waitUntilShown = (page: Page, header: string, isWanted: "is" | "is not", text: string): Promise<unknown> =>
  page.waitForFunction(
    ([wanted, how, given]) => {
      const lines = [...document.querySelectorAll("tr")];
      const shown = lines.find((line) => line.querySelector("th")?.textContent === wanted)?.lastElementChild
        ?.textContent;
      return shown !== undefined && shown !== null && (shown === given) === (how === "is");
    },
    [header, isWanted, text] as const,
  );
