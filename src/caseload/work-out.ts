/**
 * Works all columns out without a grid: for a new file, which then shows its results before anything has calculated it,
 * and for the page's grid, whose engine takes minutes for what takes a second here. Cells that change later are worked
 * out anew together with the rows of the same people: nothing but the settings reaches further.
 */
import type { SheetValue } from "../columns/sheet-block";
import { clinicSettingNamed, type ClinicSettingName } from "../settings/index";
import { changeColumns, changesInTurn } from "./changes/columns";
import { checkColumns, checksInTurn } from "./checks/columns";
import type { CaseloadColumn, OptionalGroup, RowCells } from "./column";
import { rowsTables, type RowsTable } from "./names";
import { isReadyWith, readiness } from "./ready";
import { RowIndex } from "./row-index";
import type { CaseloadRow, CaseloadRows } from "./rows";
import type { ReasonCells, Sight, Tables } from "./sight";
import { tubeColumns, tubesAfterChecks, tubesFirst } from "./tubes/columns";
import { reasons as usualReasons } from "./words";

export interface Given {
  readonly asOf: number;
  readonly groups: readonly OptionalGroup[];
  /** What stands in a setting's cell; left out: its default. */
  readonly settings?: Partial<Record<ClinicSettingName, SheetValue>>;
  /** The settings sheet's table of reasons; left out: as set up. */
  readonly reasons?: readonly ReasonCells[];
}

/** A row with other cells than before; the first place behind the last row is a new row. */
export interface ChangedRow {
  readonly table: RowsTable;
  readonly place: number;
  /**
   * By header. A computed column that is given here was typed over, and keeps what stands there. Never a hidden one:
   * those say whose row it is, and what they were typed over with could lead to anybody's.
   */
  readonly row: Readonly<Record<string, SheetValue>>;
}

export interface Place {
  readonly table: RowsTable;
  readonly place: number;
}

type MutableRow = Record<string, SheetValue>;

export const columnsWith = (columns: readonly CaseloadColumn[], groups: readonly OptionalGroup[]) =>
  columns.filter(({ onlyWith }) => onlyWith === undefined || groups.includes(onlyWith));

const columnsOf: { readonly [T in RowsTable]: readonly CaseloadColumn[] } = {
  tubes: tubeColumns,
  checks: checkColumns,
  changes: changeColumns,
};

/** Each step stands on those before it, of all three tables. */
const steps: readonly (readonly [RowsTable, readonly CaseloadColumn[]])[] = [
  ["tubes", tubesFirst],
  ["changes", changesInTurn],
  ["checks", checksInTurn],
  ["tubes", tubesAfterChecks],
];

export const workOut = (rows: CaseloadRows, given: Given): Tables => new WorkedOut(rows, given).tables;

export class WorkedOut {
  readonly tables: { readonly [T in RowsTable]: MutableRow[] };
  private readonly left: ReadonlySet<string>;
  private readonly sight: Sight;
  private readonly indexes = new Map<string, RowIndex>();
  /** Headers of computed columns that hold something else in this row. */
  private readonly kept = new WeakMap<RowCells, ReadonlySet<string>>();

  constructor(rows: CaseloadRows | { readonly [T in RowsTable]: readonly ChangedRow["row"][] }, given: Given) {
    const has = new Set(columnsWith(tubeColumns, given.groups).map(({ header }) => header));
    this.left = new Set(tubeColumns.map(({ header }) => header).filter((header) => !has.has(header)));
    const filled = (table: RowsTable) => rows[table].map((row) => this.filled(table, row));
    this.tables = { tubes: filled("tubes"), checks: filled("checks"), changes: filled("changes") };
    this.sight = this.sightOf(given, has);
    this.work((table) => this.allOf(table));
  }

