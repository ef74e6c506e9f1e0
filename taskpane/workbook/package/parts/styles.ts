import type { XmlElement } from "../../xlsx/xml/element";
import { builtInFormat } from "./number-formats";
import { isTrue, wholeNumber } from "./values";

/** What the cell styles say, as far as reading and saving need it. A workbook without styles has one, the default. */
export class Styles {
  private readonly codes = new Map<number, string>();
  private readonly formatIds: number[] = [];
  private readonly locks: boolean[] = [];
  private readonly quotes: boolean[] = [];

  constructor(root?: XmlElement) {
    for (const format of root?.first("numFmts")?.all("numFmt") ?? []) {
      this.codes.set(wholeNumber(format.get("numFmtId"), 0), format.get("formatCode") ?? "General");
    }
    for (const style of root?.first("cellXfs")?.all("xf") ?? []) {
      this.formatIds.push(wholeNumber(style.get("numFmtId"), 0));
      this.locks.push(isTrue(style.first("protection")?.get("locked"), true));
      this.quotes.push(isTrue(style.get("quotePrefix")));
    }
    if (this.formatIds.length === 0) {
      this.formatIds.push(0);
      this.locks.push(true);
    }
  }

  get count(): number {
    return this.formatIds.length;
  }

  numberFormat(styleIndex: number): string {
    const id = this.formatIds[styleIndex] ?? 0;
    return this.codes.get(id) ?? builtInFormat(id) ?? "General";
  }

  isLocked(styleIndex: number): boolean {
    return this.locks[styleIndex] ?? true;
  }

  isQuoted(styleIndex: number): boolean {
    return this.quotes[styleIndex] ?? false;
  }
}
