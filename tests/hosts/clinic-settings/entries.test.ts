/** Who agreed, when, and whom to call: what is refused, what is said before, what is written, and the way back. */
import { describe, expect, test } from "vitest";
import { day } from "../../../src/worksheet/dates";
import {
  agreement,
  writeEntries,
  type EntriesChoices,
  type EntriesPlan,
  type EntryName,
} from "../../../taskpane/actions/clinic-settings";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import type { Workbook } from "../../../taskpane/workbook/port";
import { agreedPut, bookWith, TODAY, workbookWith } from "./book";

const planFor = async (workbook: Workbook, choices: EntriesChoices) =>
  writeEntries.plan(await writeEntries.survey(workbook, { today: TODAY }), choices);

const apply = (workbook: Workbook, plan: EntriesPlan) =>
  workbook.apply(plan.change, { report: () => undefined, signal: new AbortController().signal });

async function planned(workbook: Workbook, choices: EntriesChoices): Promise<EntriesPlan> {
  const plan = await planFor(workbook, choices);
  if (plan.outcome !== "planned") throw new Error(plan.sentence);
  return plan;
}

const valueOf = async (workbook: Workbook, name: EntryName) =>
  (await workbook.overview()).names.find((one) => one.name === name)!.value;

const agreed = (typed: EntriesChoices["typed"]): EntriesChoices => ({ form: "agreement", typed });
const calls = (typed: EntriesChoices["typed"]): EntriesChoices => ({ form: "calls", typed });

describe("who agreed", () => {
  test("is written as a name and a day, and can be taken back", async () => {
    const workbook = workbookWith({ ...agreedPut, Agreed_By: null, Agreed_On: null });
    const plan = await planned(workbook, agreed({ Agreed_By: " Nutrition   team ", Agreed_On: "2026-11-26" }));
    expect(plan.says).toContain('Settings agreed by: "Nutrition team".');
    expect(plan.says).toContain('Settings agreed on: "26 Nov 2026".');
    const receipt = await apply(workbook, plan);
    expect(receipt.outcome).toBe("done");
    expect(writeEntries.afterwards(plan, receipt)).toEqual({
      outcome: "done",
      sentences: ['Written: "Settings agreed by" and "Settings agreed on".'],
      where: expect.objectContaining({ area: expect.anything() }),
      canTakeBack: true,
    });
    expect([await valueOf(workbook, "Agreed_By"), await valueOf(workbook, "Agreed_On")]).toEqual([
      "Nutrition team",
      day("2026-11-26"),
    ]);
    expect(agreement(await workbook.overview(), TODAY).agreed).toBe(true);
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(agreement(await workbook.overview(), TODAY).agreed).toBe(false);
  });

  test.each<[string, EntriesChoices["typed"], RegExp]>([
    ["no name", { Agreed_By: "", Agreed_On: "2026-11-26" }, /^Settings agreed by: give a name/],
    ["blanks for a name", { Agreed_By: " \t", Agreed_On: "2026-11-26" }, /^Settings agreed by: give a name/],
    ["no day", { Agreed_By: "Team", Agreed_On: "" }, /^Settings agreed on: give the date/],
    ["tomorrow", { Agreed_By: "Team", Agreed_On: "2026-11-27" }, /27 Nov 2026 has not come yet/],
    ["a day that can be turned round", { Agreed_By: "Team", Agreed_On: "3/4/26" }, /cannot be read/],
    ["a day that does not exist", { Agreed_By: "Team", Agreed_On: "2026-02-30" }, /cannot be read/],
  ])("is refused with %s", async (_, typed, sentence) => {
    const plan = await planFor(workbookWith(), agreed(typed));
    expect(plan).toMatchObject({ outcome: "problem", sentence: expect.stringMatching(sentence) });
  });

  test("a name alone is refused while no day stands in the sheet", async () => {
    expect(await planFor(workbookWith(), agreed({ Agreed_By: "Team" }))).toMatchObject({ outcome: "problem" });
  });

  test("what is odd is named before it is agreed, and what would be replaced", async () => {
    const workbook = workbookWith({ ...agreedPut, Check_Days: 60, Tract_Low: "six" });
    const { says } = await planned(workbook, agreed({ Agreed_On: "2026-11-20" }));
    expect(says[0]).toMatch(
      /^2 settings are not usual and .*: "Balloon: check every" and "Opening immature: below"\.$/,
    );
    expect(says.at(-1)).toBe('Settings agreed on: "20 Nov 2026", in place of "3 Apr 2026".');
  });

  test("a day so far back that the review is past already is said (12 months)", async () => {
    const { says } = await planned(workbookWith(agreedPut), agreed({ Agreed_On: "2025-11-25" }));
    expect(says).toContain("The review, 12 months later, would be past already: 25 Nov 2026.");
    const inTime = await planned(workbookWith(agreedPut), agreed({ Agreed_On: "2025-11-26" }));
    expect(inTime.says.join(" ")).not.toContain("past already");
  });

  test("what stands there already is not written again", async () => {
    const same = agreed({ Agreed_By: "Nutrition team", Agreed_On: "2026-04-03" });
    expect(await planFor(workbookWith(agreedPut), same)).toMatchObject({
      outcome: "problem",
      sentence: expect.stringContaining("nothing to write"),
    });
  });

  test("somebody else's entry in between is not typed over", async () => {
    const workbook = workbookWith(agreedPut);
    const plan = await planned(workbook, agreed({ Agreed_By: "Another team" }));
    await apply(workbook, await planned(workbook, agreed({ Agreed_By: "Somebody quicker" })));
    expect((await apply(workbook, plan)).outcome).toBe("refused");
    expect(await valueOf(workbook, "Agreed_By")).toBe("Somebody quicker");
  });
});

