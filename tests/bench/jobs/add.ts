/** Columns added to somebody's own list, until the page is quiet. */
import type { Browser, Page } from "playwright-core";
import { addColumns as words } from "../../../taskpane/texts/add-columns";
import { serveDist } from "../../browser/serve";
import { makeList } from "../files/make";
import { inTurn, median } from "../measure";
import { inBrowser, openOurs } from "../page/in-browser";
import type { Waited } from "../page/watched";
import type { How, Job } from "../report/row";

const SIZES = [1_000, 10_000, 30_000];
const ADDED = ["Change due", "At the latest", "Change"];

async function prepare(page: Page): Promise<void> {
  for (const name of ADDED) await page.getByRole("checkbox", { name, exact: true }).check();
  await page.getByRole("button", { name: "Add 3 columns" }).waitFor();
}

async function visit(browser: Browser, url: string, rows: number): Promise<Waited> {
  const { watched, page } = await openOurs(browser, url, { name: "list.xlsx", bytes: makeList(rows) });
  await page.getByRole("checkbox", { name: ADDED[0]!, exact: true }).waitFor();
  await watched.waited(() => prepare(page));
  const added = await watched.waited(
    () => page.getByRole("button", { name: "Add 3 columns" }).click(),
    () => page.getByRole("heading", { name: words.result.title.done }).waitFor(),
  );
  await watched.close();
  return added;
}

const whole = (value: number): string => Math.round(value).toLocaleString("en-GB");

async function measure(how: How, browser: Browser, url: string): Promise<void> {
  const sizes = how.quick ? SIZES.slice(0, 2) : SIZES;
  const visits = await inTurn(
    Object.fromEntries(sizes.map((rows) => [rows, () => visit(browser, url, rows)])),
    how.quick ? 1 : 3,
    true,
  );
  const of = (rows: number, what: keyof Waited): number => median(visits[rows]!.map((one) => one[what]));
  for (const [i, rows] of sizes.entries()) {
    const smaller = sizes[i - 1];
    const ours = of(rows, "untilQuiet");
    const seen = of(rows, "untilSeen");
    how.row({
      what: "Three columns, from the press until quiet",
      size: `${rows.toLocaleString("en-GB")} rows`,
      unit: "ms",
      ours,
      // Beside the next smaller list, for as many times the rows.
      ...(smaller !== undefined && {
        peer: `${rows / smaller} times the time for ${smaller.toLocaleString("en-GB")} rows`,
        theirs: of(smaller, "untilQuiet") * (rows / smaller),
      }),
      limits: [
        ...(smaller === undefined ? [] : [{ what: "ratio", most: 1.2 }]),
        ...(rows === 10_000 ? [{ what: "ms until they are said to stand", most: 4000, is: seen }] : []),
      ],
      remark: `said to stand after ${whole(seen)} ms, longest block ${whole(of(rows, "longestBlock"))} ms, work ${whole(of(rows, "work"))} ms`,
    });
  }
}

export const add: Job = {
  name: "add",
  title: "Columns added to somebody's own list",
  about:
    "The list of the job files open in the built page; Change due, At the latest and Change ticked; from the press until " +
    "the pane says that they stand and the page, with its engine, is quiet. No other program is known that adds such " +
    "columns, so each list is compared with the next smaller one.",
  leavesOut: "choosing kinds and intervals; what the grid's engine would take by itself, which is not asked for them.",
  run: (how) => inBrowser([serveDist], (browser, url) => measure(how, browser, url!)),
};
