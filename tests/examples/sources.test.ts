/** docs/sources.md tells of every source how it was reached. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { sources } from "../../src/sources";

const page = readFileSync(new URL("../../docs/sources.md", import.meta.url), "utf8").toLowerCase();

/** Who says it: what stands before the first comma, colon or bracket, initials and the like left out. */
const author = (text: string): string =>
  text
    .split(/[,:;(]/)[0]!
    .trim()
    .replace(/ [A-Z]{1,3}$/, "");

test.each(Object.values(sources).map((text) => [author(text), text]))("%s", (name) => {
  expect(name.length).toBeGreaterThan(2);
  expect(page).toContain(name.toLowerCase());
});
