/** The package on its way out: parts changed, added and removed, and what must be said of them elsewhere in it. */
import type { LoosePart } from "../charts";
import { relationshipTypes } from "../parts/names";
import { CONTENT_TYPES_PART, type PackageFiles, relationshipsPart } from "../parts/package-files";
import { joined } from "../../xlsx/byte-writer";
import { refuse } from "../../xlsx/refusal";
import { escapeAttribute } from "../../xlsx/xml/characters";
import { appendInside, parseElement } from "../../xlsx/xml/element";
import { decodeXml, encodeXml, type XmlBytes, type XmlSource } from "../../xlsx/xml/encoding";
import { Splices } from "../../xlsx/xml/splices";
import type { ArchiveEntry } from "../../xlsx/zip/archive";
import { packed, packedNatively } from "../../xlsx/zip/pack";
import { packedEntry, writeArchive } from "../../xlsx/zip/write-archive";

export class Outgoing {
  readonly added: string[] = [];
  readonly removed: string[] = [];
  /** In chunks. */
  private readonly contents = new Map<string, readonly Uint8Array[]>();

  constructor(
    private readonly files: PackageFiles,
    private readonly workbookPart: string,
  ) {}

  get changed(): readonly string[] {
    return [...this.contents.keys(), ...this.removed];
  }

  /** The part as it stands now, earlier changes included. */
  source(partName: string): XmlSource {
    const content = this.contents.get(partName);
    return content ? decodeXml(joined(content), partName) : this.files.xml(partName);
  }

  /** In the encoding the part came in; text that is the same as before changes nothing. */
  change(source: XmlSource, text: string): void {
    if (text !== source.text) this.contents.set(source.partName, [encodeXml(text, source.encoding)]);
  }

  /** A part that was written in pieces, in UTF-8. */
  changeBytes({ partName, encoding }: XmlBytes, chunks: readonly Uint8Array[]): void {
    if (encoding.name !== "utf-8") {
      this.contents.set(partName, [encodeXml(new TextDecoder().decode(joined(chunks)), encoding)]);
    } else this.contents.set(partName, encoding.hasMark ? [MARK, ...chunks] : chunks);
  }

  /**
   * A new part beside the workbook part or in a folder there, related to it.
   * @returns the id of the relation
   */
  add(fileName: string, text: string, contentType: string, relationshipType: string): string {
    const folder = this.workbookPart.slice(0, this.workbookPart.lastIndexOf("/") + 1);
    let target = fileName;
    for (let number = 2; this.has(folder + target); number++) target = fileName.replace(".", `${number}.`);
    this.contents.set(folder + target, [new TextEncoder().encode(text)]);
    this.added.push(folder + target);
    this.editContentTypes((splices, root) => {
      const name = escapeAttribute(`/${folder}${target}`);
      appendInside(splices, root, `<${root.tag("Override")} PartName="${name}" ContentType="${contentType}"/>`);
    });
    let id = "";
    this.editRelationships((splices, root) => {
      id = freeId(root.children.map((child) => child.get("Id") ?? ""));
      const attributes = `Id="${id}" Type="${relationshipType}" Target="${escapeAttribute(target)}"`;
      appendInside(splices, root, `<${root.tag("Relationship")} ${attributes}/>`);
    });
    return id;
  }

  has(partName: string): boolean {
    return this.files.find(partName) !== undefined || this.contents.has(partName);
  }

  /** A new part that only other parts lead to. */
  addLoose({ name, text, contentType }: LoosePart): void {
    this.contents.set(name, [new TextEncoder().encode(text)]);
    this.added.push(name);
    if (contentType === null) return;
    this.editContentTypes((splices, root) =>
      appendInside(
        splices,
        root,
        `<${root.tag("Override")} PartName="${escapeAttribute(`/${name}`)}" ContentType="${contentType}"/>`,
      ),
    );
  }

  /** The calculation chain lists the cells with formulas; without it a spreadsheet program makes a new one. */
  removeCalculationChain(): void {
    const related = this.files
      .relationships(this.workbookPart)
      .filter((one) => one.type === relationshipTypes.calculationChain);
    for (const { id, target } of related) {
      this.editRelationships((splices, root) => {
        for (const child of root.children) if (child.get("Id") === id) splices.remove(child.start, child.end);
      });
      if (this.files.find(target) === undefined) continue;
      this.removed.push(target);
      this.editContentTypes((splices, root) => {
        for (const child of root.children) {
          if (child.get("PartName")?.toLowerCase() === `/${target}`.toLowerCase())
            splices.remove(child.start, child.end);
        }
      });
    }
  }

  write(): Uint8Array {
    return writeArchive(
      this.parts().map(({ entry, content }) =>
        content ? packedEntry(entry.name, packed(content), entry.like) : entry.like,
      ),
    );
  }

  /** The same by the machine's own deflate, where it has one. */
  async writeNatively(): Promise<Uint8Array> {
    const entries: ArchiveEntry[] = [];
    for (const { entry, content } of this.parts())
      entries.push(content ? packedEntry(entry.name, await packedNatively(content), entry.like) : entry.like);
    return writeArchive(entries);
  }

  /** Entries keep their order; what is new comes last. Without content: as it came. */
  private parts(): readonly OutgoingPart[] {
    const kept = this.files.entries.filter(({ name }) => !this.removed.includes(name));
    const first = this.files.entries[0] ?? refuse("There is nothing in this workbook.");
    return [
      ...kept.map((like) => ({ entry: { name: like.name, like }, content: this.contents.get(like.name) })),
      ...this.added.map((name) => ({ entry: { name, like: first }, content: this.contents.get(name) })),
    ];
  }

  private editContentTypes(edit: Edit): void {
    this.edit(this.files.find(CONTENT_TYPES_PART) ?? CONTENT_TYPES_PART, edit);
  }

  private editRelationships(edit: Edit): void {
    const name = relationshipsPart(this.workbookPart);
    this.edit(this.files.find(name) ?? name, edit);
  }

  private edit(partName: string, edit: Edit): void {
    const source = this.source(partName);
    const splices = new Splices(source.text);
    edit(splices, parseElement(source));
    this.change(source, splices.apply());
  }
}

interface OutgoingPart {
  readonly entry: { readonly name: string; readonly like: ArchiveEntry };
  readonly content: readonly Uint8Array[] | undefined;
}

const MARK = Uint8Array.of(0xef, 0xbb, 0xbf);

type Edit = (splices: Splices, root: ReturnType<typeof parseElement>) => void;

function freeId(taken: readonly string[]): string {
  const ids = new Set(taken);
  let number = ids.size + 1;
  while (ids.has(`rId${number}`)) number++;
  return `rId${number}`;
}
