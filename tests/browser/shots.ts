/** Pictures of what a test has reached, to be looked at by people: `npm run shots` takes them, other runs do not. */
import { mkdir } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { Page } from "playwright-core";

const FOLDER = fileURLToPath(new URL("shots/", import.meta.url));

/** True where this run takes pictures. */
export const TAKES_SHOTS = process.env["SHOTS"] === "1";

/** @param name of the picture, a file in tests/browser/shots */
export async function shot(page: Page, name: string): Promise<void> {
  if (!TAKES_SHOTS) return;
  await mkdir(FOLDER, { recursive: true });
  await page.screenshot({ path: `${FOLDER}${name}.png` });
}
