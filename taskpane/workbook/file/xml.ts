/** Pieces of XML: attributes and texts as a file writes them. */
import { encodeEscapes } from "../xlsx/escaped-strings";
import { escapeAttribute, escapeText } from "../xlsx/xml/characters";

export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

function attributesText(attributes: Attributes): string {
  let text = "";
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined) continue;
    text += ` ${name}="${typeof value === "string" ? escapeAttribute(encodeEscapes(value, "attribute")) : Number(value)}"`;
  }
  return text;
}

/** For an element that is written in pieces. */
export const startTag = (name: string, attributes: Attributes): string => `<${name}${attributesText(attributes)}>`;

/** An element; without content it closes itself. Content is XML already. */
export function element(name: string, attributes: Attributes, content: string | readonly string[] = ""): string {
  const inside = typeof content === "string" ? content : content.join("");
  const start = `<${name}${attributesText(attributes)}`;
  return inside === "" ? `${start}/>` : `${start}>${inside}</${name}>`;
}

/** A list with its count, or nothing where it is empty. */
export const counted = (name: string, items: readonly string[]): string =>
  items.length === 0 ? "" : element(name, { count: items.length }, items);

export const asText = (text: string): string => escapeText(encodeEscapes(text));

export const part = (root: string): string => `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n${root}`;
