/** Bytes to characters and back, in the encoding the part came in (OPC, ECMA-376 part 2, 8.1.1.2: UTF-8 or UTF-16 only). */
import { damaged } from "./damaged";

export interface Encoding {
  readonly name: "utf-8" | "utf-16le" | "utf-16be";
  readonly hasMark: boolean;
}

export interface XmlSource {
  /** Without the byte order mark. */
  readonly text: string;
  readonly encoding: Encoding;
  readonly partName: string;
}

export function decodeXml(bytes: Uint8Array, partName: string): XmlSource {
  const encoding = encodingOf(bytes);
  const body = encoding.hasMark ? bytes.subarray(encoding.name === "utf-8" ? 3 : 2) : bytes;
  let text: string;
  try {
    text = new TextDecoder(encoding.name, { fatal: true, ignoreBOM: true }).decode(body);
  } catch {
    return damaged(partName, 0, `its bytes are not ${encoding.name.toUpperCase()} text`);
  }
  refuseForbiddenCharacters(text, partName);
  return { text, encoding, partName };
}

/** A part as UTF-8 without a mark, to be read in pieces; the encoding is the one it came in. */
export interface XmlBytes {
  readonly bytes: Uint8Array;
  readonly encoding: Encoding;
  readonly partName: string;
}

export function xmlBytes(content: Uint8Array, partName: string): XmlBytes {
  const encoding = encodingOf(content);
  if (encoding.name === "utf-8") return { bytes: encoding.hasMark ? content.subarray(3) : content, encoding, partName };
  return { bytes: new TextEncoder().encode(decodeXml(content, partName).text), encoding, partName };
}

/** A piece of such a part; it begins and ends where a character does, or it is no text. */
export function decodePiece({ bytes, partName }: XmlBytes, start: number, end: number): string {
  let text: string;
  try {
    text = UTF_8.decode(bytes.subarray(start, end));
  } catch {
    return damaged(partName, start, "its bytes are not UTF-8 text");
  }
  refuseForbiddenCharacters(text, partName, start);
  return text;
}

const UTF_8 = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true });

export function encodeXml(text: string, encoding: Encoding): Uint8Array {
  if (encoding.name === "utf-8") return new TextEncoder().encode(encoding.hasMark ? `\ufeff${text}` : text);
  const marked = encoding.hasMark ? `\ufeff${text}` : text;
  const bytes = new Uint8Array(marked.length * 2);
  const view = new DataView(bytes.buffer);
  const littleEndian = encoding.name === "utf-16le";
  for (let index = 0; index < marked.length; index++) view.setUint16(index * 2, marked.charCodeAt(index), littleEndian);
  return bytes;
}

/** The byte order mark decides; without one a "<" tells how wide a character is (XML 1.0, appendix F). */
function encodingOf(bytes: Uint8Array): Encoding {
  const [first, second, third] = bytes;
  if (first === 0xef && second === 0xbb && third === 0xbf) return { name: "utf-8", hasMark: true };
  if (first === 0xff && second === 0xfe) return { name: "utf-16le", hasMark: true };
  if (first === 0xfe && second === 0xff) return { name: "utf-16be", hasMark: true };
  if (first === 0x3c && second === 0) return { name: "utf-16le", hasMark: false };
  if (first === 0 && second === 0x3c) return { name: "utf-16be", hasMark: false };
  return { name: "utf-8", hasMark: false };
}

/** XML 1.0, production 2. */
export function isForbidden(code: number): boolean {
  return (code < 32 && code !== 9 && code !== 10 && code !== 13) || code === 0xfffe || code === 0xffff;
}

const FORBIDDEN = /[\0-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff]/;

function refuseForbiddenCharacters(text: string, partName: string, base = 0): void {
  const index = text.search(FORBIDDEN);
  if (index >= 0) damaged(partName, base + index, "it holds a character that XML does not allow");
}
