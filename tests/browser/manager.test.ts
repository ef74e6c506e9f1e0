/**
 * A manager's question in the real page: who is held by a bumper, and whom does that choice leave out; to a ready-made
 * caseload of 1,000 rows, and to a clinic's own list of as many (5,000 in `npm run endurance`). The counts are known from
 * how the rows are made (caseload/many-rows.ts). How long it takes is for `npm run bench`.
 */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { utils, write } from "@e965/xlsx";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { roleNamed } from "../../src/columns/role";
import { sheetNames, tableNames } from "../../src/caseload/names";
import { recordCheck } from "../../taskpane/texts/record-check";
import { ownList as listWords } from "../../taskpane/texts/own-list";
import { shell as pageWords } from "../../taskpane/texts/shell";
import { showOnly as words } from "../../taskpane/texts/show-only";
import { recordCheck as recordCheckJob } from "../../taskpane/ui/record-check/job";
import { showOnly } from "../../taskpane/ui/show-only/job";
import { shortOrLong } from "../budget";
import {
  begin,
  findings,
  fromElsewhere,
  go,
  goSheet,
  inPane,
  isOpen,
  openDesk,
  shownRows,
  shows,
  type Desk,
} from "./caseload/desk";
import { confirm, fill, press, record, startJob } from "./caseload/forms";
import { manyRows, ownList } from "./caseload/many-rows";
import { shownIn } from "./caseload/saved";
import { launchBrowser } from "./launch";
import { openFile, save } from "./nurse/workbook-page";
import { goTo } from "./places";
import { serveDist, type Served } from "./serve";

const { tubes } = sheetNames;
const FIRST_ROW = 4;

/** A multiple of 50: in so many rows the making of the lists repeats itself. */
const ROWS = shortOrLong(1_000, 5_000);
/** So many of each 50 rows, as a number and as the page writes it. */
const some = (of50: number) => (ROWS / 50) * of50;
const many = (of50: number) => some(of50).toLocaleString("en-GB");

let browser: Browser;
let served: Served;
let folder: string;
let desk: Desk;
let page: Page;

beforeAll(async () => {
  [browser, served, folder] = await Promise.all([launchBrowser(), serveDist(), mkdtemp(join(tmpdir(), "manager-"))]);
  await writeFile(join(folder, "many.xlsx"), await manyRows(ROWS));
  const book = utils.book_new();
  utils.book_append_sheet(book, utils.aoa_to_sheet(ownList(ROWS)), "List");
  await writeFile(join(folder, "own.xlsx"), write(book, { type: "buffer", bookType: "xlsx" }) as Buffer);
  desk = await openDesk(browser, served.url, "empty");
  ({ page } = desk);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  if (folder) await rm(folder, { recursive: true });
});

/** Sheet rows of a list whose first row of data is known. */
const sheetRows = (rows: number, first: number, wanted: (i: number) => boolean): number[] =>
  Array.from({ length: rows }, (_, i) => i).flatMap((i) => (wanted(i) ? [i + first] : []));
const isBumper = (i: number): boolean => i % 10 === 6 || i % 10 === 7;
const hasNoDate = (i: number): boolean => [6, 17].includes(i % 25) || i % 50 === 20;

/** Of the five without a date in 50 rows the choice leaves two. */
const hidesThree = new RegExp(
  `^And ${many(5)} rows without a usable date .*; this choice hides ${many(3)} of them\\.$`,
);

const tick = (choice: string) => inPane(page).getByRole("checkbox", { name: choice, exact: true });

