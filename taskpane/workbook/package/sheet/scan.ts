/**
 * Rows as nearly all programs write them, read from bytes straight into the store. It takes a small part of XML, of which
 * it is certain; at anything else (a prefix, a comment, a reference in an attribute, an order or a number that is not as it
 * should be) it gives the row up, and the row is read by the rules of XML (walk.ts), which also say what is wrong with it.
 */
import { LAST_COLUMN, LAST_ROW } from "../../xlsx/limits";
import type { RowLayout } from "../contents";
import { decodeEscapes } from "../../xlsx/escaped-strings";
import { isTrue } from "../parts/values";
import { decodeText } from "../../xlsx/xml/characters";
import { isForbidden } from "../../xlsx/xml/encoding";
import { KIND, type StoreBuilder } from "./store";

const [TAB, LINE, RETURN, SPACE, QUOTE, AMPERSAND, SLASH, LESS, EQUALS, GREATER] = [
  9, 10, 13, 32, 34, 38, 47, 60, 61, 62,
] as const;
const [ZERO, NINE, POINT, MINUS, PLUS, UPPER_A, UPPER_Z] = [48, 57, 46, 45, 43, 65, 90] as const;
const letter = (text: string): number => text.charCodeAt(0);
const [C, E, F, I, R, S, T, V] = ["c", "e", "f", "i", "r", "s", "t", "v"].map(letter) as [
  number,
  number,
  number,
  number,
  number,
  number,
  number,
  number,
];

/** Characters of a text that may stand as they are; a text with any other is looked at more closely. */
const PLAIN = new Uint8Array(256);
for (let byte = 32; byte < 128; byte++) PLAIN[byte] = 1;
PLAIN[TAB] = PLAIN[LINE] = 1;
for (const byte of [AMPERSAND, LESS, GREATER, 127]) PLAIN[byte] = 0;

/** What comes next in a tag: an attribute, its end, the end of an element without content, or something else. */
const [ATTRIBUTE, END, EMPTY_END, GIVEN_UP] = [0, 1, 2, 3] as const;

/** Powers of ten that a double holds exactly: a number of up to 15 digits times or by one of them is rounded once. */
const TENS = Array.from({ length: 23 }, (_, power) => Number(`1e${power}`));

export interface ScannedRow {
  number: number;
  isHidden: boolean;
  height: number | undefined;
  styleIndex: number | undefined;
}

