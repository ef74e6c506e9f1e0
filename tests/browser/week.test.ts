/**
 * A nurse's week on the invented caseload, in the real page, from the press that opens it to the file that is opened
 * again. One page goes through the whole week, day by day; the words that are expected in the sheets are worked out by
 * hand from the settings' defaults (the numbers stand beside each), never taken from our own functions.
 *
 * The page's today is 26 November 2026. D-041: a balloon G of 26 October 2026, last filled with 5 mL on 25 November.
 * D-038: a balloon G of 21 July 2026, not checked since.
 */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { INVENTED_ON, sheetNames, tableNames } from "../../src/caseload/names";
import { columnLetters } from "../../src/columns/formula";
import { clinicSettingNamed, type ClinicSettingName } from "../../src/settings/index";
import { clinicSettings as settingWords } from "../../taskpane/texts/clinic-settings";
import { forms as words } from "../../taskpane/texts/forms";
import { recordCheck } from "../../taskpane/texts/record-check";
import { recordChange } from "../../taskpane/texts/record-change";
import { addPerson } from "../../taskpane/texts/add-person";
import { tubeOut } from "../../taskpane/texts/tube-out";
import { pane as paneWords } from "../../taskpane/texts/pane";
import { shell } from "../../taskpane/texts/shell";
import { setUp as setUpWords } from "../../taskpane/texts/set-up";
import { addPerson as addPersonJob } from "../../taskpane/ui/add-person/job";
import { clinicSettings } from "../../taskpane/ui/clinic-settings/job";
import { recordChange as recordChangeJob } from "../../taskpane/ui/record-change/job";
import { recordCheck as recordCheckJob } from "../../taskpane/ui/record-check/job";
import { setUp } from "../../taskpane/ui/set-up/job";
import {
  deleteRow,
  findings,
  fromElsewhere,
  go,
  goSheet,
  inPane,
  isOpen,
  openDesk,
  shows,
  sortDescending,
  type,
  typeWord,
  type Desk,
} from "./caseload/desk";
import { confirm, fill, press, record, startCall, startJob } from "./caseload/forms";
import { builtAs, rowOfInvented, savedCaseload, type SavedCaseload } from "./caseload/saved";
import { launchBrowser } from "./launch";
import { openFile, save } from "./nurse/workbook-page";
import { goTo } from "./places";
import { serveDist, type Served } from "./serve";

const FILE = "Invented caseload.xlsx";
const { tubes, checks, changes } = sheetNames;
const [D041, D038] = [rowOfInvented("D-041", 46_352), rowOfInvented("D-038", 46_352)];
/** The list's last column, hidden ones counted. */
const right = (): string =>
  columnLetters(builtAs().tables.find(({ name }) => name === tableNames.tubes)!.headers.length - 1);
/** What stands above a list: its name, and beside it what must be known of every row. */
async function lineAbove(sheet: string): Promise<string> {
  await go(page, "A1");
  const row = page.getByRole("table", { name: shell.rowTitle(1, sheet), exact: true });
  await row.waitFor();
  return row.innerText();
}

const label = (name: ClinicSettingName): string => clinicSettingNamed(name).label;

let browser: Browser;
let served: Served;
let folder: string;
let desk: Desk;
let page: Page;

beforeAll(async () => {
  [browser, served, folder] = await Promise.all([launchBrowser(), serveDist(), mkdtemp(join(tmpdir(), "week-"))]);
  desk = await openDesk(browser, served.url);
  ({ page } = desk);
  /* Beside the row that is read out, a word's list comes up only where its column is in sight. */
  await page.setViewportSize({ width: 1440, height: 1200 });
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  if (folder) await rm(folder, { recursive: true });
});

