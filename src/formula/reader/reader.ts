/**
 * Works a workbook's formulas out as they stand: each is compiled once for all rows that share it, whole columns are
 * looked up through indexes, and an edit works out what depends on it and no more.
 *
 * Where a formula is not known here, its cells keep what somebody else puts there, and are read like typed ones.
 */
import { structuredToA1, type TableGeometry } from "../structured";
import { relativeForm } from "../moving";
import { parse } from "../parse";
import { Block, Sheet, type Column } from "./cells";
import { compile, Compiler, type Surroundings } from "./compile";
import { NotKnown } from "./piece";
import { firstWhere } from "./column-index";
import { note, Renewal, type Noted } from "./renewal";
import { Run } from "./run";
import { isSame, type Value } from "./values";
import { nobody } from "./watch";

export interface ReaderBook {
  readonly sheets: readonly string[];
  readonly tables: readonly TableGeometry[];
  /** In English, without "=". */
  readonly names: readonly BookName[];
  /** The day that counts as today; undefined where nobody has said which. */
  readonly today: number | undefined;
  /** One of our own functions by the name that a formula calls it by, in capitals; undefined for other names. */
  readonly ours: Surroundings["ours"];
}

export interface BookName {
  readonly name: string;
  readonly refersTo: string;
  /** The one sheet that knows it; left out: all of them. */
  readonly sheet?: string;
}

export interface Place {
  readonly sheet: string;
  /** Rows and columns are counted from 0. */
  readonly row: number;
  readonly column: number;
}

/** A formula that is another engine's, and the piece that is not known here. */
export interface Unknown extends Place {
  readonly because: string;
}

export class Reader {
  private readonly sheets: ReadonlyMap<string, Sheet>;
  private around: Surroundings;
  private runs: Run[] = [];
  private byColumn = new Map<Column, Run[]>();
  private read = new Set<Column>();
  private renewal: Renewal | undefined;
  unknown: Unknown[] = [];

  constructor(private book: ReaderBook) {
    this.sheets = new Map(book.sheets.map((name) => [name.toLowerCase(), new Sheet(name)]));
    this.around = surroundings(book, this.sheets);
  }

  /**
   * The same workbook, where rows, formulas or names are other ones now. All formulas are filled in again and, of the
   * sheets named, all values put; then `workOn`.
   * @param book with the sheets that it had, and today the day that it was
   * @param moved sheets whose cells may hold anything else
   */
  renew(book: ReaderBook, moved: Iterable<string>): void {
    const sheets = [...moved].map((name) => this.sheets.get(name.toLowerCase())!);
    this.renewal = new Renewal(sheets, this.byColumn, this.read);
    this.book = book;
    this.around = surroundings(book, this.sheets);
    this.runs = [];
    this.byColumn = new Map();
    this.read = new Set();
    this.unknown = [];
  }

  private columnOf({ sheet, column }: Omit<Place, "row">): Column {
    const found = this.sheets.get(sheet.toLowerCase());
    if (!found) throw new Error(`The workbook has no sheet ${sheet}`);
    return found.column(column);
  }

  /** A typed value, or what another engine worked out. Before `work`; later it is a change. */
  put(place: Place, value: Value): void {
    const column = this.columnOf(place);
    if (this.renewal) this.renewal.put(column, place.row, value);
    else column.set(place.row, value);
  }

  /**
   * A formula that stands in a column from one row to another.
   * @param text for the first row, without "="; in Excel's own English spelling, structured references and all
   * @param except rows between where something else stands
   */
  fill({ sheet, column, row }: Place, bottom: number, text: string, except: Iterable<number> = []): void {
    const place = this.columnOf({ sheet, column });
    try {
      const plain = structuredToA1(text, this.book.tables, { sheetName: place.sheet.name, row, column });
      if (plain === undefined) throw new NotKnown(text);
      const compiled = compile(plain, place.sheet, row, this.around, row === bottom);
      const run = new Run(place.sheet, place, row, bottom, compiled, relativeForm(plain, row, column));
      for (const { column: read, first, last } of run.reach())
        if (read === place && first <= bottom && last >= row) throw new NotKnown("the formula reads its own column");
      for (const { column: read } of run.reach()) this.read.add(read);
      for (const one of except) run.overtyped.add(one);
      this.runs.push(run);
      listed(this.byColumn, place).push(run);
    } catch (error) {
      if (!(error instanceof NotKnown)) throw error;
      this.unknown.push({ sheet, column, row, because: error.message });
    }
  }

  /** Whether formulas read the column that none has read before: its cells are to be put, wherever they stand. */
  isNewlyRead(place: Omit<Place, "row">): boolean {
    const column = this.columnOf(place);
    return this.read.has(column) && this.renewal?.read.has(column) === false;
  }

  /**
   * After `renew`: works out what hangs on what has changed, and no more.
   * @returns the cells that were worked out and give something else than what their rows gave before
   */
  workOn(): readonly Place[] {
    this.runs = this.inTurn();
    const { changes, beside, own } = this.renewal!.begun(this.byColumn);
    this.renewal = undefined;
    return this.pass(changes, beside, (run) => [
      ...run.fresh,
      ...run.touched(changes, beside),
      ...run.touched(own.get(run) ?? new Map()),
    ]);
  }

  /** Works everything out. */
  work(): void {
    this.runs = this.inTurn();
    for (const run of this.runs) for (const row of run.rows()) run.column.set(row, run.work(row));
  }

