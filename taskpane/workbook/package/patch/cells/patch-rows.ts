/** The rows of a sheet, rewritten where something changes; every other row and cell keeps its characters. */
import { addressOf, contains } from "../../addresses";
import { refuse } from "../../../xlsx/refusal";
import type { CellToken, RowToken } from "../../sheet/tokens";
import { ByRow } from "../../by-row";
import { ROW } from "../../sheet/store";
import { RowReader } from "../../sheet/walk";
import type { ByteWriter } from "../../../xlsx/byte-writer";
import { LAST_ROW } from "../../../xlsx/limits";
import { decodePiece } from "../../../xlsx/xml/encoding";
import { Splices } from "../../../xlsx/xml/splices";
import type { Arrays } from "./arrays";
import type { CellChanger } from "./cell-change";
import type { CellWriter } from "./cell-text";
import type { FormulaGroups } from "./formula-groups";
import { type Claim, type PlannedCell, type SheetPlan } from "../plan/plan";

const ROWS_AT_A_TIME = 500;

export class RowsPatch {
  /** A row was added, changed or taken away. */
  isChanged = false;
  private readonly waiting: number[];
  private nextWaiting = 0;
  private readonly looksAtEveryCell: boolean;
  private rowsWereInserted = false;
  /** Up to there the part has been copied or replaced. */
  private at: number;
  private splices = new Splices("");
  private claims: ByRow<Claim> | undefined;

  constructor(
    private readonly plan: SheetPlan,
    private readonly out: ByteWriter,
    private readonly writer: CellWriter,
    private readonly changer: CellChanger,
    private readonly groups: FormulaGroups,
    private readonly arrays: Arrays,
  ) {
    this.waiting = [...new Set([...plan.rows.keys(), ...plan.hiddenRows.keys()])].sort((one, other) => one - other);
    this.looksAtEveryCell = plan.renames.length > 0 || arrays.emptiesCells || plan.claims.length > 0;
    this.at = plan.facts.frame.rowsStart;
  }

  /** Everything between the tags around the rows; a sign of life now and then: the share that is done. */
  *run(): Generator<number, void, void> {
    const { frame, store } = this.plan.facts;
    const { rowCount, rowNumbers, rowStarts, rowEnds, rowMarks } = store.data;
    const reader = new RowReader(frame);
    for (let place = 0; place < rowCount; place++) {
      const number = rowNumbers[place] as number;
      const mark = rowMarks[place] as number;
      const inserted = this.rowsBefore(number);
      if (inserted !== "") {
        this.copyTo(rowStarts[place] as number);
        this.write(inserted);
        this.rowsWereInserted = true;
      }
      const isPlanned = this.waiting[this.nextWaiting] === number;
      if (isPlanned) this.nextWaiting++;
      const getsNumber = this.rowsWereInserted && (mark & ROW.isNumberless) !== 0;
      if (!isPlanned && !getsNumber && !this.looksAtEveryCell && !this.concerns(mark)) continue;
      const [start, end] = [rowStarts[place] as number, rowEnds[place] as number];
      const text = decodePiece(frame.part, start, end);
      this.splices = new Splices(text);
      const row = reader.read(text, number, start);
      if (getsNumber) {
        this.splices.insert(afterName(row.start, row.name.raw), ` r="${row.number}"`);
        this.rowsWereInserted = false;
      }
      this.patchRow(row);
      if (!this.splices.isEmpty) {
        this.copyTo(start);
        this.write(this.splices.apply());
        this.at = end;
      }
      if (place % ROWS_AT_A_TIME === 0) yield place / rowCount;
    }
    const after = this.rowsBefore(LAST_ROW + 1);
    if (after !== "") {
      if (rowCount > 0) this.copyTo(rowEnds[rowCount - 1] as number);
      this.write(after);
    }
    this.copyTo(frame.rowsEnd);
  }

  /** Whether shared formulas ask for a look at a row: their texts in order, and those below one that has gone. */
  private concerns(mark: number): boolean {
    return (mark & ROW.hasSharedText) !== 0 || ((mark & ROW.isShared) !== 0 && this.groups.isAnyHeadless);
  }

  private copyTo(end: number): void {
    if (end > this.at) this.out.bytes(this.plan.facts.frame.part.bytes.subarray(this.at, end));
    this.at = end;
  }

  private write(text: string): void {
    this.out.text(text);
    this.isChanged = true;
  }

  private rowsBefore(number: number): string {
    let inserted = "";
    while (this.nextWaiting < this.waiting.length && (this.waiting[this.nextWaiting] as number) < number)
      inserted += this.newRow(this.waiting[this.nextWaiting++] as number);
    return inserted;
  }

