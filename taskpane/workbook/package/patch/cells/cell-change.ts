/** One cell of a sheet, changed: its new text, and what it must be when read again. */
import { addressOf } from "../../addresses";
import type { OpenedPackage } from "../../opened";
import type { CellValue } from "../../contents";
import { isLikeFormula } from "../../../xlsx/like-formula";
import { refuse } from "../../../xlsx/refusal";
import type { CellToken, FormulaToken } from "../../sheet/tokens";
import type { Arrays } from "./arrays";
import type { CellWriter } from "./cell-text";
import type { FormulaGroups } from "./formula-groups";
import type { PlannedCell, SheetPlan } from "../plan/plan";
import type { StyleEdit, RuleLook } from "../../edits";

/** What an edited cell must be on re-reading; `value` undefined: as it was. */
export interface MeantCell {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue | undefined;
  readonly styleIndex: number;
  /** Asked for by name, to be found under that index. */
  readonly numberFormat: string | undefined;
  readonly formula: string | undefined;
  readonly spill: string | undefined;
}

/** What cells need of the rest of the package. */
export interface CellContext {
  readonly opened: OpenedPackage;
  styleFor(style: StyleEdit, base: number): number;
  /** The look of a conditional format, by its place in styles.xml. */
  ruleStyle(look: RuleLook): number;
  /** The same style with the mark of a text or without; as it is where the workbook can take no new style. */
  quoted(isQuoted: boolean, base: number): number;
  /** The `cm` that marks a spilling array; asked for only when one is written. */
  dynamicMark(): number;
}

interface WrittenFormula {
  readonly element: string;
  readonly text: string;
  readonly mark: number;
  readonly spill: string | undefined;
}

export class CellChanger {
  readonly meant: MeantCell[] = [];
  /** A cell got a formula or lost one, or an array became none: the calculation chain is out of date. */
  formulaCellsChanged = false;

  constructor(
    private readonly plan: SheetPlan,
    private readonly context: CellContext,
    private readonly writer: CellWriter,
    private readonly groups: FormulaGroups,
    private readonly arrays: Arrays,
  ) {}

  /**
   * The cell's new text; empty when nothing is left of it. `absentStyle` is the style of a cell that is not in the file,
   * `modelStyle` that of the cell to be styled like.
   */
  change(cell: PlannedCell, token: CellToken | undefined, absentStyle: number, modelStyle: number | undefined): string {
    const presentStyle = token?.styleIndex ?? absentStyle;
    const base = modelStyle ?? presentStyle;
    const asked = cell.style === undefined ? base : this.context.styleFor(cell.style, base);
    this.refuseLocked(cell, presentStyle, asked !== presentStyle);
    const formula = this.formula(cell, token);
    const styleIndex = this.quoted(cell, formula, asked, presentStyle);
    this.noteFormula(token, formula);
    this.meant.push({
      row: cell.row,
      column: cell.column,
      value: cell.value,
      styleIndex,
      numberFormat: typeof cell.style === "object" ? cell.style.numberFormat : undefined,
      formula: formula?.text,
      spill: formula?.spill,
    });
    const content = this.content(cell, token, formula);
    const inside = (formula?.element ?? "") + content.text + (token?.otherChildren ?? "");
    if (inside === "" && styleIndex === absentStyle && !token?.otherAttributes) return "";
    const attributes =
      (styleIndex !== 0 ? ` s="${styleIndex}"` : "") +
      (content.type === "" ? "" : ` t="${content.type}"`) +
      (formula && formula.mark > 0 ? ` cm="${formula.mark}"` : "") +
      (cell.value === undefined && token && token.valueMetadata > 0 ? ` vm="${token.valueMetadata}"` : "") +
      (token?.otherAttributes ?? "");
    return this.writer.cell(cell.row, cell.column, attributes, inside);
  }

  /** A text like a formula is marked as a text, whatever look it gets; whatever else stands there now loses that mark. */
  private quoted(
    { value, row, column }: PlannedCell,
    formula: WrittenFormula | undefined,
    style: number,
    presentStyle: number,
  ): number {
    const { opened } = this.context;
    const isQuoted = opened.isQuoted(style);
    if (value === undefined)
      return opened.isQuoted(presentStyle) && !isQuoted ? this.context.quoted(true, style) : style;
    const isText = typeof value === "string" && !formula && !this.arrays.isResult(row, column);
    if (isText && isLikeFormula(value) && !isQuoted) return this.context.quoted(true, style);
    return !isText && value !== null && isQuoted ? this.context.quoted(false, style) : style;
  }

