/**
 * Reads a worksheet part in pieces, row by row: no sheet becomes one text, whatever its size. What stands beside the rows is
 * small and is collected on the way.
 */
import { parseAddress } from "../addresses";
import { LAST_COLUMN, LAST_ROW } from "../../xlsx/limits";
import { MAIN } from "../parts/names";
import { readText } from "../parts/shared-strings";
import { isTrue, wholeNumber } from "../parts/values";
import { Refused } from "../../xlsx/refusal";
import { readElement, type XmlElement } from "../../xlsx/xml/element";
import { decodePiece, type XmlBytes } from "../../xlsx/xml/encoding";
import type { ElementName } from "../../xlsx/xml/namespaces";
import { type ReaderState, XmlReader } from "../../xlsx/xml/reader";
import type { AttributePlace, Beside, CellToken, FormulaToken, RowToken, SheetChild, SheetDataPlace } from "./tokens";

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

/** What stands beside the rows of a worksheet, and how to read a row of it. */
export interface SheetFrame {
  readonly part: XmlBytes;
  readonly root: ElementName;
  /** The offset after the root's start tag, in the head. */
  readonly rootContentStart: number;
  readonly data: SheetDataPlace;
  /** From the beginning to the tag that opens the rows. */
  readonly head: string;
  /** From the tag that closes the rows, where another one opens them. */
  readonly tail: string;
  readonly children: readonly SheetChild[];
  /** The bytes between the head and the tail. */
  readonly rowsStart: number;
  readonly rowsEnd: number;
}

/** A row, and the bytes in which it stands. */
interface ReadRow {
  readonly row: RowToken;
  readonly start: number;
  readonly end: number;
}

/** Who takes rows while a part is read for the first time. */
export interface RowTaker {
  /** The end of the row that begins there; -1 where it has to be read by the rules of XML. */
  scan(start: number, last: number): number;
  /** The number of the row just scanned. */
  readonly number: number;
  take(row: RowToken, start: number, end: number): void;
}

/** What looks like the beginning of the rows and is none is passed over so many times; then the part is read as a whole. */
const MOST_HEADS = 3;

export const childElement = ({ children }: Pick<SheetFrame, "children">, local: string): XmlElement | undefined =>
  children.find((one) => one.name.namespace === MAIN && one.name.local === local)?.element;

export class SheetWalk {
  private readonly children: SheetChild[] = [];
  private root: ElementName = NO_NAME;
  private rootContentStart = 0;
  private data: SheetDataPlace | undefined;
  private dataDepth = 0;
  private place: Beside = "head";
  private reader: XmlReader;
  private cells: CellTokens;

  constructor(readonly part: XmlBytes) {
    this.reader = new XmlReader({ text: "", partName: part.partName }, undefined, false);
    this.cells = new CellTokens(this.reader);
  }

  /** Goes through the whole part once; gives a sign of life after every few thousand rows: the bytes read so far. */
  *run(taker: RowTaker): Generator<number, SheetFrame, void> {
    const { bytes } = this.part;
    const head = this.readHead();
    const hasRows = this.data !== undefined && !this.data.isSelfClosing;
    const rowsEnd = hasRows ? yield* this.rows(head.end, taker) : head.end;
    const tail = decodePiece(this.part, rowsEnd, bytes.length);
    // the tag that closes the rows is read already
    this.reader.goOn(tail, rowsEnd, true, this.closingTag);
    const dataAt = this.children.length - 1;
    const dataChild = this.children[dataAt];
    if (this.data && dataChild)
      this.children[dataAt] = { name: dataChild.name, place: "tail", start: 0, end: this.closingTag };
    this.place = "tail";
    this.readBeside();
    const { data, root, rootContentStart, children } = this;
    if (!data) return this.reader.fail("a sheet has no place for cells");
    const { end: rowsStart, text } = head;
    return { part: this.part, root, rootContentStart, data, head: text, tail, children, rowsStart, rowsEnd };
  }

  /** Up to the tag that opens the rows. What looks like it may stand in a comment: then further on. */
  private readHead(): { readonly text: string; readonly end: number } {
    const { bytes } = this.part;
    let from = 0;
    for (let tries = 0; tries < MOST_HEADS; tries++) {
      const named = indexOfText(bytes, "sheetData", from);
      const close = named < 0 ? -1 : bytes.indexOf(GREATER, named);
      if (close < 0) break;
      const text = decodePiece(this.part, 0, close + 1);
      if (this.isHead(text)) return { text, end: close + 1 };
      from = close + 1;
    }
    const text = decodePiece(this.part, 0, bytes.length);
    this.startAnew(text);
    this.readBeside();
    const opened = text.slice(0, this.reader.end);
    return { text: opened, end: utf8Length(opened) };
  }

  private isHead(text: string): boolean {
    this.startAnew(text);
    try {
      this.readBeside();
    } catch (problem) {
      if (problem instanceof Refused) return false;
      throw problem;
    }
    return this.data !== undefined && this.reader.end === text.length;
  }

  private startAnew(text: string): void {
    this.reader = new XmlReader({ text, partName: this.part.partName }, undefined, false);
    this.cells = new CellTokens(this.reader);
    this.children.length = 0;
    this.root = NO_NAME;
    this.data = undefined;
  }

  /** What stands beside the rows: stops where they begin. */
  private readBeside(): void {
    const { reader } = this;
    while (reader.next()) {
      if (reader.kind !== "start") continue;
      const { name, start, end } = reader;
      if (this.root.raw === "") {
        if (!reader.is(MAIN, "worksheet")) reader.fail("a sheet is not what it says it is");
        this.root = name;
        this.rootContentStart = end;
      } else if (reader.is(MAIN, "sheetData")) {
        if (this.data) reader.fail("a sheet has two places for cells");
        this.data = { name, isSelfClosing: reader.isSelfClosing };
        this.dataDepth = reader.depth;
        this.children.push({ name, place: this.place, start, end });
        return;
      } else this.readChild();
    }
  }

