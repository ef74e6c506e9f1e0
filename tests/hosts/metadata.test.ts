/** functions.json has the form that Microsoft's own generator prints. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { metadata } from "../../functions/metadata";
import { functions } from "../../src/index";
import { define } from "../../src/worksheet/define";
import { choice, date, number } from "../../src/worksheet/parameters";

const json = (path: string) => JSON.parse(readFileSync(new URL(path, import.meta.url), "utf8"));

const ADDDAYS = define(
  {
    name: "ADDDAYS",
    family: "Schedule",
    summary: "Adds to a day.",
    params: {
      start: date("First day", {}),
      count: number("How many", { above: 0, fallback: 1 }),
      unit: choice("What they count", ["months", "weeks"], { fallback: "months" }),
    },
    subject: ["start"],
    result: { shape: "cell", kind: "date", help: "The day", blank: "" },
    compute: ({ start, count }) => start + count,
  },
  false,
);

test("what we write for a function is what Microsoft's generator printed for the same one", () => {
  const theirs = json("./fixtures/adddays.microsoft.json");
  const { allowErrorForDataTypeAny, ...ours } = metadata([ADDDAYS]);
  expect(ours).toEqual(theirs);
  // Their generator has no way to say it; the format has (Microsoft's page on custom functions metadata).
  expect(allowErrorForDataTypeAny).toBe(true);
});

test("the committed functions.json is current", () => {
  expect(json("../../functions/generated/functions.json")).toEqual(JSON.parse(JSON.stringify(metadata(functions))));
});

test("no enum is named twice and every choice has one", () => {
  const { enums, functions: described } = json("../../functions/generated/functions.json");
  const ids = enums.map((e: { id: string }) => e.id);
  expect(new Set(ids).size).toBe(ids.length);
  const used = described.flatMap((f: { parameters: { customEnumId?: string }[] }) =>
    f.parameters.flatMap((p) => p.customEnumId ?? []),
  );
  expect([...used].sort()).toEqual([...ids].sort());
});
