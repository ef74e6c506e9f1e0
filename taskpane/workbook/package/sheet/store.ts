/**
 * The cells of a worksheet, kept in columns of numbers: a million and a half of them take 40 MB, are gone through in a few
 * hundredths of a second, and go from one thread to another without being copied.
 */
import { addressOf } from "../addresses";
import type { CellFormula, CellValue, PackageCell } from "../contents";
import { GroupTexts, type SharedFormula } from "./groups";

export const KIND = { blank: 0, number: 1, shared: 2, text: 3, boolean: 4, error: 5, date: 6 } as const;

/**
 * A row that holds a formula of a shared group, or the text of one; one whose number is only implied by the row before.
 */
export const ROW = { isShared: 1, isNumberless: 2, hasSharedText: 4 } as const;

/** A formula as it stands in the file. */
export interface StoredFormula {
  /** Empty where a shared formula stands with another cell. */
  readonly text: string;
  readonly kind: CellFormula["kind"];
  readonly group?: number;
  readonly ref?: string;
  readonly isDynamic: boolean;
}

/** What can be handed to another thread. */
export interface StoreData {
  readonly rowCount: number;
  /** By row that the file mentions: its number from 1, its bytes in the part, and its first cell. */
  readonly rowNumbers: Uint32Array;
  readonly rowStarts: Uint32Array;
  readonly rowEnds: Uint32Array;
  /** `ROW` marks. */
  readonly rowMarks: Uint8Array;
  readonly firstCells: Uint32Array;
  readonly count: number;
  /** By cell: its column from 1, its style, what it holds (`KIND`), and the number, or the place of its text. */
  readonly columns: Uint16Array;
  readonly styles: Uint32Array;
  readonly kinds: Uint8Array;
  readonly numbers: Float64Array;
  /** By cell: 0, or one more than the place of its formula. */
  readonly formulaOf: Uint32Array;
  readonly texts: readonly string[];
  readonly formulas: readonly StoredFormula[];
  /** Texts of shared formulas, should a cell refer to one before it comes. */
  readonly groups: ReadonlyMap<number, SharedFormula>;
}

export class CellStore {
  constructor(
    readonly data: StoreData,
    /** The workbook's shared texts. */
    readonly strings: readonly string[],
  ) {}

  value(cell: number): CellValue {
    const { kinds, numbers, texts } = this.data;
    const number = numbers[cell] as number;
    switch (kinds[cell]) {
      case KIND.number:
        return number;
      case KIND.shared:
        return this.strings[number] as string;
      case KIND.text:
      case KIND.date:
        return texts[number] as string;
      case KIND.boolean:
        return number === 1;
      case KIND.error:
        return { error: texts[number] as string };
      default:
        return null;
    }
  }

  type(cell: number): PackageCell["type"] {
    return TYPES[this.data.kinds[cell] as number] as PackageCell["type"];
  }

  formula(cell: number): StoredFormula | undefined {
    const at = this.data.formulaOf[cell] as number;
    return at === 0 ? undefined : this.data.formulas[at - 1];
  }

  /** For going through the formulas of the sheet once, in order. */
  groupTexts(): GroupTexts {
    return new GroupTexts(this.data.groups);
  }

  /** The formula as it reads in that very cell. */
  cellFormula(stored: StoredFormula, row: number, column: number, groups: GroupTexts): CellFormula {
    const { group, ref } = stored;
    return {
      text: groups.textFor(row, column, stored),
      kind: stored.kind,
      ...(group === undefined ? {} : { group }),
      ...(ref === undefined ? {} : { ref }),
      isDynamic: stored.isDynamic,
    };
  }

  *cells(): Generator<PackageCell, void, void> {
    const { rowCount, rowNumbers, firstCells } = this.data;
    const groups = this.groupTexts();
    for (let row = 0; row < rowCount; row++) {
      const end = firstCells[row + 1] as number;
      for (let cell = firstCells[row] as number; cell < end; cell++)
        yield this.cell(cell, rowNumbers[row] as number, groups);
    }
  }

  cell(cell: number, row: number, groups: GroupTexts): PackageCell {
    const column = this.data.columns[cell] as number;
    const stored = this.formula(cell);
    return {
      ref: addressOf(row, column),
      row,
      column,
      styleIndex: this.data.styles[cell] as number,
      type: this.type(cell),
      value: this.value(cell),
      ...(stored ? { formula: this.cellFormula(stored, row, column, groups) } : {}),
    };
  }

  /** The cell in that row and column; -1 where the file mentions none. */
  find(row: number, column: number): number {
    const place = this.rowAt(row);
    if (place < 0) return -1;
    const { firstCells, columns } = this.data;
    let [from, to] = [firstCells[place] as number, firstCells[place + 1] as number];
    const end = to;
    while (from < to) {
      const middle = (from + to) >> 1;
      if ((columns[middle] as number) < column) from = middle + 1;
      else to = middle;
    }
    return from < end && columns[from] === column ? from : -1;
  }

  /** The place of a row among those that the file mentions; -1 for another. */
  rowAt(number: number): number {
    const { rowNumbers, rowCount } = this.data;
    let [from, to] = [0, rowCount];
    while (from < to) {
      const middle = (from + to) >> 1;
      if ((rowNumbers[middle] as number) < number) from = middle + 1;
      else to = middle;
    }
    return from < rowCount && rowNumbers[from] === number ? from : -1;
  }
}

const TYPES: readonly PackageCell["type"][] = ["blank", "number", "text", "text", "boolean", "error", "date"];

