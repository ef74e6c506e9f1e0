/**
 * Reads the parts of an .xlsx package with the browser's own XML parser, so that what we saved is judged by something
 * that is not ours. Only the zip is opened by the library that the project uses too.
 */
import { unzipSync } from "fflate";
import type { Page } from "playwright-core";

export type Parts = Readonly<Record<string, Uint8Array>>;

export const partsOf = (bytes: Uint8Array): Parts => unzipSync(bytes);

export function xmlText(bytes: Uint8Array): string {
  const utf16 =
    bytes[0] === 0xff && bytes[1] === 0xfe ? "utf-16le" : bytes[0] === 0xfe && bytes[1] === 0xff ? "utf-16be" : null;
  return new TextDecoder(utf16 ?? "utf-8").decode(bytes);
}

export interface CellXml {
  readonly ref: string;
  readonly type: string;
  readonly style: number;
  /** Shared strings resolved; numbers as texts; null where there is no value. */
  readonly value: string | null;
  readonly formula: string | null;
}

export interface RuleXml {
  readonly sqref: string;
  readonly type: string;
  readonly formulas: readonly string[];
  /** Place in the styles part's list of looks for rules. */
  readonly look: number;
}

export interface SheetXml {
  readonly cells: Readonly<Record<string, CellXml>>;
  /** The part without the cells given and the rules of colour on them, its dimension, spans and columns: equal before and after, or something else changed. */
  readonly rest: string;
  /** Rules of colour that stand on the columns of the cells given and on nothing else. */
  readonly rules: readonly RuleXml[];
  /** Columns from A on, width and hidden: compared up to the last column that was there before. */
  readonly columns: readonly string[];
}

/** @param without addresses left out of `rest` */
export function readSheet(
  tools: Page,
  sheet: Uint8Array,
  strings: Uint8Array | undefined,
  without: readonly string[] = [],
): Promise<SheetXml> {
  return tools.evaluate(
    ([xml, shared, left]) => {
      const parse = (text: string) => {
        const parsed = new DOMParser().parseFromString(text, "application/xml");
        if (parsed.querySelector("parsererror")) throw new Error("not well-formed");
        return parsed;
      };
      const all = (from: Document | Element, name: string) => [...from.getElementsByTagNameNS("*", name)];
      const texts =
        shared === null
          ? []
          : all(parse(shared), "si").map((si) =>
              all(si, "t")
                .filter((t) => t.parentElement!.localName !== "rPh")
                .map((t) => t.textContent)
                .join(""),
            );
      const page = parse(xml);
      const cells: Record<string, CellXml> = {};
      const leave = new Set(left);
      for (const c of all(page, "c")) {
        const ref = c.getAttribute("r") ?? "";
        const type = c.getAttribute("t") ?? "n";
        const v = all(c, "v")[0]?.textContent ?? null;
        const value =
          type === "s" && v !== null
            ? (texts[Number(v)] ?? null)
            : type === "inlineStr"
              ? all(c, "t")
                  .map((t) => t.textContent)
                  .join("")
              : v;
        cells[ref] = {
          ref,
          type,
          style: Number(c.getAttribute("s") ?? 0),
          value,
          formula: all(c, "f")[0]?.textContent ?? null,
        };
        if (leave.has(ref)) c.remove();
        // A result goes with what the screen shows (theResultsStay); its formula is compared with the rest.
        if (all(c, "f").length > 0) {
          for (const v of all(c, "v")) v.remove();
          c.removeAttribute("t");
        }
      }
      // A table may go on below its last filled row.
      const leftColumns = new Set(left.map((ref) => ref.replace(/\d/g, "")));
      const isLeftOut = (sqref: string): boolean =>
        sqref.split(" ").every((area) => area.split(":").every((ref) => leftColumns.has(ref.replace(/[$\d]/g, ""))));
      const rules: { sqref: string; type: string; formulas: string[]; look: number }[] = [];
      for (const list of all(page, "conditionalFormatting")) {
        const sqref = list.getAttribute("sqref");
        // Rules of Excel's newer kinds say their cells in an element.
        if (sqref === null || !isLeftOut(sqref)) continue;
        for (const rule of all(list, "cfRule")) {
          rules.push({
            sqref,
            type: rule.getAttribute("type") ?? "",
            formulas: all(rule, "formula").map((formula) => formula.textContent ?? ""),
            look: Number(rule.getAttribute("dxfId")),
          });
        }
        list.remove();
      }
      const columns: string[] = [];
      for (const col of all(page, "col")) {
        const attributes = [...col.attributes].filter(({ name }) => name !== "min" && name !== "max");
        const said = attributes
          .map(({ name, value }) => `${name}=${value}`)
          .sort()
          .join(" ");
        const last = Math.min(Number(col.getAttribute("max")), 1000);
        for (let i = Number(col.getAttribute("min")); i <= last; i++) columns[i] = said;
      }
      for (const gone of [...all(page, "dimension"), ...all(page, "cols")]) gone.remove();
      for (const row of all(page, "row")) {
        row.removeAttribute("spans");
        // A row of the list that held nothing at all stands in the file only for the cells that we added.
        if (row.children.length === 0 && row.attributes.length <= 1) row.remove();
      }
      return {
        cells,
        rules,
        columns: Array.from(columns, (c) => c ?? ""),
        rest: new XMLSerializer().serializeToString(page),
      };
    },
    [xmlText(sheet), strings ? xmlText(strings) : null, [...without]] as const,
  );
}

