/** A cell written out. */
import { addressOf } from "../../addresses";
import type { CellValue } from "../../contents";
import { encodeEscapes } from "../../../xlsx/escaped-strings";
import { refuse } from "../../../xlsx/refusal";
import { escapeText } from "../../../xlsx/xml/characters";

export interface CellContent {
  /** The `t` attribute; empty for a number or nothing. */
  readonly type: string;
  /** The value's element. */
  readonly text: string;
}

/** Writes elements with the prefix of the sheet they go to. */
export class CellWriter {
  readonly cellTag: string;
  readonly rowTag: string;
  private readonly formulaTag: string;
  private readonly valueTag: string;
  private readonly stringTag: string;
  private readonly textTag: string;

  constructor(prefix: string) {
    const tag = (local: string): string => (prefix === "" ? local : `${prefix}:${local}`);
    this.cellTag = tag("c");
    this.rowTag = tag("row");
    this.formulaTag = tag("f");
    this.valueTag = tag("v");
    this.stringTag = tag("is");
    this.textTag = tag("t");
  }

  /**
   * A text of a formula or a spill is a plain result (`str`). A constant text is an inline string: it leaves the shared
   * strings part alone, and no reader can take it for a formula.
   */
  content(value: CellValue, isResult: boolean, ref: string): CellContent {
    if (value === null) return { type: "", text: "" };
    if (typeof value === "number") {
      if (!Number.isFinite(value)) refuse(`The result for ${ref} is no number that a workbook can hold.`);
      return { type: "", text: this.value(String(value)) };
    }
    if (typeof value === "boolean") return { type: "b", text: this.value(value ? "1" : "0") };
    if (typeof value === "object") return { type: "e", text: this.value(escapeText(value.error)) };
    const text = escapeText(encodeEscapes(value));
    if (isResult) return { type: "str", text: this.value(text) };
    const inline = `<${this.textTag} xml:space="preserve">${text}</${this.textTag}>`;
    return { type: "inlineStr", text: `<${this.stringTag}>${inline}</${this.stringTag}>` };
  }

  formula(text: string, attributes = ""): string {
    return `<${this.formulaTag}${attributes}>${escapeText(text)}</${this.formulaTag}>`;
  }

  cell(row: number, column: number, attributes: string, inside: string): string {
    const start = `<${this.cellTag} r="${addressOf(row, column)}"${attributes}`;
    return inside === "" ? `${start}/>` : `${start}>${inside}</${this.cellTag}>`;
  }

  private value(text: string): string {
    return `<${this.valueTag}>${text}</${this.valueTag}>`;
  }
}
