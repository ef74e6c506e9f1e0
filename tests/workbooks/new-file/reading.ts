/** New files as programs read them that did not write them. */
import ExcelJS from "exceljs";
import { unzipSync, strFromU8 } from "fflate";
import { read, type CellObject, type WorkBook } from "@e965/xlsx";
import { SaxesParser } from "saxes";

export async function byExcelJs(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(bytes.slice().buffer);
  return book;
}

export const bySheetJs = (bytes: Uint8Array): WorkBook =>
  read(bytes, { cellFormula: true, cellNF: true, cellStyles: true, sheetStubs: true });

export const sheetJsCell = (book: WorkBook, sheet: string, address: string): CellObject | undefined =>
  book.Sheets[sheet]?.[address] as CellObject | undefined;

export const partsOf = (bytes: Uint8Array): ReadonlyMap<string, string> =>
  new Map(Object.entries(unzipSync(bytes)).map(([name, content]) => [name, strFromU8(content)]));

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

/** A part as an independent, strict XML parser understands it; throws where it is not well formed. */
export function parsed(xml: string): Element {
  const top: Element = { name: "", attributes: {}, children: [], text: "" };
  const open = [top];
  const parser = new SaxesParser({ xmlns: true });
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name, attributes }) => {
    const plain = Object.fromEntries(Object.entries(attributes).map(([key, { value }]) => [key, value]));
    const one: Element = { name, attributes: plain, children: [], text: "" };
    open.at(-1)!.children.push(one);
    open.push(one);
  });
  parser.on("text", (text) => (open.at(-1)!.text += text));
  parser.on("closetag", () => open.pop());
  parser.write(xml).close();
  return top.children[0]!;
}

export function all(element: Element, name: string): Element[] {
  return element.children.flatMap((child) => [...(child.name === name ? [child] : []), ...all(child, name)]);
}
