/** functions.json has the form that Microsoft's own generator prints. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { withVersionOf } from "../../functions/manifest-version";
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
  expect(metadata([ADDDAYS])).toEqual(theirs);
});

test("the committed functions.json is current", () => {
  expect(json("../../functions/generated/functions.json")).toEqual(JSON.parse(JSON.stringify(metadata(functions))));
});

test("errors are not asked for by name: with data types that stops Excel 2021, and data types bring them along", () => {
  // office-js issue 4385, reproduced by Microsoft.
  expect(json("../../functions/generated/functions.json")).not.toHaveProperty("allowErrorForDataTypeAny");
});

describe("the manifest's version", () => {
  const manifest = readFileSync(new URL("../../manifest.xml", import.meta.url), "utf8");
  const functionsJson = readFileSync(new URL("../../functions/generated/functions.json", import.meta.url), "utf8");

  test("is that of the committed functions.json: npm run generate", () => {
    expect(withVersionOf(functionsJson, manifest)).toBe(manifest);
  });

  test("rises with every change of functions.json, by one and in its last part, and only then", () => {
    const versionIn = (text: string) => /<Version>([\d.]+)<\/Version>/.exec(text)![1]!.split(".").map(Number);
    const [before, after] = [manifest, withVersionOf(`${functionsJson} `, manifest)].map(versionIn) as [
      number[],
      number[],
    ];
    expect(after).toEqual([...before.slice(0, 3), before[3]! + 1]);
    expect(withVersionOf(`${functionsJson} `, withVersionOf(`${functionsJson} `, manifest))).toBe(
      withVersionOf(`${functionsJson} `, manifest),
    );
  });

  test("is asked for where the manifest has none to raise", () => {
    expect(() => withVersionOf(functionsJson, "<OfficeApp></OfficeApp>")).toThrow(/Version/);
  });
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
