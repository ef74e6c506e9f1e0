/**
 * Somebody's own list as rows of the ready-made caseload. What a cell says is taken only where it can mean one thing; all
 * else is kept as it stood, in a column of its own in the same row and on a sheet that says why. Nothing is assumed: a
 * blank in the caseload asks, a guess would answer.
 */
import { saysBalloonGJ } from "../columns/kind-guess";
import { roleNamed, type Role } from "../columns/role";
import { textOf, type SheetValue } from "../columns/sheet-block";
import { wordKey } from "../columns/spelling";
import type { KindKey } from "../settings/kinds";
import { readFrench } from "../sizes/french";
import type { Cell } from "../worksheet/cell";
import { readDate } from "../worksheet/dates";
import { CellError } from "../worksheet/error";
import type { CellDescription, SheetDescription } from "./book";
import type { Carried, OwnColumn } from "./carried";
import { shownHeaders, type Header } from "./headers";
import type { CaseloadRow } from "./rows";
import type { holds } from "./words";
import { accesses, changers, shapes, statuses, yesNoNotKnown } from "./words";

export interface OwnListRows {
  readonly headers: readonly string[];
  readonly rows: readonly (readonly SheetValue[])[];
  /** Sheet row (from 1) of each of `rows`. */
  readonly rowNumbers: readonly number[];
  readonly columns: { readonly [R in Role]?: number };
  /** The column that says whose row it is; null where none does. */
  readonly identifier: number | null;
  /** What a word for the kind means; null where it is not known. */
  readonly kindOf: (word: string) => KindKey | null;
}

/** A cell that did not become an entry of the caseload. */
export interface NotBrought {
  /** Sheet row (from 1) of the old list. */
  readonly row: number;
  readonly id: string;
  readonly column: string;
  readonly text: string;
  readonly why: string;
}

export interface Brought {
  readonly carried: Carried;
  readonly notBrought: readonly NotBrought[];
  /** Headers of the old list that have a column of their own in the caseload, because it has none for them. */
  readonly beside: readonly string[];
}

const isBlank = (cell: SheetValue): boolean => !(cell instanceof CellError) && textOf(cell).trim() === "";

/** An entry, or why the cell is none. */
type Read = { readonly is: Cell } | { readonly why: string };

const oneOf =
  (words: readonly string[]) =>
  (cell: SheetValue): Read => {
    const found = words.find((word) => wordKey(word) === wordKey(textOf(cell)));
    return found === undefined ? { why: "none of the caseload's words" } : { is: found };
  };

function dateOf(cell: SheetValue): Read {
  if (cell instanceof CellError || cell === null) return { why: "an error" };
  const day = readDate(cell);
  return typeof day === "number" ? { is: Math.floor(day) } : { why: "no date that can be read" };
}

const numberOf = (cell: SheetValue): Read => (typeof cell === "number" ? { is: cell } : { why: "no plain number" });

function frenchOf(cell: SheetValue): Read {
  const french = cell instanceof CellError || cell === null ? null : readFrench(cell);
  return typeof french === "number" ? { is: french } : { why: "no French size that can be read" };
}

/** Columns that become one column of the caseload. The kind and the checks become several. */
const single: Partial<Record<Role, readonly [Header<"tubes">, (cell: SheetValue) => Read]>> = {
  last: ["Device in", dateOf],
  size: ["Size Fr", frenchOf],
  stomaMade: ["Stoma made", dateOf],
  slowHealing: ["Slow healing", oneOf(yesNoNotKnown)],
  length: ["Length cm", numberOf],
  lying: ["Lying cm", numberOf],
  sitting: ["Sitting cm", numberOf],
  gap: ["Play mm", numberOf],
  markThen: ["Mark then cm", numberOf],
  markNow: ["Mark now cm", numberOf],
  shape: ["Shape", oneOf(shapes)],
  changedBy: ["Changed by", oneOf(changers)],
  status: ["Status", oneOf(statuses)],
};

/** Worked out by the caseload itself, or of two possible meanings: kept beside as they stand. */
const KEPT_ROLES: readonly Role[] = ["due", "latest", "state", "diameter", "putIn"];

interface HeldBy {
  readonly heldBy: (typeof holds)[number];
  readonly access: (typeof accesses)[number] | null;
  readonly why: string | null;
}

/** What holds it and where it ends, as far as the kind says so. A bumper may carry a tube on into the bowel. */
function heldBy(word: string, kind: KindKey | null): HeldBy {
  switch (kind) {
    case "balloon gastrostomy":
      return { heldBy: "balloon", access: "G", why: null };
    case "balloon jejunostomy":
      return { heldBy: "balloon", access: "J", why: null };
    case "gastrojejunal":
      return saysBalloonGJ(word)
        ? { heldBy: "balloon", access: "GJ", why: null }
        : { heldBy: "not known", access: "GJ", why: "does not say what holds it" };
    case "bumper adult":
    case "bumper child":
      return { heldBy: "bumper", access: null, why: null };
    case "placing team": {
      const found = (["loop", "winged", "stitched", "catheter"] as const).find((one) => wordKey(word).includes(one));
      return found
        ? { heldBy: found, access: null, why: null }
        : { heldBy: "not known", access: null, why: "does not say what holds it" };
    }
    default:
      return { heldBy: "not known", access: null, why: "does not say how it is held" };
  }
}

interface RowBrought {
  readonly tube: CaseloadRow<"tubes">;
  readonly check: CaseloadRow<"checks"> | null;
  /** By column of the old list. */
  readonly failed: ReadonlyMap<number, string>;
}

