/**
 * What comes from the clipboard. The grid reads day and month of pasted texts as silently as of typed ones, so such texts
 * are put year first before it sees them, or the paste is refused.
 */
import { ISheetClipboardService } from "@univerjs/sheets-ui";
import type { Engine } from "./engine";
import type { DayFirst } from "./interface";
import { typedDate, yearFirst } from "./typedDate";

/** The grid's own copies carry this mark and hold true dates. */
const OWN_COPY = /data-copy-id/;

type Reading = { readonly text: string } | { readonly refused: string };

/** Why a text that begins with "=" is no formula; undefined where it is one. */
export type FaultOf = (formula: string) => string | undefined;

function readText(text: string, dayFirst: DayFirst, faultOf: FaultOf): Reading {
  const fault = text.startsWith("=") ? faultOf(text) : undefined;
  if (fault !== undefined) return { refused: `${fault} Nothing was entered.` };
  const date = typedDate(text, dayFirst);
  if (date.kind === "other") return { text };
  if (date.kind === "refused") return { refused: date.sentence };
  return { text: yearFirst(date.serial) };
}

/** Cells of plain text: tabs between columns, line ends between rows. */
export function readPlain(plain: string, dayFirst: DayFirst, faultOf: FaultOf): Reading {
  let refused: string | undefined;
  const text = plain.replace(/[^\t\r\n]+/g, (cell) => {
    const read = readText(cell, dayFirst, faultOf);
    if ("text" in read) return read.text;
    refused ??= read.refused;
    return cell;
  });
  return refused === undefined ? { text } : { refused };
}

function readHtml(html: string, dayFirst: DayFirst, faultOf: FaultOf): Reading {
  if (OWN_COPY.test(html)) return { text: html };
  const page = new DOMParser().parseFromString(html, "text/html");
  let isTouched = false;
  for (const cell of page.querySelectorAll("td, th")) {
    const text = cell.textContent ?? "";
    const read = readText(text, dayFirst, faultOf);
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
  readonly faultOf: FaultOf;
  readonly say: (sentence: string) => void;
}

export function watchPasting(engine: Engine, { dayFirst, faultOf, say }: PastingRules): void {
  const clipboard = engine.injector.get(ISheetClipboardService);
  const paste = clipboard.legacyPaste.bind(clipboard);
  clipboard.legacyPaste = async (html, text, files) => {
    const readings = [
      html ? readHtml(html, dayFirst(), faultOf) : undefined,
      text ? readPlain(text, dayFirst(), faultOf) : undefined,
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