export interface TableXml {
  readonly name: string;
  readonly ref: string;
  readonly filterRef: string | null;
  readonly columns: readonly { readonly name: string; readonly id: string; readonly formula: string | null }[];
  readonly count: string | null;
  /** The part without the columns named, their count and the two areas. */
  readonly rest: string;
}

export function readTable(tools: Page, part: Uint8Array, without: readonly string[] = []): Promise<TableXml> {
  return tools.evaluate(
    ([xml, left]) => {
      const page = new DOMParser().parseFromString(xml, "application/xml");
      const all = (name: string) => [...page.getElementsByTagNameNS("*", name)];
      const table = page.documentElement;
      const filter = [...table.children].find((child) => child.localName === "autoFilter");
      const columns = all("tableColumn").map((column) => ({
        name: column.getAttribute("name")!,
        id: column.getAttribute("id")!,
        formula: column.getElementsByTagNameNS("*", "calculatedColumnFormula")[0]?.textContent ?? null,
      }));
      const found = {
        name: table.getAttribute("displayName")!,
        ref: table.getAttribute("ref")!,
        filterRef: filter?.getAttribute("ref") ?? null,
        columns,
        count: all("tableColumns")[0]?.getAttribute("count") ?? null,
      };
      for (const column of all("tableColumn")) if (left.includes(column.getAttribute("name")!)) column.remove();
      all("tableColumns")[0]?.removeAttribute("count");
      table.removeAttribute("ref");
      filter?.removeAttribute("ref");
      return { ...found, rest: new XMLSerializer().serializeToString(page) };
    },
    [xmlText(part), [...without]] as const,
  );
}

/** Children of a few lists that may only grow at their end (styles), each as text; and the part without them. */
export function readGrowing(
  tools: Page,
  part: Uint8Array,
  lists: readonly string[],
): Promise<{ lists: Record<string, string[]>; rest: string }> {
  return tools.evaluate(
    ([xml, names]) => {
      const page = new DOMParser().parseFromString(xml, "application/xml");
      const found: Record<string, string[]> = {};
      for (const name of names) {
        const list = [...page.documentElement.children].find((child) => child.localName === name);
        found[name] = [...(list?.children ?? [])].map((child) => new XMLSerializer().serializeToString(child));
        list?.remove();
      }
      return { lists: found, rest: new XMLSerializer().serializeToString(page) };
    },
    [xmlText(part), [...lists]] as const,
  );
}

/** A workbook part without one defined name (and without the list, where it is empty then). */
export function withoutName(
  tools: Page,
  part: Uint8Array,
  name: string,
): Promise<{ refersTo: string | null; rest: string }> {
  return tools.evaluate(
    ([xml, left]) => {
      const page = new DOMParser().parseFromString(xml, "application/xml");
      const list = page.getElementsByTagNameNS("*", "definedNames")[0];
      const defined = [...(list?.children ?? [])].find((child) => child.getAttribute("name") === left);
      const refersTo = defined?.textContent ?? null;
      defined?.remove();
      if (list && list.children.length === 0) list.remove();
      return { refersTo, rest: new XMLSerializer().serializeToString(page) };
    },
    [xmlText(part), name] as const,
  );
}

/** Number format code of a style index, through cellXfs and numFmts; "id 4" for a built-in one. */
export function formatOf(tools: Page, styles: Uint8Array, index: number): Promise<string> {
  return tools.evaluate(
    ([xml, style]) => {
      const page = new DOMParser().parseFromString(xml, "application/xml");
      const xfs = page.getElementsByTagNameNS("*", "cellXfs")[0]!;
      const id = xfs.children[style]!.getAttribute("numFmtId")!;
      const custom = [...page.getElementsByTagNameNS("*", "numFmt")].find((f) => f.getAttribute("numFmtId") === id);
      return custom?.getAttribute("formatCode") ?? `id ${id}`;
    },
    [xmlText(styles), index] as const,
  );
}

/** Where the parts of a workbook stand, by their relationships. */
export async function layoutOf(tools: Page, parts: Parts, sheetName: string) {
  const read = (name: string) => xmlText(parts[name]!);
  const workbook = "xl/workbook.xml";
  return tools.evaluate(
    ([book, rels, name]) => {
      const parse = (text: string) => new DOMParser().parseFromString(text, "application/xml");
      const targets = [...parse(rels).getElementsByTagNameNS("*", "Relationship")].map((r) => ({
        id: r.getAttribute("Id"),
        type: r.getAttribute("Type")!.split("/").at(-1)!,
        target: r.getAttribute("Target")!,
      }));
      const full = (target: string) => (target.startsWith("/") ? target.slice(1) : `xl/${target}`);
      const sheet = [...parse(book).getElementsByTagNameNS("*", "sheet")].find((s) => s.getAttribute("name") === name)!;
      const id = [...sheet.attributes].find((a) => a.localName === "id" && a.namespaceURI !== null)!.value;
      const byType = (type: string) => targets.filter((t) => t.type === type).map((t) => full(t.target))[0];
      return {
        sheet: full(targets.find((t) => t.id === id)!.target),
        strings: byType("sharedStrings"),
        styles: byType("styles")!,
        calcChain: byType("calcChain"),
      };
    },
    [read(workbook), read("xl/_rels/workbook.xml.rels"), sheetName] as const,
  );
}
