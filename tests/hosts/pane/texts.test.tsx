/** Rules for every sentence on screen that a test can hold. */
import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { functions } from "../../../src/index";
import { kinds } from "../../../src/settings/kinds";
import { settings } from "../../../src/settings/index";
import { roles } from "../../../src/columns/role";
import { call, places } from "../../../taskpane/ui/pane/places";
import { recordings } from "../../../taskpane/ui/today/recordings";

const jobs = [call, ...places].flatMap(({ jobs: these }) => these.map(({ label, lead }) => [label, lead]));
/* Every file of the folder, so that none can be left out. */
const folder = new URL("../../../taskpane/texts/", import.meta.url);
const screen = await Promise.all(
  readdirSync(folder).map((file): Promise<object> => import(/* @vite-ignore */ new URL(file, folder).href)),
);
const texts = [screen, jobs, recordings.map(({ label, heading }) => [label, heading])];

/** All sentences, those with figures filled in with 1, 2, 3 ... and with words. */
function sentences(of: unknown): string[] {
  if (typeof of === "string") return [of];
  if (typeof of === "function") {
    const ask = of as (...args: unknown[]) => unknown;
    const tries = [
      [1, 2, 3, 4],
      [2, 2, 2, 2],
      ["one", "two", "three", "four"],
      [["one", "two"], "three", "four", "five"],
      ["one", true, 3, 4],
      ["one", false, 3, 4],
    ];
    return tries.flatMap((args) => {
      try {
        return sentences(ask(...args));
      } catch {
        return [];
      }
    });
  }
  return typeof of === "object" && of !== null ? Object.values(of).flatMap(sentences) : [];
}

const facts = [
  ...functions.flatMap(({ summary, documentation }) => [
    summary,
    documentation?.details,
    ...(documentation?.cautions ?? []),
  ]),
  ...settings.flatMap(({ label, source, range }) => [label, source, range?.words]),
  ...kinds.flatMap(({ label, help }) => [label, help]),
  ...roles.flatMap(({ label, help }) => [label, help]),
].filter((text) => text !== undefined);

test("there are sentences to look at", () => {
  expect(sentences(texts).length).toBeGreaterThan(150);
  expect(facts.length).toBeGreaterThan(50);
});

test("no sentence reassures", () => {
  const reassuring = /\b(?:ok|okay|safe|safely|all good|no problem)\b/i;
  expect([...sentences(texts), ...facts].filter((text) => reassuring.test(text))).toEqual([]);
});

test("no sentence shows what a program calls its insides", () => {
  const jargon = /\b(?:null|undefined|object|array|boolean|exception|error code|cache|parse)\b/;
  expect(sentences(texts).filter((text) => jargon.test(text))).toEqual([]);
});

test("spelling is British", () => {
  expect(sentences(texts).filter((text) => /\b(?:color|center|gray|organiz|milliliter)\w*/i.test(text))).toEqual([]);
});
