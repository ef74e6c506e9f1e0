/**
 * Show only, on lists in memory: counts beside each choice, the rows shown and hidden, and who has no usable date.
 * Lists and counts are written out by hand here.
 */
import { describe, expect, test } from "vitest";
import {
  showAll,
  showWithoutDate,
  surveyList,
  viewOf,
  withoutDateSentence,
  type ShowChoices,
} from "../../../taskpane/actions/show-only";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import type { Cell } from "../../../src/worksheet/cell";
import type { Change, Workbook } from "../../../taskpane/workbook/port";

/** 1 June 2026. */
const TODAY = 46174;

const headers = ["Identifier", "Kind of tube", "Size", "Last change", "Shape", "Changed by"];
const rows: readonly (readonly Cell[])[] = [
  ["D-001", "balloon", "14 Fr", TODAY - 10, "long", "nurse at home"],
  ["D-002", "Balloon ", "CH14", TODAY - 20, "low-profile", "carer"],
  ["D-003", "bumper", 14, null, "long", "endoscopy"],
  ["D-004", "bumper", "16", "3/4/24", "long", "endoscopy"],
  ["D-005", "RIG", "12/14", TODAY + 400, "long", null],
  ["D-006", "balloon", "16FR", 2024, "low-profile", "carer"],
  ["D-007", null, "14,0", TODAY, "low-profile", "nurse at home"],
];

const list = (isTable: boolean) =>
  fakeWorkbook({
    title: "List (invented).xlsx",
    dateSystem: 1900,
    sheets: [
      {
        name: "Adults",
        rows: [headers, ...rows],
        ...(isTable && { tables: [{ name: "People", area: "A1:F8" }] }),
      },
    ],
    selection: { sheet: "Adults", area: "B2" },
  });

const ticking = (ticked: ShowChoices["ticked"]): ShowChoices => ({ ticked, columns: {} });

const apply = (workbook: Workbook, change: Change) =>
  workbook.apply(change, { report: () => undefined, signal: new AbortController().signal });

/** Identifiers of the rows that the sheet shows. */
async function shownIn(workbook: Workbook): Promise<unknown[]> {
  const { sheets } = await workbook.overview();
  const block = await workbook.read({ sheet: sheets[0]!.id, area: sheets[0]!.used! }, ["values", "hidden"]);
  return block.values!.slice(1).flatMap((row, i) => (block.hidden![i + 1] ? [] : [row[0]]));
}

test("a size of which a spreadsheet made a date is told as that date, with the reason, and not as a serial number", async () => {
  // 12-14 typed in 2026: 14 December, 46370 (ECMA-376 part 1, 18.17.4).
  const date = { value: 46370, format: "d-mmm" };
  const workbook = fakeWorkbook({
    dateSystem: 1900,
    sheets: [{ name: "Adults", rows: [headers, ...rows, ["D-008", date, date, TODAY, "long", 46370]] }],
    selection: { sheet: "Adults", area: "B2" },
  });
  const { facets } = await surveyList(workbook, { today: TODAY });
  const named = (role: string) =>
    facets.find((facet) => facet.role === role)!.groups.map(({ label, note }) => [label, note]);
  const MADE = "the cell holds a date: spreadsheets make one of 12-14 or 12/14; type it anew as text";
  expect(named("size")).toContainEqual(["14 Dec 2026", MADE]);
  expect(named("kind")).toContainEqual(["14 Dec 2026", MADE]);
  // a number that its cell shows as one stays a number
  expect(named("changedBy")).toContainEqual(["46370", ""]);
});

