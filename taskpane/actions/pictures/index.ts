/** What the pictures show: the caseload's devices as its formulas tell them, and the days that its tubes are due. Writes nothing. */
import { devicesOf, type Facts } from "../../../src/pictures/devices";
import type { Due } from "../../../src/pictures/due";
import { AS_OF } from "../../../src/columns/as-of";
import type { Workbook } from "../../workbook/port";
import { lists } from "../caseload/lists";
import { named, readCaseload, textIn, valueIn, type CaseloadRow } from "../caseload/read";
import type { NoCaseload } from "../caseload/recognise";

export interface Pictured extends Facts {
  readonly is: "pictured";
  /** The day that counts as today in the workbook. */
  readonly asOf: number;
  /** Rows in use, by what the list says: due, or booked, or neither. */
  readonly tubes: readonly (Due & { readonly kind: string })[];
  /** Rows of *Changes* and *Tubes in use* as people count them, for those that are left out. */
  readonly sheetRows: { readonly changes: readonly number[]; readonly tubes: readonly number[] };
}

const isAway = (row: CaseloadRow<"tubes">): boolean =>
  lists.Status.some((word) => word !== "active" && word === textIn(row, "Status").toLowerCase());
const dayIn = (row: CaseloadRow<"tubes">, header: "Booked for" | "Change due"): number | null => {
  const value = valueIn(row, header);
  return typeof value === "number" && value > 0 ? Math.floor(value) : null;
};

/** @param today by the computer's clock, where the workbook names no day of its own */
export async function readPictured(
  workbook: Pick<Workbook, "overview" | "read">,
  today: number,
): Promise<Pictured | NoCaseload> {
  const caseload = await readCaseload(workbook);
  if (caseload.is !== "caseload") return caseload;
  const { changes, tubes, names } = caseload;
  const day = (name: string): number | null => {
    const value = named(names, name);
    return typeof value === "number" ? Math.floor(value) : null;
  };
  const asOf = day(AS_OF) ?? today;
  const facts = devicesOf(
    {
      changes: changes.rows.map((row) => (header) => valueIn(row, header)),
      tubes: tubes.rows.map((row) => (header) => valueIn(row, header)),
    },
    asOf,
    day("Day_Oldest") ?? 1,
  );
  return {
    is: "pictured",
    ...facts,
    asOf,
    tubes: tubes.rows
      .filter((row) => !isAway(row))
      .map((row) => ({
        day: dayIn(row, "Booked for") ?? dayIn(row, "Change due"),
        kind: textIn(row, "Held by").toLowerCase() || "not known",
      })),
    sheetRows: {
      changes: changes.rows.map(({ sheetRow }) => sheetRow),
      tubes: tubes.rows.map(({ sheetRow }) => sheetRow),
    },
  };
}
