/**
 * A description as a new .xlsx file (ECMA-376, transitional). Written part by part rather than by a library: the one in
 * the house writes no formulas of table columns, errors as texts, print titles that Excel repairs, and today's date.
 *
 * Values stand beside formulas, and no full calculation is asked for at opening: it would turn every function of the
 * add-in into #NAME? for a reader who does not have it.
 */
import type { BookDescription, SheetDescription } from "../../../src/caseload/book";
import { inSlices } from "../xlsx/slices";
import { type Packed, packedNatively } from "../xlsx/zip/pack";
import { checkBook } from "./check";
import { inFile } from "./formula";
import { Lists } from "./lists";
import { propertiesXml, relationshipsXml, spreadsheetType, zipped, type Part } from "./package";
import { printArea, printTitles } from "./print";
import { sheetChunks, type Shared } from "./sheet";
import { Strings } from "./strings";
import { Styles } from "./styles";
import { tableXml } from "./table";
import { asText, element, MAIN, OFFICE, part } from "./xml";

/** The calculation engine of Excel since 2019: an older number would make Excel calculate everything at opening. */
const CALCULATION_ENGINE = 191_029;

export async function writeBook(book: BookDescription): Promise<Uint8Array> {
  const lists = new Lists(book);
  const hidden = lists.sheet();
  const sheets = hidden ? [...book.sheets, hidden] : book.sheets;
  checkBook({ ...book, sheets });
  const shared: Shared = { styles: new Styles(), strings: new Strings(), lists };
  const written: Part[] = [];
  for (const [index, sheet] of sheets.entries()) {
    const chunks = await inSlices(sheetChunks(sheet, index === openedTab(book), shared));
    // one sheet at a time is there unpacked
    written.push(...sheetParts(sheet, index, sheets, await packedNatively(chunks)));
  }
  const parts: Part[] = [
    related("_rels/.rels", [
      { type: `${OFFICE}/officeDocument`, target: "xl/workbook.xml" },
      { type: CORE_PROPERTIES, target: "docProps/core.xml" },
    ]),
    { name: "docProps/core.xml", type: CORE_TYPE, xml: propertiesXml(asText(book.title ?? "")) },
    { name: "xl/workbook.xml", type: spreadsheetType("sheet.main"), xml: workbookXml(book, sheets, hidden) },
    related("xl/_rels/workbook.xml.rels", [
      ...sheets.map((_, index) => ({ type: `${OFFICE}/worksheet`, target: `worksheets/sheet${index + 1}.xml` })),
      { type: `${OFFICE}/styles`, target: "styles.xml" },
      { type: `${OFFICE}/sharedStrings`, target: "sharedStrings.xml" },
    ]),
    ...written,
    { name: "xl/styles.xml", type: spreadsheetType("styles"), xml: shared.styles.xml() },
    { name: "xl/sharedStrings.xml", type: spreadsheetType("sharedStrings"), xml: shared.strings.xml() },
  ];
  return zipped(parts);
}

/** The place among all sheets of the one that is in sight first. */
function openedTab({ sheets, opensOn }: BookDescription): number {
  const tab = opensOn === undefined ? 0 : sheets.findIndex(({ name }) => name === opensOn);
  if (tab < 0) throw new Error(`There is no sheet "${opensOn}" to open on`);
  return tab;
}

const CORE_PROPERTIES = "http://schemas.openxmlformats.org/package/2006/relationships/metadata/core-properties";
const CORE_TYPE = "application/vnd.openxmlformats-package.core-properties+xml";

const related = (name: string, targets: Parameters<typeof relationshipsXml>[0]): Part => ({
  name,
  type: "",
  xml: relationshipsXml(targets),
});

function sheetParts(
  sheet: SheetDescription,
  index: number,
  sheets: readonly SheetDescription[],
  xml: Packed,
): readonly Part[] {
  const name = `sheet${index + 1}.xml`;
  const own: Part = {
    name: `xl/worksheets/${name}`,
    type: spreadsheetType("worksheet"),
    xml,
  };
  if (!sheet.table) return [own];
  const id = sheets.slice(0, index + 1).filter(({ table }) => table).length;
  return [
    own,
    related(`xl/worksheets/_rels/${name}.rels`, [{ type: `${OFFICE}/table`, target: `../tables/table${id}.xml` }]),
    { name: `xl/tables/table${id}.xml`, type: spreadsheetType("table"), xml: tableXml(sheet.table, id) },
  ];
}

function workbookXml(
  book: BookDescription,
  sheets: readonly SheetDescription[],
  hidden: SheetDescription | undefined,
): string {
  const defined = [
    ...book.names.map(({ name, refersTo }) => element("definedName", { name }, asText(inFile(refersTo)))),
    ...sheets.flatMap((sheet, localSheetId) => {
      const builtIn = { "_xlnm.Print_Area": printArea(sheet), "_xlnm.Print_Titles": printTitles(sheet) };
      return Object.entries(builtIn).flatMap(([name, refersTo]) =>
        refersTo === undefined ? [] : [element("definedName", { name, localSheetId }, asText(refersTo))],
      );
    }),
  ];
  const root = element("workbook", { xmlns: MAIN, "xmlns:r": OFFICE }, [
    "<workbookPr/>",
    element(
      "bookViews",
      {},
      element("workbookView", { windowWidth: 24_000, windowHeight: 12_000, activeTab: openedTab(book) || undefined }),
    ),
    element(
      "sheets",
      {},
      sheets.map((sheet, index) =>
        element("sheet", {
          name: sheet.name,
          sheetId: index + 1,
          state: sheet === hidden ? "hidden" : undefined,
          "r:id": `rId${index + 1}`,
        }),
      ),
    ),
    defined.length === 0 ? "" : element("definedNames", {}, defined),
    element("calcPr", { calcId: CALCULATION_ENGINE }),
  ]);
  return part(root);
}
