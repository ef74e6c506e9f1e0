/** What is said of a list is kept on a sheet of the workbook, used by the jobs, and told where it no longer fits. */
import { describe, expect, it } from "vitest";
import { MEMORY_SHEET } from "../../../src/columns/remembered";
import { addColumns } from "../../../taskpane/actions/add-columns";
import { checkSheet } from "../../../taskpane/actions/check-sheet";
import { surveyList } from "../../../taskpane/actions/show-only/survey";
import { planForgetting, planThisList, surveyThisList } from "../../../taskpane/actions/this-list";
import type { ThisListChoices } from "../../../taskpane/actions/this-list/interface";
import { fakeWorkbook, type FakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import type { Receipt } from "../../../taskpane/workbook/port";

const TODAY = 46_132;
const asked = { today: TODAY };
const watch = () => ({ report: () => undefined, signal: new AbortController().signal });

/** Headings that say nothing to us. */
const book = () =>
  fakeWorkbook({
    sheets: [
      {
        name: "Adults",
        rows: [
          ["Kürzel", "Eingelegt", "Was", "Changer"],
          ["D-1", 45_900, "BGT", "carer"],
          ["D-2", 45_950, "Mic", "nurse"],
          ["D-3", 45_960, "BGT", "carer"],
          ["D-4", "n/k", "?", "carer"],
        ],
      },
    ],
    selection: { sheet: "Adults", area: "A2" },
  });

const SAID: ThisListChoices = {
  meanings: { 1: "last", 2: "kind", 3: "changedBy" },
  words: { bgt: "balloon gastrostomy", mic: "bumper adult" },
};

async function keep(workbook: FakeWorkbook, said = SAID): Promise<Receipt> {
  const plan = planThisList(await surveyThisList(workbook, asked), said);
  if (plan.outcome !== "planned") throw new Error(plan.sentence);
  return workbook.apply(plan.change, watch());
}

const memory = (workbook: FakeWorkbook) => workbook.book.sheet(MEMORY_SHEET)!;

describe("what is said of a list", () => {
  it("is kept on a hidden sheet that says what it is, in plain rows", async () => {
    const workbook = book();
    expect((await keep(workbook)).outcome).toBe("done");
    const sheet = memory(workbook);
    expect(sheet.hidden).toBe(true);
    expect(String(sheet.value(0, 0))).toContain("said about the lists");
    const rows = Array.from({ length: 5 }, (_, r) => [0, 1, 2, 3].map((c) => sheet.value(4 + r, c)));
    expect(rows).toEqual([
      ["sheet Adults", "column", "Eingelegt", "Last change"],
      ["sheet Adults", "column", "Was", "Kind of tube"],
      ["sheet Adults", "column", "Changer", "Changed by"],
      ["sheet Adults", "kind", "bgt", "balloon gastrostomy"],
      ["sheet Adults", "kind", "mic", "bumper adult"],
    ]);
  });

  it("is asked once: Add columns, Check this sheet and Show only begin with it", async () => {
    const workbook = book();
    await keep(workbook);
    const { proposal, lists } = await addColumns.survey(workbook, asked);
    expect(proposal.columns).toMatchObject({ last: 1, kind: 2, changedBy: 3 });
    expect(proposal.kinds).toEqual({ from: "words", words: SAID.words });
    expect(lists.map(({ label }) => label)).toEqual(['list on sheet "Adults"']);
    // a carer is to change a tube held by a bumper: only the words that were said tell
    await workbook.type("Adults", "D3", "carer");
    const { groups } = await checkSheet(workbook, asked);
    expect(groups.find(({ reason }) => reason.includes("bumper"))?.cells.map(({ address }) => address)).toEqual(["D3"]);
    const kinds = (await surveyList(workbook, asked)).facets.find(({ role }) => role === "kind")!;
    expect(kinds.groups.map(({ label, rows }) => [label, rows.size])).toEqual([
      ["balloon, gastrostomy (G)", 2],
      [expect.stringContaining("bumper"), 1],
      ["?", 1],
    ]);
  });

  it("is found again where columns moved, and told where they are gone", async () => {
    const workbook = book();
    await keep(workbook);
    for (const [row, value] of ["Eingelegt", 45_900, 45_950, 45_960, "n/k"].entries()) {
      workbook.type("Adults", `E${row + 1}`, value);
      workbook.type("Adults", `B${row + 1}`, row === 0 ? "Station" : "x");
    }
    const moved = await addColumns.survey(workbook, asked);
    expect(moved.proposal.columns.last).toBe(4);
    workbook.type("Adults", "E1", "Datum");
    const { list, proposal } = await addColumns.survey(workbook, asked);
    expect(proposal.columns.last).toBeNull();
    expect(list!.notices.map(({ sentence }) => sentence).join(" ")).toContain('"Eingelegt" was kept as "Last change"');
  });

  it("is not used where it contradicts itself, or where the column holds something else now", async () => {
    const workbook = book();
    await keep(workbook);
    workbook.type(MEMORY_SHEET, "A10", "sheet Adults");
    workbook.type(MEMORY_SHEET, "B10", "kind");
    workbook.type(MEMORY_SHEET, "C10", "BGT");
    workbook.type(MEMORY_SHEET, "D10", "bumper adult");
    for (const row of [2, 3, 4, 5]) workbook.type("Adults", `B${row}`, "see letter");
    const { list, proposal } = await addColumns.survey(workbook, asked);
    expect(proposal.kinds).toEqual({ from: "words", words: { mic: "bumper adult" } });
    expect(proposal.columns.last).toBeNull();
    const said = list!.notices.map(({ sentence }) => sentence).join(" ");
    expect(said).toContain('"bgt" is said in two ways');
    expect(said).toContain("none of its 4 entries reads so now");
  });

  it("goes with its press, and is not removed over somebody's line", async () => {
    const workbook = book();
    const receipt = await keep(workbook);
    workbook.type(MEMORY_SHEET, "F6", "mine");
    expect((await workbook.takeBack(receipt)).outcome).toBe("differs");
    workbook.type(MEMORY_SHEET, "F6", null);
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(workbook.book.sheet(MEMORY_SHEET)).toBeUndefined();
  });

  it("may be changed and forgotten; lines of other lists stay as they are", async () => {
    const workbook = book();
    await keep(workbook);
    workbook.type(MEMORY_SHEET, "A10", "table Children");
    workbook.type(MEMORY_SHEET, "B10", "something of mine");
    const again = await keep(workbook, { ...SAID, words: { ...SAID.words, mic: "bumper child" } });
    expect(again.outcome).toBe("done");
    expect(memory(workbook).value(8, 3)).toBe("bumper child");
    expect(memory(workbook).value(9, 1)).toBe("something of mine");
    expect(await workbook.takeBack(again)).toEqual({ outcome: "taken back" });
    expect(memory(workbook).value(8, 3)).toBe("bumper adult");
    const forgetting = planForgetting(await surveyThisList(workbook, asked))!;
    expect((await workbook.apply(forgetting, watch())).outcome).toBe("done");
    expect(memory(workbook).value(4, 1)).toBe("something of mine");
    expect((await addColumns.survey(workbook, asked)).list!.remembered).toBeNull();
  });

  it("leaves a sheet of that name alone that holds something else", async () => {
    const workbook = fakeWorkbook({
      sheets: [
        {
          name: "Adults",
          rows: [
            ["ID", "Last change"],
            ["D-1", 45_900],
          ],
        },
        { name: MEMORY_SHEET, rows: [["my own"]] },
      ],
      selection: { sheet: "Adults", area: "A2" },
    });
    const plan = planThisList(await surveyThisList(workbook, asked), { meanings: { 1: "last" }, words: {} });
    expect(plan).toMatchObject({ outcome: "problem" });
  });
});
