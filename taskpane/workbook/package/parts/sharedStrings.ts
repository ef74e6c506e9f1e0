import type { XmlSource } from "../xml/encoding";
import { XmlReader } from "../xml/reader";
import { decodeEscapes } from "./escapedStrings";
import { MAIN } from "./names";

/** The texts that cells point to. Rich text is flattened, phonetic help (rPh) left out. */
export function readSharedStrings(source: XmlSource): string[] {
  const reader = new XmlReader(source);
  const texts: string[] = [];
  while (reader.next()) {
    if (reader.kind === "start" && reader.is(MAIN, "si")) texts.push(readText(reader));
  }
  return texts;
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
