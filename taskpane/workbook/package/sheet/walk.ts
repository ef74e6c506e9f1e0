/** Reads a worksheet part as it flows, row by row; what stands beside the rows is collected on the way. */
import { parseAddress } from "../addresses";
import { LAST_COLUMN, LAST_ROW } from "../limits";
import { MAIN } from "../parts/names";
import { readText } from "../parts/sharedStrings";
import { isTrue, wholeNumber } from "../parts/values";
import { readElement, type XmlElement } from "../xml/element";
import type { XmlSource } from "../xml/encoding";
import type { ElementName } from "../xml/namespaces";
import { XmlReader } from "../xml/reader";
import type { AttributePlace, CellToken, FormulaToken, RowToken, SheetChild, SheetDataPlace } from "./tokens";

const TAKEN_APART = new Set([
  "sheetPr",
  "dimension",
  "sheetFormatPr",
  "cols",
  "sheetProtection",
  "autoFilter",
  "mergeCells",
]);
const KNOWN_CELL_ATTRIBUTES = new Set(["r", "s", "t", "cm", "vm"]);

export class SheetWalk {
  readonly children: SheetChild[] = [];
  root: ElementName = { raw: "", prefix: "", local: "", namespace: "" };
  /** The offset after the root's start tag. */
  rootContentStart = 0;
  data: SheetDataPlace | undefined;
  private readonly reader: XmlReader;

  constructor(readonly source: XmlSource) {
    this.reader = new XmlReader(source);
  }

  /** To be run to its end; `children` and `data` are complete then. */
  *rows(): Generator<RowToken, void, void> {
    const reader = this.reader;
    while (reader.next()) {
      if (reader.kind !== "start") continue;
      if (this.root.raw === "") {
        if (!reader.is(MAIN, "worksheet")) reader.fail("a sheet is not what it says it is");
        this.root = reader.name;
        this.rootContentStart = reader.end;
      } else if (reader.is(MAIN, "sheetData")) yield* this.dataRows();
      else this.readChild();
    }
    if (!this.data) reader.fail("a sheet has no place for cells");
  }

  child(local: string): XmlElement | undefined {
    return this.children.find((one) => one.name.namespace === MAIN && one.name.local === local)?.element;
  }

  private readChild(): void {
    const { reader } = this;
    const { name, start } = reader;
    const isTakenApart = name.namespace === MAIN && TAKEN_APART.has(name.local);
    const element = isTakenApart ? readElement(reader) : undefined;
    if (!isTakenApart) reader.skipElement();
    this.children.push({ name, start, end: reader.end, ...(element ? { element } : {}) });
  }

  private *dataRows(): Generator<RowToken, void, void> {
    const { reader } = this;
    if (this.data) reader.fail("a sheet has two places for cells");
    const { name, start, end: contentStart, isSelfClosing, depth } = reader;
    this.data = { name, start, contentStart, contentEnd: reader.end, end: reader.end, isSelfClosing };
    let last = 0;
    if (!isSelfClosing) {
      while (reader.next()) {
        if (reader.kind === "end" && reader.depth < depth) break;
        if (reader.kind !== "start") continue;
        if (!reader.is(MAIN, "row")) {
          reader.skipElement();
          continue;
        }
        const row = this.readRow(last);
        last = row.number;
        yield row;
      }
      this.data = { name, start, contentStart, contentEnd: reader.start, end: reader.end, isSelfClosing };
    }
    this.children.push({ name, start, end: reader.end });
  }

  private readRow(last: number): RowToken {
    const { reader } = this;
    const { name, start, end: tagEnd, isSelfClosing, depth } = reader;
    const stated = reader.attribute("r");
    const number = stated === undefined ? last + 1 : wholeNumber(stated, 0);
    if (number <= last || number > LAST_ROW) reader.fail("the rows of a sheet are not in order");
    const attributes = attributePlaces(reader);
    const isHidden = isTrue(reader.attribute("hidden"));
    const height = Number(reader.attribute("ht") ?? NaN);
    const styleIndex = isTrue(reader.attribute("customFormat")) ? wholeNumber(reader.attribute("s"), 0) : undefined;
    const cells: CellToken[] = [];
    let cellsEnd = tagEnd;
    if (!isSelfClosing) {
      let column = 0;
      while (reader.next()) {
        if (reader.kind === "end" && reader.depth < depth) break;
        if (reader.kind !== "start") continue;
        if (!reader.is(MAIN, "c")) {
          reader.skipElement();
          continue;
        }
        const cell = this.readCell(number, column);
        column = cell.column;
        cells.push(cell);
        cellsEnd = cell.end;
      }
    }
    return {
      number,
      hasNumber: stated !== undefined,
      name,
      attributes,
      start,
      tagEnd,
      cellsEnd,
      end: reader.end,
      isSelfClosing,
      isHidden,
      ...(Number.isFinite(height) ? { height } : {}),
      ...(styleIndex === undefined ? {} : { styleIndex }),
      cells,
    };
  }

