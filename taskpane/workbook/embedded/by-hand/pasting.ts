/**
 * What comes from the clipboard. The grid reads day and month of pasted texts as silently as of typed ones, so such texts
 * are put year first before it sees them, or the paste is refused.
 */
import { ISheetClipboardService } from "@univerjs/sheets-ui";
import type { Engine } from "../engine";
import { notPasted, type Entered } from "./entered-formula";
import type { Asks, DayFirst } from "../interface";
import { typedDate, yearFirst } from "./typed-date";

/** The grid's own copies carry this mark; those that it still knows are pasted from its own cells, which hold true dates. */
const OWN_COPY = /data-copy-id="([^\s"]+)"/;

export type ReadFormula = (formula: string) => Entered;

function readText(text: string, dayFirst: DayFirst, readFormula: ReadFormula): Entered {
  if (text.startsWith("=")) return readFormula(text);
  const date = typedDate(text, dayFirst);
  if (date.kind === "other") return { text };
  if (date.kind === "refused") return { refused: date.sentence, ...(date.asks && { asks: date.asks }) };
  return { text: yearFirst(date.serial) };
}

/** Cells of plain text: tabs between columns, line ends between rows. */
export function readPlain(plain: string, dayFirst: DayFirst, readFormula: ReadFormula): Entered {
  let refused: Entered | undefined;
  const text = plain.replace(/[^\t\r\n]+/g, (cell) => {
    const read = readText(cell, dayFirst, readFormula);
    if ("text" in read) return read.text;
    refused ??= read;
    return cell;
  });
  return refused ?? { text };
}

/** Stands in a copied page, and in no cell. */
const UNSEEN = "style, script, title, head";

/** Text beside the tables, which the grid would put into cells unread. */
function isTextBeside(page: Document): boolean {
  const rest = page.body.cloneNode(true) as HTMLElement;
  rest.querySelectorAll(`table, ${UNSEEN}`).forEach((one) => one.remove());
  return (rest.textContent ?? "").trim() !== "";
}

/** Undefined where not every text in it stands in a cell of a table. */
function readTables(html: string, dayFirst: DayFirst, readFormula: ReadFormula): Entered | undefined {
  const page = new DOMParser().parseFromString(html, "text/html");
  if (!page.querySelector("table") || isTextBeside(page)) return undefined;
  let isTouched = false;
  for (const cell of page.querySelectorAll("td, th")) {
    const text = cell.textContent ?? "";
    const read = readText(text, dayFirst, readFormula);
    if ("refused" in read) return read;
    if (read.text === text) continue;
    cell.textContent = read.text;
    isTouched = true;
  }
  return { text: isTouched ? page.documentElement.outerHTML : html };
}

/** As a browser shows it, a line for each paragraph. */
function textIn(html: string): string {
  const page = new DOMParser().parseFromString(html, "text/html");
  page.querySelectorAll(UNSEEN).forEach((one) => one.remove());
  page.querySelectorAll("br").forEach((one) => one.replaceWith("\n"));
  page.querySelectorAll("td, th").forEach((one) => one.nextElementSibling && one.append("\t"));
  page.querySelectorAll("p, div, li, tr").forEach((one) => one.append("\n"));
  return (page.body.textContent ?? "").trim();
}

export interface PastingRules {
  readonly dayFirst: () => DayFirst;
  readonly readFormula: ReadFormula;
  readonly say: (sentence: string, asks?: Asks) => void;
}

export function watchPasting(engine: Engine, { dayFirst, readFormula, say }: PastingRules): void {
  const clipboard = engine.injector.get(ISheetClipboardService);
  const paste = clipboard.legacyPaste.bind(clipboard);
  /* Judged is what the grid will put into cells, and nothing beside it: of its own copy the cells, of tables their texts. */
  clipboard.legacyPaste = async (html, text, files) => {
    const own = html ? OWN_COPY.exec(html)?.[1] : undefined;
    if (own !== undefined && clipboard.copyContentCache().get(own)) return paste(html, text, files);
    const tables = html ? readTables(html, dayFirst(), readFormula) : undefined;
    const plain = text || (html ? textIn(html) : "");
    const read = tables ?? readPlain(plain, dayFirst(), readFormula);
    if ("refused" in read) {
      say(notPasted(read.refused), read.asks);
      return false;
    }
    return tables ? paste(read.text, undefined, files) : paste(undefined, read.text, files);
  };
  clipboard.paste = async (item) => {
    const part = async (type: string) => (item.types.includes(type) ? (await item.getType(type)).text() : undefined);
    return clipboard.legacyPaste(await part("text/html"), await part("text/plain"));
  };
}
