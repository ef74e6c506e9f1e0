/**
 * Tells invented rows from real ones that happen to have the same identifier, so that the invented people go away with
 * one press and nobody else does.
 *
 * Every invented person was born a known number of days before the day on which they were invented. That day is
 * not stored anywhere: it is the one on which identifiers and days of birth of several people agree.
 */
import type { Header } from "../headers";
import { wordKey } from "../../columns/spelling";
import { inventedCaseload } from "./caseload";

/** A row by header, whatever its cells hold. */
export type AnyRow = Readonly<Record<string, unknown>>;

export interface InventedRows {
  /** The day on which the people were invented; null where no invented people were found. */
  readonly inventedOn: number | null;
  /** Which rows are invented, counted from 0. */
  readonly tubes: readonly number[];
  readonly checks: readonly number[];
  readonly changes: readonly number[];
}

/** Fewer could agree by chance. */
const LEAST_PEOPLE = 3;

const idOf = (row: AnyRow): string => wordKey(String(row.ID ?? ""));

/** By identifier, in days; any day will do to count from. */
function agesByIdentifier(): ReadonlyMap<string, number> {
  const anyDay = 46000;
  return new Map(inventedCaseload(anyDay).tubes.map((row) => [idOf(row), anyDay - Number(row.Born)]));
}

function dayOfInvention(tubes: readonly AnyRow[], ages: ReadonlyMap<string, number>): number | null {
  const people = new Map<number, Set<string>>();
  for (const row of tubes) {
    const age = ages.get(idOf(row));
    if (age === undefined || typeof row.Born !== "number") continue;
    const day = row.Born + age;
    people.set(day, (people.get(day) ?? new Set()).add(idOf(row)));
  }
  const [best] = [...people].sort(([, a], [, b]) => b.size - a.size);
  return best && best[1].size >= LEAST_PEOPLE ? best[0] : null;
}

const indexes = (rows: readonly AnyRow[], is: (row: AnyRow) => boolean): number[] =>
  rows.flatMap((row, i) => (is(row) ? [i] : []));

/** Headers that together tell one row of a log from another. */
const CHECK = ["Checked on", "Out mL", "Put in mL"] as const;
const CHANGE = ["In", "Out", "Reason"] as const;

const signature = (headers: readonly Header[]) => (row: AnyRow) =>
  JSON.stringify([idOf(row), ...headers.map((header) => row[header] ?? null)]);

export function inventedRows(rows: {
  readonly tubes: readonly AnyRow[];
  readonly checks: readonly AnyRow[];
  readonly changes: readonly AnyRow[];
}): InventedRows {
  const ages = agesByIdentifier();
  const inventedOn = dayOfInvention(rows.tubes, ages);
  if (inventedOn === null) return { inventedOn, tubes: [], checks: [], changes: [] };

  const isInvented = (row: AnyRow) => ages.has(idOf(row)) && row.Born === inventedOn - ages.get(idOf(row))!;
  const real = new Set(rows.tubes.filter((row) => !isInvented(row)).map(idOf));
  const gone = new Set(rows.tubes.filter((row) => isInvented(row) && !real.has(idOf(row))).map(idOf));
  const original = inventedCaseload(inventedOn);

  /* What was recorded since for an invented person goes too; where a real one bears the identifier, only what was invented. */
  const inLog = (log: readonly AnyRow[], invented: readonly AnyRow[], headers: readonly Header[]) => {
    const sign = signature(headers);
    const signatures = new Set(invented.map(sign));
    return indexes(log, (row) => gone.has(idOf(row)) || signatures.has(sign(row)));
  };
  return {
    inventedOn,
    tubes: indexes(rows.tubes, isInvented),
    checks: inLog(rows.checks, original.checks, CHECK),
    changes: inLog(rows.changes, original.changes, CHANGE),
  };
}
