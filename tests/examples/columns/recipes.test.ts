import { describe, expect, it } from "vitest";
import { inA1, inTable } from "../../../src/columns/formula";
import { recipeNamed, recipes } from "../../../src/columns/recipes/index";
import type { KindSource, RecipeKey, RowCells, Using } from "../../../src/columns/recipes/recipe";
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
  lengths: [1.7, 2, 2.3, 2.5],
});
const words = (entries: readonly (readonly [string, KindKey])[]) => using({ from: "words", words: new Map(entries) });
const checked = { stomaMade: 40000, last: AS_OF - 40, lastCheck: AS_OF - 3 };
const mixedWords = [
  ["balloon", "balloon gastrostomy"],
  ["bgt", "balloon gastrostomy"],
  ["bumper", "bumper adult"],
  ["loop", "placing team"],
] as const;
const mixed = words(mixedWords);
const withGJ = words([...mixedWords, ["gj", "gastrojejunal"], ["gj balloon", "gastrojejunal"]]);
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

describe("Tract", () => {
  const tract = recipeNamed("tract");
  const made = { stomaMade: { header: "Stoma made", index: 0 } };
  it.each([
    // ACI/GENCA, emergency page: immature below 6 weeks, mature by weeks from 12.
    ["41 days", AS_OF - 41, "immature", null],
    ["42 days", AS_OF - 42, "uncertain", null],
    ["83 days", AS_OF - 83, "uncertain", null],
    ["84 days", AS_OF - 84, "mature by weeks", null],
    ["today", AS_OF, "immature", null],
    ["an ISO text", "2026-04-20", "uncertain", null],
    ["nothing", null, "no date", "no date of the stoma"],
    ["tomorrow", AS_OF + 1, "check date", "the date is after today: check both dates"],
    ["a year", 2019, "check date", "the date is more than 100 years before today: write the whole date, not the year"],
    ["day first", "3/4/24", "check date", "text, not a date"],
    ["an error", new CellError("#N/A"), "check date", "the date is an error"],
  ])("%s", (_, stomaMade, word, reason) => {
    expect(tract.answer({ stomaMade, slowHealing: "no" }, mixed)).toBe(word);
    expect(tract.problem({ stomaMade, slowHealing: "no" }, mixed)?.reason ?? null).toBe(reason);
  });
  it.each([
    ["no", "mature by weeks", null],
    [" No ", "mature by weeks", null],
    ["yes", "uncertain", null],
    ["not known", "uncertain", "not known whether healing is slow"],
    ["", "uncertain", "not known whether healing is slow"],
    [null, "uncertain", "not known whether healing is slow"],
    [0, "uncertain", "not known whether healing is slow"],
    ["?", "uncertain", "not known whether healing is slow"],
    [new CellError("#REF!"), "uncertain", "not known whether healing is slow"],
    // The list has no such column.
    [undefined, "uncertain", "not known whether healing is slow"],
  ])("slow healing %s, 84 days: %s", (slow, word, reason) => {
    const row = { stomaMade: AS_OF - 84, ...(slow !== undefined && { slowHealing: slow }) };
    expect(tract.answer(row, mixed)).toBe(word);
    expect(tract.problem(row, mixed)?.reason ?? null).toBe(reason);
    expect(tract.answer({ ...row, stomaMade: AS_OF - 41 }, mixed)).toBe("immature");
  });
  it("counts from As_of in plain Excel, and says so where a limit on the settings sheet has been emptied", () => {
    const named = { ...mixed, written: (name: string) => name };
    const text = inA1(tract.template(made, named), 1, 0);
    expect(text).not.toContain("TUBE.");
    expect(text.startsWith('IF(COUNT(Tract_Low,Tract_High)<2,"no setting",IF(ISERROR(A2),"check date",')).toBe(true);
    expect(text).toContain("<7*Tract_High");
    expect(inA1(tract.template(made, mixed), 1, 0)).not.toContain("COUNT(");
  });
});

