/** Reads everything that the clinic has entered in an older caseload, and what of it a new one cannot take. */
import type { CarriedReason, CarriedSetting, OwnColumn } from "../../../src/caseload/carried";
import type { OptionalGroup } from "../../../src/caseload/column";
import { hiddenHeaders, shownHeaders, type Header } from "../../../src/caseload/headers";
import { INVENTED_ON, rowsTables, sheetNames, type RowsTable } from "../../../src/caseload/names";
import type { CaseloadRow } from "../../../src/caseload/rows";
import { formerHidden } from "../../../src/caseload/schema";
import { columnsOf } from "../../../src/caseload/tables";
import { cellAddress } from "../../../src/columns/formula";
import { clinicSettings, type ClinicSettingName } from "../../../src/settings/index";
import type { Cell } from "../../../src/worksheet/cell";
import { CellError } from "../../../src/worksheet/error";
import { dataRows, parsePlace } from "../../workbook/area";
import type { Block, Overview, TableOverview, Value, Workbook } from "../../workbook/port";
import { isSame } from "../../workbook/change/expectations";
import { named, namesOf } from "../caseload/read";
import { headerKey, recogniseCaseload } from "../caseload/recognise";
import { schemaOf } from "../caseload/schema";
import { columnGroups } from "../set-up/interface";
import type { OlderCaseload } from "./interface";

const HEADER_AGREED_BY = "Agreed by";
const HEADER_AGREED_ON = "Date";

/** Null where the workbook is no caseload that can be read. */
export async function surveyOlder(workbook: Pick<Workbook, "overview" | "read">): Promise<OlderCaseload | null> {
  const overview = await workbook.overview();
  const recognised = recogniseCaseload(overview);
  const schema = schemaOf(overview);
  if (recognised.is !== "caseload" || schema === null) return null;
  const { tables } = recognised;
  const groups = columnGroups.filter((group) => hasGroup(tables, group));
  const tubes = await readTable("tubes", tables.tubes, groups, overview, workbook);
  const checks = await readTable("checks", tables.checks, groups, overview, workbook);
  const changes = await readTable("changes", tables.changes, groups, overview, workbook);
  const read = { tubes, checks, changes };
  const { settings, reasons, errors } = await readSettings(overview, workbook);
  const isNamed = (name: string) => overview.names.some((one) => one.name.toLowerCase() === name.toLowerCase());
  const invented = named(namesOf(overview), INVENTED_ON);
  const each = <V>(of: (table: RowsTable) => readonly V[]): readonly V[] => rowsTables.flatMap(of);
  return {
    schema,
    groups,
    carried: {
      rows: { tubes: tubes.rows, checks: checks.rows, changes: changes.rows },
      settings,
      reasons,
      own: { tubes: tubes.own, checks: checks.own, changes: changes.own },
      inventedOn: typeof invented === "number" && invented > 0 ? invented : null,
    },
    newColumns: { tubes: tubes.absent, checks: checks.absent, changes: changes.absent },
    newSettings: clinicSettings.map(({ name }) => name).filter((name) => !isNamed(name)),
    left: {
      typedOver: each((table) => read[table].typedOver),
      errors: [...each((table) => read[table].errors), ...errors],
      ownFormulas: each((table) => read[table].ownFormulas),
      fixed: each((table) => read[table].fixed),
      sheets: otherSheets(overview, Object.values(tables)),
    },
  };
}

const keysOf = ({ columns }: TableOverview): ReadonlySet<string> => new Set(columns.map(headerKey));

/** A group is wanted where one of its columns stands. */
const hasGroup = (tables: Readonly<Record<RowsTable, TableOverview>>, group: OptionalGroup): boolean =>
  rowsTables.some((table) => {
    const keys = keysOf(tables[table]);
    return columnsOf(table, [group]).some(({ header, onlyWith }) => onlyWith === group && keys.has(headerKey(header)));
  });

interface TableRead<T extends RowsTable> {
  readonly rows: readonly CaseloadRow<T>[];
  readonly own: readonly OwnColumn[];
  /** Shown headers that the table does not have. */
  readonly absent: readonly string[];
  /** "Tubes in use E12" */
  readonly typedOver: readonly string[];
  readonly errors: readonly string[];
  readonly ownFormulas: readonly string[];
  readonly fixed: readonly string[];
}

const isBlank = (value: Value): boolean => value === null || (typeof value === "string" && value.trim() === "");

