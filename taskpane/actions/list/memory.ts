/** What was said of the lists of a workbook, as a sheet of it keeps that: read, laid to a list, written. */
import { fitsRole } from "../../../src/columns/guess";
import { plainHeader } from "../../../src/columns/header-words";
import {
  kindRemembered,
  MEMORY_HEADERS,
  MEMORY_SHEET,
  memoryRows,
  readMemoryRows,
  type ReadMemory,
  type Remembered,
} from "../../../src/columns/remembered";
import { roleNamed, type Role } from "../../../src/columns/role";
import { guessKind } from "../../../src/columns/kind-guess";
import { wordKey } from "../../../src/columns/spelling";
import { mendedFrom } from "../../../src/mending/headers";
import type { KindKey } from "../../../src/settings/kinds";
import type { Cell } from "../../../src/worksheet/cell";
import { CellError } from "../../../src/worksheet/error";
import { thisList as words } from "../../texts/this-list";
import { bottom } from "../../workbook/area";
import { asText, isSame } from "../../workbook/change/expectations";
import type { Overview, SheetId, SheetOverview, Step, Value, Workbook } from "../../workbook/port";
import type { Guess, Notice } from "./interface";

/** Above the headers stand a title, what the sheet is for, and a blank row. */
const HEADER_ROW = 3;

export interface Memory extends ReadMemory {
  /** Null where the workbook has no such sheet. */
  readonly sheet: SheetId | null;
  /** A sheet of that name holds something else. */
  readonly isTaken: boolean;
  /** Rows below the headers, as they stand. */
  readonly rows: readonly (readonly Value[])[];
}

const NO_MEMORY: Memory = { sheet: null, isTaken: false, rows: [], lists: new Map(), unfit: [] };

export const isMemorySheet = ({ name }: Pick<SheetOverview, "name">): boolean =>
  name.toLowerCase() === MEMORY_SHEET.toLowerCase();

export async function readMemory(workbook: Pick<Workbook, "read">, overview: Overview): Promise<Memory> {
  const sheet = overview.sheets.find(isMemorySheet);
  if (!sheet) return NO_MEMORY;
  if (!sheet.used) return { ...NO_MEMORY, sheet: sheet.id };
  const area = { top: 0, left: 0, rows: bottom(sheet.used), columns: MEMORY_HEADERS.length };
  const { values = [] } = await workbook.read({ sheet: sheet.id, area }, ["values"]);
  const isOurs = MEMORY_HEADERS.every(
    (header, c) => wordKey(asText(values[HEADER_ROW]?.[c] ?? null)) === wordKey(header),
  );
  if (!isOurs) return { ...NO_MEMORY, sheet: sheet.id, isTaken: true };
  const rows = values.slice(HEADER_ROW + 1);
  return { sheet: sheet.id, isTaken: false, rows, ...readMemoryRows(rows) };
}

/** By what a list goes on that sheet: "table Caseload", "sheet Adults". */
export const listName = (list: { readonly table: string | null; readonly sheetName: string }): string =>
  list.table === null ? `sheet ${list.sheetName}` : `table ${list.table}`;

export interface Laid {
  readonly remembered: Remembered | null;
  readonly guesses: { readonly [R in Role]?: Guess };
  readonly notices: readonly Notice[];
}

interface Columns {
  readonly index: number;
  readonly header: string;
}

/** What was said goes before what is guessed; what no longer fits is told, and guessed as if nothing had been said. */
export function laidTo(
  memory: Memory,
  list: { readonly table: string | null; readonly sheetName: string },
  columns: readonly Columns[],
  rows: readonly (readonly Value[])[],
  guessed: Laid["guesses"],
): Laid {
  const name = listName(list);
  const [, remembered = null] = [...memory.lists].find(([one]) => wordKey(one) === wordKey(name)) ?? [];
  const unfit = memory.unfit.filter((one) => wordKey(one.list) === wordKey(name));
  const notices: Notice[] = unfit.length > 0 ? [{ sentence: words.unfit(unfit) }] : [];
  if (!remembered) return { remembered, guesses: guessed, notices };
  const said: { [R in Role]?: Guess } = {};
  const none = new Set<Role>();
  for (const [key, header] of Object.entries(remembered.columns)) {
    const role = key as Role;
    if (header === null) none.add(role);
    else {
      const found = columnCalled(header, role, columns, rows);
      if (typeof found === "string") notices.push({ sentence: found });
      else said[role] = { column: found, because: words.because };
    }
  }
  const claimed = new Set(Object.values(said).map(({ column }) => column));
  const open = Object.entries(guessed).filter(([role, { column }]) => !none.has(role as Role) && !claimed.has(column));
  return { remembered, guesses: { ...Object.fromEntries(open), ...said }, notices };
}

