/**
 * Who is meant. An identifier is the same whatever its letter case and its outer or doubled spaces; one row is one
 * device, told apart by Access. Where rows cannot be told apart nobody is picked: a wrong person is worse than none.
 */
import type { Access } from "../../../src/device/access";
import { wordKey } from "../../../src/columns/spelling";
import { inQuotes, rowList } from "../../texts/pieces";
import { accessOf, textOf } from "./cells";
import type { RowsTable } from "../../../src/caseload/names";
import { valueIn, type CaseloadRow } from "./read";

const idKey = (id: string): string => wordKey(id);

export interface Device {
  readonly row: CaseloadRow<"tubes">;
  /** As it stands, outer and doubled spaces aside. */
  readonly id: string;
  readonly access: Access;
}

export interface Meant {
  /** One for each row with that identifier; none where it is not in the list. */
  readonly devices: readonly Device[];
  /** Why these rows cannot be told apart; null where they can. */
  readonly doubt: string | null;
}

const deviceOf = (row: CaseloadRow<"tubes">): Device => ({
  row,
  id: textOf(valueIn(row, "ID")),
  access: accessOf(valueIn(row, "Access")),
});

/** Rows of the list, or of a log, that bear this identifier. */
export function rowsOf<T extends RowsTable>(rows: readonly CaseloadRow<T>[], id: string): readonly CaseloadRow<T>[] {
  const key = idKey(id);
  return key === "" ? [] : rows.filter((row) => idKey(textOf(valueIn<RowsTable>(row, "ID"))) === key);
}

export function whoIsMeant(tubes: { readonly rows: readonly CaseloadRow<"tubes">[] }, id: string): Meant {
  const rows = rowsOf(tubes.rows, id);
  const devices = rows.map(deviceOf);
  return { devices, doubt: devices.length > 1 ? doubtOf(devices) : null };
}

/** Those that one more row with this identifier and this access could not be told from. */
export const notToldFrom = (devices: readonly Device[], access: Access): readonly Device[] =>
  devices.filter((device) => device.access === access || device.access === "not known");

function doubtOf(devices: readonly Device[]): string | null {
  const where = rowList(devices.map(({ row }) => row.sheetRow));
  /* Spaces count here: a copied identifier with a space behind it was typed by somebody else, at another time. */
  const spellings = [...new Set(devices.map(({ row }) => String(valueIn(row, "ID"))))];
  if (spellings.length > 1) {
    return `This identifier is spelt in more than one way (${spellings.map(inQuotes).join(", ")}; ${where}). It may be one person or two: look at the list.`;
  }
  const accesses = new Set(devices.map(({ access }) => access));
  if (accesses.size < devices.length || accesses.has("not known")) {
    return `${inQuotes(devices[0]!.id)} stands in ${where}, and Access does not tell these rows apart: look at the list.`;
  }
  return null;
}