describe.each([true, false])("a list as a table: %s", (isTable) => {
  test("choices with their counts: words whatever their case and spaces, sizes however typed", async () => {
    const survey = await surveyList(list(isTable), { today: TODAY });
    const view = viewOf(survey, ticking({}));
    const told = Object.fromEntries(
      view.facets.map(({ facet, groups }) => [facet.role, groups.map(({ group, count }) => `${group.label} ${count}`)]),
    );
    expect(told).toEqual({
      kind: ["balloon, gastrostomy (G) 3", "bumper 2", "RIG 1", "(blank) 1"],
      shape: ["long 4", "low-profile 3"],
      size: ["14 Fr 4", "16 Fr 2", "cannot be read 1"],
      changedBy: ["carer 2", "endoscopy 2", "nurse at home 2", "(blank) 1"],
    });
    expect(view.change).toBeNull();
  });

  test("ticks under one heading add up, headings narrow, and the filter shows those rows", async () => {
    const workbook = list(isTable);
    const survey = await surveyList(workbook, { today: TODAY });
    const view = viewOf(survey, ticking({ kind: ["kind balloon gastrostomy", "blank"], shape: ["word low-profile"] }));
    expect(view.shown).toBe(3);
    expect(view.says[0]).toBe("Shows 3 of 7 rows and hides 4. Nothing is deleted or changed.");
    const kinds = view.facets.find(({ facet }) => facet.role === "kind")!.groups;
    expect(kinds.map(({ group, count }) => `${group.label} ${count}`)).toEqual([
      "balloon, gastrostomy (G) 2",
      "bumper 0",
      "RIG 0",
      "(blank) 1",
    ]);
    expect((await apply(workbook, view.change!)).outcome).toBe("done");
    expect(await shownIn(workbook)).toEqual(["D-002", "D-006", "D-007"]);

    const again = await surveyList(workbook, { today: TODAY });
    expect(again.hidden.size).toBe(4);
    const same = viewOf(again, ticking({ kind: ["kind balloon gastrostomy", "blank"], shape: ["word low-profile"] }));
    expect(same.says).toEqual(["These 3 rows are the ones shown now."]);
    expect((await apply(workbook, showAll(again.list.list!))).outcome).toBe("done");
    expect(await shownIn(workbook)).toHaveLength(7);
  });

  test("rows without a usable date are named whatever is chosen, and shown by one press", async () => {
    const workbook = list(isTable);
    const survey = await surveyList(workbook, { today: TODAY });
    // blank, text that can be turned round, in the future, a year typed for a date
    const all = 'And 4 rows without a usable date in "Last change" (rows 4, 5, 6 and 7)';
    const choices = ticking({ kind: ["kind balloon gastrostomy"] });
    expect(withoutDateSentence(survey, viewOf(survey, choices), choices)).toBe(`${all}; this choice hides 3 of them.`);
    const others = ticking({ kind: ["blank"] });
    expect(withoutDateSentence(survey, viewOf(survey, others), others)).toBe(`${all}; this choice hides all of them.`);
    expect((await apply(workbook, showWithoutDate(survey)!)).outcome).toBe("done");
    expect(await shownIn(workbook)).toEqual(["D-003", "D-004", "D-005", "D-006"]);
  });

  test("a list whose columns changed meanwhile is not filtered", async () => {
    const workbook = list(isTable);
    const survey = await surveyList(workbook, { today: TODAY });
    workbook.type("Adults", "B1", "Something else");
    const receipt = await apply(workbook, viewOf(survey, ticking({ kind: ["word bumper"] })).change!);
    expect(receipt.outcome).toBe("refused");
    expect(await shownIn(workbook)).toHaveLength(7);
  });
});

test("without a column for the last change nobody is told that all is well", async () => {
  const workbook = fakeWorkbook({
    sheets: [
      {
        name: "Short",
        rows: [
          ["Identifier", "Kind of tube"],
          ["D-001", "balloon"],
          ["D-002", "bumper"],
        ],
      },
    ],
    selection: { sheet: "Short", area: "A2" },
  });
  const survey = await surveyList(workbook, { today: TODAY });
  const choices = ticking({});
  expect(withoutDateSentence(survey, viewOf(survey, choices), choices)).toMatch(/nobody can tell/);
  expect(showWithoutDate(survey)).toBeNull();
});

test("a column that was guessed wrongly can be corrected", async () => {
  const survey = await surveyList(list(true), { today: TODAY }, { kind: 4, shape: null });
  const [first] = survey.facets;
  expect(first).toMatchObject({ role: "kind", header: "Shape" });
  expect(survey.facets.map(({ role }) => role)).not.toContain("shape");
});
