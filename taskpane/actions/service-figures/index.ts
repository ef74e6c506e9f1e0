/** How the service does: the caseload's devices with what was written down when they came out. Writes nothing. */
import { confirmedBy, places, reasons } from "../../../src/caseload/words";
import { AS_OF } from "../../../src/columns/as-of";
import { devicesOf, type Device } from "../../../src/pictures/devices";
import { board, boardPeriods, type Board, type BoardLength } from "../../../src/service/board";
import { NOT_WRITTEN, NOTHING_PUT_IN, type Breakdown, type ServiceChange } from "../../../src/service/figures";
import type { Period } from "../../../src/pictures/months";
import type { Workbook } from "../../workbook/port";
import { named, readCaseload, textIn, valueIn, type CaseloadRow } from "../caseload/read";
import type { NoCaseload } from "../caseload/recognise";
import { numberIn } from "../caseload/settings";

export interface Service {
  readonly is: "service";
  readonly devices: readonly Device[];
  readonly changes: readonly ServiceChange[];
  /** Rows of *Changes* that cannot be counted: dates or reason missing or wrong. */
  readonly uncounted: number;
  readonly asOf: number;
  /** Counts below it are not handed round. */
  readonly least: number;
  readonly words: Readonly<Record<Breakdown, readonly string[]>>;
  /** Those that are over, the newest first. */
  readonly periods: readonly { readonly length: BoardLength; readonly period: Period }[];
}

/** So many quarters and years are offered. */
const [QUARTERS, YEARS] = [8, 3];
/** Nothing goes in then. */
const LAST = new Set(["no longer needed", "left"]);
/** What a list says where nobody knows. */
const NOT_RECORDED = "not recorded";

/** @param today by the computer's clock, where the workbook names no day of its own */
export async function readService(
  workbook: Pick<Workbook, "overview" | "read">,
  today: number,
): Promise<Service | NoCaseload> {
  const caseload = await readCaseload(workbook);
  if (caseload.is !== "caseload") return caseload;
  const { changes, tubes, names } = caseload;
  const day = (name: string): number | null => {
    const value = named(names, name);
    return typeof value === "number" ? Math.floor(value) : null;
  };
  const asOf = day(AS_OF) ?? today;
  const oldest = day("Day_Oldest") ?? 1;
  const inUse = devicesOf(
    { changes: [], tubes: tubes.rows.map((row) => (header) => valueIn(row, header)) },
    asOf,
    oldest,
  );
  const out = changes.rows.flatMap((row) => {
    const read = devicesOf({ changes: [(header) => valueIn(row, header)], tubes: [] }, asOf, oldest);
    return read.devices.map((device) => changeOf(row, device));
  });
  const devices = [...out.map(({ device }) => device), ...inUse.devices];
  const first = devices.reduce((least, { from }) => Math.min(least, from), asOf);
  return {
    is: "service",
    devices,
    changes: out,
    uncounted: changes.rows.length - out.length,
    asOf,
    least: numberIn(names, "Small_Count"),
    words: wordsOf(out),
    periods: [
      ...boardPeriods(first, asOf, "quarter", QUARTERS).map((period) => ({ length: "quarter" as const, period })),
      ...boardPeriods(first, asOf, "year", YEARS).map((period) => ({ length: "year" as const, period })),
    ],
  };
}

/** As the list has it, whatever the letter case; another word as it was typed, in small letters. */
function listed(text: string, words: readonly string[]): string {
  const small = text.toLowerCase();
  return words.find((word) => word.toLowerCase() === small) ?? small;
}

const reasonWords = reasons.map(({ word }) => word);

function changeOf(row: CaseloadRow<"changes">, device: Device): ServiceChange {
  const nights = valueIn(row, "Nights");
  const position = listed(textIn(row, "Position confirmed by"), confirmedBy);
  const reason = listed(device.reason, reasonWords);
  return {
    device: { ...device, reason },
    where: listed(textIn(row, "Where"), places),
    isVisit: textIn(row, "Unplanned visit").toLowerCase() === "yes",
    nights: typeof nights === "number" && nights > 0 ? Math.floor(nights) : 0,
    position: position === NOT_RECORDED ? "" : position,
    isLast: LAST.has(reason),
  };
}

/** The lists' own words and whatever else somebody typed: a word that is not there must count as one that may be. */
function wordsOf(changes: readonly ServiceChange[]): Service["words"] {
  const all = (own: readonly string[], typed: readonly string[]): readonly string[] =>
    [...new Set([...own, ...typed, NOT_WRITTEN, NOTHING_PUT_IN])].filter((word) => word !== "");
  const unplanned = changes.filter(({ device }) => device.unplanned);
  return {
    reasons: all(
      reasons.filter((one) => one.unplanned).map(({ word }) => word),
      unplanned.map(({ device }) => device.reason),
    ),
    where: all(
      places,
      changes.map(({ where }) => where),
    ),
    position: all(
      confirmedBy.filter((word) => word !== NOT_RECORDED),
      changes.map(({ position }) => position),
    ),
  };
}

export const boardOf = (
  { devices, changes, asOf, least, words }: Service,
  { period, length }: Service["periods"][number],
): Board => board(devices, changes, period, length, { asOf, least, words });
