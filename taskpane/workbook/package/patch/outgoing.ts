/** The package on its way out: parts changed, added and removed, and what must be said of them elsewhere in it. */
import { relationshipTypes } from "../parts/names";
import { CONTENT_TYPES_PART, type PackageFiles, relationshipsPart } from "../parts/packageFiles";
import { refuse } from "../refusal";
import { escapeAttribute } from "../xml/characters";
import { appendInside, parseElement } from "../xml/element";
import { decodeXml, encodeXml, type XmlSource } from "../xml/encoding";
import { Splices } from "../xml/splices";
import type { ArchiveEntry } from "../zip/archive";
import { packedEntry, writeArchive } from "../zip/writeArchive";

export class Outgoing {
  readonly added: string[] = [];
  readonly removed: string[] = [];
  private readonly contents = new Map<string, Uint8Array>();

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
    return content ? decodeXml(content, partName) : this.files.xml(partName);
  }

  /** In the encoding the part came in; text that is the same as before changes nothing. */
  change(source: XmlSource, text: string): void {
    if (text !== source.text) this.contents.set(source.partName, encodeXml(text, source.encoding));
  }

  /** A new part beside the workbook part, related to it. */
  add(fileName: string, text: string, contentType: string, relationshipType: string): void {
    const folder = this.workbookPart.slice(0, this.workbookPart.lastIndexOf("/") + 1);
    let target = fileName;
    for (let number = 2; this.files.find(folder + target) !== undefined; number++)
      target = fileName.replace(".", `${number}.`);
    this.contents.set(folder + target, new TextEncoder().encode(text));
    this.added.push(folder + target);
    this.editContentTypes((splices, root) => {
      const name = escapeAttribute(`/${folder}${target}`);
      appendInside(splices, root, `<${root.tag("Override")} PartName="${name}" ContentType="${contentType}"/>`);
    });
    this.editRelationships((splices, root) => {
      const id = freeId(root.children.map((child) => child.get("Id") ?? ""));
      const attributes = `Id="${id}" Type="${relationshipType}" Target="${escapeAttribute(target)}"`;
      appendInside(splices, root, `<${root.tag("Relationship")} ${attributes}/>`);
    });
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

  /** Entries keep their order; what is new comes last. */
  write(): Uint8Array {
    const entries: ArchiveEntry[] = [];
    for (const entry of this.files.entries) {
      if (this.removed.includes(entry.name)) continue;
      const content = this.contents.get(entry.name);
      entries.push(content ? packedEntry(entry.name, content, entry) : entry);
    }
    const like = this.files.entries[0] ?? refuse("There is nothing in this workbook.");
    for (const name of this.added) entries.push(packedEntry(name, this.contents.get(name) as Uint8Array, like));
    return writeArchive(entries);
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

type Edit = (splices: Splices, root: ReturnType<typeof parseElement>) => void;

function freeId(taken: readonly string[]): string {
  const ids = new Set(taken);
  let number = ids.size + 1;
  while (ids.has(`rId${number}`)) number++;
  return `rId${number}`;
}
