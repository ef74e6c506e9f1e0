/**
 * Sheets that come into a package: empty ones at first, which are then filled like any other. Nothing else of the file
 * changes but what has to name them: the list of parts, the workbook part and its relations, and the titles in docProps.
 */
import type { NewSheet } from "./edits";
import { addressOf } from "./addresses";
import { chartParts } from "./charts";
import { opening } from "./open-package";
import type { OpenedPackage } from "./opened";
import { compareNames, compareTables } from "./patch/check/compare-beside";
import { differs, type Meaning } from "./patch/check/meaning";
import { compareParts } from "./patch/check/read-back";
import { SIGNED } from "./patch/check/trial";
import { Outgoing } from "./patch/outgoing";
import { OFFICE_RELATIONSHIPS, relationshipTypes, WORKSHEET_CONTENT_TYPE } from "./parts/names";
import { refuse } from "../xlsx/refusal";
import { escapeAttribute, escapeText } from "../xlsx/xml/characters";
import { appendInside, parseElement, setAttribute } from "../xlsx/xml/element";
import { Splices } from "../xlsx/xml/splices";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const EXTENDED_PROPERTIES = `${OFFICE_RELATIONSHIPS}/extended-properties`;
const A4 = 9;

/**
 * The part of a sheet in which nothing stands yet.
 * @param hasView the workbook has a window that a view can belong to
 */
export function emptySheetXml(
  { held, print, merges = [], charts = [] }: Omit<NewSheet, "name">,
  hasView = true,
): string {
  const { rows = 0, columns = 0 } = held ?? {};
  const pane = rows > 0 ? (columns > 0 ? "bottomRight" : "bottomLeft") : "topRight";
  const splits = (columns > 0 ? ` xSplit="${columns}"` : "") + (rows > 0 ? ` ySplit="${rows}"` : "");
  const topLeft = addressOf(rows + 1, columns + 1);
  const frozen =
    rows + columns === 0
      ? ""
      : `<pane${splits} topLeftCell="${topLeft}" activePane="${pane}" state="frozen"/><selection pane="${pane}"/>`;
  const view = hasView ? `<sheetViews><sheetView workbookViewId="0">${frozen}</sheetView></sheetViews>` : "";
  const merged = merges.map((ref) => `<mergeCell ref="${ref}"/>`).join("");
  return [
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE_RELATIONSHIPS}">`,
    print ? `<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>` : "",
    `${view}<sheetFormatPr defaultRowHeight="15"/><sheetData/>`,
    merged === "" ? "" : `<mergeCells count="${merges.length}">${merged}</mergeCells>`,
    `<pageMargins left="0.4" right="0.4" top="0.5" bottom="0.6" header="0.3" footer="0.3"/>`,
    print ? printXml(print) : "",
    charts.length > 0 ? `<drawing r:id="rId1"/>` : "",
    "</worksheet>",
  ].join("");
}

const printXml = ({ landscape, footer }: NonNullable<NewSheet["print"]>): string =>
  `<pageSetup paperSize="${A4}" orientation="${landscape ? "landscape" : "portrait"}" fitToHeight="0"/>` +
  `<headerFooter><oddFooter>${escapeText(footer)}</oddFooter></headerFooter>`;

export interface WithSheets {
  readonly opened: OpenedPackage;
  readonly changedParts: readonly string[];
  readonly addedParts: readonly string[];
}

/** The package with these sheets behind its last one, read back and compared. A sign of life now and then. */
export function* withNewSheets(
  opened: OpenedPackage,
  sheets: readonly NewSheet[],
): Generator<number, WithSheets, void> {
  if (sheets.length === 0) return { opened, changedParts: [], addedParts: [] };
  if (opened.isSigned) refuse(SIGNED);
  const { files, workbookPart, limits } = opened.parts;
  const outgoing = new Outgoing(files, workbookPart);
  const hasView = files.tree(workbookPart).first("bookViews")?.first("workbookView") !== undefined;
  const listed = sheets.map((sheet) => {
    const id = outgoing.add(
      "worksheets/sheet.xml",
      emptySheetXml(sheet, hasView),
      WORKSHEET_CONTENT_TYPE,
      relationshipTypes.worksheet,
    );
    const { name, charts = [] } = sheet;
    if (charts.length > 0)
      for (const part of chartParts(name, outgoing.added.at(-1)!, charts, (one) => outgoing.has(one)))
        outgoing.addLoose(part);
    return { sheet, id };
  });
  listSheets(outgoing, workbookPart, listed);
  countTitles(outgoing, opened, sheets);
  const bytes = outgoing.write();
  const after = yield* opening(bytes, limits, { earlier: opened });
  compare(opened, after, sheets, new Set(outgoing.changed));
  return { opened: after, changedParts: outgoing.changed, addedParts: outgoing.added };
}

