/** Works all columns out without a grid, so that a new file shows its results before anything has calculated it. */
import type { SheetValue } from "../columns/sheet-block";
import { clinicSettingNamed, type ClinicSettingName } from "../settings/index";
import { changeColumns, changesInTurn } from "./changes/columns";
import { checkColumns, checksInTurn } from "./checks/columns";
import type { CaseloadColumn, OptionalGroup, RowCells } from "./column";
import { isReadyWith, readiness } from "./ready";
import type { CaseloadRow, CaseloadRows } from "./rows";
import type { Sight, Tables } from "./sight";
import { tubeColumns, tubesAfterChecks, tubesFirst } from "./tubes/columns";

export interface Given {
  readonly asOf: number;
  readonly groups: readonly OptionalGroup[];
  /** What stands in a setting's cell; left out: its default. */
  readonly settings?: Partial<Record<ClinicSettingName, SheetValue>>;
}

type MutableRow = Record<string, SheetValue>;

export const columnsWith = (columns: readonly CaseloadColumn[], groups: readonly OptionalGroup[]) =>
  columns.filter(({ onlyWith }) => onlyWith === undefined || groups.includes(onlyWith));

/** Every header has a cell; those left out are blank. */
const filled = (row: CaseloadRow, columns: readonly CaseloadColumn[], left: ReadonlySet<string>): MutableRow =>
  Object.fromEntries(
    columns.map(({ header, kind }) => [
      header,
      kind === "computed" ? "" : left.has(header) ? null : ((row[header] as SheetValue | undefined) ?? null),
    ]),
  );

export function workOut(rows: CaseloadRows, { asOf, groups, settings = {} }: Given): Tables {
  const given = new Set(columnsWith(tubeColumns, groups).map(({ header }) => header));
  const left = new Set(tubeColumns.map(({ header }) => header).filter((header) => !given.has(header)));
  const tubes = rows.tubes.map((row) => filled(row, tubeColumns, left));
  const checks = rows.checks.map((row) => filled(row, checkColumns, new Set()));
  const changes = rows.changes.map((row) => filled(row, changeColumns, new Set()));
  const sight = sightOf({ tubes, checks, changes }, asOf, settings, given);

  const fillIn = (table: MutableRow[], columns: readonly CaseloadColumn[]) => {
    for (const { header, answer } of columns) {
      if (left.has(header)) continue;
      // A column in the making must not be read by its own rows.
      const answers = table.map((row) => answer!(row, sight));
      table.forEach((row, i) => (row[header] = answers[i]!));
    }
  };
  fillIn(tubes, tubesFirst);
  fillIn(changes, changesInTurn);
  fillIn(checks, checksInTurn);
  fillIn(tubes, tubesAfterChecks);
  return { tubes, checks, changes };
}

function sightOf(
  tables: Tables,
  asOf: number,
  settings: NonNullable<Given["settings"]>,
  given: ReadonlySet<string>,
): Sight {
  const setting = (name: ClinicSettingName): SheetValue => {
    const own = settings[name];
    return own === undefined ? clinicSettingNamed(name).default : own;
  };
  const indexes = new Map<string, Map<SheetValue, number[]>>();
  return {
    ...tables,
    asOf,
    setting,
    number: (name) => {
      const value = setting(name);
      return typeof value === "number" ? value : 0;
    },
    isReady: (family) => isReadyWith(readiness[family], setting),
    has: (header) => given.has(header),
    rowsWith: (table, header, value) => {
      const name = `${table} ${header}`;
      let index = indexes.get(name);
      if (!index) {
        index = indexOf(tables[table], header);
        indexes.set(name, index);
      }
      return index.get(value) ?? [];
    },
  };
}

function indexOf(rows: readonly RowCells[], header: string): Map<SheetValue, number[]> {
  const index = new Map<SheetValue, number[]>();
  rows.forEach((row, i) => {
    const places = index.get(row[header]!);
    if (places) places.push(i);
    else index.set(row[header]!, [i]);
  });
  return index;
}