describe.sequential("a week", () => {
  test("the press opens the invented caseload, and the list says what is to be done", async () => {
    await isOpen(page, FILE);
    await goSheet(page, tubes);
    /* 26 October and 3 months, 6 months. */
    await shows(page, tubes, D041, {
      ID: "D-041",
      "To do": "nothing due",
      "Change due": "26 Jan 2027",
      "At the latest": "26 Apr 2027",
      "Days left": "61",
      Change: "later",
      Tract: "mature by weeks",
      Balloon: "as filled",
    });
    /* 21 July and 3 months; 21 October was 36 days ago. */
    await shows(page, tubes, D038, { ID: "D-038", "To do": "overdue 36 days, not booked", Balloon: "check late" });
    await expect
      .poll(() => lineAbove(tubes))
      .toContain("Invented people. Settings not agreed. No number to call is entered.");
    const part = await startJob(page, recordCheckJob);
    await confirm(part, "D-041");
    await part.getByText(/^Nobody has agreed these settings yet/).waitFor();
    await press(part, words.form.another);
    expect(await findings(page)).toEqual([]);
  });

  test("who agreed the settings, and whom to call: sheets and pane say so", async () => {
    await goTo(page, clinicSettings);
    const pane = inPane(page);
    await fill(pane, { [label("Agreed_By")]: "the invented team", [label("Agreed_On")]: "2026-11-20" });
    await press(pane, settingWords.forms.agreement.write);
    await pane.getByRole("heading", { name: settingWords.result.title.done }).waitFor();
    await press(pane, settingWords.result.again);
    await pane
      .getByText("Settings agreed by the invented team on 20 Nov 2026, review by 20 Nov 2027.")
      .first()
      .waitFor();
    await fill(pane, { [label("Call_Day")]: "01632 960001", [label("Call_Night")]: "01632 960002" });
    await press(pane, settingWords.forms.calls.write);
    await pane.getByRole("heading", { name: settingWords.result.title.done }).waitFor();
    expect(await findings(page)).toEqual([]);
    await press(pane, settingWords.result.again);
    /* Nothing else is due for this person, and nothing is missing in the row. */
    await shows(page, tubes, D041, { "To do": "nothing due" });
    for (const sheet of [tubes, checks, changes]) {
      await goSheet(page, sheet);
      await expect.poll(() => lineAbove(sheet)).toContain("Settings agreed by the invented team on 20 Nov 2026.");
    }
    await goSheet(page, tubes);
  });

  test("a new person joins the list, with an identifier that stays as it is typed", async () => {
    const part = await startJob(page, addPersonJob);
    await fill(part, {
      [addPerson.id]: "03-04",
      [addPerson.status]: "active",
      [addPerson.born]: "1950-05-01",
      [addPerson.access]: "G",
      [addPerson.made]: "2024-01-10",
      [addPerson.slow]: "no",
      [words.device.heldBy]: "bumper",
      [words.device.knownFrom]: "record",
      [words.device.shape]: "long",
      [`${words.device.size}, ${words.units.Fr}`]: "20",
      [addPerson.deviceIn]: "2026-03-02",
      [addPerson.changedBy]: "endoscopy",
      [addPerson.spare]: "none",
    });
    expect(await record(part, addPerson.record)).toEqual([]);
    /* An adult's bumper has no routine change; 24 months after 2 March 2026; 20 Fr are 20/3 mm; no play, no mark. */
    await shows(page, tubes, 54, {
      ID: "03-04",
      "To do": "measure again",
      "Change due": "no set change",
      "At the latest": "2 Mar 2028",
      Tract: "mature by weeks",
      "Size mm": "6.7",
      "First tube": "no",
      Age: "76",
    });
    await press(part, words.form.another);
    await fill(part, {
      [addPerson.id]: "1E5",
      [addPerson.status]: "active",
      [addPerson.born]: "2016-03-01",
      [addPerson.access]: "G",
      [addPerson.made]: "2025-01-15",
      [addPerson.slow]: "no",
      [words.device.heldBy]: "balloon",
      [words.device.knownFrom]: "label",
      [words.device.shape]: "low-profile",
      [`${words.device.size}, ${words.units.Fr}`]: "14",
      [words.device.length]: "2.3",
      [words.device.fill]: "5",
      [words.device.most]: "5",
      [addPerson.deviceIn]: "2026-11-01",
      [addPerson.changedBy]: "carer",
      [addPerson.spare]: "same size",
    });
    expect(await record(part, addPerson.record)).toEqual([]);
    /* 1 November and 3 months; a check was due 7 days after the change, and is late after 3 more. */
    await shows(page, tubes, 55, {
      ID: "1E5",
      "To do": "check late",
      "Change due": "1 Feb 2027",
      "Days left": "67",
      Balloon: "check late",
      "Check due": "8 Nov 2026",
    });
  });

  describe("a tube is out", () => {
    /* Typed from the shared texts, not imported: what may be said on the telephone is held here once more. */
    const OPENING = "Stop feed, water and medicines. Note the time. Cover the opening with a clean dry dressing.";
    const PLAN = "Only a written plan for this person, and training in it, may say otherwise.";
    const SPARE =
      "Urgent. The opening can close within hours, however old it is. If you are trained and this person's own plan says so, put in the spare, gently. Stop at pain, blood or resistance. Nothing down the tube until its position is confirmed as in the plan. Not trained, no plan, no spare, it will not slide in, the balloon came out full, or any doubt: put nothing in and go to hospital now, to be there within 2 hours.";
    const CLOSING =
      "Take along the tube, the spare and this page. Pain, bleeding, swollen belly, vomiting, fever, or hard to wake: call the emergency number now. Say if insulin, seizure medicine or feed cannot be missed.";

    test.each([
      { id: "D-041", born: "20 Oct 2020", ends: words.ends.G, middle: SPARE, plan: false },
      {
        id: "D-040",
        born: "20 Oct 2022",
        ends: words.ends.GJ,
        middle:
          "Emergency. Part of this tube lies in the bowel and can only go back with imaging. Go to hospital now. Do not put the spare in.",
        plan: true,
      },
      {
        id: "03-04",
        born: "1 May 1950",
        ends: words.ends.G,
        middle:
          "Urgent. A tube held by a bumper cannot go back in, and the opening may be torn. Go to hospital now. Put nothing in.",
        plan: true,
      },
      {
        id: "D-010",
        born: "26 Nov 1947",
        ends: words.ends.G,
        middle:
          "Emergency. It is not recorded when the opening was made. Treat it as new: go to hospital now. Put nothing in.",
        plan: true,
      },
    ])("$id", async ({ id, born, ends, middle, plan }) => {
      const part = await startCall(page);
      const another = part.getByRole("button", { name: tubeOut.another });
      if (await another.isVisible()) await another.click();
      const readBack = await confirm(part, id);
      expect(readBack).toContain(born);
      expect(readBack).toContain(ends);
      const orders = part.locator(".alarm-frame");
      await orders.waitFor();
      const plain = (text: string) => text.replaceAll("’", "'").replace(/\s+/g, " ");
      expect(plain(await orders.innerText()).startsWith(`${OPENING} ${middle}`)).toBe(true);
      const said = plain(await part.innerText());
      expect(said).toContain(CLOSING);
      expect(said.includes(PLAN)).toBe(plan);
      expect(said.includes("put in the spare")).toBe(!plan);
      expect(await part.innerText()).toContain("01632 960001");
      expect(await findings(page)).toEqual([]);
    });
  });

  test("a low check goes into both sheets, and can be taken back", async () => {
    const enter = async () => {
      const part = await startJob(page, recordCheckJob);
      await confirm(part, "D-041");
      await fill(part, {
        [recordCheck.out]: "3.5",
        [recordCheck.putIn]: "5",
        [recordCheck.looked]: "clear",
        [recordCheck.water]: "fresh",
        [recordCheck.by]: "carer",
        [recordCheck.howKnown]: "phone",
      });
      await part.getByText(recordCheck.word("low"), { exact: true }).waitFor();
      expect(await record(part, recordCheck.record)).toEqual([]);
      return part;
    };
    const part = await enter();
    /* 5 mL were put in yesterday: 1.5 mL are missing, more than 0.5 and less than half. Checked again after a day. */
    const low = { Balloon: "low", "To do": "balloon: low", "Last check": "26 Nov 2026", "Check due": "27 Nov 2026" };
    const before = {
      Balloon: "as filled",
      "To do": "nothing due",
      "Last check": "25 Nov 2026",
      "Check due": "2 Dec 2026",
    };
    await shows(page, tubes, D041, low);
    await goSheet(page, checks);
    await shows(page, checks, 113, {
      ID: "D-041",
      "Checked on": "26 Nov 2026",
      "Out mL": "3.5",
      "Put in mL": "5.0",
      "Device in": "26 Oct 2026",
      "Days since fill": "1",
      "Expected mL": "5.0",
      "Loss mL": "1.5",
      "Loss mL a week": "blank",
      State: "low",
      "Low in a row": "1",
    });
    await goSheet(page, tubes);
    await press(part, paneWords.takeBack);
    await part.getByRole("heading", { name: paneWords.takenBack }).waitFor();
    await shows(page, tubes, D041, before);
    await press(part, words.form.another);
    await enter();
    await shows(page, tubes, D041, low);
  });

  test("a change goes into both sheets", async () => {
    const part = await startJob(page, recordChangeJob);
    await confirm(part, "D-038");
    await fill(part, {
      [recordChange.reason]: "planned",
      [recordChange.where]: "home",
      [recordChange.unplanned]: "no",
      [recordChange.changedBy]: "nurse at home",
      [words.device.knownFrom]: "label",
      [recordChange.lot]: "1E7",
      [recordChange.confirmedBy]: "pH",
      [recordChange.pH]: "4",
    });
    expect(await record(part, recordChange.record)).toEqual([]);
    /* Today and 3 months, 6 months; the first check 7 days later. Whether a spare is at home was never known. */
    await shows(page, tubes, D038, {
      ID: "D-038",
      "To do": "spare not known",
      "Device in": "26 Nov 2026",
      Lot: "1E7",
      "Change due": "26 Feb 2027",
      "At the latest": "26 May 2027",
      "Days left": "92",
      Balloon: "no check yet",
      "Check due": "3 Dec 2026",
    });
    await goSheet(page, changes);
    await shows(page, changes, 170, {
      ID: "D-038",
      In: "21 Jul 2026",
      Out: "26 Nov 2026",
      Reason: "planned",
      "Days in place": "128",
      Failed: "no",
      Unplanned: "no",
      "New lot": "1E7",
    });
    await goSheet(page, tubes);
  });

  test("a row typed right below the list belongs to it", async () => {
    await type(page, "A56", "H-1");
    await typeWord(page, "C56", "active");
    await typeWord(page, "P56", "G");
    await type(page, "Q56", "2025-01-15");
    await typeWord(page, "T56", "bumper");
    /* Whether it heals slowly was not entered, so that its weeks are not enough. */
    await shows(page, tubes, 56, { ID: "H-1", "To do": "no date", "Change due": "no date", Tract: "uncertain" });
  });

  test("rows are sorted with their words, and one is deleted", async () => {
    await sortDescending(page, `A4:${right()}56`);
    await shows(page, tubes, 4, { ID: "H-1", "To do": "no date" });
    await shows(page, tubes, 13, { ID: "D-041", "To do": "balloon: low", Balloon: "low" });
    await shows(page, tubes, 5, { ID: "D-047" });
    await deleteRow(page, 5);
    await shows(page, tubes, 5, { ID: "D-046" });
    await shows(page, tubes, 12, { ID: "D-041", "To do": "balloon: low", Balloon: "low", "Check due": "27 Nov 2026" });
  });

  test("the invented people go, and the clinic's own stay", async () => {
    await goTo(page, setUp);
    const part = inPane(page).locator(".part:not([hidden])");
    await press(part, setUpWords.remove.look);
    await part.getByLabel(setUpWords.remove.withChanged(3), { exact: true }).check();
    expect(await findings(page)).toEqual([]);
    /* 50 tubes but the one deleted; 109 checks and one more; 166 changes and one more. */
    await press(part, setUpWords.remove.press(49 + 110 + 167));
    await part.getByRole("heading", { name: setUpWords.remove.finished.done }).waitFor();
    await shows(page, tubes, 4, { ID: "H-1", "To do": "no date" });
    await shows(page, tubes, 5, { ID: "1E5", "To do": "check late", "Change due": "1 Feb 2027" });
    await shows(page, tubes, 6, { ID: "03-04", "To do": "measure again", "At the latest": "2 Mar 2028" });
    await expect.poll(() => lineAbove(tubes)).not.toContain("Invented");
    expect(await findings(page)).toEqual([]);
  });

  test("the saved file holds it all, for programs that did not write it, and opens again", async () => {
    const { bytes, name } = await save(page);
    expect(name).toBe(FILE);
    theFileIsRight(await savedCaseload(bytes));
    const path = join(folder, "My caseload.xlsx");
    await writeFile(path, bytes);
    await openFile(page, path);
    await isOpen(page, "My caseload.xlsx");
    await goSheet(page, tubes);
    await shows(page, tubes, 4, { ID: "H-1", "To do": "no date" });
    await shows(page, tubes, 5, { ID: "1E5", "To do": "check late", "Change due": "1 Feb 2027" });
    await shows(page, tubes, 6, { ID: "03-04", "To do": "measure again", "At the latest": "2 Mar 2028" });
    expect(desk.faults).toEqual([]);
    expect(fromElsewhere(desk.requests, served.url)).toEqual([]);
  });
});