/** Its place now, or a sentence why it is not used. A column that was mended from it since stands for it. */
function columnCalled(
  header: string,
  role: Role,
  columns: readonly Columns[],
  rows: readonly (readonly Value[])[],
): number | string {
  const { label } = roleNamed(role);
  const plain = plainHeader(header);
  const exact = columns.filter((column) => wordKey(column.header) === wordKey(header));
  const alike = exact.length > 0 ? exact : columns.filter((column) => plainHeader(column.header) === plain);
  const mended = columns.filter((column) => mendedFrom(plainHeader(column.header)) === plain);
  const [found, another] = mended.length === 1 ? mended : alike;
  if (!found) return words.gone(header, label);
  if (another) return words.shared(header, label);
  const { filled, fitting } = fitsRole(
    role,
    rows.map((row) => row[found.index] ?? null),
  );
  return filled > 0 && fitting === 0 ? words.otherValues(header, label, filled) : found.index;
}

/** The kind that a word of a list means: as it was said, else as it is guessed; null where neither tells. */
export function kindOfWord({ remembered }: { readonly remembered: Remembered | null }, word: string): KindKey | null {
  const said = remembered ? kindRemembered(remembered, word) : undefined;
  if (said === undefined) return guessKind(word);
  return said === "not known" ? null : said;
}

const COLUMNS = MEMORY_HEADERS.length;

const asCell = (value: Value): Cell => (value instanceof CellError ? value.code : value);

/**
 * What is to be done so that the workbook keeps this of a list, and nothing else of it changes.
 * @param remembered null: nothing of that list any more
 */
export function stepsToKeep(memory: Memory, name: string, remembered: Remembered | null): readonly Step[] {
  const isOwn = (row: readonly Value[]): boolean => wordKey(asText(row[0] ?? null)) === wordKey(name);
  const own: readonly (readonly Cell[])[] = remembered ? memoryRows(new Map([[name, remembered]])) : [];
  const first = memory.rows.findIndex(isOwn);
  const others = memory.rows.map((row) => row.map(asCell));
  const [before, after] = first < 0 ? [others, []] : [others.slice(0, first), others.slice(first)];
  const rows = [...before, ...own, ...after.filter((row) => !isOwn(row))];
  if (memory.sheet === null) return rows.length === 0 ? [] : [newSheet(rows)];
  const count = Math.max(rows.length, memory.rows.length, 1);
  const area = { top: HEADER_ROW, left: 0, rows: 1 + count, columns: COLUMNS };
  return Array.from({ length: COLUMNS }, (_, column) => column).flatMap((column): Step[] => {
    const values = Array.from({ length: count }, (__, r) => {
      const value = rows[r]?.[column] ?? null;
      return isSame(memory.rows[r]?.[column] ?? null, value) ? undefined : value;
    });
    if (values.every((value) => value === undefined)) return [];
    return [{ kind: "changeColumn", to: { list: { sheet: memory.sheet!, area } }, column, values }];
  });
}

const newSheet = (rows: readonly (readonly Cell[])[]): Step => ({
  kind: "addSheet",
  sheet: {
    name: MEMORY_SHEET,
    isHidden: true,
    cells: [
      [{ value: words.sheet.title, look: "title" }],
      [words.sheet.lead],
      [],
      MEMORY_HEADERS.map((value) => ({ value, look: "header" as const })),
      ...rows,
    ],
    widths: [24, 18, 26, 30, 20],
    held: { rows: HEADER_ROW + 1, columns: 0 },
  },
});
