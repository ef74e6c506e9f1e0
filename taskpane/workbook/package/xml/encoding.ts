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

function refuseForbiddenCharacters(text: string, partName: string): void {
  for (let index = 0; index < text.length; index++) {
    if (isForbidden(text.charCodeAt(index))) damaged(partName, index, "it holds a character that XML does not allow");
  }
}