  private readChild(): void {
    const { reader } = this;
    const { name, start } = reader;
    const isTakenApart = name.namespace === MAIN && TAKEN_APART.has(name.local);
    const element = isTakenApart ? readElement(reader) : undefined;
    if (!isTakenApart) reader.skipElement();
    this.children.push({ name, place: this.place, start, end: reader.end, ...(element ? { element } : {}) });
  }

  /** The length of the tag that closed the rows. */
  private closingTag = 0;

  /** All rows from there; gives the offset of the tag that closes them. */
  private *rows(from: number, taker: RowTaker): Generator<number, number, void> {
    const { bytes } = this.part;
    const isPlain = this.root.prefix === "" && this.data?.name.prefix === "";
    let at = from;
    let last = 0;
    let count = 0;
    for (;;) {
      const start = skipSpace(bytes, at);
      const end = isPlain ? taker.scan(start, last) : -1;
      if (end >= 0) {
        last = taker.number;
        at = end;
      } else {
        const piece = this.readPiece(at, last, taker);
        if (piece.isEnd) return piece.at;
        at = piece.at;
        last = piece.last;
      }
      if (++count % ROWS_AT_A_TIME === 0) yield at;
    }
  }

  /** One row, or a few, by the rules of XML. */
  private readPiece(at: number, last: number, taker: RowTaker): PieceRead {
    const { bytes } = this.part;
    const closing = indexOfText(bytes, this.rowEnd(), at);
    if (closing >= 0) {
      const before = this.reader.state();
      const taken: ReadRow[] = [];
      try {
        const read = this.readRows(at, closing + this.rowEnd().length, last, taken);
        if (read) {
          for (const { row, start, end } of taken) taker.take(row, start, end);
          return read;
        }
      } catch (problem) {
        if (!(problem instanceof Refused)) throw problem;
      }
      this.reader.comeBack(before);
    }
    const taken: ReadRow[] = [];
    const read = this.readRows(at, bytes.length, last, taken);
    for (const { row, start, end } of taken) taker.take(row, start, end);
    return read ?? this.reader.fail("a sheet's rows are not finished");
  }

  /** Undefined where the piece ends in the middle of something. */
  private readRows(at: number, end: number, last: number, taken: ReadRow[]): PieceRead | undefined {
    const { reader, part } = this;
    const text = decodePiece(part, at, end);
    const isPlain = text.length === end - at;
    const byteOf = (offset: number): number => at + (isPlain ? offset : utf8Length(text.slice(0, offset)));
    reader.goOn(text, at, end === part.bytes.length);
    let number = last;
    while (reader.next()) {
      if (reader.kind === "end" && reader.depth < this.dataDepth) {
        this.closingTag = reader.end - reader.start;
        return { isEnd: true, at: byteOf(reader.start), last: number };
      }
      if (reader.kind !== "start") continue;
      if (!reader.is(MAIN, "row")) {
        reader.skipElement();
        continue;
      }
      const row = this.cells.readRow(number);
      if (reader.depth !== this.dataDepth) return undefined;
      number = row.number;
      taken.push({ row, start: byteOf(row.start), end: byteOf(row.end) });
    }
    return reader.depth === this.dataDepth ? { isEnd: false, at: end, last: number } : undefined;
  }

  private rowEnd(): string {
    const prefix = this.data?.name.prefix ?? "";
    return prefix === "" ? "</row>" : `</${prefix}:row>`;
  }
}

const NO_NAME: ElementName = { raw: "", prefix: "", local: "", namespace: "" };
const ROWS_AT_A_TIME = 1_000;
const GREATER = 62;

interface PieceRead {
  /** The rows are closed there. */
  readonly isEnd: boolean;
  readonly at: number;
  readonly last: number;
}

/** Reads single rows of a worksheet that was gone through before. */
export class RowReader {
  private readonly reader: XmlReader;
  private readonly cells: CellTokens;
  private readonly inside: ReaderState;

  constructor({ part, head }: SheetFrame) {
    this.reader = new XmlReader({ text: head, partName: part.partName }, undefined, false);
    while (this.reader.next());
    this.inside = this.reader.state();
    this.cells = new CellTokens(this.reader);
  }

  /** @param text the row and nothing else */
  read(text: string, number: number, base: number): RowToken {
    this.reader.comeBack(this.inside);
    this.reader.goOn(text, base);
    this.reader.next();
    return this.cells.readRow(number - 1);
  }
}

const encoder = new TextEncoder();
const utf8Length = (text: string): number => encoder.encode(text).length;

function skipSpace(bytes: Uint8Array, from: number): number {
  let at = from;
  for (let byte = bytes[at]; byte === 32 || byte === 10 || byte === 13 || byte === 9;) byte = bytes[++at];
  return at;
}

/** Where plain characters stand in bytes; -1 where they do not. */
function indexOfText(bytes: Uint8Array, text: string, from: number): number {
  const first = text.charCodeAt(0);
  for (let at = bytes.indexOf(first, from); at >= 0; at = bytes.indexOf(first, at + 1)) {
    let length = 1;
    while (length < text.length && bytes[at + length] === text.charCodeAt(length)) length++;
    if (length === text.length) return at;
  }
  return -1;
}

/** Rows and cells with the places where they stand. */
class CellTokens {
  constructor(private readonly reader: XmlReader) {}

  readRow(last: number): RowToken {
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
