/** Each setting with what stands in its cell: what is missing, odd or contradictory is marked, and nothing else. */
import { describe, expect, test } from "vitest";
import { clinicSettings, type ClinicSettingName } from "../../../src/settings/index";
import { day } from "../../../src/worksheet/dates";
import type { Cell } from "../../../src/worksheet/cell";
import { doubtful, settingLines } from "../../../taskpane/actions/clinic-settings";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { agreedPut, bookWith, TODAY, workbookWith, type Put } from "./book";

const viewWith = async (put: Put) => settingLines(await workbookWith(put).overview(), TODAY);

const lineWith = async (name: ClinicSettingName, put: Put) =>
  (await viewWith({ ...agreedPut, ...put })).groups
    .flatMap(({ lines }) => lines)
    .find(({ setting }) => setting.name === name)!;

/** Settings for which any default would be taken for advice: settings.md, "no default". */
const WITHOUT_DEFAULT = ["Int_Bumper_Adult", "Int_PEGJ", "Lengths"];

test("a caseload as it begins: nothing is unusual; what only the clinic can say is not entered", async () => {
  const doubts = doubtful(await viewWith({}));
  expect(new Set(doubts.map(({ doubt }) => doubt!.mark))).toEqual(new Set(["not entered"]));
  const clinics = ["Clinic_Name", "Call_Day", "Call_Night", "Call_Hospital", "Call_Emergency"];
  expect(new Set(doubts.map(({ setting }) => setting.name))).toEqual(
    new Set([...clinics, "Agreed_By", "Agreed_On", "Agreed_Until", ...WITHOUT_DEFAULT]),
  );
});

test("every setting has its line once, with a cell to go to", async () => {
  const lines = (await viewWith(agreedPut)).groups.flatMap(({ lines }) => lines);
  expect(lines.map(({ setting }) => setting.name)).toEqual(clinicSettings.map(({ name }) => name));
  expect(lines.every(({ where }) => where !== null && "area" in where && where.area.rows === 1)).toBe(true);
});

describe("what stands there is shown with its unit", () => {
  test.each<[ClinicSettingName, Cell, string]>([
    ["Check_Days", 7, "7 days"],
    ["Loss_Small", 0.1 + 0.2, "0.3 mL"],
    ["Agreed_On", day("2026-04-03"), "3 Apr 2026"],
    ["Call_Day", "01632 960014", "01632 960014"],
    ["Call_Emergency", 999, "999"],
    ["Int_GJ", "three", "three"],
  ])("%s: %j is %s", async (name, value, shown) => {
    expect((await lineWith(name, { [name]: value })).now).toBe(shown);
  });
});

describe("not usual: who agreed?", () => {
  test.each<[string, ClinicSettingName, Put, RegExp]>([
    ["below what is allowed (Tract_Low 4-12)", "Tract_Low", { Tract_Low: 3 }, /from 4 to 12 weeks/],
    ["above what is allowed (Int_Balloon_G 1-12)", "Int_Balloon_G", { Int_Balloon_G: 13 }, /from 1 to 12 months/],
    ["not whole", "Check_Days", { Check_Days: 7.5 }, /whole number of days/],
    ["a text", "Int_GJ", { Int_GJ: "3 months" }, /not a number/],
    ["TRUE", "Loss_Twice", { Loss_Twice: true }, /not a number/],
    ["emptied", "Check_Days", { Check_Days: null }, /Nothing is entered; the default is 7 days/],
    ["blanks", "PH_Max", { PH_Max: "  " }, /the default is 5 pH/],
    ["due after the latest", "Int_Balloon_G", { Int_Balloon_G: 8 }, /\(8\) is above .*\(6\)/],
    ["the latest before due", "Lim_Balloon_G", { Lim_Balloon_G: 2 }, /\(3\) is above .*\(2\)/],
    ["mature before immature ends", "Tract_High", { Tract_Low: 12, Tract_High: 8 }, /\(12\) is above .*\(8\)/],
    ["agreed on a day ahead", "Agreed_On", { Agreed_On: TODAY + 1 }, /has not come yet/],
    ["review past", "Agreed_Until", { Agreed_Until: TODAY - 1 }, /is past/],
    ["a day that can be turned round", "Agreed_On", { Agreed_On: "3/4/26" }, /not a date/],
  ])("%s", async (_, name, put, sentence) => {
    const { doubt } = await lineWith(name, put);
    expect(doubt?.mark).toBe("not usual: who agreed?");
    expect(doubt?.sentence).toMatch(sentence);
  });

  test("the ends of what is allowed are usual", async () => {
    expect((await lineWith("Check_Days", { Check_Days: 3 })).doubt).toBeNull();
    expect((await lineWith("Check_Days", { Check_Days: 28 })).doubt).toBeNull();
    expect((await lineWith("Check_Days", { Check_Days: 29 })).doubt).not.toBeNull();
  });
});

describe("a workbook without settings", () => {
  const list = fakeWorkbook({ sheets: [{ name: "List", rows: [["ID"], ["D-001"]] }] });

  test("shows what is known of each, and marks nothing", async () => {
    const view = settingLines(await list.overview(), TODAY);
    expect(view.isThere).toBe(false);
    expect(view.groups.flatMap(({ lines }) => lines)).toHaveLength(clinicSettings.length);
    expect(doubtful(view)).toEqual([]);
  });

  test("and none at all while the workbook is not there", () => {
    expect(settingLines(null, TODAY).isThere).toBe(false);
  });
});

test("a setting whose name was taken out is said to have no cell", async () => {
  const book = bookWith(agreedPut);
  const workbook = fakeWorkbook({ ...book, names: book.names!.filter(({ name }) => name !== "PH_Max") });
  const line = doubtful(settingLines(await workbook.overview(), TODAY)).find(
    ({ setting }) => setting.name === "PH_Max",
  )!;
  expect(line).toMatchObject({ now: null, where: null, doubt: { sentence: "This workbook has no cell for it." } });
});