  /** Whether its formula is worked out here. After `work`. */
  knows({ row, ...place }: Place): boolean {
    const runs = this.byColumn.get(this.columnOf(place)) ?? [];
    return runs.some((run) => row >= run.top && row <= run.bottom && !run.overtyped.has(row));
  }

  /** Every cell whose formula is worked out here. After `work`. */
  *known(): Generator<Place> {
    for (const run of this.runs)
      for (const row of run.rows()) yield { sheet: run.sheet.name, row, column: run.column.at };
  }

  /** Whether any formula that is known here reads cells of this column. */
  reads(place: Omit<Place, "row">): boolean {
    return this.read.has(this.columnOf(place));
  }

  at({ row, ...place }: Place): Value {
    return this.columnOf(place).get(row);
  }

  /**
   * What a formula, or a piece of one, gives in a cell, from what stands in the cells now; many values row by row.
   * @param text without "="
   * @throws NotKnown
   */
  worth({ sheet, row, column }: Place, text: string): Value | readonly (readonly Value[])[] {
    const home = this.columnOf({ sheet, column }).sheet;
    const plain = structuredToA1(text, this.book.tables, { sheetName: home.name, row, column });
    if (plain === undefined) throw new NotKnown(text);
    const { any } = new Compiler(home, row, this.around, true).piece(parse(plain));
    const found = any({ row, named: [], watcher: nobody });
    if (!(found instanceof Block)) return found;
    return found.isOneCell ? found.at(0, 0) : found.matrix();
  }

  /**
   * Cells that hold something else now; over a formula, it was typed over.
   * @returns the cells that give something else because of that
   */
  change(cells: readonly (Place & { readonly value: Value })[]): readonly Place[] {
    const changes: Noted = new Map();
    for (const { value, ...place } of cells) {
      const column = this.columnOf(place);
      for (const run of this.byColumn.get(column) ?? [])
        if (place.row >= run.top && place.row <= run.bottom) run.overtyped.add(place.row);
      const before = column.set(place.row, value);
      if (!isSame(before, value)) note(changes, column, place.row, before);
    }
    return this.pass(changes, changes, (run) => run.touched(changes));
  }

  /** Works rows out, run by run, and notes what gives something else. */
  private pass(changes: Noted, beside: Noted, rowsOf: (run: Run) => Iterable<number>): readonly Place[] {
    const given: Place[] = [];
    for (const run of this.runs) {
      for (const row of new Set(rowsOf(run))) {
        const value = run.work(row);
        if (isSame(run.column.get(row), value)) continue;
        const before = run.column.set(row, value);
        note(changes, run.column, row, before);
        if (beside !== changes) note(beside, run.column, row, before);
        given.push({ sheet: run.sheet.name, row, column: run.column.at });
      }
    }
    return given;
  }

  /** Each behind all that it reads; what stands on itself is not known, nor what stands on that. */
  private inTurn(): Run[] {
    for (const runs of this.byColumn.values()) runs.sort((one, other) => one.top - other.top);
    const turn: Run[] = [];
    const waiting = new Map<Run, Set<Run>>();
    const readers = new Map<Run, Run[]>();
    for (const run of this.runs) {
      const read = new Set(this.readBy(run));
      waiting.set(run, read);
      for (const other of read) listed(readers, other).push(run);
    }
    const ready = this.runs.filter((run) => waiting.get(run)!.size === 0);
    for (let run = ready.pop(); run; run = ready.pop()) {
      turn.push(run);
      waiting.delete(run);
      for (const reader of readers.get(run) ?? []) {
        const left = waiting.get(reader)!;
        left.delete(run);
        if (left.size === 0) ready.push(reader);
      }
    }
    for (const run of waiting.keys()) {
      const { sheet, column, top } = run;
      this.byColumn.set(
        column,
        this.byColumn.get(column)!.filter((one) => one !== run),
      );
      this.unknown.push({ sheet: sheet.name, column: column.at, row: top, because: "the formula stands on itself" });
    }
    return turn;
  }

  private readBy(run: Run): readonly Run[] {
    return [...run.reach()].flatMap(({ column, first, last }) => {
      const runs = this.byColumn.get(column) ?? [];
      const found: Run[] = [];
      for (let at = firstWhere(runs.length, (i) => runs[i]!.bottom >= first); at < runs.length; at++) {
        if (runs[at]!.top > last) break;
        found.push(runs[at]!);
      }
      return found;
    });
  }
}

function surroundings(book: ReaderBook, sheets: ReadonlyMap<string, Sheet>): Surroundings {
  const nowhere = { sheetName: "", row: -1, column: -1 };
  const keyOf = (name: string, sheet = ""): string => `${sheet}!${name}`.toLowerCase();
  const names = new Map(
    book.names.map((one) => [keyOf(one.name, one.sheet), structuredToA1(one.refersTo, book.tables, nowhere)]),
  );
  return {
    sheet: (name) => sheets.get(name.toLowerCase()),
    meaning: (name, sheet) => {
      const own = keyOf(name, sheet.name);
      return names.get(names.has(own) ? own : keyOf(name));
    },
    ours: book.ours,
    today: book.today,
  };
}

function listed<K, V>(map: Map<K, V[]>, key: K): V[] {
  let list = map.get(key);
  if (!list) map.set(key, (list = []));
  return list;
}
