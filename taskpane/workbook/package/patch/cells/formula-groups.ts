/**
 * Shared formula groups while a sheet is rewritten. When the first cell of a group gets another formula, the rest must not
 * lose theirs: in a single column or row the next cell becomes the first, as Excel does it; otherwise each cell that is left
 * gets its own text.
 */
import { addressOf, parseRange, type Range } from "../../addresses";
import { renameColumns, type ColumnRename } from "../../../../../src/formula/renaming";
import { GroupTexts, type SharedFormula } from "../../sheet/groups";
import type { CellToken, FormulaToken } from "../../sheet/tokens";
import { escapeText } from "../../../xlsx/xml/characters";
import type { CellWriter } from "./cell-text";

export class FormulaGroups {
  private readonly texts: GroupTexts;
  /** Groups without their first cell, and the range they covered. */
  private readonly headless = new Map<number, Range | undefined>();

  constructor(
    ahead: ReadonlyMap<number, SharedFormula>,
    private readonly renames: readonly ColumnRename[],
    private readonly writer: CellWriter,
  ) {
    this.texts = new GroupTexts(ahead);
  }

  /** Whether cells below may have to take a text over. */
  get isAnyHeadless(): boolean {
    return this.headless.size > 0;
  }

  /** The text the cell's formula has, under the columns' new names. To be asked of every shared formula, in order. */
  textOf(token: CellToken, formula: FormulaToken): string {
    return this.renamed(this.texts.textFor(token.row, token.column, formula));
  }

  /** The cell's formula is going away. */
  leave(formula: FormulaToken): void {
    if (formula.type !== "shared" || formula.group === undefined || formula.text === "") return;
    this.headless.set(formula.group, formula.ref === undefined ? undefined : parseRange(formula.ref));
  }

  /** The element as it must stand now: mostly as it stood. */
  elementOf(token: CellToken, formula: FormulaToken): string {
    const { group } = formula;
    if (formula.type === "shared" && group !== undefined) {
      const text = this.textOf(token, formula);
      if (formula.text !== "" && formula.ref !== undefined) this.headless.delete(group);
      if (this.headless.has(group)) return this.adopted(token, group, text);
    }
    if (this.renames.length === 0 || formula.text === "") return formula.source;
    const renamed = this.renamed(formula.text);
    if (renamed === formula.text) return formula.source;
    const startTag = formula.source.slice(0, formula.tagEnd - formula.start);
    const endTag = formula.source.slice(formula.source.lastIndexOf("<"));
    return startTag + escapeText(renamed) + endTag;
  }

  private adopted(token: CellToken, group: number, text: string): string {
    const range = this.headless.get(group);
    const isLine = range !== undefined && (range.left === range.right || range.top === range.bottom);
    if (!isLine) return this.writer.formula(text);
    this.headless.delete(group);
    const ref = `${addressOf(token.row, token.column)}:${addressOf(range.bottom, range.right)}`;
    return this.writer.formula(text, ` t="shared" ref="${ref}" si="${group}"`);
  }

  private renamed(text: string): string {
    return this.renames.length === 0 ? text : renameColumns(text, this.renames);
  }
}