  private content(cell: PlannedCell, token: CellToken | undefined, formula: WrittenFormula | undefined) {
    if (cell.value !== undefined) {
      const isResult = formula !== undefined || this.arrays.isResult(cell.row, cell.column);
      return this.writer.content(cell.value, isResult, this.where(cell));
    }
    if (!token) return { type: "", text: "" };
    return { type: token.type === "n" ? "" : token.type, text: token.contentSource };
  }

  private formula(cell: PlannedCell, token: CellToken | undefined): WrittenFormula | undefined {
    const present = token?.formula;
    const { formula } = cell;
    if (cell.value === undefined && formula && "text" in formula)
      refuse(`The formula for ${this.where(cell)} came without its result.`);
    if (cell.value === undefined || (formula && "keep" in formula)) {
      if (token && present) return this.kept(token, present, formula);
      if (formula && !this.arrays.isResult(cell.row, cell.column))
        refuse(`The cell ${this.where(cell)} has no formula that could be kept.`);
      return undefined;
    }
    if (token && present) {
      if (present.type === "shared") this.groups.textOf(token, present);
      this.groups.leave(present);
    }
    if (!formula) return undefined;
    if (formula.text === "" || formula.text.startsWith("="))
      refuse(`The formula for ${this.where(cell)} must be given without "=".`);
    return this.written(formula.text, formula.spill);
  }

  private kept(token: CellToken, present: FormulaToken, edit: PlannedCell["formula"]): WrittenFormula {
    const spill = edit?.spill;
    const isAnew = edit !== undefined && "keep" in edit && edit.anew === true;
    const text = this.groups.textOf(token, present);
    const isArray = present.type === "array" || present.type === "dataTable";
    if (spill === undefined || spill === present.ref) {
      const kept = this.groups.elementOf(token, present);
      const element = isAnew ? workedOutNext(kept) : kept;
      return { element, text, mark: token.cellMetadata, spill: isArray ? present.ref : undefined };
    }
    this.groups.leave(present);
    return this.written(text, spill);
  }

  private written(text: string, spill: string | undefined): WrittenFormula {
    if (spill === undefined) return { element: this.writer.formula(text), text, mark: 0, spill };
    const element = this.writer.formula(text, ` t="array" ref="${spill}"`);
    return { element, text, mark: this.context.dynamicMark(), spill };
  }

  private noteFormula(token: CellToken | undefined, formula: WrittenFormula | undefined): void {
    const wasArray = token?.formula?.type === "array";
    const isArray = formula?.spill !== undefined;
    if ((token?.formula === undefined) !== (formula === undefined) || wasArray !== isArray)
      this.formulaCellsChanged = true;
  }

  /** Excel renews results on a protected sheet too; anything else needs an unlocked cell. */
  private refuseLocked(cell: PlannedCell, presentStyle: number, changesStyle: boolean): void {
    if (!this.plan.facts.isProtected || !this.context.opened.isLocked(presentStyle)) return;
    const keeps = cell.value === undefined || (cell.formula !== undefined && "keep" in cell.formula);
    const isSpilled = cell.formula === undefined && this.arrays.isResult(cell.row, cell.column);
    if ((keeps || isSpilled) && !changesStyle) return;
    refuse(
      `The sheet "${this.plan.sheet.name}" is protected and its cell ${addressOf(cell.row, cell.column)} is locked. ` +
        `Unprotect the sheet in Excel (Review, Unprotect Sheet), save, and open it again.`,
    );
  }

  private where(cell: PlannedCell): string {
    return `${addressOf(cell.row, cell.column)} on the sheet "${this.plan.sheet.name}"`;
  }
}

/** The formula's element with the note that its result is to be worked out. */
const workedOutNext = (element: string): string =>
  /^<[^>]*\sca\s*=/.test(element) ? element : element.replace(/^<[^\s/>]+/, '$& ca="1"');
