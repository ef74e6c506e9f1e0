/** One cell as a file writes it. Rows and columns are counted from 0 here. */
import { cellAddress } from "../../../src/columns/formula";
import type { Cell } from "../../../src/worksheet/cell";
import { CellError } from "../../../src/worksheet/error";
import { isLikeFormula } from "../xlsx/like-formula";
import type { Strings } from "./strings";
import type { CellLook, Styles } from "./styles";
import { asText } from "./xml";

/** One formula for many cells (ECMA-376 part 1, 18.3.1.40): its text stands in the first of them. */
export interface SharedFormula {
  readonly group: number;
  readonly ref?: string;
  readonly text?: string;
}

export interface Written {
  readonly value: Cell | CellError;
  /** In file spelling, without "=". */
  readonly formula?: string | SharedFormula;
  readonly look: CellLook;
}

/** So many formulas are remembered as a file writes them. */
const KEPT = 1_000;

export class CellWriter {
  private readonly formulas = new Map<string, string>();

  constructor(
    private readonly styles: Styles,
    private readonly strings: Strings,
  ) {}

  /** A column of a table holds the same on every row. */
  private formulaText(formula: string): string {
    const known = this.formulas.get(formula);
    if (known !== undefined) return known;
    const text = asText(formula);
    if (this.formulas.size >= KEPT) this.formulas.clear();
    this.formulas.set(formula, text);
    return text;
  }

  private formula(formula: string | SharedFormula): string {
    if (typeof formula === "string") return `<f>${this.formulaText(formula)}</f>`;
    const { group, ref, text } = formula;
    if (text === undefined) return `<f t="shared" si="${group}"/>`;
    return `<f t="shared" ref="${ref}" si="${group}">${this.formulaText(text)}</f>`;
  }

  xml(row: number, column: number, { value, formula, look }: Written): string {
    const isQuoted = formula === undefined && typeof value === "string" && isLikeFormula(value);
    const style = this.styles.of(isQuoted ? { ...look, isQuoted } : look);
    const start = `<c r="${cellAddress(row, column)}"${style === 0 ? "" : ` s="${style}"`}`;
    if (formula !== undefined) {
      const [type, result] = resultOf(value);
      return `${start}${type}>${this.formula(formula)}${result}</c>`;
    }
    if (value === null || value === "") return `${start}/>`;
    if (typeof value === "string") return `${start} t="s"><v>${this.strings.of(value)}</v></c>`;
    const [type, result] = resultOf(value);
    return `${start}${type}>${result}</c>`;
  }
}

/** The type attribute and the value; a result that is not known yet has neither. */
function resultOf(value: Cell | CellError): readonly [type: string, result: string] {
  if (value === null) return ["", ""];
  if (value instanceof CellError) return [' t="e"', `<v>${asText(value.code)}</v>`];
  if (typeof value === "string") return [' t="str"', `<v>${asText(value)}</v>`];
  if (typeof value === "boolean") return [' t="b"', `<v>${Number(value)}</v>`];
  if (!Number.isFinite(value)) throw new Error(`A cell cannot hold ${value}`);
  return ["", `<v>${value}</v>`];
}