async function readTable<T extends RowsTable>(
  key: T,
  table: TableOverview,
  groups: readonly OptionalGroup[],
  overview: Overview,
  workbook: Pick<Workbook, "read">,
): Promise<TableRead<T>> {
  const block = await workbook.read({ table: table.name }, ["values", "formulas", "formats"]);
  const body = <V>(rows: readonly V[] | undefined): readonly V[] => (rows ?? []).slice(1, 1 + dataRows(table));
  const [values, formulas, formats] = [body(block.values), body(block.formulas), body(block.formats)];
  const sheet = overview.sheets.find(({ id }) => id === table.sheet)?.name ?? table.name;
  const at = (row: number, column: number): string =>
    `${sheet} ${cellAddress(block.area.top + 1 + row, block.area.left + column)}`;
  const known = new Map(columnsOf(key, groups).map((column) => [headerKey(column.header), column]));
  const ours = new Set([...shownHeaders[key], ...hiddenHeaders[key], ...formerHidden[key]].map(headerKey));
  const hidden = new Set([...hiddenHeaders[key], ...formerHidden[key]].map(headerKey));
  const [typedOver, errors, ownFormulas, fixed]: [string[], string[], string[], string[]] = [[], [], [], []];
  const own: { readonly header: string; readonly column: number; readonly format: string }[] = [];
  const typed: { readonly header: Header<T>; readonly column: number }[] = [];

  table.columns.forEach((header, column) => {
    const found = known.get(headerKey(header));
    if (found && found.kind !== "computed") typed.push({ header: found.header as Header<T>, column });
    else if (ours.has(headerKey(header))) {
      if (hidden.has(headerKey(header))) return;
      values.forEach((row, r) => {
        if (formulas[r]![column] === null && !isBlank(row[column]!)) typedOver.push(at(r, column));
      });
    } else if (formulas.some((row) => row[column] !== null)) ownFormulas.push(`${sheet}: ${header}`);
    else {
      const first = values.findIndex((row) => !isBlank(row[column]!));
      own.push({ header, column, format: formats[Math.max(first, 0)]?.[column] ?? "General" });
    }
  });

  const cellAt = (row: number, column: number): Cell => {
    const value = values[row]![column]!;
    if (value instanceof CellError) {
      errors.push(at(row, column));
      return null;
    }
    if (formulas[row]![column] !== null && !isBlank(value)) fixed.push(at(row, column));
    return value;
  };
  const isFilled = (row: readonly Value[]): boolean => [...typed, ...own].some(({ column }) => !isBlank(row[column]!));
  const kept = values.flatMap((row, r) => (isFilled(row) ? [r] : []));
  const rows = kept.map((r) =>
    Object.fromEntries(
      typed.flatMap(({ header, column }) => {
        const cell = cellAt(r, column);
        return cell === null ? [] : [[header, cell]];
      }),
    ),
  ) as unknown as CaseloadRow<T>[];
  const present = keysOf(table);
  return {
    rows,
    own: own.map(({ header, column, format }) => ({ header, format, cells: kept.map((r) => cellAt(r, column)) })),
    absent: columnsOf(key, groups)
      .filter(({ header, isHidden }) => !isHidden && !present.has(headerKey(header)))
      .map(({ header }) => header),
    ...{ typedOver, errors, ownFormulas, fixed },
  };
}

interface SettingsRead {
  readonly settings: ReadonlyMap<ClinicSettingName, CarriedSetting>;
  readonly reasons: readonly CarriedReason[] | null;
  readonly errors: readonly string[];
}

/** The named cells, with who agreed beside them; a cell that is worked out stays worked out. */
async function readSettings(overview: Overview, workbook: Pick<Workbook, "read">): Promise<SettingsRead> {
  const settings = new Map<ClinicSettingName, CarriedSetting>();
  const errors: string[] = [];
  const blocks = new Map<string, Block>();
  const blockOf = async (sheetName: string): Promise<Block | null> => {
    const sheet = overview.sheets.find(({ name }) => name.toLowerCase() === sheetName.toLowerCase());
    if (!sheet?.used) return null;
    const block =
      blocks.get(sheet.id) ?? (await workbook.read({ sheet: sheet.id, area: sheet.used }, ["values", "formulas"]));
    blocks.set(sheet.id, block);
    return block;
  };
  const placeOf = (name: string) => {
    const found = overview.names.find((one) => one.name.toLowerCase() === name.toLowerCase());
    return found ? parsePlace(found.refersTo) : null;
  };
  const clean = (value: Value | undefined, where: string): Cell => {
    if (!(value instanceof CellError)) return value ?? null;
    errors.push(where);
    return null;
  };

  for (const { name } of clinicSettings) {
    const place = placeOf(name);
    const block = place && (await blockOf(place.sheetName));
    if (!place || !block) continue;
    const [row, column] = [place.area.top - block.area.top, place.area.left - block.area.left];
    if ((block.formulas![row]?.[column] ?? null) !== null) continue;
    const where = `${place.sheetName} ${cellAddress(place.area.top, place.area.left)}`;
    const [by, on] = [HEADER_AGREED_BY, HEADER_AGREED_ON].map((header) => columnUnder(block, header, row));
    settings.set(name, {
      value: clean(block.values![row]?.[column], where),
      agreedBy: by === null ? null : clean(block.values![row]?.[by!], where),
      agreedOn: on === null ? null : clean(block.values![row]?.[on!], where),
    });
  }

  const lists = await Promise.all(
    ["Reason_List", "Reason_Failed", "Reason_Unplanned"].map(async (name) => {
      const place = placeOf(name);
      const block = place && (await blockOf(place.sheetName));
      if (!place || !block) return null;
      const [top, left] = [place.area.top - block.area.top, place.area.left - block.area.left];
      return Array.from({ length: place.area.rows }, (_, i) => clean(block.values![top + i]?.[left], name));
    }),
  );
  const [words, failed, unplanned] = lists;
  const reasons =
    words && failed && unplanned
      ? words.map((word, i) => ({ word, failed: failed[i] ?? null, unplanned: unplanned[i] ?? null }))
      : null;
  return { settings, reasons, errors };
}

/** The column under a header above this row; null where there is none. */
function columnUnder({ values = [] }: Block, header: string, row: number): number | null {
  for (let above = row - 1; above >= 0; above--) {
    const column = values[above]!.findIndex((cell) => isSame(cell, header));
    if (column >= 0) return column;
  }
  return null;
}

/** Sheets that are none of a caseload's. */
function otherSheets(overview: Overview, tables: readonly TableOverview[]): readonly string[] {
  const lists = new Set(tables.map(({ sheet }) => sheet));
  const named = new Set(Object.values(sheetNames).map((name) => name.toLowerCase()));
  return overview.sheets
    .filter(({ id, name, hidden }) => !lists.has(id) && !named.has(name.toLowerCase()) && !hidden)
    .map(({ name }) => name);
}
