/** The ready-made caseload at the size of a team, a hospital and a region: made, opened, and one cell typed into it. */
import type { Browser, Page } from "playwright-core";
import { sheetNames } from "../../../src/caseload/names";
import { serveDist } from "../../browser/serve";
import { caseloadFile, caseloadRows, inWords } from "../caseload/rows";
import { inTurn, median, milliseconds } from "../measure";
import { inBrowser, openOurs } from "../page/in-browser";
import { go, goSheet, openReadThisRow, shownIn, waitUntilShown, type WorkbookFile } from "../page/our-page";
import type { Waited } from "../page/watched";
import type { How, Job, Row } from "../report/row";

const SIZES = [50, 500, 5_000];

/** A day of the second device's change, typed where its first list row below the headers may stand. */
const TYPED = "2026-11-20";
const READ = "Change due";

interface Visit {
  readonly opened: Waited;
  readonly edited: Waited;
}

/** The place of a column by its header, as "Read this row" lists the cells: letters and headers. */
const cellUnder = (page: Page, header: string): Promise<string | undefined> =>
  page.evaluate((wanted) => {
    const line = [...document.querySelectorAll("tr")].find((one) => one.querySelector("th")?.textContent === wanted);
    return line === undefined
      ? undefined
      : [...line.children].map((cell) => cell.textContent ?? "").find((text) => /^[A-Z]{1,3}\d+$/.test(text));
  }, header);

const FIRST_ROWS = 12;

/** Goes down column A until a row shows its "Device in": the first device, under titles and headers. */
async function goFirstDevice(page: Page): Promise<void> {
  for (let row = 1; row <= FIRST_ROWS; row++) {
    await go(page, `A${row}`);
    await page.waitForFunction((wanted) => document.body.innerText.includes(`Row ${wanted} of`), row);
    if ((await cellUnder(page, "Device in")) !== undefined && /^M-/.test((await shownIn(page, "ID")) ?? "")) return;
  }
  throw new Error("no device found in the first rows");
}

async function visit(browser: Browser, url: string, file: WorkbookFile): Promise<Visit> {
  const { watched, page, opened } = await openOurs(browser, url, file);
  await openReadThisRow(page);
  await goSheet(page, sheetNames.tubes);
  await goFirstDevice(page);
  const [before, address] = [await shownIn(page, READ), await cellUnder(page, "Device in")];
  if (before === undefined || address === undefined) throw new Error("the row cannot be read");
  await go(page, address);
  await page.keyboard.type(TYPED);
  // Tab stays in the row, so that "Read this row" goes on showing it.
  const edited = await watched.waited(
    () => page.keyboard.press("Tab"),
    () => waitUntilShown(page, READ, "is not", before),
  );
  await watched.close();
  return { opened, edited };
}

/** Each size beside the next smaller one, for as many times the devices. */
function rowOf(what: string, size: string, ours: number, smaller?: { times: number; took: number }, remark = ""): Row {
  return {
    what,
    size,
    unit: "ms",
    ours,
    ...(smaller && { peer: `${smaller.times} times the next smaller one`, theirs: smaller.times * smaller.took }),
    remark,
  };
}

async function measure(how: How, browser: Browser, url: string): Promise<void> {
  const sizes = how.quick ? SIZES.slice(0, 2) : SIZES;
  const rows = new Map(sizes.map((devices) => [devices, caseloadRows(devices)]));
  const files = new Map<number, WorkbookFile>();
  const make = async (devices: number): Promise<void> => {
    files.set(devices, { name: `${devices}.xlsx`, bytes: await caseloadFile(rows.get(devices)!) });
  };
  const made = await inTurn(
    Object.fromEntries(sizes.map((devices) => [devices, () => milliseconds(() => make(devices))])),
    how.quick ? 1 : 3,
    true,
  );
  const visits = await inTurn(
    Object.fromEntries(sizes.map((devices) => [devices, () => visit(browser, url, files.get(devices)!)])),
    how.quick ? 1 : 3,
    true,
  );
  const opened = (devices: number, what: keyof Waited) => median(visits[devices]!.map((one) => one.opened[what]));
  const edited = (devices: number, what: keyof Waited) => median(visits[devices]!.map((one) => one.edited[what]));
  for (const [i, devices] of sizes.entries()) {
    const size = inWords(rows.get(devices)!);
    const before = sizes[i - 1];
    const smaller = (took: (devices: number) => number) =>
      before === undefined ? undefined : { times: devices / before, took: took(before) };
    const makes = (one: number) => median(made[one]!);
    const opens = (one: number) => opened(one, "untilQuiet");
    const edits = (one: number) => edited(one, "untilQuiet");
    const block = (longest: number) => `longest block ${Math.round(longest)} ms`;
    how.row(rowOf("Make the file, all columns worked out", size, makes(devices), smaller(makes)));
    how.row(
      rowOf(
        "Open it in the page until quiet",
        size,
        opens(devices),
        smaller(opens),
        block(opened(devices, "longestBlock")),
      ),
    );
    how.row(
      rowOf(
        "One date typed until its words stand and the page is quiet",
        size,
        edits(devices),
        smaller(edits),
        block(edited(devices, "longestBlock")),
      ),
    );
  }
}

export const caseload: Job = {
  name: "caseload",
  title: "The ready-made caseload",
  about:
    "Invented caseloads with 8 checks of every balloon and a change of every device, all optional columns: made as a " +
    "file without a page, opened in the built page, and one date typed into its first row until Change due shows " +
    "another day and the page is quiet. No other program is known that does the same, so each size is compared with the " +
    "next smaller one: a ratio of 1 is growth in proportion, below 1 is less.",
  leavesOut: "Excel, which works the formulas out itself; recording through the pane's forms.",
  run: (how) => inBrowser([serveDist], (browser, url) => measure(how, browser, url!)),
};
