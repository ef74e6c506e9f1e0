/**
 * Three messy lists in the real page, written by other libraries: 60 rows with English headings, 40 with German ones in a
 * table, 2,000 rows. Mended by wording, saved, and read back by a reader that is not ours; what each cell means is known
 * from how the lists are made.
 */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { read, utils, write, type WorkSheet } from "@e965/xlsx";
import axe from "axe-core";
import ExcelJS from "exceljs";
import type { Browser, Page } from "playwright-core";
import { Temporal } from "temporal-polyfill";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { settingNamed } from "../../src/settings/index";
import { kindNamed } from "../../src/settings/kinds";
import { mend as words } from "../../taskpane/texts/mend";
import { pane as paneWords } from "../../taskpane/texts/pane";
import { addColumns } from "../../taskpane/ui/add-columns/job";
import { mend } from "../../taskpane/ui/mend/job";
import {
  cellsOf,
  english,
  ENGLISH_HEADERS,
  german,
  GERMAN_HEADERS,
  long,
  serialOf,
  type MessyRow,
} from "../examples/mending/messy-lists";
import { launchBrowser } from "./launch";
import { added, openFile, openWorkbookPage, save } from "./nurse/workbook-page";
import { serveDist, type Served } from "./serve";

/** Where the last change stands. */
const LAST = 3;
const MOST_PRESSES = 12;

let browser: Browser;
let served: Served;
let folder: string;

/** A list as SheetJS writes it: no table, days as numbers with a format. */
function bySheetJs(rows: readonly MessyRow[], headers: readonly string[]): Buffer {
  const sheet: WorkSheet = utils.aoa_to_sheet([["Invented"], [], [...headers], ...cellsOf(rows)]);
  rows.forEach(({ last }, i) => {
    if (typeof last.cell === "number") sheet[utils.encode_cell({ r: 3 + i, c: LAST })]!.z = "dd/mm/yyyy";
  });
  const book = utils.book_new();
  utils.book_append_sheet(book, sheet, "List");
  return write(book, { type: "buffer", bookType: "xlsx" }) as Buffer;
}

/** A table as ExcelJS writes it. */
async function byExcelJs(rows: readonly MessyRow[], headers: readonly string[]): Promise<Buffer> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Liste");
  sheet.getCell("A1").value = "Erfunden";
  sheet.addTable({
    name: "Sonden",
    ref: "A3",
    headerRow: true,
    columns: headers.map((name) => ({ name, filterButton: true })),
    rows: cellsOf(rows) as unknown[][],
  });
  return Buffer.from(await book.xlsx.writeBuffer());
}

beforeAll(async () => {
  [browser, served, folder] = await Promise.all([launchBrowser(), serveDist(), mkdtemp(join(tmpdir(), "mend-"))]);
  await writeFile(join(folder, "english.xlsx"), bySheetJs(english, ENGLISH_HEADERS));
  await writeFile(join(folder, "german.xlsx"), await byExcelJs(german, GERMAN_HEADERS));
  await writeFile(join(folder, "long.xlsx"), bySheetJs(long, ENGLISH_HEADERS));
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  if (folder) await rm(folder, { recursive: true });
});

/** What a person does in the pane, counted. */
class Hand {
  presses = 0;

  constructor(readonly page: Page) {}

  private get pane() {
    return this.page.locator(".pane");
  }

  async press(name: string | RegExp): Promise<void> {
    this.presses += 1;
    await this.pane.getByRole("button", { name, exact: true }).first().click();
  }

  async choose(group: RegExp, option: RegExp | string): Promise<void> {
    this.presses += 1;
    await this.pane.getByRole("group", { name: group }).getByRole("radio", { name: option }).check();
  }

  async tick(name: string): Promise<void> {
    this.presses += 1;
    await this.pane.getByRole("checkbox", { name, exact: true }).check();
  }

  async select(field: RegExp, option: RegExp): Promise<void> {
    this.presses += 1;
    const select = this.pane.getByRole("combobox", { name: field });
    const labels = await select.locator("option").allTextContents();
    await select.selectOption({ label: labels.find((label) => option.test(label))! });
  }

  done = (): Promise<void> => this.pane.getByRole("heading", { name: words.result.title.done }).waitFor();
}

/** The list in a new page, with the place for it in sight. */
async function open(file: string, viewport?: { width: number; height: number }): Promise<Hand> {
  const { page } = await openWorkbookPage(browser, served.url, viewport);
  await openFile(page, join(folder, file));
  await page.getByRole("heading", { level: 1, name: file }).waitFor();
  const hand = new Hand(page);
  await hand.press(paneWords.list);
  await hand.press(mend.label);
  await page.getByRole("heading", { name: words.dates.title }).waitFor();
  return hand;
}

/** A column of the saved file by its header in row 3. */
async function columnsOf(page: Page): Promise<(header: string) => unknown[]> {
  const { bytes } = await save(page);
  const book = read(bytes);
  const sheet = book.Sheets[book.SheetNames[0]!]!;
  const { e: end } = utils.decode_range(sheet["!ref"]!);
  const at = (r: number, c: number): unknown => {
    const cell = sheet[utils.encode_cell({ r, c })];
    return cell ? (cell.t === "e" ? cell.w : cell.v) : null;
  };
  return (header) => {
    const column = Array.from({ length: end.c + 1 }, (_, c) => at(2, c)).indexOf(header);
    expect(column, header).toBeGreaterThanOrEqual(0);
    return Array.from({ length: end.r - 2 }, (_, r) => at(3 + r, column));
  };
}