export class RowScanner {
  /** Of the row just read. */
  readonly row: ScannedRow = { number: 0, isHidden: false, height: undefined, styleIndex: undefined };
  /** The first and last column of its cells; none: 0. */
  left = 0;
  right = 0;
  private at = 0;
  private hasNumber = true;
  /** Where the formula above, in this column, stands, and its place in the store. */
  private readonly aboveStart: number[] = [];
  private readonly aboveEnd: number[] = [];
  private readonly aboveFormula: number[] = [];
  /** The same for formulas whose text stands with another cell. */
  private readonly followerStart: number[] = [];
  private readonly followerEnd: number[] = [];
  private readonly followerFormula: number[] = [];
  private readonly decoder = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true });

  constructor(
    private readonly bytes: Uint8Array,
    private readonly partName: string,
    private readonly store: StoreBuilder,
    private readonly known: { readonly strings: number; readonly styles: number; readonly marks: ReadonlySet<number> },
  ) {}

  /** Reads the row that begins there into the store and gives the offset after it; -1, and nothing kept, where it gives up. */
  scan(start: number, last: number): number {
    const { bytes, row } = this;
    this.at = start + 4;
    if (!isRowStart(bytes, start) || !this.rowTag(last)) return -1;
    this.store.beginRow(row.number, start, this.hasNumber);
    this.left = this.right = 0;
    if (bytes[this.at - 2] !== SLASH && !this.cells()) {
      this.store.dropRow();
      return -1;
    }
    this.store.endRow(this.at);
    return this.at;
  }

  layout(): RowLayout | undefined {
    const { isHidden, height, styleIndex } = this.row;
    if (!isHidden && height === undefined && styleIndex === undefined) return undefined;
    return {
      isHidden,
      ...(height === undefined ? {} : { height }),
      ...(styleIndex === undefined ? {} : { styleIndex }),
    };
  }

  /** Behind a tag's name or an attribute: what comes next. Goes behind the tag's end where that is it. */
  private nextInTag(): number {
    const { bytes } = this;
    const hasSpace = this.skipSpace();
    const byte = bytes[this.at];
    if (byte === GREATER) {
      this.at++;
      return END;
    }
    if (byte === SLASH) {
      if (bytes[this.at + 1] !== GREATER) return GIVEN_UP;
      this.at += 2;
      return EMPTY_END;
    }
    return hasSpace ? ATTRIBUTE : GIVEN_UP;
  }

  private rowTag(last: number): boolean {
    const { bytes, row } = this;
    let [number, style, hidden, custom, height] = ["", "", "", "", ""];
    const names: string[] = [];
    for (;;) {
      const next = this.nextInTag();
      if (next === GIVEN_UP) return false;
      if (next !== ATTRIBUTE) break;
      const from = this.at;
      const end = this.attributeName();
      if (end < 0) return false;
      const name = ascii(bytes, from, end);
      const valueStart = this.at + 1;
      const valueEnd = this.attributeValue();
      if (valueEnd <= valueStart || names.includes(name) || name.startsWith("xmlns")) return false;
      names.push(name);
      if (name === "r") number = ascii(bytes, valueStart, valueEnd);
      else if (name === "s") style = ascii(bytes, valueStart, valueEnd);
      else if (name === "hidden") hidden = ascii(bytes, valueStart, valueEnd);
      else if (name === "customFormat") custom = ascii(bytes, valueStart, valueEnd);
      else if (name === "ht") height = ascii(bytes, valueStart, valueEnd);
    }
    if (names.includes("r") && !/^[1-9]\d{0,6}$/.test(number)) return false;
    this.hasNumber = number !== "";
    row.number = number === "" ? last + 1 : Number(number);
    if (row.number <= last || row.number > LAST_ROW) return false;
    row.isHidden = hidden !== "" && isTrue(hidden);
    const points = Number(height === "" ? Number.NaN : height);
    row.height = Number.isFinite(points) ? points : undefined;
    const hasStyle = custom !== "" && isTrue(custom);
    if (hasStyle && !/^\d{1,6}$/.test(style === "" ? "0" : style)) return false;
    row.styleIndex = hasStyle ? Number(style) : undefined;
    return true;
  }

  private cells(): boolean {
    const { bytes } = this;
    let last = 0;
    for (;;) {
      this.skipSpace();
      if (bytes[this.at] !== LESS) return false;
      const byte = bytes[this.at + 1];
      if (byte === C) {
        const column = this.cell(last);
        if (column < 0) return false;
        if (last === 0) this.left = column;
        last = column;
        continue;
      }
      if (byte !== SLASH || bytes[this.at + 2] !== R || bytes[this.at + 3] !== 111 || bytes[this.at + 4] !== 119)
        return false;
      if (bytes[this.at + 5] !== GREATER) return false;
      this.at += 6;
      this.right = last;
      return true;
    }
  }

  /** The column of the cell that begins there; -1 where it gives up. */
  private cell(last: number): number {
    const { bytes, store, known } = this;
    const row = this.row.number;
    this.at += 2;
    let column = last + 1;
    let style = 0;
    let type = 0;
    let second = 0;
    let mark = 0;
    let seen = 0;
    let next: number;
    while ((next = this.nextInTag()) === ATTRIBUTE) {
      const byte = bytes[this.at];
      if (byte === R && bytes[this.at + 1] === EQUALS) {
        if (seen & 1 || bytes[this.at + 2] !== QUOTE) return -1;
        seen |= 1;
        this.at += 3;
        column = this.address(row);
        if (column <= last) return -1;
      } else if (byte === S && bytes[this.at + 1] === EQUALS) {
        if (seen & 2 || bytes[this.at + 2] !== QUOTE) return -1;
        seen |= 2;
        this.at += 3;
        style = this.digits();
        if (style < 0 || bytes[this.at++] !== QUOTE) return -1;
      } else if (byte === T && bytes[this.at + 1] === EQUALS) {
        if (seen & 4) return -1;
        seen |= 4;
        this.at += 2;
        const from = this.at + 1;
        const end = this.attributeValue();
        if (end <= from) return -1;
        type = bytes[from] as number;
        second = end - from;
      } else if (byte === C && bytes[this.at + 1] === 109 && bytes[this.at + 2] === EQUALS) {
        if (seen & 8 || bytes[this.at + 3] !== QUOTE) return -1;
        seen |= 8;
        this.at += 4;
        mark = this.digits();
        if (mark < 0 || bytes[this.at++] !== QUOTE) return -1;
      } else return -1;
    }
    if (next === GIVEN_UP || column > LAST_COLUMN || style >= known.styles) return -1;
    if (next === EMPTY_END) {
      if (type !== 0 && !isType(type, second)) return -1;
      store.add(column, style, KIND.blank, 0, 0);
      return column;
    }
    let formula = 0;
    let kind: number = KIND.blank;
    let number = 0;
    let hasContent = false;
    for (;;) {
      this.skipSpace();
      if (bytes[this.at] !== LESS) return -1;
      const byte = bytes[this.at + 1];
      if (byte === V && bytes[this.at + 2] === GREATER) {
        if (hasContent) return -1;
        hasContent = true;
        this.at += 3;
        kind = this.value(type, second);
        number = this.found;
        if (kind < 0) return -1;
      } else if (byte === F) {
        if (formula > 0 || hasContent) return -1;
        formula = this.formula(row, column, mark);
        if (formula < 0) return -1;
      } else if (byte === I) {
        if (hasContent || type !== I || second !== 9) return -1;
        hasContent = true;
        if (!this.inline()) return -1;
        kind = KIND.text;
        number = this.found;
      } else if (byte === SLASH && bytes[this.at + 2] === C && bytes[this.at + 3] === GREATER) {
        this.at += 4;
        break;
      } else return -1;
    }
    if (!hasContent && type !== 0 && !isType(type, second)) return -1;
    store.add(column, style, kind, number, formula);
    return column;
  }

  /** The number, or the place of the text, that the value just read stands for. */
  private found = 0;

  /** Behind `<v>`: what it holds; goes behind `</v>`. */
  private value(type: number, length: number): number {
    const { bytes } = this;
    if (type === 0 || (length === 1 && type === 110)) {
      const start = this.at;
      if (!this.number()) return -1;
      if (start === this.at) return -1;
      return this.closes(V) ? KIND.number : -1;
    }
    if (length === 1 && type === S) {
      this.found = this.digits();
      return this.found >= 0 && this.found < this.known.strings && this.closes(V) ? KIND.shared : -1;
    }
    if (length === 1 && type === 98) {
      const byte = bytes[this.at++];
      this.found = byte === ZERO + 1 ? 1 : 0;
      return (byte === ZERO || byte === ZERO + 1) && this.closes(V) ? KIND.boolean : -1;
    }
    const isText = length === 3 && type === S;
    if (!isText && !(length === 1 && type === E)) return -1;
    const text = this.text();
    if (text === undefined || !this.closes(V)) return -1;
    this.found = this.store.text(isText ? decodeEscapes(text) : text);
    return isText ? KIND.text : KIND.error;
  }

  /** At `<is>`: one plain text. */
  private inline(): boolean {
    if (!this.passes("<is><t")) return false;
    if (!this.passes(">") && !this.passes(' xml:space="preserve">')) return false;
    const text = this.text();
    if (text === undefined || !this.passes("</t></is>")) return false;
    this.found = this.store.text(decodeEscapes(text));
    return true;
  }

  /** At `<f`: one more than its place in the store; -1 where it gives up. */
  private formula(row: number, column: number, mark: number): number {
    const { bytes, store } = this;
    this.at += 2;
    if (bytes[this.at] === GREATER) {
      this.at++;
      const start = this.at;
      const same = this.sameAsAbove(column, start);
      if (same > 0) return same;
      const text = this.text();
      const end = this.at;
      if (text === undefined || !this.closes(F)) return -1;
      const place = store.formula({ text, kind: "normal", isDynamic: false }, row, column);
      this.aboveStart[column] = start;
      this.aboveEnd[column] = end;
      this.aboveFormula[column] = place;
      return place;
    }
    const tagStart = this.at;
    const follower = this.sameFollower(column);
    if (follower > 0) return follower;
    let [type, group, ref] = ["normal", "", ""];
    let seen = 0;
    let next: number;
    while ((next = this.nextInTag()) === ATTRIBUTE) {
      const from = this.at;
      const end = this.attributeName();
      if (end < 0) return -1;
      const name = ascii(bytes, from, end);
      const valueStart = this.at + 1;
      const valueEnd = this.attributeValue();
      const bit = ["t", "si", "ref", "ca"].indexOf(name);
      if (valueEnd < 0 || bit < 0 || seen & (1 << bit)) return -1;
      seen |= 1 << bit;
      if (bit === 0) type = ascii(bytes, valueStart, valueEnd);
      else if (bit === 1) group = ascii(bytes, valueStart, valueEnd);
      else if (bit === 2) ref = ascii(bytes, valueStart, valueEnd);
    }
    if (next === GIVEN_UP || (type !== "shared" && type !== "array" && type !== "normal")) return -1;
    const isEmpty = next === EMPTY_END;
    if (seen & 2 && !/^\d{1,9}$/.test(group)) return -1;
    const text = isEmpty ? "" : this.text();
    if (text === undefined || (!isEmpty && !this.closes(F))) return -1;
    const stored = {
      text,
      kind: type,
      ...(seen & 2 ? { group: Number(group) } : {}),
      ...(seen & 4 ? { ref } : {}),
      isDynamic: type === "array" && this.known.marks.has(mark),
    } as const;
    const place = store.formula(stored, row, column);
    if (type === "array") this.arrays.push({ row, column, place });
    if (type === "shared" && isEmpty && seen === 3) {
      this.followerStart[column] = tagStart;
      this.followerEnd[column] = this.at;
      this.followerFormula[column] = place;
    }
    return place;
  }

  /** The same bytes as in the row above that has none but them, ` t="shared" si="7"/>`: goes behind them. */
  private sameFollower(column: number): number {
    const { bytes } = this;
    const from = this.followerStart[column];
    if (from === undefined) return 0;
    const length = (this.followerEnd[column] as number) - from;
    for (let index = 0; index < length; index++) if (bytes[this.at + index] !== bytes[from + index]) return 0;
    this.at += length;
    return this.store.again(this.followerFormula[column] as number);
  }

  /** Arrays met so far, with one more than the place of their formula. */
  readonly arrays: { readonly row: number; readonly column: number; readonly place: number }[] = [];

  /** The same bytes as the formula above, which was well-formed: goes behind `</f>`. */
  private sameAsAbove(column: number, start: number): number {
    const { bytes } = this;
    const from = this.aboveStart[column];
    if (from === undefined) return 0;
    const length = (this.aboveEnd[column] as number) - from;
    if (bytes[start + length] !== LESS) return 0;
    for (let index = 0; index < length; index++) if (bytes[start + index] !== bytes[from + index]) return 0;
    this.at = start + length;
    return this.closes(F) ? (this.aboveFormula[column] as number) : 0;
  }

  /** Characters up to the next tag, decoded; undefined where they have to be looked at more closely. */
  private text(): string | undefined {
    const { bytes } = this;
    const start = this.at;
    let at = start;
    while (PLAIN[bytes[at] as number] === 1) at++;
    if (bytes[at] === LESS) {
      this.at = at;
      return ascii(bytes, start, at);
    }
    for (; bytes[at] !== LESS; at++) {
      const byte = bytes[at];
      if (byte === undefined || byte === GREATER || (byte < 128 && isForbidden(byte))) return undefined;
    }
    try {
      const text = this.decoder.decode(bytes.subarray(start, at));
      if (text.includes("\ufffe") || text.includes("\uffff")) return undefined;
      this.at = at;
      return decodeText(text, 0, text.length, this.partName);
    } catch {
      return undefined;
    }
  }

  /** A decimal number as XML Schema writes it; false for anything else. */
  private number(): boolean {
    const { bytes } = this;
    const start = this.at;
    let at = start;
    const isNegative = bytes[at] === MINUS;
    if (isNegative) at++;
    let mantissa = 0;
    let digits = 0;
    let power = 0;
    let isBehindPoint = false;
    let any = false;
    for (; ; at++) {
      const byte = bytes[at] as number;
      if (byte >= ZERO && byte <= NINE) {
        any = true;
        if (digits > 0 || byte !== ZERO) digits++;
        mantissa = mantissa * 10 + byte - ZERO;
        if (isBehindPoint) power--;
      } else if (byte === POINT && !isBehindPoint) isBehindPoint = true;
      else break;
    }
    if (!any) return false;
    const byte = bytes[at];
    if (byte === E || byte === 69) {
      at++;
      if (bytes[at] === MINUS || bytes[at] === PLUS) at++;
      const from = at;
      while ((bytes[at] as number) >= ZERO && (bytes[at] as number) <= NINE) at++;
      if (at === from || at - from > 3) return false;
      digits = 99;
    }
    if (digits <= 15 && power >= -22) {
      const value = power === 0 ? mantissa : mantissa / (TENS[-power] as number);
      this.found = isNegative ? -value : value;
    } else {
      this.found = Number(ascii(bytes, start, at));
      if (!Number.isFinite(this.found)) return false;
    }
    this.at = at;
    return true;
  }

  /** Up to nine digits; -1 where there are none, or more. */
  private digits(): number {
    const { bytes } = this;
    const start = this.at;
    let value = 0;
    let byte = bytes[this.at] as number;
    while (byte >= ZERO && byte <= NINE) {
      value = value * 10 + byte - ZERO;
      byte = bytes[++this.at] as number;
    }
    return this.at === start || this.at - start > 9 ? -1 : value;
  }

  /** Behind the quote of an address: its column, where it stands in that row; goes behind the closing quote. */
  private address(row: number): number {
    const { bytes } = this;
    let column = 0;
    let byte = bytes[this.at] as number;
    while (byte >= UPPER_A && byte <= UPPER_Z && column <= LAST_COLUMN) {
      column = column * 26 + byte - UPPER_A + 1;
      byte = bytes[++this.at] as number;
    }
    if (column === 0 || column > LAST_COLUMN || byte === ZERO || this.digits() !== row) return -1;
    return bytes[this.at++] === QUOTE ? column : -1;
  }

  private closes(name: number): boolean {
    const { bytes, at } = this;
    if (bytes[at] !== LESS || bytes[at + 1] !== SLASH || bytes[at + 2] !== name || bytes[at + 3] !== GREATER)
      return false;
    this.at += 4;
    return true;
  }

  private passes(text: string): boolean {
    for (let index = 0; index < text.length; index++)
      if (this.bytes[this.at + index] !== text.charCodeAt(index)) return false;
    this.at += text.length;
    return true;
  }

  private skipSpace(): boolean {
    const start = this.at;
    for (;;) {
      const byte = this.bytes[this.at];
      if (byte !== SPACE && byte !== LINE && byte !== RETURN && byte !== TAB) return this.at > start;
      this.at++;
    }
  }

  /** The end of the name; goes behind the equals sign. */
  private attributeName(): number {
    const { bytes } = this;
    const start = this.at;
    let byte = bytes[this.at] as number;
    while (isLetter(byte) || (this.at > start && ((byte >= ZERO && byte <= NINE) || byte === 58 || byte === MINUS))) {
      byte = bytes[++this.at] as number;
    }
    if (this.at === start || byte !== EQUALS) return -1;
    return this.at++;
  }

  /** At the opening quote: the end of the value; goes behind the closing quote. */
  private attributeValue(): number {
    const { bytes } = this;
    if (bytes[this.at] !== QUOTE) return -1;
    let at = this.at + 1;
    for (; bytes[at] !== QUOTE; at++) {
      const byte = bytes[at];
      if (byte === undefined || byte < 32 || byte > 126 || byte === AMPERSAND || byte === LESS) return -1;
    }
    this.at = at + 1;
    return at;
  }
}

const isLetter = (byte: number): boolean => {
  const lower = byte | 32;
  return (lower >= 97 && lower <= 122) || byte === 95;
};

/** A `t` that the rules know: n, s, b, e, d, str, inlineStr. */
const isType = (first: number, length: number): boolean =>
  length === 1 ? [110, S, 98, E, 100].includes(first) : (length === 3 && first === S) || (length === 9 && first === I);

function isRowStart(bytes: Uint8Array, at: number): boolean {
  if (bytes[at] !== LESS || bytes[at + 1] !== R || bytes[at + 2] !== 111 || bytes[at + 3] !== 119) return false;
  const next = bytes[at + 4];
  return next === SPACE || next === GREATER || next === SLASH || next === LINE || next === RETURN || next === TAB;
}

const SHORT = 24;
const latin = new TextDecoder("latin1");

/** Bytes that are plain characters. */
function ascii(bytes: Uint8Array, start: number, end: number): string {
  if (end - start > SHORT) return latin.decode(bytes.subarray(start, end));
  let text = "";
  for (let at = start; at < end; at++) text += String.fromCharCode(bytes[at] as number);
  return text;
}
