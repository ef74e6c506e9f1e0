/**
 * Whether the clinic has agreed its settings, for every screen that shows a clinical result. Who and when must both
 * stand there, the day must not lie ahead, and the review must not be past; anything else is not agreed.
 */
import { NOT_AGREED } from "../../../src/caseload/lines";
import { AS_OF } from "../../../src/columns/as-of";
import type { ClinicSettingName } from "../../../src/settings/index";
import { readDate } from "../../../src/worksheet/dates";
import type { Cell } from "../../../src/worksheet/cell";
import type { Overview } from "../../workbook/port";
import { shortDate } from "../../../src/words/date-in-words";

export interface Agreement {
  readonly agreed: boolean;
  /** To stand beside the result, agreed or not. */
  readonly sentence: string;
}

const not = (why: string): Agreement => ({ agreed: false, sentence: `${NOT_AGREED}: ${why}` });

const dayIn = (cell: Cell): number | null => {
  const read = cell === null || cell === "" ? null : readDate(cell);
  return typeof read === "number" ? read : null;
};

/**
 * @param overview null while the workbook is not there
 * @param today by the computer's clock; a day that stands still in the workbook (As_of) does not put a review off
 */
export function agreement(overview: Pick<Overview, "names"> | null, today?: number): Agreement {
  const cellOf = (name: ClinicSettingName | typeof AS_OF): Cell | undefined =>
    overview?.names.find((one) => one.name.toLowerCase() === name.toLowerCase())?.value;
  const by = cellOf("Agreed_By");
  const on = cellOf("Agreed_On");
  if (by === undefined || on === undefined) {
    return not("this workbook has no sheet on which a clinic agrees its settings.");
  }
  const asOf = Math.max(dayIn(cellOf(AS_OF) ?? null) ?? -Infinity, today ?? -Infinity);
  const name = by === null ? "" : String(by).replace(/\s+/gu, " ").trim();
  const day = dayIn(on);
  if (name === "") return { agreed: false, sentence: "Nobody has agreed these settings yet." };
  if (day === null) return not(`${name} is named, but the day is not entered or cannot be read.`);
  const who = `agreed by ${name} on ${shortDate(day)}`;
  if (!Number.isFinite(asOf)) return not(`${who}, but today’s date is not known in this workbook.`);
  if (day > asOf) return not(`${who}, a day that has not come yet.`);
  const until = dayIn(cellOf("Agreed_Until") ?? null);
  if (until === null) return not(`${who}, but no day is entered to review them by.`);
  if (until < asOf) return not(`${who}, but they should have been reviewed by ${shortDate(until)}.`);
  return { agreed: true, sentence: `Settings ${who}, review by ${shortDate(until)}.` };
}
