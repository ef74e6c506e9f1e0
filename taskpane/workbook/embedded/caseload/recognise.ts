/**
 * Whether the workbook in the grid is a ready-made caseload whose formulas are all as we write them, so that the page may
 * work it out by the rules that those formulas stand for (src/caseload/work-out.ts). A column in sight may be typed over
 * here and there; anything else that differs leaves the whole workbook to the grid's engine.
 */
import type { ICellData } from "@univerjs/core";
import { AS_OF } from "../../../../src/columns/as-of";
import type { OptionalGroup } from "../../../../src/caseload/column";
import { checksFirstRow } from "../../../../src/caseload/layout";
import { tableNames, type RowsTable } from "../../../../src/caseload/names";
import { columnNames, columnsOf } from "../../../../src/caseload/tables";
import { clinicSettings, type ClinicSettingName } from "../../../../src/settings/index";
import { overlaps, parsePlace } from "../../area";
import type { Area, SheetId } from "../../port";
import type { Engine } from "../engine";
import { relativeForm, shifted } from "../formulas/references";
import type { LiveBook } from "../liveBook";
import { engineNames, WHOLE_WORKBOOK } from "../names";
import { placeKey } from "../save/sheetEdits";
import type { SheetReader } from "../sheetReader";
import type { TableNow } from "../tables";
import { columnFormulas, groupsAmong, namedFormulas, squeezed } from "./described";

export interface CellPlace {
  readonly sheet: SheetId;
  readonly row: number;
  readonly column: number;
}

/** A formula that the engine has to work out, because it is not one of ours. */
export interface OtherFormula {
  readonly row: number;
  readonly column: number;
  /** With "=". */
  readonly text: string;
}

export interface TableStanding {
  readonly table: RowsTable;
  readonly sheet: SheetId;
  /** First row below the headings. */
  readonly top: number;
  readonly rows: number;
  /** The whole table, its headings too. */
  readonly area: Area;
  /** Where each of our columns stands on the sheet. */
  readonly columns: ReadonlyMap<string, number>;
  /** By place in the table: the headers of ours that were typed over. */
  readonly overtyped: ReadonlyMap<number, ReadonlySet<string>>;
  /** In the table's rows, also beside the table; by their place on the sheet (placeKey). */
  readonly others: ReadonlyMap<string, OtherFormula>;
  /** Where the groups of shared formulas in these rows hang, by group. */
  readonly masters: ReadonlyMap<string, Master>;
}

interface Master {
  readonly row: number;
  readonly column: number;
  /** With "=". */
  readonly text: string;
}

export interface Standing {
  readonly groups: readonly OptionalGroup[];
  readonly tables: { readonly [T in RowsTable]: TableStanding };
  readonly settings: ReadonlyMap<ClinicSettingName, CellPlace>;
  /** Cells whose formulas count something out for all rows. */
  readonly counted: readonly CellPlace[];
  readonly reasons: {
    readonly word: readonly CellPlace[];
    readonly failed: readonly CellPlace[];
    readonly unplanned: readonly CellPlace[];
  };
}

type Names = ReadonlyMap<string, readonly CellPlace[]>;
type Matrix = Readonly<Record<number, Readonly<Record<number, ICellData | undefined>> | undefined>>;

/** How one formula text reads at a place; texts are few, and asked for again and again. */
class Known {
  private readonly forms = new Map<string, string>();

  formOf(text: string, row: number, column: number): string {
    const key = `${row} ${column} ${text}`;
    const known = this.forms.get(key);
    if (known !== undefined) return known;
    const form = squeezed(relativeForm(text.replace(/^=/, ""), row, column));
    if (this.forms.size >= MOST_KNOWN) this.forms.clear();
    this.forms.set(key, form);
    return form;
  }
}
const MOST_KNOWN = 500;

export class Recogniser {
  private readonly known = new Known();
  private expected: { readonly key: string; readonly formulas: ReadonlyMap<string, string> }[] = [];

  constructor(
    private readonly engine: Engine,
    private readonly live: LiveBook,
  ) {}

