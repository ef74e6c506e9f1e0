/** Invented caseloads of any size, with checks and changes of every device. */
import { caseloadBookOf, type CaseloadRow, type CaseloadRows } from "../../../src/caseload/index";
import { writeBook } from "../../../taskpane/workbook/file";
import { randoms } from "../measure";

/** 26 November 2026 */
export const TODAY = 46_352;

const CHECKS_EACH = 8;
const BETWEEN_CHECKS = 7;

export const idOf = (i: number): string => `M-${String(i + 1).padStart(4, "0")}`;

/** Half of the tubes are held by a balloon; those are checked every week. */
export function caseloadRows(devices: number): CaseloadRows {
  const random = randoms(11);
  const below = (most: number): number => Math.floor(most * random());
  const isBalloon = (i: number): boolean => i % 2 === 0;
  const size = (i: number): number => 12 + 2 * (i % 5);
  const inDay = Array.from({ length: devices }, () => TODAY - 60 - below(200));
  const all = Array.from({ length: devices }, (_, i) => i);
  const tubes = all.map((i): CaseloadRow => ({
    ID: idOf(i),
    Status: "active",
    Born: TODAY - 3_000 - below(25_000),
    Access: "G",
    "Stoma made": TODAY - 1_500 - below(1_000),
    "Slow healing": "no",
    "Held by": isBalloon(i) ? "balloon" : "bumper",
    Shape: "long",
    "Size Fr": size(i),
    "Device in": inDay[i]!,
    Lot: `L${below(90)}`,
    ...(isBalloon(i) && { "Fill mL": 5, "Most mL": 10, "Checked by": "carer, keeps card" }),
    "Changed by": isBalloon(i) ? "nurse at home" : "endoscopy",
    "Spare at home": "same size",
  }));
  const checks = all.filter(isBalloon).flatMap((i) =>
    Array.from({ length: CHECKS_EACH }, (_, k): CaseloadRow => ({
      ID: idOf(i),
      "Checked on": TODAY - 2 - BETWEEN_CHECKS * (CHECKS_EACH - 1 - k),
      "Out mL": 4.2 + below(9) / 10,
      "Put in mL": 5,
      By: "carer",
    })),
  );
  const changes = all.map((i): CaseloadRow => ({
    ...{ ID: idOf(i), Access: "G", "Held by": isBalloon(i) ? "balloon" : "bumper", Shape: "long" },
    ...{ "Size Fr": size(i), Lot: `L${below(90)}`, In: inDay[i]! - 100, Out: inDay[i]! },
    ...{ Reason: "planned", Where: "home", "Unplanned visit": "no", Nights: 0 },
    ...{ "New held by": isBalloon(i) ? "balloon" : "bumper", "New shape": "long", "New size Fr": size(i) },
  }));
  return { tubes, checks: checks.sort(by("Checked on")), changes: changes.sort(by("Out")) };
}

const by =
  <H extends string>(header: H) =>
  (a: { readonly [K in H]?: unknown }, b: { readonly [K in H]?: unknown }): number =>
    (a[header] as number) - (b[header] as number);

export const inWords = ({ tubes, checks, changes }: CaseloadRows): string =>
  [
    `${tubes.length.toLocaleString("en-GB")} devices`,
    `${checks.length.toLocaleString("en-GB")} checks`,
    `${changes.length.toLocaleString("en-GB")} changes`,
  ].join(", ");

/** All columns worked out, as a file. */
export const caseloadFile = (rows: CaseloadRows): Promise<Uint8Array> =>
  writeBook(caseloadBookOf(rows, { asOf: TODAY, people: "none", groups: ["fit", "plan", "spare"] }));
