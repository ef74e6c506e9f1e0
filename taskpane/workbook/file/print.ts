/** How a sheet goes to paper: A4, as many pages wide as stay readable, header row and frozen columns on each. */
import type { SheetDescription } from "../../../src/caseload/book";
import { footerOf } from "../../styles/added-sheets";
import { columnLetters } from "../../../src/columns/formula";
import { quotedSheet } from "./lists";
import { asText, element } from "./xml";

/** Characters across one landscape page at about 60%; smaller print is hard to read at a bedside. Our choice. */
const ON_ONE_PAGE = 220;
const A4 = 9;

/** @param columns so many from the left go to paper */
export function pagesWide(
  sizes: ReadonlyMap<number, { readonly width: number; readonly isHidden: boolean }>,
  columns = Infinity,
): number {
  const shown = [...sizes].flatMap(([column, size]) => (column < columns && !size.isHidden ? [size] : []));
  return Math.max(1, Math.ceil(shown.reduce((sum, { width }) => sum + width, 0) / ON_ONE_PAGE));
}

export function printXml(print: SheetDescription["print"], fitToWidth: number): string {
  const margins = element("pageMargins", { left: 0.4, right: 0.4, top: 0.5, bottom: 0.6, header: 0.3, footer: 0.3 });
  if (!print) return margins;
  const { left, right } = footerOf(print.footer);
  const footer = `&L${left}&R${right}`;
  return [
    margins,
    element("pageSetup", {
      paperSize: A4,
      fitToWidth,
      fitToHeight: 0,
      orientation: print.landscape ? "landscape" : "portrait",
    }),
    element("headerFooter", {}, `<oddFooter>${asText(footer)}</oddFooter>`),
  ].join("");
}

/** The columns that go to paper, as the built-in name says it: whole ones, so that rows added later do too. */
export function printArea({ name, print }: SheetDescription): string | undefined {
  return print?.columns === undefined ? undefined : `${quotedSheet(name)}!$A:$${columnLetters(print.columns - 1)}`;
}

/** What stands on every page, as the built-in name says it; undefined for nothing. */
export function printTitles({ name, print, frozen }: SheetDescription): string | undefined {
  if (print?.titleRow === undefined) return undefined;
  const sheet = quotedSheet(name);
  const row = `${sheet}!$${print.titleRow + 1}:$${print.titleRow + 1}`;
  const columns = frozen?.columns ?? 0;
  return columns === 0 ? row : `${sheet}!$A:$${columnLetters(columns - 1)},${row}`;
}