  /** @returns the rows that were worked out anew: those given, and all of the same people */
  change(changed: readonly ChangedRow[]): readonly Place[] {
    const given = { tubes: new Set<number>(), checks: new Set<number>(), changes: new Set<number>() };
    const people = new Set<SheetValue>();
    for (const { table, place, row } of changed) {
      const former = this.tables[table][place];
      if (former) people.add(former["Person"]!);
      this.put(table, place, this.filled(table, row));
      given[table].add(place);
    }
    for (const table of rowsTables) {
      const person = columnsOf[table].find(({ header }) => header === "Person")!;
      this.fillIn(table, [...given[table]], person);
      for (const place of given[table]) people.add(this.tables[table][place]!["Person"]!);
    }
    // a row without an identifier is nobody's and reaches no other
    people.delete("");
    const reached = (table: RowsTable): readonly number[] => {
      const theirs = [...people].flatMap((one) => this.sight.rowsWith(table, "Person", one));
      return [...new Set([...given[table], ...theirs])].sort((one, other) => one - other);
    };
    const places = { tubes: reached("tubes"), checks: reached("checks"), changes: reached("changes") };
    this.work((table) => places[table]);
    return rowsTables.flatMap((table) => places[table].map((place) => ({ table, place })));
  }

  private allOf(table: RowsTable): readonly number[] {
    return this.tables[table].map((_, place) => place);
  }

  private work(placesIn: (table: RowsTable) => readonly number[]): void {
    for (const [table, columns] of steps) {
      const places = placesIn(table);
      for (const column of columns) this.fillIn(table, places, column);
    }
  }

  private fillIn(table: RowsTable, places: readonly number[], { header, answer }: CaseloadColumn): void {
    if (table === "tubes" && this.left.has(header)) return;
    const rows = this.tables[table];
    // a column in the making must not be read by its own rows
    const answers = places.map((place) => {
      const row = rows[place]!;
      return this.kept.get(row)?.has(header) ? row[header]! : answer!(row, this.sight, place);
    });
    const index = this.indexes.get(`${table} ${header}`);
    places.forEach((place, i) => {
      const row = rows[place]!;
      if (index && row[header] !== answers[i]) {
        index.remove(row[header]!, place);
        index.add(answers[i]!, place);
      }
      row[header] = answers[i]!;
    });
  }

  /** In place of the row there, which its indexes forget. */
  private put(table: RowsTable, place: number, row: MutableRow): void {
    const rows = this.tables[table];
    if (place > rows.length) throw new Error(`${table} has no row ${place}`);
    const former = rows[place];
    for (const [name, index] of this.indexes) {
      if (!name.startsWith(`${table} `)) continue;
      const header = name.slice(table.length + 1);
      if (former) index.remove(former[header]!, place);
      index.add(row[header]!, place);
    }
    rows[place] = row;
  }

  /** Every header has a cell; those left out are blank. */
  private filled(table: RowsTable, given: CaseloadRow | ChangedRow["row"]): MutableRow {
    const row: RowCells = given as RowCells;
    const kept = new Set<string>();
    const cells: MutableRow = {};
    for (const { header, kind, isHidden } of columnsOf[table]) {
      const isGiven = Object.hasOwn(row, header);
      const isLeft = table === "tubes" && this.left.has(header);
      if (kind === "computed") {
        cells[header] = isGiven && !isLeft ? ((row[header] as SheetValue | undefined) ?? null) : "";
        if (isGiven) kept.add(header);
        if (isGiven && isHidden) throw new Error(`${header} is hidden and cannot be typed over`);
      } else cells[header] = isLeft ? null : ((row[header] as SheetValue | undefined) ?? null);
    }
    if (kept.size > 0) this.kept.set(cells, kept);
    return cells;
  }

  private sightOf({ asOf, settings = {}, reasons }: Given, has: ReadonlySet<string>): Sight {
    const { tables, indexes } = this;
    const setting = (name: ClinicSettingName): SheetValue => {
      const own = settings[name];
      return own === undefined ? clinicSettingNamed(name).default : own;
    };
    const ready = new Map<string, boolean>();
    return {
      ...tables,
      asOf,
      setting,
      number: (name) => {
        const value = setting(name);
        return typeof value === "number" ? value : 0;
      },
      isReady: (family) => {
        if (!ready.has(family)) ready.set(family, isReadyWith(readiness[family], setting));
        return ready.get(family)!;
      },
      has: (header) => has.has(header),
      reasons: reasons ?? asSetUp,
      rowsWith: (table, header, value) => {
        const name = `${table} ${header}`;
        let index = indexes.get(name);
        if (!index) {
          index = new RowIndex(tables[table], header);
          indexes.set(name, index);
        }
        return index.with(value);
      },
    };
  }
}

const asSetUp: readonly ReasonCells[] = usualReasons.map(({ word, failed, unplanned }) => ({
  word,
  failed: failed ? "yes" : "no",
  unplanned: unplanned ? "yes" : "no",
}));