function bringRow(row: readonly SheetValue[], { columns, identifier, kindOf }: OwnListRows): RowBrought {
  const failed = new Map<number, string>();
  const tube: Partial<Record<Header<"tubes">, Cell>> = {};
  const cellOf = (role: Role): SheetValue => {
    const column = columns[role];
    return column === undefined ? null : (row[column] ?? null);
  };
  const fail = (role: Role, why: string): void => void failed.set(columns[role]!, why);
  const take = (role: Role, read: (cell: SheetValue) => Read): Cell => {
    const cell = cellOf(role);
    if (isBlank(cell)) return null;
    const found = read(cell);
    if ("is" in found) return found.is;
    fail(role, found.why);
    return null;
  };
  const id = identifier === null ? null : textOf(row[identifier] ?? null).trim();
  if (id) tube.ID = id;
  for (const [role, [header, read]] of Object.entries(single)) {
    const value = take(role as Role, read);
    if (value !== null) tube[header] = value;
  }
  const said = take("access", oneOf(accesses));
  const word = textOf(cellOf("kind")).trim();
  const held = columns.kind === undefined ? null : heldBy(word, word === "" ? null : kindOf(word));
  if (held) {
    tube["Held by"] = held.heldBy;
    if (held.why !== null && word !== "") fail("kind", held.why);
  }
  const isTorn = said !== null && held !== null && held.access !== null && said !== held.access;
  if (isTorn) {
    fail("access", "the kind and the access say different ends");
    fail("kind", "the kind and the access say different ends");
    tube["Held by"] = "not known";
  } else if (said !== null || held?.access) tube.Access = said ?? held!.access!;
  const [checked, out] = [take("lastCheck", dateOf), take("out", numberOf)];
  if (checked === null && out !== null) fail("out", "the day of that check is not known");
  const check: CaseloadRow<"checks"> | null =
    checked === null || !id
      ? null
      : {
          ID: id,
          ...(tube.Access && { Access: tube.Access }),
          "Checked on": checked,
          ...(out !== null && { "Out mL": out }),
        };
  if (checked !== null && !id) fail("lastCheck", "nobody can be told whose check it is");
  return { tube: tube as CaseloadRow<"tubes">, check, failed };
}

/** As a header that the caseload has not: its own are never given twice. */
function freeHeader(header: string, taken: Set<string>): string {
  let free = header;
  for (let n = 1; taken.has(wordKey(free)); n++) free = n === 1 ? `${header}, old list` : `${header}, old list ${n}`;
  taken.add(wordKey(free));
  return free;
}

const asCell = (value: SheetValue): Cell => (value instanceof CellError ? value.code : value);

export function bringList(list: OwnListRows, formatOf: (column: number) => string = () => "General"): Brought {
  const { headers, columns, identifier } = list;
  const kept = list.rows.flatMap((row, at) => (row.every(isBlank) ? [] : [{ row, at }]));
  const brought = kept.map(({ row }) => bringRow(row, list));
  const meaning = new Map(Object.entries(columns).map(([role, column]) => [column, role as Role]));
  const taken = new Set(shownHeaders.tubes.map((header) => wordKey(header)));
  const beside: string[] = [];
  const own = headers.flatMap((header, column): OwnColumn[] => {
    const role = meaning.get(column);
    const isKept = column !== identifier && (role === undefined || KEPT_ROLES.includes(role));
    const cells = kept.map(({ row }, r) =>
      isKept || brought[r]!.failed.has(column) ? asCell(row[column] ?? null) : null,
    );
    if (cells.every((cell) => isBlank(cell))) return [];
    const named = header.trim() === "" ? `Column ${column + 1}` : header.trim();
    if (isKept) beside.push(named);
    return [{ header: freeHeader(isKept ? named : `${named}, as typed`, taken), format: formatOf(column), cells }];
  });
  const notBrought = kept.flatMap(({ row, at }, r) =>
    [...brought[r]!.failed].map(([column, why]) => ({
      row: list.rowNumbers[at]!,
      id: identifier === null ? "" : textOf(row[identifier] ?? null).trim(),
      column: headers[column]!.trim() || roleNamed(meaning.get(column)!).label,
      text: textOf(row[column] ?? null),
      why,
    })),
  );
  return {
    carried: {
      rows: {
        tubes: brought.map(({ tube }) => tube),
        checks: brought.flatMap(({ check }) => check ?? []),
        changes: [],
      },
      settings: new Map(),
      reasons: null,
      own: { tubes: own, checks: [], changes: [] },
      inventedOn: null,
    },
    notBrought,
    beside,
  };
}

const NOT_BROUGHT = "Not brought";

/** The sheet that says what could not be brought, and why; null where all was. */
export function notBroughtSheet({ notBrought }: Brought): SheetDescription | null {
  if (notBrought.length === 0) return null;
  const heading = ["Row of the old list", "ID", "Column", "What stood there", "Why it was not taken"];
  const line = (row: number, cells: readonly Cell[], look: CellDescription["look"]): CellDescription[] =>
    cells.map((value, column) => ({
      row,
      column,
      value,
      look: look!,
      ...(typeof value === "string" && { format: "@" }),
    }));
  return {
    name: NOT_BROUGHT,
    cells: [
      { row: 0, column: 0, value: "Not taken from the old list", look: "title" },
      {
        row: 1,
        column: 0,
        value:
          "Each stands in its own row of Tubes in use too, as it was typed. Enter it there, then strike it off here.",
        look: "lead",
      },
      ...line(3, heading, "typedHeader"),
      ...notBrought.flatMap(({ row, id, column, text, why }, i) => line(4 + i, [row, id, column, text, why], "text")),
    ],
    widths: { 0: 18, 1: 14, 2: 20, 3: 30, 4: 44 },
    frozen: { rows: 4, columns: 0 },
    print: { landscape: true, titleRow: 3, footer: "Not taken from the old list" },
  };
}
