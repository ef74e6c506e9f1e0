/** The lots of a caseload's devices, watched: which fail more often than their age explains. */
import { lotKey } from "../../../src/lots/lot-text";
import { watchLots, type Watch } from "../../../src/lots/watched";
import type { Overview, Workbook } from "../../workbook/port";
import { namesOf } from "../caseload/read";
import { numberIn } from "../caseload/settings";
import { readPictured } from "../pictures";

const DAYS_A_MONTH = 365.25 / 12;

export interface Watched extends Watch {
  /** Past devices that cannot be counted. */
  readonly leftOut: number;
}

/** Null where there is no caseload, or none of its devices can be counted. */
export async function watchCaseload(workbook: Workbook, overview: Overview, today: number): Promise<Watched | null> {
  const pictured = await readPictured(workbook, overview, today);
  if (pictured.is !== "pictured" || pictured.own !== null || pictured.devices.length === 0) return null;
  const balloon = numberIn(namesOf(overview), "Int_Balloon_G") * DAYS_A_MONTH;
  const written = new Map<string, string>();
  const devices = pictured.devices.map(({ lot, kind, days, failed }) => {
    /* A text without a digit is a remark. */
    const key = /\d/u.test(lot) ? lotKey(lot) : "";
    if (!written.has(key)) written.set(key, lot);
    return { lot: key, kind, days, failed, agreed: kind === "balloon" ? balloon : null };
  });
  const watch = watchLots(devices);
  return {
    ...watch,
    lots: watch.lots.map((one) => ({ ...one, lot: written.get(one.lot) ?? one.lot })),
    leftOut: pictured.leftOut.filter(({ table }) => table === "changes").length,
  };
}