/** Grows by doubling. */
function grown<T extends Uint8Array | Uint16Array | Uint32Array | Float64Array>(array: T, least: number): T {
  if (least <= array.length) return array;
  const larger = new (array.constructor as new (length: number) => T)(Math.max(least, array.length * 2));
  larger.set(array as never);
  return larger;
}

export class StoreBuilder {
  private rows = 0;
  count = 0;
  private rowNumbers = new Uint32Array(64);
  private rowStarts = new Uint32Array(64);
  private rowEnds = new Uint32Array(64);
  private rowMarks = new Uint8Array(64);
  private firstCells = new Uint32Array(64);
  private columns = new Uint16Array(512);
  private styles = new Uint32Array(512);
  private kinds = new Uint8Array(512);
  private numbers = new Float64Array(512);
  private formulaOf = new Uint32Array(512);
  private readonly texts: string[] = [];
  private readonly formulas: StoredFormula[] = [];
  /** Plain formulas that were met, by text: a column of a table holds one. */
  private readonly plain = new Map<string, number>();
  /** Formulas whose text stands with another cell, by group. */
  private readonly followers = new Map<number, number>();
  readonly groups = new Map<number, SharedFormula>();
  private mark = 0;

  beginRow(number: number, start: number, hasNumber: boolean): void {
    const row = this.rows;
    if (row + 2 > this.rowNumbers.length) {
      this.rowNumbers = grown(this.rowNumbers, row + 2);
      this.rowStarts = grown(this.rowStarts, row + 2);
      this.rowEnds = grown(this.rowEnds, row + 2);
      this.rowMarks = grown(this.rowMarks, row + 2);
      this.firstCells = grown(this.firstCells, row + 2);
    }
    this.rowNumbers[row] = number;
    this.rowStarts[row] = start;
    this.firstCells[row] = this.count;
    this.mark = hasNumber ? 0 : ROW.isNumberless;
  }

  endRow(end: number): void {
    this.rowEnds[this.rows] = end;
    this.rowMarks[this.rows] = this.mark;
    this.firstCells[++this.rows] = this.count;
  }

  /** As if the row had not begun. */
  dropRow(): void {
    this.count = this.firstCells[this.rows] as number;
  }

  add(column: number, style: number, kind: number, number: number, formula: number): void {
    const at = this.count;
    if (at === this.columns.length) {
      this.columns = grown(this.columns, at + 1);
      this.styles = grown(this.styles, at + 1);
      this.kinds = grown(this.kinds, at + 1);
      this.numbers = grown(this.numbers, at + 1);
      this.formulaOf = grown(this.formulaOf, at + 1);
    }
    this.columns[at] = column;
    this.styles[at] = style;
    this.kinds[at] = kind;
    this.numbers[at] = number;
    this.formulaOf[at] = formula;
    this.count = at + 1;
  }

  addValue(column: number, style: number, type: PackageCell["type"], value: CellValue, formula: number): void {
    const [kind, number] = this.held(type, value);
    this.add(column, style, kind, number, formula);
  }

  private held(type: PackageCell["type"], value: CellValue): readonly [kind: number, number: number] {
    if (value === null) return [KIND.blank, 0];
    if (typeof value === "number") return [KIND.number, value];
    if (typeof value === "boolean") return [KIND.boolean, Number(value)];
    if (typeof value === "object") return [KIND.error, this.text(value.error)];
    return [type === "date" ? KIND.date : KIND.text, this.text(value)];
  }

  formulaAt(place: number): StoredFormula {
    return this.formulas[place - 1] as StoredFormula;
  }

  /** The place of a text. */
  text(text: string): number {
    return this.texts.push(text) - 1;
  }

  /** One more than the place of a formula. */
  formula(formula: StoredFormula, row: number, column: number): number {
    const { group, text } = formula;
    if (formula.kind === "shared" && group !== undefined) {
      this.mark |= text === "" ? ROW.isShared : ROW.isShared | ROW.hasSharedText;
      if (text !== "" && !this.groups.has(group)) this.groups.set(group, { row, column, text });
      if (text === "" && formula.ref === undefined) {
        const known = this.followers.get(group) ?? this.formulas.push(formula);
        this.followers.set(group, known);
        return known;
      }
    }
    if (formula.kind !== "normal" || group !== undefined || formula.ref !== undefined)
      return this.formulas.push(formula);
    const known = this.plain.get(text) ?? this.formulas.push(formula);
    this.plain.set(text, known);
    return known;
  }

  /** The same formula of a shared group as above. */
  again(place: number): number {
    this.mark |= ROW.isShared;
    return place;
  }

  build(): StoreData {
    const { rows, count } = this;
    return {
      rowCount: rows,
      rowNumbers: this.rowNumbers.slice(0, rows),
      rowStarts: this.rowStarts.slice(0, rows),
      rowEnds: this.rowEnds.slice(0, rows),
      rowMarks: this.rowMarks.slice(0, rows),
      firstCells: this.firstCells.slice(0, rows + 1),
      count,
      columns: this.columns.slice(0, count),
      styles: this.styles.slice(0, count),
      kinds: this.kinds.slice(0, count),
      numbers: this.numbers.slice(0, count),
      formulaOf: this.formulaOf.slice(0, count),
      texts: this.texts,
      formulas: this.formulas,
      groups: this.groups,
    };
  }
}

/** Of a sheet in which nothing stands. */
export const emptyStore = (): CellStore => new CellStore(new StoreBuilder().build(), []);
