/** Characters in XML text: decoding what a part says, and writing what we mean. */
import { damaged } from "./damaged";
import { isForbidden } from "./encoding";

const NAMED: ReadonlyMap<string, string> = new Map([
  ["amp", "&"],
  ["lt", "<"],
  ["gt", ">"],
  ["quot", '"'],
  ["apos", "'"],
]);

const AMPERSAND = 38;
const CARRIAGE_RETURN = 13;

/**
 * Long texts, as they stand and as they read: the formulas of a table stand on every row in the same words (measured: in
 * a caseload of 5,000 people 190 million characters, a hundred different texts).
 */
const read = new Map<string, string>();
const LONG = 100;
const KEPT = 1_000;

/** Text between tags: references resolved, line ends as "\n" (XML 1.0, 2.11). */
export function decodeText(source: string, start: number, end: number, partName: string): string {
  if (end - start < LONG) return decodePlain(source, start, end, partName);
  const raw = source.slice(start, end);
  const known = read.get(raw);
  if (known !== undefined) return known;
  const text = decodePlain(source, start, end, partName);
  if (read.size >= KEPT) read.clear();
  read.set(raw, text);
  return text;
}

function decodePlain(source: string, start: number, end: number, partName: string): string {
  for (let index = start; index < end; index++) {
    const code = source.charCodeAt(index);
    if (code === AMPERSAND || code === CARRIAGE_RETURN) return decode(source, start, end, partName, false);
  }
  return source.slice(start, end);
}

/** An attribute's value: as text, and tabs and line ends that stand there plainly are spaces (XML 1.0, 3.3.3). */
export function decodeAttribute(source: string, start: number, end: number, partName: string): string {
  for (let index = start; index < end; index++) {
    const code = source.charCodeAt(index);
    if (code === AMPERSAND || (code < 32 && code > 8)) return decode(source, start, end, partName, true);
  }
  return source.slice(start, end);
}

/** CDATA: no references, line ends as "\n". */
export function decodeCdata(source: string, start: number, end: number): string {
  return source.slice(start, end).replaceAll("\r\n", "\n").replaceAll("\r", "\n");
}

function decode(source: string, start: number, end: number, partName: string, inAttribute: boolean): string {
  let text = "";
  let from = start;
  for (let index = start; index < end; index++) {
    const code = source.charCodeAt(index);
    if (code === AMPERSAND) {
      const semicolon = source.indexOf(";", index);
      if (semicolon < 0 || semicolon >= end) return damaged(partName, index, "an ampersand starts no reference");
      text += source.slice(from, index) + resolve(source.slice(index + 1, semicolon), partName, index);
      index = semicolon;
      from = index + 1;
    } else if (code === CARRIAGE_RETURN) {
      text += source.slice(from, index) + (inAttribute ? " " : "\n");
      if (source.charCodeAt(index + 1) === 10 && index + 1 < end) index++;
      from = index + 1;
    } else if (inAttribute && (code === 9 || code === 10)) {
      text += `${source.slice(from, index)} `;
      from = index + 1;
    }
  }
  return text + source.slice(from, end);
}

function resolve(reference: string, partName: string, offset: number): string {
  if (reference.charCodeAt(0) !== 35) {
    return (
      NAMED.get(reference) ??
      damaged(partName, offset, `it refers to "${reference.slice(0, 40)}", which XML does not know`)
    );
  }
  const isHexadecimal = reference.charCodeAt(1) === 120;
  const digits = reference.slice(isHexadecimal ? 2 : 1);
  const base = isHexadecimal ? 16 : 10;
  let code = 0;
  for (const digit of digits) {
    const value = Number.parseInt(digit, base);
    code = Number.isNaN(value) ? Number.POSITIVE_INFINITY : code * base + value;
  }
  const isSurrogate = code >= 0xd800 && code <= 0xdfff;
  if (digits === "" || code > 0x10ffff || isSurrogate || isForbidden(code)) {
    return damaged(partName, offset, "a character reference names no character");
  }
  return String.fromCodePoint(code);
}

export function escapeText(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll("\r", "&#13;");
}

/** For double or single quotes alike; line ends and tabs as references, or a reader would take them for spaces. */
export function escapeAttribute(text: string): string {
  return escapeText(text)
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&apos;")
    .replaceAll("\n", "&#10;")
    .replaceAll("\t", "&#9;");
}
