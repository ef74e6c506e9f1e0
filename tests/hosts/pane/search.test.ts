/** The guide's search: what a person means stands first. */
import { expect, test } from "vitest";
import { functions } from "../../../src/index";
import { asked } from "../../../taskpane/ui/guide/asked";
import { search } from "../../../taskpane/ui/guide/search";

const names = (typed: string) => search(functions, typed).map(({ name }) => name);

test.each([
  ["change due", "CHANGEDUE"],
  ["TUBE.CHANGEDUE", "CHANGEDUE"],
  ["check due", "CHECKDUE"],
  ["balloon state", "BALLOONSTATE"],
])("%s: %s first", (typed, first) => expect(names(typed)[0]).toBe(first));

test("nothing typed finds all, in their own order", () => {
  expect(names(" ")).toEqual(functions.map(({ name }) => name));
});

test.each([
  ["how long", "LIFETABLE"],
  ["lasts", "LIFETABLE"],
  ["How long does a balloon last?", "LIFETABLE"],
  ["fell out", "CAMEOUT"],
  ["the tube fell out", "CAMEOUT"],
  ["leaks", "FREEPLAY"],
  ["it is leaking", "FREEPLAY"],
  ["When is it due?", "CHANGEDUE"],
  ["how thick", "FRTOMM"],
  ["barcode", "READPRINT"],
  ["calories", "RESTENERGY"],
  ["TUBE.CHANGDUE", "CHANGEDUE"],
  ["balonstate", "BALLOONSTATE"],
])("a plain question or a slip, %s: %s first", (typed, first) => expect(names(typed)[0]).toBe(first));

test("words that no function and no question knows find nothing", () => {
  expect(names("zebra")).toEqual([]);
});

test("every question leads to functions that there are", () => {
  const known = new Set(functions.map(({ name }) => name));
  for (const [questions, ...answers] of asked) {
    expect(answers.length, questions).toBeGreaterThan(0);
    for (const answer of answers) expect(known, questions).toContain(answer);
  }
});
