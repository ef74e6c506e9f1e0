/** Rules for every function that a test can hold, so that no style guide has to. */
import { describe, expect, test } from "vitest";
import { sources } from "../../src/sources";
import { functions } from "../../src/index";

const SHOWN = ["range", "blank", "bad input", "boundary"] as const;

test("every source in the list is cited by a function", () => {
  const cited = JSON.stringify(functions.map(({ documentation }) => documentation));
  const idle = Object.entries<string>(sources).filter(([, text]) => !cited.includes(JSON.stringify(text).slice(1, -1)));
  expect(idle.map(([name]) => name)).toEqual([]);
});

test("names are unique", () => {
  expect(new Set(functions.map((f) => f.name)).size).toBe(functions.length);
});

describe.each(functions.map((f) => [f.name, f] as const))("%s", (name, definition) => {
  const { documentation, order, result, summary } = definition;

  test("has a name that Excel takes and that does not look like a cell", () => {
    expect(name).toMatch(/^[A-Z][A-Z0-9]{2,}$/);
    expect(name).not.toMatch(/^[A-Z]{1,3}\d+$/);
  });

  test("has a sentence as summary, and arguments with a fragment of help", () => {
    expect(summary).toMatch(/^[A-Z].*\.$/);
    expect(summary.length).toBeLessThanOrEqual(255);
    for (const argument of order) {
      expect(argument.name).toMatch(/^[a-z]+$/);
      expect(argument.param.help).toMatch(/^[A-Z\d].*[^.]$|^mL/);
    }
  });

  test("has its optional arguments last, each with what happens when it is left out", () => {
    const firstOptional = order.findIndex(({ param }) => param.optional);
    if (firstOptional >= 0) expect(order.slice(firstOptional).every(({ param }) => param.optional)).toBe(true);
    for (const { param } of order) {
      if (param.optional && param.fallback === undefined) expect(param.fallbackHelp).toBeTruthy();
    }
  });

  test("never blanks to a reassuring word", () => {
    expect(["", "not measured", "no date", "ask placing team", "incomplete"]).toContain(result.blank);
  });

  test("shows a published or defined value, a range, a blank, bad input and a boundary", () => {
    const shown = documentation!.examples.map((example) => example.shows);
    expect(shown.some((s) => s === "published" || s === "defined")).toBe(true);
    for (const what of SHOWN) expect(shown).toContain(what);
  });

  test("names a source beside every example and rule", () => {
    const known = Object.values<string>(sources);
    for (const source of documentation!.sources) expect(known).toContain(source);
    expect(documentation!.sources.length).toBeGreaterThan(0);
    for (const example of documentation!.examples) expect(example.source.length).toBeGreaterThan(10);
  });

  test("has at least one caution, in whole sentences", () => {
    expect(documentation!.cautions.length).toBeGreaterThan(0);
    for (const caution of documentation!.cautions) expect(caution).toMatch(/[.]$/);
  });
});
