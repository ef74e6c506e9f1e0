/** One cell typed that a long column of formulas reads: ours beside the grid's own. */
import { oneSheet } from "../../workbooks/package/build";
import type { Browser } from "playwright-core";
import { serveDist } from "../../browser/serve";
import { inTurn, median } from "../measure";
import { inBrowser, openOurs } from "../page/in-browser";
import { go, openReadThisRow, waitUntilShown } from "../page/our-page";
import type { Waited } from "../page/watched";
import type { How, Job } from "../report/row";

const SIZES = [1_000, 5_000, 10_000];

/** A third of a French size is its millimetres, so both give the same. */
const FORMULAS = {
  ours: (ref: string) => `_xldudf_TUBE_FRTOMM(${ref}+$D$2)`,
  builtIn: (ref: string) => `(${ref}+$D$2)/3`,
};
type Kind = keyof typeof FORMULAS;

const text = (ref: string, words: string) => `<c r="${ref}" t="inlineStr"><is><t>${words}</t></is></c>`;

/** Sizes in A, formulas over them and D2 in B, as many rows as wanted below a row of headers. */
function sheet(rows: number, kind: Kind): Uint8Array {
  const lines = Array.from({ length: rows }, (_, i) => {
    const row = i + 2;
    const size = 12 + 3 * (i % 5);
    const first = row === 2 ? `<c r="D2"><v>0</v></c>` : "";
    return `<row r="${row}"><c r="A${row}"><v>${size}</v></c><c r="B${row}"><f>${FORMULAS[kind](`A${row}`)}</f><v>${size / 3}</v></c>${first}</row>`;
  });
  const header = `<row r="1">${text("A1", "Size")}${text("B1", "Result")}${text("D1", "More")}</row>`;
  return oneSheet(header + lines.join(""));
}

async function visit(browser: Browser, url: string, bytes: Uint8Array): Promise<Waited> {
  const { watched, page } = await openOurs(browser, url, { name: "formulas.xlsx", bytes });
  await openReadThisRow(page);
  await go(page, "D2");
  await waitUntilShown(page, "Result", "is", "4");
  await page.keyboard.type("3");
  // (12 + 3) / 3
  const edited = await watched.waited(
    () => page.keyboard.press("Tab"),
    () => waitUntilShown(page, "Result", "is", "5"),
  );
  await watched.close();
  return edited;
}

async function measure(how: How, browser: Browser, url: string): Promise<void> {
  for (const rows of how.quick ? SIZES.slice(0, 1) : SIZES) {
    const [ours, builtIn] = [sheet(rows, "ours"), sheet(rows, "builtIn")];
    const visits = await inTurn(
      { ours: () => visit(browser, url, ours), builtIn: () => visit(browser, url, builtIn) },
      how.quick ? 1 : 3,
      true,
    );
    for (const [what, which] of [
      ["One edit until all results stand and the page is quiet", "untilQuiet"],
      ["The same: work of the page", "work"],
    ] as const)
      how.row({
        what,
        size: `${rows.toLocaleString("en-GB")} formulas`,
        unit: "ms",
        ours: median(visits.ours.map((one) => one[which])),
        peer: "the same sheet with built-ins",
        theirs: median(visits.builtIn.map((one) => one[which])),
        limits: [{ what: "ratio", most: 1.1 }],
      });
  }
}

export const edit: Job = {
  name: "edit",
  title: "One edit that a long column of our formulas reads",
  about:
    "The built page with a column of formulas that all read one cell: TUBE.FRTOMM, or the same sum with built-ins. One number " +
    "typed into that cell, until the first result is shown and the page is quiet.",
  leavesOut: "Excel's own recalculation (the job runtime); the grid without our page around it.",
  run: (how) => inBrowser([serveDist], (browser, url) => measure(how, browser, url!)),
};
