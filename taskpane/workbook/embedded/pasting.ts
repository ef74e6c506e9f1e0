/**
 * What comes from the clipboard. The grid reads day and month of pasted texts as silently as of typed ones, so such texts
 * are put year first before it sees them, or the paste is refused.
 */
import { ISheetClipboardService } from "@univerjs/sheets-ui";
import type { Engine } from "./engine";
import type { Entered } from "./enteredFormula";
import type { DayFirst } from "./interface";
import { typedDate, yearFirst } from "./typedDate";

/** The grid's own copies carry this mark and hold true dates. */
const OWN_COPY = /data-copy-id/;

export type ReadFormula = (formula: string) => Entered;

function readText(text: string, dayFirst: DayFirst, readFormula: ReadFormula): Entered {
  if (text.startsWith("=")) return readFormula(text);
  const date = typedDate(text, dayFirst);
  if (date.kind === "other") return { text };
  if (date.kind === "refused") return { refused: date.sentence };
  return { text: yearFirst(date.serial) };
}

/** Cells of plain text: tabs between columns, line ends between rows. */
export function readPlain(plain: string, dayFirst: DayFirst, readFormula: ReadFormula): Entered {
  let refused: string | undefined;
  const text = plain.replace(/[^\t\r\n]+/g, (cell) => {
    const read = readText(cell, dayFirst, readFormula);
    if ("text" in read) return read.text;
    refused ??= read.refused;
    return cell;
  });
  return refused === undefined ? { text } : { refused };
}

function readHtml(html: string, dayFirst: DayFirst, readFormula: ReadFormula): Entered {
  if (OWN_COPY.test(html)) return { text: html };
  const page = new DOMParser().parseFromString(html, "text/html");
  let isTouched = false;
  for (const cell of page.querySelectorAll("td, th")) {
    const text = cell.textContent ?? "";
    const read = readText(text, dayFirst, readFormula);
    if ("refused" in read) return read;
    if (read.text === text) continue;
    cell.textContent = read.text;
    isTouched = true;
  }
  if (!isTouched) return { text: html };
  return { text: page.documentElement.outerHTML };
}

export interface PastingRules {
  readonly dayFirst: () => DayFirst;
  readonly readFormula: ReadFormula;
  readonly say: (sentence: string) => void;
}

export function watchPasting(engine: Engine, { dayFirst, readFormula, say }: PastingRules): void {
  const clipboard = engine.injector.get(ISheetClipboardService);
  const paste = clipboard.legacyPaste.bind(clipboard);
  clipboard.legacyPaste = async (html, text, files) => {
    const readings = [
      html ? readHtml(html, dayFirst(), readFormula) : undefined,
      text ? readPlain(text, dayFirst(), readFormula) : undefined,
    ];
    // an own copy's text is what its cells show, and is not used
    const isOwn = Boolean(html && OWN_COPY.test(html));
    const refused = isOwn ? undefined : readings.find((reading) => reading && "refused" in reading);
    if (refused && "refused" in refused) {
      say(refused.refused.replace("Nothing was entered.", "Nothing was pasted."));
      return false;
    }
    const [readHtmlText, readPlainText] = readings.map((reading) =>
      reading && "text" in reading ? reading.text : undefined,
    );
    return paste(isOwn ? html : readHtmlText, isOwn ? text : readPlainText, files);
  };
  clipboard.paste = async (item) => {
    const part = async (type: string) => (item.types.includes(type) ? (await item.getType(type)).text() : undefined);
    return clipboard.legacyPaste(await part("text/html"), await part("text/plain"));
  };
}
