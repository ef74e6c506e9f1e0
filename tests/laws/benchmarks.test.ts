/** The benchmarks' page and its check: what is written is read back, and a ratio that is half as good fails. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { functions } from "../../src/index";
import { cases } from "../bench/functions/cases";
import { check, worseTwice } from "../bench/report/check";
import { missed, ratioOf, type Job, type Row } from "../bench/report/row";
import { ratiosOf, section, sectionsOf } from "../bench/report/table";

const job: Job = {
  name: "files",
  title: "Files | lists",
  about: "About.",
  leavesOut: "nothing.",
  run: () => undefined,
};
const row = (ours: number, more: Partial<Row> = {}): Row => ({
  what: "Open",
  size: "10,000 x 15",
  unit: "ms",
  ours,
  peer: "a peer",
  theirs: 1000,
  ...more,
});
const pageOf = (...rows: readonly Row[]): string =>
  `# Benchmarks\n\nWords.\n\n${section(job, rows, [], "Measured here.")}`;

describe("the check", () => {
  const committed = ratiosOf(pageOf(row(800)));

  test.each([
    ["as good", 800, false],
    ["a little less good", 1_500, false],
    ["half as good", 1_700, true],
    ["without a number", NaN, true],
  ])("a ratio that is %s", (_, ours, isWorse) => {
    const { worse, compared } = check("files", [row(ours)], committed);
    expect(compared).toBe(1);
    expect(worse).toHaveLength(isWorse ? 1 : 0);
  });

  test("a row that nobody has committed is told, not failed", () => {
    expect(check("files", [row(1, { what: "Save" })], committed)).toMatchObject({ worse: [], unknown: [/Save/] });
  });

  test("only what is worse twice fails", () => {
    const [good, bad] = [check("files", [row(800)], committed), check("files", [row(9_000)], committed)];
    expect(worseTwice(bad, good)).toEqual([]);
    expect(worseTwice(bad, bad)).toHaveLength(1);
  });

  test("a ratio of next to nothing does not fail by the clock", () => {
    const nothing = ratiosOf(pageOf(row(1)));
    expect(check("files", [row(30)], nothing).worse).toEqual([]);
    expect(check("files", [row(60)], nothing).worse).toHaveLength(1);
  });
});

describe("the page", () => {
  test("gives back the ratios that went in, large and small ones too, and those without figures of a peer", () => {
    const rows = [
      row(800),
      row(3_456_789, { what: "Slow" }),
      row(5, { what: "Quick | at once" }),
      row(7, { what: "Given", ratio: 1.25 }),
      { what: "Alone", size: "", unit: "KB" as const, ours: 3 },
    ];
    const ratios = ratiosOf(pageOf(...rows));
    expect([...ratios.values()]).toEqual([0.8, 3456.789, 0.005, 1.25]);
    expect(check("files", rows, ratios)).toMatchObject({ compared: 4, worse: [], unknown: [] });
  });

  test("is cut into its jobs' sections and put together again", () => {
    const other: Job = { ...job, name: "dates" };
    const page = pageOf(row(1)) + "\n" + section(other, [row(2)], ["R, because it was not found."], "Measured there.");
    const sections = sectionsOf(page);
    expect([...sections.keys()]).toEqual(["files", "dates"]);
    expect(sections.get("dates")).toContain("Not measured: R, because it was not found.");
    expect(sections.get("files")).not.toContain("Measured there.");
  });

  test("says which limit is missed", () => {
    const limits = [
      { what: "ratio", most: 0.5 },
      { what: "ms", most: 900, is: 800 },
    ];
    expect(missed(row(800, { limits })).map(({ what }) => what)).toEqual(["ratio"]);
    expect(pageOf(row(800, { limits }))).toContain("| no: ratio |");
    expect(pageOf(row(400, { limits }))).toContain("| yes |");
    expect(ratioOf(row(400))).toBe(0.4);
  });
});

test("every worksheet function has a case", () => {
  expect(cases.map(({ name }) => name).sort()).toEqual(functions.map(({ name }) => name).sort());
});

test("the committed page has a section for every job, and a row for every function", () => {
  const page = readFileSync(fileURLToPath(new URL("../../docs/benchmarks.md", import.meta.url)), "utf8");
  const sections = sectionsOf(page);
  // The jobs themselves need packages that only the benchmarks have.
  const index = readFileSync(fileURLToPath(new URL("../bench/jobs/index.ts", import.meta.url)), "utf8");
  const names = [...index.matchAll(/^import \{ (\w+)/gm)].map(([, name]) => name!);
  expect(names.length).toBeGreaterThan(10);
  // How long all tests take is measured where it is asked for.
  const found = [...sections.keys()].filter((name) => name !== "tests");
  expect(found.sort()).toEqual(names.sort());
  for (const { name } of functions) expect(sections.get("functions")).toContain(`| ${name} |`);
});
