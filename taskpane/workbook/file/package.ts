/** The parts that hold a package together, and the zip around them. */
import type { ArchiveEntry } from "../xlsx/zip/archive";
import { type Packed, packedNatively } from "../xlsx/zip/pack";
import { packedEntry, writeArchive } from "../xlsx/zip/write-archive";
import { element, part } from "./xml";

const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const RELATIONSHIPS = `${PACKAGE}/relationships`;
const SPREADSHEET = "application/vnd.openxmlformats-officedocument.spreadsheetml";

export interface Part {
  /** Without a leading slash. */
  readonly name: string;
  readonly type: string;
  /** Packed already where it may be longer than one text. */
  readonly xml: string | Packed;
}

export const spreadsheetType = (kind: string): string => `${SPREADSHEET}.${kind}+xml`;

export function relationshipsXml(targets: readonly { readonly type: string; readonly target: string }[]): string {
  const each = targets.map(({ type, target }, index) =>
    element("Relationship", { Id: `rId${index + 1}`, Type: type, Target: target }),
  );
  return part(element("Relationships", { xmlns: RELATIONSHIPS }, each));
}

/** No author, no dates: nothing in the file says who made it, and the same description gives the same bytes. */
export const propertiesXml = (title: string): string =>
  part(
    element(
      "cp:coreProperties",
      { "xmlns:cp": `${PACKAGE}/metadata/core-properties`, "xmlns:dc": "http://purl.org/dc/elements/1.1/" },
      `<dc:title>${title}</dc:title>`,
    ),
  );

function contentTypesXml(parts: readonly Part[]): string {
  return part(
    element("Types", { xmlns: `${PACKAGE}/content-types` }, [
      element("Default", {
        Extension: "rels",
        ContentType: "application/vnd.openxmlformats-package.relationships+xml",
      }),
      element("Default", { Extension: "xml", ContentType: "application/xml" }),
      ...parts
        .filter(({ name }) => !name.endsWith(".rels"))
        .map(({ name, type }) => element("Override", { PartName: `/${name}`, ContentType: type })),
    ]),
  );
}

/** 1 January 2026, in the zip's own way of counting (APPNOTE 4.4.6). Any fixed day would do. */
const DATE = ((2026 - 1980) << 9) | (1 << 5) | 1;

const PLAIN: ArchiveEntry = {
  name: "",
  nameBytes: new Uint8Array(),
  flags: 0,
  method: 8,
  time: 0,
  date: DATE,
  crc: 0,
  packed: new Uint8Array(),
  unpackedSize: 0,
  attributes: 0,
};

export async function zipped(parts: readonly Part[]): Promise<Uint8Array> {
  const all = [{ name: "[Content_Types].xml", xml: contentTypesXml(parts) }, ...parts];
  const encoder = new TextEncoder();
  const entries: ArchiveEntry[] = [];
  for (const { name, xml } of all) {
    const content = typeof xml === "string" ? await packedNatively([encoder.encode(xml)]) : xml;
    entries.push(packedEntry(name, content, PLAIN));
  }
  return writeArchive(entries);
}