  find(): Standing | undefined {
    const tables = this.live.tables();
    const of = (table: RowsTable) => tables.find(({ facts }) => facts.name === tableNames[table]);
    const [tubes, checks, changes] = [of("tubes"), of("checks"), of("changes")];
    if (!tubes || !checks || !changes || !this.isToday()) return undefined;
    // a check's tag holds its sheet row
    if (checks.area.top + 1 !== checksFirstRow) return undefined;
    const groups = groupsAmong(new Set(tubes.columns));
    if (!groups) return undefined;

    const names = this.names();
    const settings = this.settings(names);
    const reasons = this.reasons(names);
    const counted = this.counted(names);
    if (!settings || !reasons || !counted) return undefined;
    const standing = {
      tubes: this.table("tubes", tubes, groups),
      checks: this.table("checks", checks, groups),
      changes: this.table("changes", changes, groups),
    };
    if (!standing.tubes || !standing.checks || !standing.changes) return undefined;
    const found = { tubes: standing.tubes, checks: standing.checks, changes: standing.changes };
    return this.areWhole(names, found) ? { groups, tables: found, settings, counted, reasons } : undefined;
  }

  private isToday(): boolean {
    return this.live.namesForToday.has(AS_OF.toLowerCase());
  }

  /** Cells behind every name of the whole workbook that stands for cells. */
  private names(): Names {
    const sheets = new Map(this.live.bookFacts.sheets.map(({ name, id }) => [name.toLowerCase(), id]));
    const found = new Map<string, readonly CellPlace[]>();
    for (const name of engineNames(this.engine, this.live.unit)) {
      if ((name.localSheetId ?? WHOLE_WORKBOOK) !== WHOLE_WORKBOOK) continue;
      const place = parsePlace(name.formulaOrRefString);
      const sheet = place && sheets.get(place.sheetName.toLowerCase());
      if (!place || !sheet || place.area.columns !== 1) continue;
      const { top, left, rows } = place.area;
      found.set(
        name.name.toLowerCase(),
        Array.from({ length: rows }, (_, r) => ({ sheet, row: top + r, column: left })),
      );
    }
    return found;
  }

  private settings(names: Names): Standing["settings"] | undefined {
    const found = new Map<ClinicSettingName, CellPlace>();
    for (const { name } of clinicSettings) {
      const places = names.get(name.toLowerCase());
      if (places?.length !== 1) return undefined;
      found.set(name, places[0]!);
    }
    return found;
  }

  private reasons(names: Names): Standing["reasons"] | undefined {
    const [word, failed, unplanned] = ["reason_list", "reason_failed", "reason_unplanned"].map((name) =>
      names.get(name),
    );
    if (!word || failed?.length !== word.length || unplanned?.length !== word.length) return undefined;
    return { word, failed, unplanned };
  }

  private counted(names: Names): readonly CellPlace[] | undefined {
    const places: CellPlace[] = [];
    for (const [name, formula] of namedFormulas) {
      const [place, ...more] = names.get(name.toLowerCase()) ?? [];
      const text = place && this.live.reader(place.sheet).cell(place.row, place.column)?.f;
      if (!place || more.length > 0 || !isText(text) || squeezed(text.slice(1)) !== formula) return undefined;
      places.push(place);
    }
    return places;
  }

  /** Names of whole columns reach from the first row to the last. */
  private areWhole(names: Names, tables: Standing["tables"]): boolean {
    return columnNames.every(({ name, table, header }) => {
      const places = names.get(name.toLowerCase());
      const { sheet, top, rows, columns } = tables[table];
      const first = places?.[0];
      return (
        first?.sheet === sheet && first.row === top && first.column === columns.get(header) && places!.length === rows
      );
    });
  }

