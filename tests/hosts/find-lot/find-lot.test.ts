/** Find a lot behind the port: the invented caseload, whose story names the rows of its lot, and a list of somebody's own. */
import { describe, expect, it } from "vitest";
import { inventedCaseload } from "../../../src/caseload/invented/index";
import { BAD_LOT } from "../../../src/caseload/invented/story";
import { day } from "../../../src/worksheet/dates";
import { findLots, listsOf, lotSheet, showAllOf, showFound, surveyLots } from "../../../taskpane/actions/find-lot";
import { sheetOfValues } from "../../../taskpane/actions/new-sheet";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { caseloadBook, type RowOf } from "../caseload-jobs/book";
import { apply } from "../caseload-jobs/kit";

const TODAY = day("2026-11-26");

describe("the invented caseload", () => {
  const { tubes, changes } = inventedCaseload(TODAY);
  const book = () =>
    fakeWorkbook(caseloadBook({ tubes: tubes as readonly RowOf[], changes: changes as readonly RowOf[] }));
  /* Counted here by the cells themselves. */
  const having = (rows: readonly object[], header: string, lot: string) =>
    rows.filter((row) => String((row as RowOf)[header] ?? "") === lot);
  const real = <R extends object>(rows: readonly R[]) => rows.filter((row) => String((row as RowOf).ID ?? "") !== "");

  it("shows one lot in five devices in use, two spares and three past devices, as its story says", async () => {
    const survey = await surveyLots(book(), { today: TODAY });
    const { found, open } = findLots(survey, [BAD_LOT]);
    const of = (group: string) => found.filter((row) => row.group === group);
    expect([of("in use").length, of("spare").length, of("past").length]).toEqual([5, 2, 3]);
    expect(of("in use").map(({ id }) => id)).toEqual(having(tubes, "Lot", BAD_LOT).map((row) => (row as RowOf).ID));
    expect(of("in use")[0]!.about).toMatch(/balloon \d+ Fr .*since \d+ \w{3} \d{4}/);
    const blank = (rows: readonly object[]) => real(rows).filter((row) => ((row as RowOf).Lot ?? "") === "").length;
    const openIn = (group: string) => open.filter((row) => row.group === group).length;
    expect(openIn("in use")).toBe(blank(tubes));
    expect(openIn("in use")).toBeGreaterThanOrEqual(9);
    expect(openIn("past")).toBe(blank(changes));
  });

  it.each(["03-04", "1E5"])("finds %s, which a spreadsheet would spoil, as the text that it is", async (lot) => {
    const { found } = findLots(await surveyLots(book(), { today: TODAY }), [` ${lot.toLowerCase()}`]);
    expect(found.length).toBe(having(tubes, "Lot", lot).length + having(tubes, "Spare lot", lot).length);
    expect(found.length).toBeGreaterThan(0);
  });

  it("shows only these people's rows, whether the device or the spare is of the lot, and all of them again", async () => {
    const workbook = book();
    const survey = await surveyLots(workbook, { today: TODAY });
    const { found } = findLots(survey, [BAD_LOT]);
    const list = listsOf(found).find(({ table }) => table === "Tubes_in_use")!;
    const inTubes = new Set(found.filter((row) => row.list.key === list.key).map(({ id }) => id));
    expect((await apply(workbook, showFound(found, list))).outcome).toBe("done");
    const hiddenNow = async () =>
      (await workbook.read({ table: list.table! }, ["hidden"])).hidden!.slice(1).map((isHidden) => !isHidden);
    const shown = (await hiddenNow()).flatMap((isShown, i) => (isShown && tubes[i] ? [(tubes[i] as RowOf).ID] : []));
    expect(new Set(shown)).toEqual(inTubes);
    expect((await apply(workbook, showAllOf(list))).outcome).toBe("done");
    expect((await hiddenNow()).every(Boolean)).toBe(true);
  });
});

