/** metadata.xml with a record that marks spilling arrays (MS-XLSX 2.3.4, XLDAPR; the bytes are those other writers agree on). */
import type { DynamicArrayMetadata } from "../../parts/metadata";
import { DYNAMIC_ARRAY, MAIN } from "../../parts/names";
import { wholeNumber } from "../../parts/values";
import { appendInside, insertInOrder, parseElement, setAttribute, type XmlElement } from "../../../xlsx/xml/element";
import type { XmlSource } from "../../../xlsx/xml/encoding";
import { Splices } from "../../../xlsx/xml/splices";

const ORDER = [
  "metadataTypes",
  "metadataStrings",
  "mdxMetadata",
  "futureMetadata",
  "cellMetadata",
  "valueMetadata",
  "extLst",
];

const TYPE_ATTRIBUTES =
  'name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" ' +
  'clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"';

/** The `cm` to write: a present mark, or the one that `withSpillMark` will add. */
export function spillMark(metadata: DynamicArrayMetadata): { readonly mark: number; readonly isNew: boolean } {
  const [first] = metadata.marks;
  return first === undefined ? { mark: metadata.cellRecords + 1, isNew: true } : { mark: first, isNew: false };
}

export function newMetadata(): string {
  const empty = `<metadata xmlns="${MAIN}"></metadata>`;
  const text = withSpillMark(
    { text: empty, encoding: { name: "utf-8", hasMark: false }, partName: "metadata" },
    { marks: new Set(), cellRecords: 0, typeIndex: 0, typeCount: 0, dynamicRecord: -1, futureRecords: 0 },
  );
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n${text}`;
}

export function withSpillMark(source: XmlSource, metadata: DynamicArrayMetadata): string {
  const root = parseElement(source);
  const splices = new Splices(source.text);
  const additions: string[] = [];
  const add = (name: string, present: XmlElement | undefined, text: string, count: number): void => {
    if (present) {
      setAttribute(splices, present, "count", String(count));
      appendInside(splices, present, text);
    } else additions.push(name, text);
  };
  const tag = (local: string): string => root.tag(local);
  const typeIndex = metadata.typeIndex || metadata.typeCount + 1;
  const record = metadata.dynamicRecord >= 0 ? metadata.dynamicRecord : metadata.futureRecords;

  if (metadata.typeIndex === 0)
    add("metadataTypes", root.first("metadataTypes"), `<${tag("metadataType")} ${TYPE_ATTRIBUTES}/>`, typeIndex);
  if (metadata.dynamicRecord < 0) {
    const properties = `<xda:dynamicArrayProperties xmlns:xda="${DYNAMIC_ARRAY}" fDynamic="1" fCollapsed="0"/>`;
    const extension = `<${tag("ext")} uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}">${properties}</${tag("ext")}>`;
    const text = `<${tag("bk")}><${tag("extLst")}>${extension}</${tag("extLst")}></${tag("bk")}>`;
    const present = root.all("futureMetadata").find((one) => one.get("name") === "XLDAPR");
    add("futureMetadata", present, text, record + 1);
  }
  const cells = root.first("cellMetadata");
  const cellText = `<${tag("bk")}><${tag("rc")} t="${typeIndex}" v="${record}"/></${tag("bk")}>`;
  add("cellMetadata", cells, cellText, wholeNumber(cells?.get("count"), metadata.cellRecords) + 1);

  for (let index = 0; index < additions.length; index += 2) {
    const name = additions[index] as string;
    const type = name === "futureMetadata" ? ' name="XLDAPR"' : "";
    const text = `<${tag(name)}${type} count="1">${additions[index + 1]}</${tag(name)}>`;
    insertInOrder(splices, root, name, text, ORDER);
  }
  return splices.apply();
}
