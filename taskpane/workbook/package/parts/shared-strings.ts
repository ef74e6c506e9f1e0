import { decodePiece, type XmlBytes } from "../../xlsx/xml/encoding";
import { decodeText } from "../../xlsx/xml/characters";
import { XmlReader } from "../../xlsx/xml/reader";
import { decodeEscapes } from "../../xlsx/escaped-strings";
import { MAIN } from "./names";

/** The texts that cells point to. Rich text is flattened, phonetic help (rPh) left out. */
export function readSharedStrings(part: XmlBytes): string[] {
  const reader = new XmlReader({ text: decodePiece(part, 0, part.bytes.length), partName: part.partName });
  const texts: string[] = [];
  while (reader.next()) {
    if (reader.kind !== "start") continue;
    const isText = reader.is(MAIN, "si");
    if (isText) texts.push(readText(reader));
    if (reader.name.prefix === "" && (isText || reader.is(MAIN, "sst"))) readPlainTexts(reader, texts);
  }
  return texts;
}

const STARTS = ["<si><t>", '<si><t xml:space="preserve">'];
const END = "</t></si>";

/** As most of them are written, one after the other; stops at the first that is not so. */
function readPlainTexts(reader: XmlReader, texts: string[]): void {
  const { text, partName } = reader;
  let at = reader.end;
  for (;;) {
    const start = STARTS.find((one) => text.startsWith(one, at));
    if (start === undefined) break;
    const from = at + start.length;
    const end = text.indexOf("<", from);
    if (end < 0 || !text.startsWith(END, end)) break;
    if (text.slice(from, end).includes("]]>")) break;
    texts.push(decodeEscapes(decodeText(text, from, end, partName)));
    at = end + END.length;
  }
  reader.skipTo(at);
}

/** At the start tag of an `si` or `is`: its text, the reader then standing at its end. */
export function readText(reader: XmlReader): string {
  if (reader.isSelfClosing) return "";
  const inside = reader.depth;
  let text = "";
  while (reader.next()) {
    if (reader.kind === "start") {
      if (reader.is(MAIN, "t")) text += reader.elementText();
      else if (reader.is(MAIN, "rPh")) reader.skipElement();
    } else if (reader.kind === "end" && reader.depth < inside) break;
  }
  return decodeEscapes(text);
}