  private table(table: RowsTable, { facts, area, columns: headings }: TableNow, groups: readonly OptionalGroup[]) {
    if (facts.geometry.headerRows !== 1 || facts.geometry.totalsRows !== 0) return undefined;
    const ours = columnsOf(table, groups);
    const columns = new Map(headings.map((heading, index) => [heading, area.left + index]));
    if (!ours.every(({ header }) => columns.has(header))) return undefined;
    const reader = this.live.reader(facts.sheet);
    if (isSpilledInto(reader, area)) return undefined;

    const [top, rows] = [area.top + 1, area.rows - 1];
    const formulas = this.formulasOf(table, groups, columns);
    const matrix = reader.worksheet.getCellMatrix().getMatrix() as Matrix;
    const masters = mastersIn(matrix, top, rows);
    /** A group's text is looked at once in each column, not once for every row. */
    const areOurs = new Map<string, boolean>();
    const isOurs = (cell: ICellData, row: number, column: number, expected: string): boolean => {
      if (isText(cell.f)) return this.known.formOf(cell.f, row, column) === expected;
      if (!cell.si) return false;
      // copied to the right, a formula stays in the group that it came from
      const key = `${column} ${cell.si}`;
      const seen = areOurs.get(key);
      if (seen !== undefined) return seen;
      const master = masters.get(cell.si);
      const found = master?.column === column && this.known.formOf(master.text, master.row, column) === expected;
      areOurs.set(key, found);
      return found;
    };
    const overtyped = new Map<number, Set<string>>();
    const others = new Map<string, OtherFormula>();
    const computed = new Map(
      ours.flatMap(({ header, kind, isHidden }) =>
        kind === "computed" ? [[columns.get(header)!, { header, isHidden }] as const] : [],
      ),
    );
    for (let place = 0; place < rows; place++) {
      const row = top + place;
      const cells = matrix[row] ?? {};
      for (const [column, { header, isHidden }] of computed) {
        const cell = cells[column];
        if (cell && isOurs(cell, row, column, formulas.get(header)!)) continue;
        if (isHidden) return undefined;
        const there = overtyped.get(place);
        if (there) there.add(header);
        else overtyped.set(place, new Set([header]));
      }
      for (const key in cells) {
        const column = Number(key);
        const cell = cells[column];
        if (!cell || !(cell.f || cell.si)) continue;
        const own = computed.get(column);
        if (own && !overtyped.get(place)?.has(own.header)) continue;
        const text = textOf(cell, row, column, masters, reader);
        if (text !== undefined) others.set(placeKey(row, column), { row, column, text });
      }
    }
    const standing: TableStanding = {
      table,
      sheet: facts.sheet,
      top,
      rows,
      area,
      columns: new Map(ours.map(({ header }) => [header, columns.get(header)!])),
      overtyped,
      others,
      masters,
    };
    return standing;
  }

  private formulasOf(table: RowsTable, groups: readonly OptionalGroup[], columns: ReadonlyMap<string, number>) {
    const key = JSON.stringify([table, groups, [...columns]]);
    const known = this.expected.find((one) => one.key === key);
    if (known) return known.formulas;
    const formulas = columnFormulas(table, groups, (header) => columns.get(header)!);
    this.expected = [...this.expected.slice(-2), { key, formulas }];
    return formulas;
  }
}

/** What spills into a typed cell does not stand in it. */
export const isSpilledInto = (reader: SheetReader, area: Area): boolean =>
  reader.spills().some((spill) => overlaps(spill, area));

type Masters = TableStanding["masters"];

const isText = (formula: ICellData["f"]): formula is string => typeof formula === "string" && formula.startsWith("=");

/** The cells that groups of shared formulas hang on. */
function mastersIn(matrix: Matrix, top: number, rows: number): Masters {
  const masters = new Map<string, Master>();
  for (let row = top; row < top + rows; row++) {
    const cells = matrix[row];
    for (const key in cells) {
      const cell = cells[Number(key)];
      if (cell?.si && isText(cell.f)) masters.set(cell.si, { row, column: Number(key), text: cell.f });
    }
  }
  return masters;
}

function textOf(cell: ICellData, row: number, column: number, masters: Masters, reader: SheetReader) {
  if (isText(cell.f)) return cell.f;
  const master = cell.si ? (masters.get(cell.si) ?? reader.masterOf(cell.si)) : undefined;
  return master && `=${shifted(master.text.slice(1), row - master.row, column - master.column)}`;
}