  private readCell(row: number, lastColumn: number): CellToken {
    const { reader } = this;
    const { start, depth, isSelfClosing } = reader;
    const nameEnd = start + 1 + reader.name.raw.length;
    let column = lastColumn + 1;
    let hasAddress = false;
    let styleIndex = 0;
    let type = "n";
    let cellMetadata = 0;
    let valueMetadata = 0;
    let otherAttributes = "";
    for (let index = 0; index < reader.attributes.count; index++) {
      const name = reader.attributes.name(index);
      if (name === "r") {
        column = this.columnIn(reader.attributes.value(index), row, lastColumn);
        hasAddress = true;
      } else if (name === "t") type = reader.attributes.value(index);
      else if (name === "s") styleIndex = wholeNumber(reader.attributes.value(index), -1);
      else if (name === "cm") cellMetadata = wholeNumber(reader.attributes.value(index), 0);
      else if (name === "vm") valueMetadata = wholeNumber(reader.attributes.value(index), 0);
      else if (!KNOWN_CELL_ATTRIBUTES.has(name)) {
        const { nameStart, end } = reader.attributes.span(index);
        otherAttributes += ` ${reader.text.slice(nameStart, end + 1)}`;
      }
    }
    if (column > LAST_COLUMN || styleIndex < 0) reader.fail("a cell stands beyond the sheet or has no readable style");
    let content: string | undefined;
    let contentStart = 0;
    let contentEnd = 0;
    let formula: FormulaToken | undefined;
    let otherChildren = "";
    if (!isSelfClosing) {
      while (reader.next()) {
        if (reader.kind === "end" && reader.depth < depth) break;
        if (reader.kind !== "start") continue;
        const childStart = reader.start;
        if (reader.is(MAIN, "f")) formula = readFormula(reader);
        else if (reader.is(MAIN, "v") || reader.is(MAIN, "is")) {
          content = reader.name.local === "v" ? reader.elementText() : readText(reader);
          contentStart = childStart;
          contentEnd = reader.end;
        } else {
          reader.skipElement();
          otherChildren += reader.text.slice(childStart, reader.end);
        }
      }
    }
    return {
      row,
      column,
      hasAddress,
      start,
      nameEnd,
      end: reader.end,
      styleIndex,
      type,
      content,
      contentSource: reader.text.slice(contentStart, contentEnd),
      formula,
      cellMetadata,
      valueMetadata,
      otherAttributes,
      otherChildren,
    };
  }

  private columnIn(address: string, row: number, lastColumn: number): number {
    const place = parseAddress(address);
    if (!place || place.row !== row || place.column <= lastColumn) {
      return this.reader.fail("the cells of a row are not in order");
    }
    return place.column;
  }
}

function attributePlaces(reader: XmlReader): AttributePlace[] {
  const places: AttributePlace[] = [];
  for (let index = 0; index < reader.attributes.count; index++) {
    places.push({ name: reader.attributes.name(index), ...reader.attributes.span(index) });
  }
  return places;
}

function readFormula(reader: XmlReader): FormulaToken {
  const { start, end: tagEnd } = reader;
  const type = reader.attribute("t") ?? "normal";
  const group = reader.attribute("si");
  const ref = reader.attribute("ref");
  const text = reader.elementText();
  return {
    text,
    type,
    ...(group === undefined ? {} : { group: wholeNumber(group, 0) }),
    ...(ref === undefined ? {} : { ref }),
    start,
    tagEnd,
    end: reader.end,
    source: reader.text.slice(start, reader.end),
  };
}