/** ECMA-376 part 1, 18.2.19 and 18.2.20. */
function listSheets(
  outgoing: Outgoing,
  workbookPart: string,
  listed: readonly { readonly sheet: NewSheet; readonly id: string }[],
): void {
  const source = outgoing.source(workbookPart);
  const root = parseElement(source);
  const list = root.first("sheets") ?? refuse("This workbook lists no sheets.");
  let last = list.all("sheet").reduce((most, one) => Math.max(most, Number(one.get("sheetId") ?? 0) || 0), 0);
  const texts = listed.map(({ sheet, id }) => {
    const state = sheet.isHidden ? ' state="hidden"' : "";
    // said here, because some files say it at each sheet alone
    const bound = root.attributes.some(({ raw }) => raw === "xmlns:r") ? "" : ` xmlns:r="${OFFICE_RELATIONSHIPS}"`;
    const name = escapeAttribute(sheet.name);
    return `<${list.tag("sheet")}${bound} name="${name}" sheetId="${++last}"${state} r:id="${id}"/>`;
  });
  const splices = new Splices(source.text);
  appendInside(splices, list, texts.join(""));
  outgoing.change(source, splices.apply());
}

/**
 * The titles that a file manager shows (ECMA-376 part 1, 22.2.2.12 and 22.2.2.30): only where they say what the workbook
 * says, else they are left as they are.
 */
function countTitles(outgoing: Outgoing, opened: OpenedPackage, sheets: readonly NewSheet[]): void {
  const { files } = opened.parts;
  const target = files.relationships("").find(({ type }) => type === EXTENDED_PROPERTIES)?.target;
  const part = target === undefined ? undefined : files.find(target);
  if (part === undefined) return;
  const source = outgoing.source(part);
  const root = parseElement(source);
  const [pairs, titles] = [root.first("HeadingPairs")?.children[0], root.first("TitlesOfParts")?.children[0]];
  const count = pairs?.children[1]?.children[0];
  const worksheets = opened.sheets.filter(({ kind }) => kind === "worksheet").map(({ name }) => name);
  const isAsListed =
    pairs !== undefined &&
    titles !== undefined &&
    count !== undefined &&
    Number(count.text) === worksheets.length &&
    Number(titles.get("size")) === titles.children.length &&
    worksheets.every((name, at) => titles.children[at]?.text === name);
  if (!isAsListed || worksheets.length === 0) return;
  const splices = new Splices(source.text);
  const last = titles.children[worksheets.length - 1]!;
  const tag = last.name.raw;
  splices.insert(last.end, sheets.map(({ name }) => `<${tag}>${escapeText(name)}</${tag}>`).join(""));
  splices.replace(count.contentStart, count.contentEnd, String(worksheets.length + sheets.length));
  setAttribute(splices, titles, "size", String(titles.children.length + sheets.length));
  outgoing.change(source, splices.apply());
}

function compare(
  before: OpenedPackage,
  after: OpenedPackage,
  sheets: readonly NewSheet[],
  changedParts: ReadonlySet<string>,
): void {
  const nothing: Meaning = { changedParts, sheets: new Map(), tables: [], names: [], renames: [] };
  compareParts(before, after, nothing);
  compareTables(before, after, nothing);
  compareNames(before, after, nothing);
  const meant = [
    ...before.sheets.map(({ name, partName, state }) => ({ name, partName, state })),
    ...sheets.map(({ name, isHidden }) => ({ name, partName: "", state: isHidden ? "hidden" : "visible" })),
  ];
  const isAsMeant = ({ name, partName, state }: (typeof meant)[number], at: number): boolean => {
    const is = after.sheets[at];
    return is?.name === name && is.state === state && (partName === "" || is.partName === partName);
  };
  if (after.sheets.length !== meant.length || !meant.every(isAsMeant)) differs("the sheets");
  if (after.activeSheet !== before.activeSheet) differs("the sheet in front");
  for (const { name, kind } of before.sheets)
    if (kind === "worksheet" && after.store(name) !== before.store(name)) differs(`the sheet "${name}"`);
}
