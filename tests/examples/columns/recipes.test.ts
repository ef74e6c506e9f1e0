import { describe, expect, it } from "vitest";
import { inA1, inTable } from "../../../src/columns/formula";
import { recipeNamed, recipes } from "../../../src/columns/recipes/index";
import type { KindSource, RowCells, Using } from "../../../src/columns/recipes/recipe";
import { settingNamed } from "../../../src/settings/index";
import type { KindKey } from "../../../src/settings/kinds";
import { day } from "../../../src/worksheet/dates";
import { CellError } from "../../../src/worksheet/error";

const AS_OF = day("2026-06-01");
const using = (kinds: KindSource): Using => ({
  kinds,
  value: (name) => settingNamed(name).default,
  written: (name) => String(settingNamed(name).default),
  asOf: AS_OF,
});
const words = (entries: readonly (readonly [string, KindKey])[]) => using({ from: "words", words: new Map(entries) });
const mixed = words([
  ["balloon", "balloon gastrostomy"],
  ["bgt", "balloon gastrostomy"],
  ["bumper", "bumper adult"],
  ["loop", "placing team"],
]);
const last = { header: "Last change", index: 3 };
const kind = { header: "Kind", index: 1 };
const due = recipeNamed("changeDue");
const latest = recipeNamed("atTheLatest");

describe("Change due", () => {
  it("is one plain formula, words grouped by months", () => {
    expect(inA1(due.template({ last, kind }, mixed), 6, 0)).toBe(
      'IF(OR(LEN(TRIM(D7))=0,EXACT(TRIM(D7),"0")),"no date",' +
        'IF(OR(EXACT(LOWER(TRIM(B7)),"balloon"),EXACT(LOWER(TRIM(B7)),"bgt")),TUBE.CHANGEDUE(D7,3),' +
        'IF(EXACT(LOWER(TRIM(B7)),"bumper"),"no set change",' +
        'IF(EXACT(LOWER(TRIM(B7)),"loop"),"no date","kind not known"))))',
    );
  });
  it("is said of everyone only when somebody says so", () => {
    const everyone = using({ from: "everyone", kind: "gastrojejunal" });
    expect(inTable(due.template({ last }, everyone), "Tubes")).toBe(
      'IF(OR(LEN(TRIM(Tubes[[#This Row],[Last change]]))=0,EXACT(TRIM(Tubes[[#This Row],[Last change]]),"0")),"no date",' +
        "TUBE.CHANGEDUE(Tubes[[#This Row],[Last change]],3))",
    );
  });
  it("can stand on a named setting", () => {
    const named = { ...mixed, written: (name: string) => name };
    expect(inA1(due.template({ last, kind }, named), 0, 0)).toContain("TUBE.CHANGEDUE(D1,Int_Balloon_G)");
  });

  const cases: readonly (readonly [string, RowCells, unknown, string | null, string | null])[] = [
    ["a balloon", { last: day("2025-08-31"), kind: "Balloon " }, day("2025-11-30"), null, null],
    ["a balloon, limit", { last: day("2025-08-31"), kind: "BGT" }, day("2025-11-30"), null, null],
    ["a bumper", { last: day("2025-08-31"), kind: "bumper" }, "no set change", null, null],
    ["the team's own date", { last: 45000, kind: "loop" }, "no date", "no answer", "the placing team sets the date"],
    ["an unmapped kind", { last: 45000, kind: "PEG" }, "kind not known", "kind", 'kind "PEG"'],
    ["no kind", { last: 45000, kind: null }, "kind not known", "kind", "no kind entered"],
    ["a kind that is a number", { last: 45000, kind: 14.5 }, "kind not known", "kind", 'kind "14.5"'],
    ["no date", { last: null, kind: "balloon" }, "no date", "no answer", "no last change"],
    ["a linked blank", { last: 0, kind: "balloon" }, "no date", "no answer", "no last change"],
    [
      "a date in the future",
      { last: "2026-06-02", kind: "bgt" },
      day("2026-09-02"),
      "doubt",
      "last change is in the future",
    ],
    ["neither", { last: " ", kind: null }, "no date", "no answer", "no last change"],
  ];
  it.each(cases)("%s", (_, row, answer, severity, reason) => {
    expect(due.answer(row, mixed)).toBe(answer);
    expect(due.problem(row, mixed)?.severity ?? null).toBe(severity);
    expect(due.problem(row, mixed)?.reason ?? null).toBe(reason);
  });
  it("hands on the function's own sentence", () => {
    expect(due.problem({ last: "3/4/24", kind: "balloon" }, mixed)).toEqual({
      severity: "no answer",
      shows: "#VALUE!",
      reason: "last change must be a date, or text such as 2026-05-14; other texts are not guessed",
    });
  });
  it("shows an error that stands in the list", () => {
    const row = { last: new CellError("#N/A"), kind: "balloon" };
    expect(due.problem(row, mixed)).toEqual({
      severity: "no answer",
      shows: "#N/A",
      reason: "last change is an error",
    });
  });
});