describe("a list of somebody's own", () => {
  const own = (headers: readonly string[] = ["Hosp no", "Tube", "Batch number", "Last change"]) =>
    fakeWorkbook({
      sheets: [
        {
          name: "Adults",
          rows: [
            [...headers],
            ["17", "balloon", "b 2291", { value: day("2026-09-01"), format: "d mmm yyyy" }],
            ["18", "PEG", "B229l", "3/4/24"],
            ["19", "balloon", { value: day("2026-04-03"), format: "d-mmm" }, null],
            ["20", "balloon", 100000, null],
            ["21", "balloon", null, null],
            ["22", "balloon", "B2304; B2291", null],
            ["23", "balloon", "C7714", null],
          ],
        },
        {
          name: "Stock",
          rows: [
            ["Item", "Lot", "On the shelf"],
            ["14 Fr", "B2291", 4],
            ["12 Fr", "C7714", 2],
          ],
        },
      ],
      selection: { sheet: "Adults", area: "B3" },
    });
  const ids = (rows: readonly { id: string }[]) => rows.map(({ id }) => id);

  it("is looked through with every other list of the workbook, stock too", async () => {
    const survey = await surveyLots(own(), { today: TODAY });
    expect(survey.lookedIn).toEqual(['"Batch number" on Adults', '"Lot" on Stock']);
    const { found, similar, open } = findLots(survey, ["B2291"]);
    expect(ids(found)).toEqual(["17", "22", ""]);
    expect(found[0]!.about).toBe("balloon, since 1 Sep 2026");
    expect(similar.map(({ lot, why }) => [lot, why])).toEqual([["B229l", "signs that look alike"]]);
    expect(open.map(({ id, why, lot }) => [id, why, lot])).toEqual([
      ["19", "a date stands there", "3 Apr 2026"],
      ["21", "no lot", ""],
    ]);
    expect(findLots(survey, ["B2291", "B229l"]).found.map(({ id }) => id)).toContain("18");
  });

  it("names the number or the day that a spreadsheet has made of a lot", async () => {
    const survey = await surveyLots(own(), { today: TODAY });
    const why = (lot: string, id: string) => findLots(survey, [lot]).open.find((row) => row.id === id)?.why;
    expect(why("1E5", "20")).toBe("made into a number");
    expect(why("03-04", "19")).toBe("made into a date");
  });

  it("looks in no column whose header does not say lot, until somebody says so", async () => {
    const workbook = own(["Hosp no", "Tube", "Ref on box", "Last change"]);
    const before = await surveyLots(workbook, { today: TODAY });
    expect(before.lookedIn).toEqual(['"Lot" on Stock']);
    const { key } = before.others.find(({ label }) => label.includes("Ref on box"))!;
    const after = await surveyLots(workbook, { today: TODAY, also: [key] });
    expect(ids(findLots(after, ["B2291"]).found)).toContain("17");
  });

  it("shows only the rows of the lot by the host's own filter", async () => {
    const workbook = own();
    const { found } = findLots(await surveyLots(workbook, { today: TODAY }), ["B2291"]);
    const [list] = listsOf(found);
    expect((await apply(workbook, showFound(found, list!))).outcome).toBe("done");
    const { hidden } = await workbook.read({ sheet: list!.sheet, area: { ...list!.area, columns: 1 } }, ["hidden"]);
    expect(hidden!.map((isHidden, i) => (isHidden ? 0 : i + 1)).filter((row) => row > 1)).toEqual([2, 7]);
  });
});

it("where there is no column with lots, nothing is found and it says where it could look", async () => {
  const workbook = fakeWorkbook({
    sheets: [
      {
        name: "S",
        rows: [
          ["ID", "Kind"],
          ["1", "balloon"],
        ],
      },
    ],
    selection: { sheet: "S", area: "A1" },
  });
  const survey = await surveyLots(workbook, { today: TODAY });
  expect([survey.lookedIn, survey.others.map(({ label }) => label)]).toEqual([[], ['"Kind" on S']]);
});

it("as a sheet, the rows to tell stand there as texts, and the next search does not take them for devices", async () => {
  const workbook = fakeWorkbook({
    sheets: [
      {
        name: "Adults",
        rows: [
          ["ID", "Lot"],
          ["17", "03-04"],
          ["18", null],
        ],
      },
    ],
    selection: { sheet: "Adults", area: "A2" },
  });
  const found = findLots(await surveyLots(workbook, { today: TODAY }), ["03-04"]);
  const change = sheetOfValues(lotSheet(found, found.lots), await workbook.overview(), TODAY);
  expect((await apply(workbook, change)).outcome).toBe("done");
  const { sheets } = await workbook.overview();
  expect(sheets.at(-1)!.name).toBe("Lot 03-04");
  const { values } = await workbook.read({ sheet: sheets.at(-1)!.id, area: { top: 3, left: 0, rows: 2, columns: 4 } }, [
    "values",
  ]);
  expect(values!.map((row) => [row[1], row[3]])).toEqual([
    ["17", "03-04"],
    ["18", "no lot written down"],
  ]);
  expect(findLots(await surveyLots(workbook, { today: TODAY }), ["03-04"]).found).toHaveLength(1);
  // A second sheet of the same lot has another name.
  expect(
    (await apply(workbook, sheetOfValues(lotSheet(found, found.lots), await workbook.overview(), TODAY))).outcome,
  ).toBe("done");
});