describe("columns that hand a row to one function", () => {
  const lying = { header: "Lying", index: 1 };
  const sitting = { header: "Sitting", index: 2 };
  it("answer blanks before the function does, numbers and lengths visible", () => {
    expect(inA1(recipeNamed("lengthToOrder").template({ lying, sitting }, mixed), 1, 0)).toBe(
      'IF(OR(LEN(TRIM(B2))=0,EXACT(TRIM(B2),"0"),LEN(TRIM(C2))=0,EXACT(TRIM(C2),"0")),"not measured",' +
        'TUBE.STOMALENGTH(B2,C2,{1.7;2;2.3;2.5},"larger",0.2,0.5))',
    );
    expect(inA1(recipeNamed("play").template({ gap: { header: "Gap", index: 0 } }, mixed), 1, 0)).toBe(
      'IF(LEN(TRIM(A2))=0,"not measured",TUBE.FREEPLAY(A2,5,20))',
    );
  });
  const cases: readonly (readonly [RecipeKey, RowCells, unknown, string | null])[] = [
    ["fit", { length: 2.3, lying: 2, sitting: 2.1 }, "in range", null],
    ["fit", { length: 2, lying: 2, sitting: 2.1 }, "too short", null],
    ["fit", { length: 2.3, lying: 2, sitting: null }, "not measured", "no reading sitting"],
    ["fit", { length: 2.3, lying: 2.1, sitting: 1.8 }, "in range", "sitting is below lying: measure again"],
    // A long tube has no length to fit; what is measured all the same is worked out, and a length there is told.
    ["fit", { length: null, lying: null, sitting: null, shape: "Long" }, "", null],
    ["fit", { length: null, lying: null, sitting: null, shape: "low-profile" }, "not measured", "no length"],
    ["fit", { length: null, lying: null, sitting: null, shape: null }, "not measured", "no length"],
    ["fit", { length: null, lying: 2, sitting: 2.1, shape: "long" }, "not measured", "no length"],
    [
      ...(["fit", { length: 2.3, lying: 2, sitting: 2.1, shape: "long" }, "in range"] as const),
      "a length beside a long tube: one of the two is wrong",
    ],
    ["lengthToOrder", { lying: null, sitting: "", shape: "long tube" }, "", null],
    ["lengthToOrder", { lying: 2, sitting: 2.2, shape: "long" }, 2.3, null],
    ["lengthToOrder", { lying: null, sitting: null, shape: "?" }, "not measured", "no reading lying"],
    ["lengthToOrder", { lying: 2, sitting: 2.2 }, 2.3, null],
    ["lengthToOrder", { lying: 0, sitting: 2.2 }, "not measured", "no reading lying"],
    ["play", { gap: 2 }, "tight", null],
    ["play", { gap: 0 }, "tight", "the gap is 0, or the cell is linked to an empty one"],
    ["play", { gap: null }, "not measured", "no gap to the skin"],
    ["mark", { markThen: 4, markNow: 2 }, "further out", null],
    ["mark", { markThen: null, markNow: 4 }, "not measured", "no mark then"],
    [
      "mark",
      { markThen: 4, markNow: 0 },
      "further out",
      "the mark now is 0: nothing is inside, or the cell is linked to an empty one",
    ],
    ["balloonLoss", { out: 3.8, putIn: 5 }, 1.2, null],
    ["balloonLoss", { out: null, putIn: 5 }, "not measured", "no water out"],
    ["balloonLoss", { out: 6, putIn: 5 }, -1, "more came out than was put in"],
    ["frFromMm", { diameter: "4.7 mm" }, 14.1, null],
    ["frFromMm", { diameter: 14 }, 42, "looks like Fr?"],
    // Cambridge: no check before 28 days; SickKids: weekly.
    ["checkDue", { stomaMade: AS_OF - 7, last: AS_OF - 7, lastCheck: null }, AS_OF + 21, null],
    ["checkDue", { stomaMade: 40000, last: AS_OF - 40, lastCheck: AS_OF - 3 }, AS_OF + 4, null],
    [
      "checkDue",
      { stomaMade: 40000, last: AS_OF - 40, lastCheck: AS_OF + 3 },
      AS_OF + 10,
      "last check is in the future",
    ],
    ["checkDue", { stomaMade: null, last: AS_OF - 40, lastCheck: AS_OF - 3 }, "", "no stoma made"],
    ["checkDue", { ...checked, kind: "Balloon " }, AS_OF + 4, null],
    ["checkDue", { ...checked, stomaMade: null, kind: "balloon" }, "", "no stoma made"],
    ["checkDue", { ...checked, lastCheck: null, kind: "bumper" }, "no balloon", null],
    ["checkDue", { ...checked, lastCheck: 0, kind: "bumper" }, "no balloon", null],
    [
      "checkDue",
      { ...checked, kind: "bumper" },
      "no balloon",
      "a balloon check of a tube without a balloon: one of the two is wrong",
    ],
    /* Loops and wings have none, a stop-gap catheter has one: the kind does not say it. */
    [
      "checkDue",
      { ...checked, kind: "loop" },
      "balloon not known",
      'kind "loop" does not say whether a balloon holds it',
    ],
    ["checkDue", { ...checked, kind: "GJ" }, "balloon not known", 'kind "GJ" does not say whether a balloon holds it'],
    ["checkDue", { ...checked, kind: "GJ balloon" }, AS_OF + 4, null],
    ["checkDue", { ...checked, kind: "PEG" }, "kind not known", 'kind "PEG"'],
    ["checkDue", { ...checked, kind: "no balloon" }, "kind not known", 'kind "no balloon"'],
    ["checkDue", { ...checked, kind: null }, "kind not known", "no kind entered"],
    ["checkDue", { ...checked, kind: "  " }, "kind not known", "no kind entered"],
  ];
  it.each(cases)("%s of %o", (key, row, answer, reason) => {
    const found = recipeNamed(key).answer(row, withGJ);
    if (typeof answer === "number") expect(found).toBeCloseTo(answer, 9);
    else expect(found).toBe(answer);
    expect(recipeNamed(key).problem(row, withGJ)?.reason ?? null).toBe(reason);
  });
  it("name the tube without a balloon where one kind is said of everyone", () => {
    const said = (kind: KindKey) => recipeNamed("checkDue").answer(checked, using({ from: "everyone", kind }));
    expect(said("balloon jejunostomy")).toBe(AS_OF + 4);
    expect([said("bumper child"), said("gastrojejunal"), said("placing team"), said("not known")]).toEqual([
      ...["no balloon", "balloon not known", "balloon not known", "kind not known"],
    ]);
    const gj = using({ from: "everyone", kind: "gastrojejunal" });
    expect(recipeNamed("checkDue").problem(checked, gj)?.reason).toBe(
      "the kind does not say whether a balloon holds it",
    );
  });
  it("is an error where the kind is one", () => {
    const row = { ...checked, kind: new CellError("#N/A") };
    expect(recipeNamed("checkDue").answer(row, mixed)).toEqual(new CellError("#N/A"));
    expect(recipeNamed("checkDue").problem(row, mixed)).toMatchObject({ shows: "#N/A", reason: "kind is an error" });
  });
  it("hand on the function's sentence in the list's own words", () => {
    const early = recipeNamed("checkDue").problem({ stomaMade: AS_OF, last: AS_OF - 1, lastCheck: null }, mixed);
    expect(early).toMatchObject({ shows: "#VALUE!", reason: "last change is before stoma made: check both dates" });
    const none = recipeNamed("lengthToOrder").problem({ lying: 4, sitting: 4.9 }, mixed);
    expect(none).toMatchObject({ shows: "#N/A", reason: "no length in stock is long enough" });
  });
});

describe("all recipes", () => {
  it("have headers of their own and formats in Excel's English codes", () => {
    expect(new Set(recipes.map(({ header }) => header.toLowerCase())).size).toBe(recipes.length);
    for (const { format, words: said } of recipes)
      expect(said.length > 0 ? ["General"] : ["d mmm yyyy", "0.0"]).toContain(format);
  });
  it("never say OK or safe", () => {
    for (const { label, help, caution = "", words: said } of recipes)
      expect([label, help, caution, ...said].join(" ")).not.toMatch(/\b(ok|safe)\b/i);
  });
});
