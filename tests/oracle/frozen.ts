/** What the second writing of the caseload's rules answered (README.md), read from the files beside this one. */
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import type { OptionalGroup } from "../../src/caseload/column";
import { rowsTables, type RowsTable } from "../../src/caseload/names";
import type { CaseloadRow, CaseloadRows } from "../../src/caseload/rows";
import type { SheetValue } from "../../src/columns/sheet-block";
import { NO_URGENCY, URGENCY, urgencies, urgencyKey, type ToDoWord } from "../../src/caseload/urgency";
import { CellError } from "../../src/worksheet/error";

type Stored = string | number | boolean | null | { readonly error: string };

interface FrozenTable {
  readonly typed: readonly string[];
  readonly given: readonly string[];
  /** Row by row: what is typed, what it gives. */
  readonly rows: readonly (readonly [readonly Stored[], readonly Stored[]])[];
}

interface FrozenFile {
  readonly what: string;
  readonly today: number;
  readonly groups: readonly OptionalGroup[];
  readonly settings?: Readonly<Record<string, Stored>>;
  readonly reasons?: readonly (readonly Stored[])[];
  readonly tubes: FrozenTable;
  readonly checks: FrozenTable;
  readonly changes: FrozenTable;
}

/** A cell of a list: the place is its row's, counted from 0. */
type StoredCell = readonly [table: RowsTable, place: number, header: string, value: Stored];

/** An answer that is another one now, with the reason. */
interface Corrected {
  readonly what: string;
  readonly table: RowsTable;
  readonly place: number;
  readonly header: string;
  /** Left out: after that edit, or with that setting, it was not another answer then. */
  readonly was?: Stored;
  /** Left out: it is not another answer now. */
  readonly is?: Stored;
  readonly because: string;
}

export interface Cell {
  readonly table: RowsTable;
  readonly place: number;
  readonly header: string;
  readonly value: SheetValue;
}

export interface Frozen {
  readonly what: string;
  readonly today: number;
  readonly groups: readonly OptionalGroup[];
  readonly settings: ReadonlyMap<string, SheetValue>;
  /** In place of the first lines of the settings sheet's table of reasons: word, failed, unplanned. */
  readonly reasons: readonly (readonly SheetValue[])[];
  readonly rows: CaseloadRows;
  readonly answers: readonly Cell[];
}

const read = <T>(file: string): T => JSON.parse(readFileSync(join(__dirname, file), "utf8")) as T;
const valueOf = (stored: Stored): SheetValue =>
  typeof stored === "object" && stored !== null ? new CellError(stored.error) : stored;
/**
 * *Urgency* was written down as a place in the order of *To do* as it was then. Two words have come in since
 * (docs/decisions.md).
 */
const orderAsWas = urgencies
  .map(({ word }) => word)
  .filter((word) => word !== "nothing came" && word !== "contradictory entries");

function placeNow(was: Stored): Stored {
  const word = typeof was === "number" ? orderAsWas[was - 1] : undefined;
  return word === undefined ? NO_URGENCY : urgencyKey(word as ToDoWord);
}

const asNow = (header: string, value: Stored): Stored => (header === URGENCY ? placeNow(value) : value);

const cellOf = ([table, place, header, value]: StoredCell): Cell => ({
  table,
  place,
  header,
  value: valueOf(asNow(header, value)),
});

export const corrected = read<readonly Corrected[]>("corrected.json");

function frozenOf(file: FrozenFile): Frozen {
  const typedIn = (table: RowsTable) =>
    file[table].rows.map(
      ([cells]) =>
        Object.fromEntries(file[table].typed.map((header, i) => [header, valueOf(cells[i]!)])) as CaseloadRow,
    );
  const given = rowsTables.flatMap((table) =>
    file[table].rows.flatMap(([, answers], place) =>
      file[table].given.map((header, i): Cell => ({
        table,
        place,
        header,
        value: valueOf(asNow(header, answers[i]!)),
      })),
    ),
  );
  return {
    what: file.what,
    today: file.today,
    groups: file.groups,
    settings: new Map(Object.entries(file.settings ?? {}).map(([name, value]) => [name, valueOf(value)])),
    reasons: (file.reasons ?? []).map((line) => line.map(valueOf)),
    rows: { tubes: typedIn("tubes"), checks: typedIn("checks"), changes: typedIn("changes") },
    answers: given.map((cell) => correction(file.what, cell)).filter(isThere),
  };
}

const isOf =
  (what: string, { table, place, header }: Cell) =>
  (one: Corrected): boolean =>
    one.what === what && one.table === table && one.place === place && one.header === header;

/** Refuses a correction of something that was never said. */
function correction(what: string, cell: Cell): Cell | null {
  const found = corrected.find(isOf(what, cell));
  if (!found) return cell;
  const was = found.was === undefined ? undefined : plain(valueOf(found.was));
  if (was !== plain(cell.value) || found.because.trim() === "")
    throw new Error(`corrected.json: ${what}, ${cell.table} ${cell.place}, ${cell.header}`);
  return found.is === undefined ? null : { ...cell, value: valueOf(found.is) };
}

const isThere = (cell: Cell | null): cell is Cell => cell !== null;

/** What is told after an edit, or with a setting: as it was, but for what is told otherwise, no longer, or only now. */
const told = (what: string, cells: readonly StoredCell[]): readonly Cell[] => [
  ...cells.map((cell) => correction(what, cellOf(cell))).filter(isThere),
  ...corrected
    .filter((one) => one.what === what && one.was === undefined)
    .map(({ table, place, header, is }) => ({ table, place, header, value: valueOf(is!) })),
];

/** An error is known by its code. */
export const plain = (value: SheetValue): unknown => (value instanceof CellError ? value.code : value);

export const caseloads: readonly Frozen[] = readdirSync(join(__dirname, "caseloads"))
  .sort()
  .flatMap((name) => read<readonly FrozenFile[]>(`caseloads/${name}`).map(frozenOf));

const edited = read<{
  readonly start: FrozenFile;
  readonly rounds: readonly { readonly cells: readonly StoredCell[]; readonly give: readonly StoredCell[] }[];
}>("edits.json");

/** Cells that are changed together, and every answer that is another one because of that; one round after the other. */
export const edits = {
  start: frozenOf(edited.start),
  rounds: edited.rounds.map(({ cells, give }, i) => ({
    cells: cells.map(cellOf),
    give: told(`edit ${i}`, give),
  })),
};

const set = read<{
  readonly start: FrozenFile;
  readonly each: readonly {
    readonly settings: Readonly<Record<string, Stored>>;
    readonly give: readonly StoredCell[];
  }[];
}>("settings.json");

/** What each setting changes, one at a time, in the same rows. */
export const settings = {
  start: frozenOf(set.start),
  each: set.each.map((one) => {
    const what = Object.entries(one.settings)
      .map(([name, value]) => `${name}: ${String(plain(valueOf(value)) ?? "empty")}`)
      .join(", ");
    return {
      what,
      settings: new Map(Object.entries(one.settings).map(([name, value]) => [name, valueOf(value)])),
      give: told(what, one.give),
    };
  }),
};
