/** What a worksheet part holds, with the places where it stands. */
import type { XmlElement } from "../../xlsx/xml/element";
import type { ElementName } from "../../xlsx/xml/namespaces";

export interface FormulaToken {
  /** Decoded; empty where a shared formula stands with another cell. */
  readonly text: string;
  readonly type: string;
  readonly group?: number;
  readonly ref?: string;
  readonly start: number;
  readonly tagEnd: number;
  readonly end: number;
  /** The whole element as it stands. */
  readonly source: string;
}

export interface CellToken {
  readonly row: number;
  readonly column: number;
  /** False where the address is only implied by the cell before. */
  readonly hasAddress: boolean;
  readonly start: number;
  /** The offset after the element's name. */
  readonly nameEnd: number;
  readonly end: number;
  readonly styleIndex: number;
  /** The `t` attribute; "n" when absent. */
  readonly type: string;
  /** The characters of `v`; of an inline string its text. Undefined when there is neither. */
  readonly content: string | undefined;
  /** The element of the content as it stands. */
  readonly contentSource: string;
  readonly formula: FormulaToken | undefined;
  readonly cellMetadata: number;
  readonly valueMetadata: number;
  /** Other attributes and children, as they stand, to be carried along when the cell is rewritten. */
  readonly otherAttributes: string;
  readonly otherChildren: string;
}

export interface AttributePlace {
  readonly name: string;
  readonly nameStart: number;
  readonly start: number;
  readonly end: number;
}

export interface RowToken {
  readonly number: number;
  readonly hasNumber: boolean;
  readonly name: ElementName;
  readonly attributes: readonly AttributePlace[];
  readonly start: number;
  readonly tagEnd: number;
  /** Where a further cell may be put: before an extension list or the end tag. */
  readonly cellsEnd: number;
  readonly end: number;
  readonly isSelfClosing: boolean;
  readonly isHidden: boolean;
  readonly height?: number;
  /** The style of empty cells, where the row has one of its own. */
  readonly styleIndex?: number;
  readonly cells: readonly CellToken[];
}

/** The part before its rows, and the one behind them: offsets count from the beginning of either. */
export type Beside = "head" | "tail";

export interface SheetChild {
  readonly name: ElementName;
  readonly place: Beside;
  readonly start: number;
  readonly end: number;
  /** The small ones, taken apart; the others (rules, validation, extensions) are only passed over. */
  readonly element?: XmlElement;
}

/** Where the rows stand. */
export interface SheetDataPlace {
  readonly name: ElementName;
  readonly isSelfClosing: boolean;
}