describe.sequential(`a ready-made caseload of ${many(50)} rows`, () => {
  test("opens, with its words", async () => {
    await openFile(page, join(folder, "many.xlsx"));
    await isOpen(page, "many.xlsx");
    await goSheet(page, tubes);
    /* 1 June 2026 and 3 months: 1 September was 86 days ago. */
    await shows(page, tubes, FIRST_ROW, { ID: "M-0001", "To do": "overdue 86 days, not booked" });
  });

  test("bumpers only: counts, rows in sight, and whoever has no date", async () => {
    await goTo(page, showOnly);
    const pane = inPane(page);
    await pane.locator("summary", { hasText: words.by.kind }).click();
    await tick(`bumper ${many(10)} rows`).waitFor();
    for (const choice of [`balloon ${many(30)} rows`, `loop ${many(5)} rows`, `(blank) ${many(5)} rows`])
      expect(await tick(choice).count(), choice).toBe(1);
    await pane
      .getByText(new RegExp(`^${many(5)} rows without a usable date in .Device in. \\(rows 10, 21, 24,`))
      .waitFor();

    await tick(`bumper ${many(10)} rows`).check();
    /* Of five without a date, two are bumpers. */
    await pane.getByText(hidesThree).waitFor();
    await pane.getByText(new RegExp(`^Shows ${many(10)} of ${many(50)} rows and hides ${many(40)}\\.`)).waitFor();
    await press(pane, words.show(some(10)));
    await pane.getByText(new RegExp(`^${many(10)} of ${many(50)} rows are shown now`)).waitFor();
    expect(await shownRows(page, FIRST_ROW - 1, 6)).toEqual(sheetRows(60, FIRST_ROW, isBumper).slice(0, 6));
    expect(await findings(page)).toEqual([]);
  });

  test("the saved file has the filter on, and only the others hidden", async () => {
    const { bytes } = await save(page);
    const { hidden, filters } = shownIn(bytes, tubes, tableNames.tubes);
    expect(hidden).toEqual(sheetRows(ROWS, FIRST_ROW, (i) => !isBumper(i)));
    expect(filters.map(({ header }) => header)).toEqual(["Held by"]);
    expect(new Set(filters[0]!.keeps.map((word) => word.trim()))).toEqual(new Set(["bumper"]));
  });

  test("rows without a date by one press, all rows by another", async () => {
    const pane = inPane(page);
    await press(pane, words.showThese);
    await pane.getByText(new RegExp(`^${many(5)} rows without a usable date are shown now`)).waitFor();
    expect(await shownRows(page, FIRST_ROW - 1, 5)).toEqual(sheetRows(60, FIRST_ROW, hasNoDate).slice(0, 5));
    await press(pane, words.showAll);
    await pane.getByText(new RegExp(`^All ${many(50)} rows are shown again`)).waitFor();
    expect(await shownRows(page, FIRST_ROW - 1, 4)).toEqual([4, 5, 6, 7]);
  });

  test("one edit changes its word at once", async () => {
    await goSheet(page, tubes);
    await begin(page, `H${FIRST_ROW}`, "2026-11-30");
    await page.keyboard.press("Tab");
    /* Booked, a day before the limit of 1 December; and nobody has written down how the tube sits. */
    await page.locator(".selected-row").getByText("measure again", { exact: true }).waitFor();
    await shows(page, tubes, FIRST_ROW, { "To do": "measure again", "Booked for": "30 Nov 2026" });
  });

  test("a check is recorded among them", async () => {
    const part = await startJob(page, recordCheckJob);
    await confirm(part, "M-0001");
    await fill(part, { [recordCheck.out]: "3", [recordCheck.putIn]: "5", [recordCheck.by]: "nurse" });
    await go(page, `A${FIRST_ROW}`);
    expect(await record(part, recordCheck.record)).toEqual([]);
    /* 2 of 5 mL are missing: more than 0.5, less than half. */
    await page.locator(".selected-row").getByText("balloon: low", { exact: true }).waitFor();
  });
});

describe.sequential(`a clinic's own list of ${many(50)} rows, under headings of its own`, () => {
  test("is shown by columns that somebody says, and saved with its filter", async () => {
    await openFile(page, join(folder, "own.xlsx"));
    await page.getByRole("button", { name: pageWords.leave.discard, exact: true }).click();
    await isOpen(page, "own.xlsx");
    await goTo(page, showOnly);
    const pane = inPane(page);
    const columns = pane.locator("details", { has: page.getByText(listWords.which, { exact: true }) });
    await columns.waitFor();
    if (!(await columns.evaluate((details: HTMLDetailsElement) => details.open)))
      await columns.locator("summary").click();
    await columns
      .getByLabel(words.by.kind, { exact: true })
      .selectOption({ label: listWords.column("B", "What keeps it in") });
    await columns
      .getByLabel(roleNamed("last").label, { exact: true })
      .selectOption({ label: listWords.column("C", "Since") });
    await tick(`bumper ${many(10)} rows`).check();
    /* Of five, two are blank, two a text, one lies ahead; two are bumpers. */
    await pane.getByText(hidesThree).waitFor();
    await press(pane, words.show(some(10)));
    await pane.getByText(new RegExp(`^${many(10)} of ${many(50)} rows are shown now`)).waitFor();
    expect(await shownRows(page, 1, 4)).toEqual([8, 9, 18, 19]);
    expect(await findings(page)).toEqual([]);
    const { hidden, filters } = shownIn((await save(page)).bytes, "List", null);
    expect(hidden).toEqual(sheetRows(ROWS, 2, (i) => !isBumper(i)));
    expect(filters.map(({ column }) => column)).toEqual([1]);
    expect(desk.faults).toEqual([]);
    expect(fromElsewhere(desk.requests, served.url)).toEqual([]);
  });
});