describe("At the latest", () => {
  it("gives a bumper its limit and no routine change", () => {
    expect(latest.answer({ last: day("2024-02-29"), kind: "bumper" }, mixed)).toBe(day("2026-02-28"));
    expect(latest.answer({ last: day("2025-08-31"), kind: "balloon" }, mixed)).toBe(day("2026-02-28"));
  });
});

describe("Change", () => {
  const change = recipeNamed("change");
  it("stands on the due column alone where there is nothing else", () => {
    const text = inA1(change.template({ due: { header: "Due", index: 0 } }, mixed), 1, 0);
    expect(text).toContain("As_of+14+1");
    expect(text).not.toMatch(/\b[B-Z]2\b/);
  });
  it("uses nothing that Excel 2021 lacks, no array constant and no wildcard comparison", () => {
    const roles = {
      due: { header: "a", index: 0 },
      latest: { header: "b", index: 1 },
      last: { header: "c", index: 2 },
    };
    const text = inA1(change.template(roles, mixed), 1, 0);
    const used = [...new Set([...text.matchAll(/([A-Z][A-Z.]+)\(/g)].map(([, name]) => name))].sort();
    expect(used).toEqual([
      ..."AND EDATE EXACT FIND IF IFERROR ISERROR ISNUMBER ISTEXT LEFT LEN LOWER MID NOT OR TRIM".split(" "),
    ]);
    expect(text).not.toContain("{");
    expect(text).not.toMatch(/="/);
  });
  it("tells what is missing", () => {
    expect(change.problem({ due: "no date" }, mixed)).toMatchObject({ shows: "no date", reason: "no due date" });
    expect(change.problem({ due: "kind not known" }, mixed)).toMatchObject({ severity: "kind" });
    expect(change.problem({ due: AS_OF - 1 }, mixed)).toBeNull();
  });
});

describe("Size mm", () => {
  const size = recipeNamed("sizeMm");
  it.each([
    ["14 Fr", null, null],
    [14, null, null],
    [4.7, "doubt", "looks like mm?"],
    [36, "doubt", "looks like mm?"],
    [30, null, null],
    [5, null, null],
    ["14G", "no answer", "G means gauge; write Fr"],
    ["12/14", "no answer", '"12/14" holds more than one number: write one size'],
    ["", "no answer", "no size"],
    [0, "no answer", "no size"],
  ])("%s", (value, severity, reason) => {
    expect(size.problem({ size: value }, mixed)?.severity ?? null).toBe(severity);
    expect(size.problem({ size: value }, mixed)?.reason ?? null).toBe(reason);
  });
});

describe("Balloon", () => {
  const balloon = recipeNamed("balloon");
  it("guards blanks, so that an empty balloon and a missing figure stay two things", () => {
    const slots = { out: { header: "Out", index: 0 }, putIn: { header: "In", index: 1 } };
    expect(inA1(balloon.template(slots, mixed), 1, 0)).toBe(
      'TUBE.BALLOONSTATE(IF(LEN(A2)=0,"",A2),IF(LEN(B2)=0,"",B2))',
    );
    expect(balloon.answer({ out: 0, putIn: 5 }, mixed)).toBe("empty");
    expect(balloon.answer({ out: null, putIn: 5 }, mixed)).toBe("not measured");
  });
  it.each([
    [{ out: null, putIn: 5 }, "no water out"],
    [{ out: 4, putIn: null }, "no water put in"],
    [{ out: "3-5 mL", putIn: 5 }, "water out must be one number of mL"],
  ])("%o", (row, reason) => expect(balloon.problem(row, mixed)?.reason).toBe(reason));
});

describe("all recipes", () => {
  it("have headers of their own and formats in Excel's English codes", () => {
    expect(new Set(recipes.map(({ header }) => header.toLowerCase())).size).toBe(recipes.length);
    expect(recipes.map(({ format }) => format)).toEqual(["d mmm yyyy", "d mmm yyyy", "General", "0.0", "General"]);
  });
  it("never say OK or safe", () => {
    for (const { label, help, words: said } of recipes)
      expect([label, help, ...said].join(" ")).not.toMatch(/\b(ok|safe)\b/i);
  });
});
