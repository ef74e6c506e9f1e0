/** The parts of an opened package, unpacked, found by relationship and content type (OPC, ECMA-376 part 2). */
import type { Limits } from "../../xlsx/limits";
import { refuse } from "../../xlsx/refusal";
import { decodeXml, type XmlBytes, xmlBytes, type XmlSource } from "../../xlsx/xml/encoding";
import { parseElement, type XmlElement } from "../../xlsx/xml/element";
import { type ArchiveEntry, readArchive } from "../../xlsx/zip/archive";
import { type Unpacked, Unpacker } from "../../xlsx/zip/unpack";
import { CONTENT_TYPES, RELATIONSHIPS } from "./names";

export const CONTENT_TYPES_PART = "[Content_Types].xml";

export interface Relationship {
  readonly id: string;
  readonly type: string;
  /** The part's name in the archive; empty for a target outside the package. */
  readonly target: string;
}

export class PackageFiles {
  readonly entries: readonly ArchiveEntry[];
  private readonly contents = new Map<string, Uint8Array>();
  private readonly sources = new Map<string, XmlSource>();
  private readonly entryOf = new Map<string, ArchiveEntry>();
  /** Part names are the same whatever their case. */
  private readonly realNames = new Map<string, string>();
  private readonly overrides = new Map<string, string>();
  private readonly defaults = new Map<string, string>();

  /** With an `earlier` state of the package, parts that are still packed the same are not unpacked again. */
  constructor(
    readonly bytes: Uint8Array,
    limits: Limits,
    unpacked?: Unpacked,
    earlier?: PackageFiles,
  ) {
    this.entries = unpacked?.entries ?? readArchive(bytes, limits);
    const unpacker = new Unpacker(limits);
    for (const entry of this.entries) {
      const given = unpacked?.contents.get(entry.name);
      const content = given ? unpacker.take(given) : (earlier?.sameContent(entry) ?? unpacker.unpack(entry));
      this.contents.set(entry.name, content);
      this.entryOf.set(entry.name, entry);
      this.realNames.set(entry.name.toLowerCase(), entry.name);
    }
    this.readContentTypes();
  }

  /** The archive's own spelling of a part's name, or undefined when there is no such part. */
  find(name: string): string | undefined {
    return this.realNames.get(name.toLowerCase()) ?? this.realNames.get(withoutEscapes(name).toLowerCase());
  }

  content(name: string): Uint8Array {
    return (
      this.contents.get(name) ??
      refuse(`This workbook is damaged: its part ${name} is missing. Open it in Excel and save a copy.`)
    );
  }

  /** The content of a part of the same name, if it is packed byte for byte the same. */
  sameContent(entry: ArchiveEntry): Uint8Array | undefined {
    const own = this.entryOf.get(entry.name);
    if (!own || own.method !== entry.method || own.crc !== entry.crc) return undefined;
    return sameBytes(own.packed, entry.packed) ? this.content(own.name) : undefined;
  }

  /** For a part that is read in pieces. */
  part(name: string): XmlBytes {
    return xmlBytes(this.content(name), name);
  }

  /** Small parts, decoded once. */
  xml(name: string): XmlSource {
    let source = this.sources.get(name);
    if (!source) this.sources.set(name, (source = decodeXml(this.content(name), name)));
    return source;
  }

  tree(name: string): XmlElement {
    return parseElement(this.xml(name));
  }

  contentType(name: string): string {
    const key = name.toLowerCase();
    return this.overrides.get(key) ?? this.defaults.get(key.slice(key.lastIndexOf(".") + 1)) ?? "";
  }

  /** Of a part, or with "" of the package itself. */
  relationships(partName: string): Relationship[] {
    const name = this.find(relationshipsPart(partName));
    if (name === undefined) return [];
    const root = this.tree(name);
    return root.children
      .filter((child) => child.name.namespace === RELATIONSHIPS && child.name.local === "Relationship")
      .map((child) => ({
        id: child.get("Id") ?? "",
        type: child.get("Type") ?? "",
        target: child.get("TargetMode") === "External" ? "" : this.resolve(partName, child.get("Target") ?? ""),
      }));
  }

  private resolve(source: string, target: string): string {
    const withoutFragment = target.split("#")[0] as string;
    const path = withoutFragment.startsWith("/") ? [] : source.split("/").slice(0, -1);
    for (const segment of withoutFragment.split("/")) {
      if (segment === "..") path.pop();
      else if (segment !== "" && segment !== ".") path.push(segment);
    }
    const name = path.join("/");
    return this.find(name) ?? name;
  }

  private readContentTypes(): void {
    const name = this.find(CONTENT_TYPES_PART);
    if (name === undefined) return;
    for (const child of this.tree(name).children) {
      if (child.name.namespace !== CONTENT_TYPES) continue;
      const type = child.get("ContentType") ?? "";
      if (child.name.local === "Default") this.defaults.set((child.get("Extension") ?? "").toLowerCase(), type);
      if (child.name.local === "Override")
        this.overrides.set((child.get("PartName") ?? "").slice(1).toLowerCase(), type);
    }
  }
}

function sameBytes(one: Uint8Array, other: Uint8Array): boolean {
  if (one.length !== other.length) return false;
  for (let index = 0; index < one.length; index++) if (one[index] !== other[index]) return false;
  return true;
}

export function relationshipsPart(partName: string): string {
  const slash = partName.lastIndexOf("/") + 1;
  return `${partName.slice(0, slash)}_rels/${partName.slice(slash)}.rels`;
}

function withoutEscapes(name: string): string {
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}