describe("whom to call", () => {
  test("numbers stay texts, leading zeros and plus signs too; only what was changed is written", async () => {
    const workbook = workbookWith({ ...agreedPut, Call_Day: null });
    const plan = await planned(workbook, calls({ Call_Day: "01632 960000", Call_Night: "+44 1632 960001" }));
    expect(plan.change.steps).toHaveLength(2);
    await apply(workbook, plan);
    expect(await valueOf(workbook, "Call_Day")).toBe("01632 960000");
    expect(await valueOf(workbook, "Call_Night")).toBe("+44 1632 960001");
    expect(await valueOf(workbook, "Call_Emergency")).toBe("999");
  });

  test("text that looks like a formula stays a text", async () => {
    const workbook = workbookWith(agreedPut);
    await apply(workbook, await planned(workbook, calls({ Call_Day: "=1+1" })));
    expect(await valueOf(workbook, "Call_Day")).toBe("=1+1");
  });

  test("an emptied number is said first", async () => {
    const { says, change } = await planned(workbookWith(agreedPut), calls({ Call_Night: " " }));
    expect(says).toEqual([
      'Nobody would find a number there any more: "Number out of hours".',
      'Number out of hours: emptied, in place of "01632 960015".',
    ]);
    expect(change.steps).toEqual([{ kind: "writeNamed", name: "Call_Night", value: null }]);
  });

  test("words where a number should be are asked about, but for the hospital, which has a name", async () => {
    const { says } = await planned(
      workbookWith(agreedPut),
      calls({ Call_Day: "ask the desk", Call_Hospital: "Another hospital" }),
    );
    expect(says[0]).toBe('There is no figure in it: "Number in hours". Is it a number to call?');
  });
});

test("a protected sheet and a name that is gone are refused with a sentence, and nothing is written", async () => {
  const book = bookWith(agreedPut);
  const locked = fakeWorkbook({
    ...book,
    sheets: book.sheets.map((sheet) => (sheet.name === "Clinic settings" ? { ...sheet, isProtected: true } : sheet)),
  });
  const plan = await planned(locked, calls({ Call_Day: "1" }));
  const receipt = await apply(locked, plan);
  expect(receipt).toMatchObject({ outcome: "refused", sentence: expect.stringContaining("protected") });
  expect(writeEntries.afterwards(plan, receipt).sentences.at(-1)).toBe("Nothing was written.");

  const without = fakeWorkbook({ ...book, names: book.names!.filter(({ name }) => name !== "Call_Day") });
  expect(await planFor(without, calls({ Call_Day: "1" }))).toMatchObject({
    outcome: "problem",
    sentence: expect.stringContaining("Call_Day"),
  });
});
