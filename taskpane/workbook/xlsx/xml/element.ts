/** A small part as a tree that remembers where everything stands. Sheets are too large for it: they are read as they flow. */
import { escapeAttribute } from "./characters";
import type { XmlSource } from "./encoding";
import type { ElementName } from "./namespaces";
import { XmlReader } from "./reader";
import type { Splices } from "./splices";

export interface XmlAttribute {
  readonly raw: string;
  readonly namespace: string;
  readonly local: string;
  readonly value: string;
  readonly nameStart: number;
  /** Between the quotes. */
  readonly start: number;
  readonly end: number;
}

export class XmlElement {
  readonly children: XmlElement[] = [];
  /** The characters directly inside. */
  text = "";
  /** The start tag ends here; the end tag starts and the whole element ends there. */
  contentEnd = 0;
  end = 0;

  constructor(
    readonly name: ElementName,
    readonly attributes: readonly XmlAttribute[],
    readonly start: number,
    readonly contentStart: number,
    readonly isSelfClosing: boolean,
  ) {}

  /** An attribute in no namespace. */
  get(local: string): string | undefined {
    return this.attribute(local)?.value;
  }

  attribute(local: string, namespace = ""): XmlAttribute | undefined {
    return this.attributes.find((one) => one.local === local && one.namespace === namespace);
  }

  /** Children in the element's own namespace. */
  all(local: string): XmlElement[] {
    return this.children.filter((child) => child.name.local === local && child.name.namespace === this.name.namespace);
  }

  first(local: string): XmlElement | undefined {
    return this.children.find((child) => child.name.local === local && child.name.namespace === this.name.namespace);
  }

  /** A new child's tag, with the prefix this element has: `tag("f")` is "x:f" inside an x:c. */
  tag(local: string): string {
    return this.name.prefix === "" ? local : `${this.name.prefix}:${local}`;
  }
}

export function parseElement(source: XmlSource): XmlElement {
  const reader = new XmlReader(source);
  let root: XmlElement | undefined;
  while (reader.next()) if (reader.kind === "start") root = readElement(reader);
  return root ?? reader.fail("there is nothing in it");
}

/** At a start tag: the element with all that is in it, the reader then standing at its end. */
export function readElement(reader: XmlReader): XmlElement {
  const root = elementAt(reader);
  if (reader.isSelfClosing) return root;
  const open = [root];
  while (open.length > 0 && reader.next()) {
    const parent = open[open.length - 1] as XmlElement;
    if (reader.kind === "start") {
      const element = elementAt(reader);
      parent.children.push(element);
      if (!reader.isSelfClosing) open.push(element);
    } else if (reader.kind === "end") {
      open.pop();
      parent.contentEnd = reader.start;
      parent.end = reader.end;
    } else if (reader.kind === "text" || reader.kind === "cdata") parent.text += reader.characters();
  }
  return root;
}

function elementAt(reader: XmlReader): XmlElement {
  const element = new XmlElement(reader.name, attributesOf(reader), reader.start, reader.end, reader.isSelfClosing);
  element.contentEnd = element.end = reader.end;
  return element;
}

function attributesOf(reader: XmlReader): XmlAttribute[] {
  const attributes: XmlAttribute[] = [];
  for (let index = 0; index < reader.attributes.count; index++) {
    const raw = reader.attributes.name(index);
    const colon = raw.indexOf(":");
    const namespace = colon < 0 ? "" : reader.prefixUri(raw.slice(0, colon));
    const local = raw.slice(colon + 1);
    attributes.push({ raw, namespace, local, value: reader.attributes.value(index), ...reader.attributes.span(index) });
  }
  return attributes;
}

/** Sets an attribute of an element that stands in the source, or takes it away. */
export function setAttribute(splices: Splices, element: XmlElement, name: string, value: string | undefined): void {
  const present = element.attributes.find((one) => one.raw === name);
  if (present && value === undefined) splices.remove(present.nameStart - 1, present.end + 1);
  else if (present && value !== undefined) splices.replace(present.start, present.end, escapeAttribute(value));
  else if (value !== undefined) splices.insert(endOfTagName(element), ` ${name}="${escapeAttribute(value)}"`);
}

function endOfTagName(element: XmlElement): number {
  return element.start + 1 + element.name.raw.length;
}

/** Puts text at the end of an element's content, opening it first where it is self-closing. */
export function appendInside(splices: Splices, element: XmlElement, text: string): void {
  if (element.isSelfClosing)
    splices.replace(element.contentStart - 2, element.contentStart, `>${text}</${element.name.raw}>`);
  else splices.insert(element.contentEnd, text);
}

/** Puts text before the first child that must come after it, as a schema's sequence demands. */
export function insertInOrder(
  splices: Splices,
  parent: XmlElement,
  local: string,
  text: string,
  order: readonly string[],
): void {
  const place = order.indexOf(local);
  const before = [...parent.children].reverse().find((child) => {
    const at = child.name.namespace === parent.name.namespace ? order.indexOf(child.name.local) : -1;
    return at >= 0 && at <= place;
  });
  if (before) splices.insert(before.end, text);
  else if (parent.isSelfClosing) appendInside(splices, parent, text);
  else splices.insert(parent.contentStart, text);
}
