/**
 * How a workbook looks: fonts, fills, borders, panes, notes, rules. Read by hucre from a thinned copy of the package.
 *
 * Thinned, because values and formulas come from our own reader (package/), because hucre throws on chart sheets, and
 * because one probe cell for every style index tells each style once instead of once per cell.
 */
import { zipSync } from "fflate";
import { readXlsx, type CellStyle, type Sheet } from "hucre/xlsx";
import type { OpenedPackage, PackageSheet } from "../../package";
import { addressOf } from "../../package";
import { decodeXml, encodeXml } from "../../xlsx/xml/encoding";
import type { SheetFrame } from "../../package/sheet/walk";
import { XmlReader } from "../../xlsx/xml/reader";
import { Splices } from "../../xlsx/xml/splices";

export interface Display {
  /** By style index. */
  readonly styles: readonly (CellStyle | undefined)[];
  /** By sheet name; a sheet that cannot be read has none. */
  readonly sheets: ReadonlyMap<string, Sheet>;
  /** Colours that styles name by number only: [dark 1, light 1, …] as RGB. */
  readonly themeColors: readonly string[];
}

const NOTHING: Display = { styles: [], sheets: new Map(), themeColors: [] };

/** Parts that say nothing about how cells look, and that may be large or strange. */
const LEFT_OUT =
  /^xl\/(?:drawings|charts|chartsheets|media|embeddings|pivot|externalLinks|slicer|timeline|query|printerSettings|ctrlProps|activeX|threadedComments|persons|model|sharedStrings|calcChain|vbaProject|connections|metadata)|^customXml\/|^docProps\//;

const PROBES_IN_A_ROW = 1000;

function probes(prefix: string, styleCount: number): string {
  const rows: string[] = [];
  for (let first = 0; first < styleCount; first += PROBES_IN_A_ROW) {
    const row = first / PROBES_IN_A_ROW + 1;
    let cells = "";
    for (let style = first; style < Math.min(styleCount, first + PROBES_IN_A_ROW); style++) {
      cells += `<${prefix}c r="${addressOf(row, style - first + 1)}" s="${style}"><${prefix}v>0</${prefix}v></${prefix}c>`;
    }
    rows.push(`<${prefix}row r="${row}">${cells}</${prefix}row>`);
  }
  return rows.join("");
}

/** The worksheet without its cells; the first one with the probes instead. */
function thinned({ head, tail, data, part, children }: SheetFrame, styleCount: number): Uint8Array {
  const prefix = data.name.prefix === "" ? "" : `${data.name.prefix}:`;
  const name = data.name.raw;
  // the tag that opens the rows is the last one in the head, the one that closes them the first behind
  const before = head.slice(0, head.lastIndexOf("<"));
  const dataEnd = children.find((child) => child.place === "tail")?.end ?? 0;
  const cells = `<${name}>${probes(prefix, styleCount)}</${name}>`;
  return encodeXml(before + cells + tail.slice(dataEnd), part.encoding);
}

/** The workbook part without the sheets that are no worksheets. */
function withoutOtherSheets(bytes: Uint8Array, partName: string, others: readonly PackageSheet[]): Uint8Array {
  const ids = new Set(others.map((sheet) => sheet.relationshipId));
  const source = decodeXml(bytes, partName);
  const reader = new XmlReader(source);
  const splices = new Splices(source.text);
  while (reader.next()) {
    if (reader.kind !== "start" || reader.name.local !== "sheet") continue;
    const isOther = Array.from({ length: reader.attributes.count }, (_, index) => index).some(
      (index) => /(?:^|:)id$/.test(reader.attributes.name(index)) && ids.has(reader.attributes.value(index)),
    );
    const start = reader.start;
    reader.skipElement();
    if (isOther) splices.remove(start, reader.end);
  }
  return encodeXml(splices.apply(), source.encoding);
}

function thinnedPackage(opened: OpenedPackage): Uint8Array {
  const { files, facts } = opened.parts;
  const worksheets = opened.sheets.filter((sheet) => sheet.kind === "worksheet");
  const frames = new Map(worksheets.map(({ name, partName }) => [partName, facts.get(name)!.frame]));
  const first = worksheets[0]?.partName;
  const parts: Record<string, Uint8Array> = {};
  for (const { name } of files.entries) {
    if (LEFT_OUT.test(name)) continue;
    const frame = frames.get(name);
    parts[name] = frame ? thinned(frame, name === first ? opened.styleCount : 0) : files.content(name);
  }
  const others = opened.sheets.filter((sheet) => sheet.kind !== "worksheet");
  const workbook = Object.keys(parts).find((name) => /^xl\/workbook\d*\.xml$/i.test(name));
  if (others.length > 0 && workbook) parts[workbook] = withoutOtherSheets(parts[workbook]!, workbook, others);
  return zipSync(parts, { level: 0 });
}

/** Never refuses: a workbook that cannot be painted is shown plain, because what is saved does not depend on it. */
export async function readDisplay(opened: OpenedPackage): Promise<Display> {
  try {
    const book = await readXlsx(thinnedPackage(opened), { readStyles: true });
    const names = opened.sheets.filter((sheet) => sheet.kind === "worksheet").map((sheet) => sheet.name);
    const sheets = new Map(book.sheets.map((sheet, index) => [names[index] ?? sheet.name, sheet]));
    const probed = book.sheets[0]?.cells;
    const styles = Array.from(
      { length: opened.styleCount },
      (_, style) => probed?.get(`${Math.floor(style / PROBES_IN_A_ROW)},${style % PROBES_IN_A_ROW}`)?.style,
    );
    return { styles, sheets, themeColors: book.themeColors ?? [] };
  } catch {
    return NOTHING;
  }
}
