/** Copies of fonts and fills with differences. */
import type { StyleChange } from "../../edits";
import { parseElement, type XmlElement } from "../../../xlsx/xml/element";
import { Splices } from "../../../xlsx/xml/splices";
import { refuse } from "../../../xlsx/refusal";

/** Children of a font in the order Excel writes them; readers are said to mind. */
const ORDER = ["b", "i", "strike", "condense", "extend", "outline", "shadow", "u", "vertAlign", "sz", "color"];

export function changedFont(font: string, change: StyleChange, styleSheet: XmlElement): string {
  let text = font;
  if (change.bold !== undefined) text = withChild(text, "b", change.bold ? "" : undefined, styleSheet);
  if (change.italic !== undefined) text = withChild(text, "i", change.italic ? "" : undefined, styleSheet);
  if (change.fontColor !== undefined)
    text = withChild(text, "color", ` rgb="FF${colour(change.fontColor)}"`, styleSheet);
  return text;
}

export function changedFill(fill: string, styleSheet: XmlElement): string {
  const tag = (local: string): string => styleSheet.tag(local);
  return (
    `<${tag("fill")}><${tag("patternFill")} patternType="solid"><${tag("fgColor")} rgb="FF${colour(fill)}"/>` +
    `<${tag("bgColor")} indexed="64"/></${tag("patternFill")}></${tag("fill")}>`
  );
}

/** Replaces a child, adds it in its place, or with undefined takes it away. */
function withChild(text: string, local: string, attributes: string | undefined, styleSheet: XmlElement): string {
  // The copy is read inside an element that declares what styles.xml declares, so that its prefixes keep their meaning.
  const declarations = styleSheet.attributes.filter((one) => one.raw === "xmlns" || one.raw.startsWith("xmlns:"));
  const opening = `<_${declarations.map((one) => ` ${one.raw}="${one.value}"`).join("")}>`;
  const whole = `${opening}${text}</_>`;
  const font = parseElement({ text: whole, encoding: { name: "utf-8", hasMark: false }, partName: "styles" })
    .children[0] as XmlElement;
  const splices = new Splices(whole);
  const present = font.first(local);
  if (present) splices.remove(present.start, present.end);
  if (attributes !== undefined) {
    const element = `<${font.tag(local)}${attributes}/>`;
    const next = font.children.find((child) => child !== present && !comesBefore(child.name.local, local));
    if (font.isSelfClosing) splices.replace(font.contentStart - 2, font.contentStart, `>${element}</${font.name.raw}>`);
    else splices.insert(next?.start ?? font.contentEnd, element);
  }
  return splices.apply().slice(opening.length, -"</_>".length);
}

function comesBefore(one: string, other: string): boolean {
  const place = ORDER.indexOf(one);
  return place >= 0 && place < ORDER.indexOf(other);
}

function colour(text: string): string {
  const isColour = text.length === 6 && [...text].every((digit) => "0123456789abcdefABCDEF".includes(digit));
  return isColour ? text.toUpperCase() : refuse(`"${text}" is no colour: six hexadecimal digits were expected.`);
}