/** Days as Excel counts them. */
const serial = (iso: string): number => (Date.parse(`${iso}T00:00Z`) - Date.UTC(1899, 11, 30)) / 86_400_000;

function theFileIsRight({ tables, names, named, rules }: SavedCaseload): void {
  const built = builtAs();
  for (const name of built.names) expect(names).toContain(name);
  for (const { name, sheet, headers, computed, rules: rulesBuilt } of built.tables) {
    const table = tables.get(name)!;
    expect(table.headers, name).toEqual(headers);
    expect(rules[sheet], sheet).toEqual(rulesBuilt);
    const rows = Array.from({ length: table.rows }, (_, row) => row);
    const bare = rows.flatMap((row) =>
      computed.filter((header) => !table.cell(row, header)?.f).map((header) => `${name}, row ${row}: ${header}`),
    );
    expect(bare).toEqual([]);
  }
  /* Our own three rows; a table keeps a blank row to type in. */
  const list = tables.get(tableNames.tubes)!;
  expect(list.area).toBe(`A3:${right()}6`);
  expect([tableNames.checks, tableNames.changes].map((name) => tables.get(name)!.rows)).toEqual([1, 1]);
  for (const name of [tableNames.checks, tableNames.changes]) expect(tables.get(name)!.cell(0, "ID")?.v ?? "").toBe("");

  const typed = (row: number, header: string) => {
    const { t, v, z } = list.cell(row, header) ?? {};
    return [t, v, z];
  };
  expect(typed(0, "ID")).toEqual(["s", "H-1", "@"]);
  expect(typed(1, "ID")).toEqual(["s", "1E5", "@"]);
  expect(typed(2, "ID")).toEqual(["s", "03-04", "@"]);
  expect(typed(0, "Stoma made")).toEqual(["n", serial("2025-01-15"), "d mmm yyyy"]);
  expect(typed(1, "Device in")).toEqual(["n", serial("2026-11-01"), "d mmm yyyy"]);
  expect(typed(1, "Born")).toEqual(["n", serial("2016-03-01"), "d mmm yyyy"]);
  expect(typed(1, "Size Fr").slice(0, 2)).toEqual(["n", 14]);
  expect(typed(1, "Length cm").slice(0, 2)).toEqual(["n", 2.3]);
  expect(typed(2, "Held by").slice(0, 2)).toEqual(["s", "bumper"]);
  expect(list.cell(1, "Change due")?.v).toBe(serial("2027-02-01"));
  expect(list.cell(1, "To do")?.v).toBe("check late");
  expect(named("Agreed_By")?.v).toBe("the invented team");
  expect(named("Agreed_On")?.v).toBe(serial("2026-11-20"));
  /* A number to call keeps its first nought. */
  expect(named("Call_Day")).toMatchObject({ t: "s", v: "01632 960001" });
  expect(named(INVENTED_ON)?.v ?? "").toBe("");
}