  private newRow(number: number): string {
    const absentStyle = (column: number): number => this.columnStyle(column);
    let cells = "";
    for (const cell of inOrder(this.plan.rows.get(number))) {
      const modelStyle = cell.likeColumn === undefined ? undefined : absentStyle(cell.likeColumn);
      cells += this.changer.change(cell, undefined, absentStyle(cell.column), modelStyle);
    }
    const isHidden = this.plan.hiddenRows.get(number) === true;
    if (cells === "" && !isHidden) return "";
    const start = `<${this.writer.rowTag} r="${number}"${isHidden ? ' hidden="1"' : ""}`;
    return cells === "" ? `${start}/>` : `${start}>${cells}</${this.writer.rowTag}>`;
  }

  private patchRow(row: RowToken): void {
    const planned = inOrder(this.plan.rows.get(row.number));
    const absentStyle = (column: number): number => row.styleIndex ?? this.columnStyle(column);
    let next = 0;
    let newCells = "";
    let shifts = false;
    for (const token of row.cells) {
      newCells = "";
      while (next < planned.length && (planned[next] as PlannedCell).column < token.column) {
        newCells += this.changed(planned[next++] as PlannedCell, undefined, row, absentStyle);
      }
      if (newCells !== "") {
        this.splices.insert(token.start, newCells);
        shifts = true;
      }
      let cell: PlannedCell | undefined;
      if (planned[next]?.column === token.column) cell = planned[next++];
      else if (token.formula || this.looksAtEveryCell) cell = this.unplanned(token);
      if (cell) {
        const text = this.changed(cell, token, row, absentStyle);
        this.splices.replace(token.start, token.end, text);
        if (text === "") shifts = true;
      } else if (shifts && !token.hasAddress) {
        this.splices.insert(token.nameEnd, ` r="${addressOf(token.row, token.column)}"`);
      }
    }
    newCells = "";
    while (next < planned.length) newCells += this.changed(planned[next++] as PlannedCell, undefined, row, absentStyle);
    if (newCells !== "") {
      if (row.isSelfClosing) this.splices.replace(row.tagEnd - 2, row.tagEnd, `>${newCells}</${row.name.raw}>`);
      else this.splices.insert(row.cellsEnd, newCells);
      shifts = true;
    }
    if (shifts) this.dropAttribute(row, "spans");
    this.hideOrShow(row);
  }

  private changed(
    cell: PlannedCell,
    token: CellToken | undefined,
    row: RowToken,
    absentStyle: (column: number) => number,
  ): string {
    if (cell.onlyWhereEmpty && token && (token.content !== undefined || token.formula)) {
      refuse(
        `The cell ${addressOf(cell.row, cell.column)} on the sheet "${this.plan.sheet.name}", beside the table, is not empty. ` +
          `Move what stands there, so that the new column has room.`,
      );
    }
    let modelStyle: number | undefined;
    if (cell.likeColumn !== undefined) {
      modelStyle = row.cells.find((one) => one.column === cell.likeColumn)?.styleIndex ?? absentStyle(cell.likeColumn);
    }
    return this.changer.change(cell, token, absentStyle(cell.column), modelStyle);
  }

  /** A cell nobody mentioned: emptied with its former spill, or its formula goes another way; mostly left as it is. */
  private unplanned(token: CellToken): PlannedCell | undefined {
    const { row, column, formula } = token;
    if (this.arrays.isEmptied(row, column) && !formula) return { row, column, value: null };
    if (token.content !== undefined || formula) this.refuseClaimed(token);
    if (!formula) return undefined;
    const element = this.groups.elementOf(token, formula);
    if (element !== formula.source) this.splices.replace(formula.start, formula.end, element);
    return undefined;
  }

  private refuseClaimed(token: CellToken): void {
    const isIn = ({ range, except }: Claim): boolean =>
      contains(range, token.row, token.column) && !(except && contains(except, token.row, token.column));
    this.claims ??= new ByRow(
      this.plan.claims,
      ({ range }) => range.top,
      ({ range }) => range.bottom,
    );
    const claim = this.claims.at(token.row).find(isIn);
    if (claim)
      refuse(`${claim.sentence} (${addressOf(token.row, token.column)} on the sheet "${this.plan.sheet.name}")`);
  }

  private columnStyle(column: number): number {
    const layout = this.plan.facts.layout.columns.find((one) => one.first <= column && column <= one.last);
    return layout?.styleIndex ?? 0;
  }

  private hideOrShow(row: RowToken): void {
    const hide = this.plan.hiddenRows.get(row.number);
    if (hide === undefined || hide === row.isHidden) return;
    if (!hide) this.dropAttribute(row, "hidden");
    else {
      const present = row.attributes.find((one) => one.name === "hidden");
      if (present) this.splices.replace(present.start, present.end, "1");
      else this.splices.insert(afterName(row.start, row.name.raw), ' hidden="1"');
    }
  }

  private dropAttribute(row: RowToken, name: string): void {
    const present = row.attributes.find((one) => one.name === name);
    if (present) this.splices.remove(present.nameStart - 1, present.end + 1);
  }
}

function inOrder(cells: ReadonlyMap<number, PlannedCell> | undefined): PlannedCell[] {
  return cells ? [...cells.values()].sort((one, other) => one.column - other.column) : [];
}

function afterName(start: number, rawName: string): number {
  return start + 1 + rawName.length;
}