const whichFirst = /which comes first\?$/;
const whichCentury = /which century\?$/;

describe("60 rows with English headings", () => {
  test(`every row has a date or is named, in at most ${MOST_PRESSES} presses; the file holds what the texts mean`, async () => {
    const hand = await open("english.xlsx");
    const { page } = hand;
    await page
      .getByText(
        words.dates.proof({
          dayFirst: english.filter(({ last }) => /^(1[3-9]|2\d)\//.test(String(last.cell))).length,
          monthFirst: 0,
          points: 0,
        }),
      )
      .waitFor();
    await hand.choose(whichFirst, /^The day: /);
    await hand.choose(whichCentury, words.dates.centuries["2000s"]);
    const mended = english.filter(({ last }) => last.means !== null && typeof last.cell === "string").length;
    await hand.press(words.press(mended));
    await hand.done();
    await hand.press(words.result.again);
    await hand.select(/^BGT/, new RegExp(`^${kindNamed("balloon gastrostomy").label.replace(/[()]/g, "\\$&")}`));
    await hand.press(/^Mend \d+ cells$/);
    await hand.done();
    await hand.press(addColumns.label);
    await hand.tick("Change due");
    await hand.press(/^Add 1 column$/);
    await added(page);
    expect(hand.presses).toBeLessThanOrEqual(MOST_PRESSES);

    const column = await columnsOf(page);
    expect(column("Last change, mended")).toEqual(english.map(({ last }) => last.means ?? last.cell));
    expect(column("Last change")).toEqual(english.map(({ last }) => last.cell));
    const months = { balloon: settingNamed("Int_Balloon_G").default, gj: settingNamed("Int_GJ").default };
    const later = (serial: number, n: number): number =>
      serialOf(
        Temporal.PlainDate.from("1899-12-30").add({ days: serial }).add({ months: n }, { overflow: "constrain" }),
      );
    const due = ({ last, kind }: MessyRow): unknown => {
      if (last.cell === null) return "no date";
      const word = kind.trim().toLowerCase();
      if (word === "bumper adult") return "no set change";
      const n = word === "balloon" || word === "bgt" ? months.balloon : word === "gj" ? months.gj : null;
      if (n === null) return "kind not known";
      return last.means === null ? "#VALUE!" : later(last.means, n);
    };
    expect(column("Change due")).toEqual(english.map(due));
  });

  test("changed in place, what stood there is kept beside; taken back, all is as it was", async () => {
    const hand = await open("english.xlsx", { width: 1000, height: 800 });
    const { page } = hand;
    await hand.choose(whichFirst, /^The day: /);
    await hand.choose(new RegExp(`^${words.put.title}$`), words.put.inPlace);
    await hand.press(/^Mend \d+ cells$/);
    await hand.done();
    const column = await columnsOf(page);
    const isMended = ({ last }: MessyRow) =>
      last.means !== null && typeof last.cell === "string" && last.asks !== "century" && last.asks !== "both";
    expect(column("Last change")).toEqual(english.map((row) => (isMended(row) ? row.last.means : row.last.cell)));
    expect(column("Last change, as typed")).toEqual(english.map((row) => (isMended(row) ? row.last.cell : null)));
    await hand.press(paneWords.takeBack);
    await page.getByRole("heading", { name: paneWords.takenBack }).waitFor();
    const back = await columnsOf(page);
    expect(back("Last change")).toEqual(english.map(({ last }) => last.cell));
    expect(() => back("Last change, as typed")).toThrow();
  });

  test("a narrow pane shows everything, and a reader of screens finds nothing to complain of", async () => {
    const hand = await open("english.xlsx", { width: 340, height: 800 });
    const { page } = hand;
    const width = await page.locator(".pane").evaluate((pane) => pane.scrollWidth - pane.clientWidth);
    expect(width).toBeLessThanOrEqual(0);
    await page.evaluate(axe.source);
    const faults = await page.evaluate(async () => {
      const { axe: running } = globalThis as unknown as { axe: typeof axe };
      const { violations } = await running.run(document.querySelector(".pane") as HTMLElement);
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
    });
    expect(faults).toEqual([]);
  });
});

describe("40 rows with German headings in a table", () => {
  test("months in German, points between; sizes once by wording", async () => {
    const hand = await open("german.xlsx");
    const { page } = hand;
    await hand.choose(whichFirst, /^The day: /);
    await hand.choose(whichCentury, words.dates.centuries["2000s"]);
    await hand.press(/^Mend \d+ cells$/);
    await hand.done();
    await hand.press(words.result.again);
    await hand.select(new RegExp(`^${words.column.column}$`), /^C: /);
    for (const [text, said] of [
      ["14G", "14"],
      ["12/14", "12 Fr"],
    ] as const)
      await page
        .getByRole("textbox", { name: new RegExp(`^${words.sizes.write(text).replace(/[()/]/g, "\\$&")}`) })
        .fill(said);
    await hand.press(/^Mend \d+ cells$/);
    await hand.done();
    const column = await columnsOf(page);
    expect(column("Letzter Wechsel, mended")).toEqual(german.map(({ last }) => last.means ?? last.cell));
    expect(column("Größe, mended")).toEqual(german.map(({ size }) => size.means));
  });
});

describe("2,000 rows", () => {
  test("one answer for the whole column", async () => {
    const hand = await open("long.xlsx");
    await hand.choose(whichFirst, /^The day: /);
    await hand.press(/^Mend [\d,]+ cells$/);
    await hand.done();
    const column = await columnsOf(hand.page);
    expect(column("Last change, mended")).toEqual(long.map(({ last }) => last.means));
  });
});
