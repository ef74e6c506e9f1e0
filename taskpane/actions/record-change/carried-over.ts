/** What a row would keep from the tube before though it may no longer hold: agreements, the spare, the opening, the end. */
import type { Cell } from "../../../src/worksheet/cell";
import { sparesThere } from "../../../src/caseload/words";
import { shortDate } from "../../../src/words/date-in-words";
import { dateOf, frenchOf, known, numberOf, wordOf } from "../caseload/cells";
import type { Device } from "../caseload/identity";
import type { NewDevice } from "../caseload/new-device";
import { textIn, valueIn, type Caseload, type CaseloadRow } from "../caseload/read";
import { numberIn } from "../caseload/settings";
import { isOtherType, type ChangeForm } from "./form";

/** Agreed for a tube of the old type: months for a bumper would put a balloon's change years off. */
const AGREED = ["Own interval months", "Date set by placing team"];

export const forgotten = (row: CaseloadRow, form: ChangeForm): Readonly<Record<string, Cell>> =>
  isOtherType(row, form) ? Object.fromEntries(AGREED.map((header) => [header, null])) : {};

/** A spare of the tube before: perhaps larger or shorter than the new one. */
function isForAnother(row: CaseloadRow, form: ChangeForm, { size, length }: NewDevice): boolean {
  if (wordOf(valueIn(row, "Spare at home"), sparesThere) === "") return false;
  const before = known(numberOf(valueIn(row, "Length cm"), 0, Infinity, ["cm"]));
  return (
    isOtherType(row, form) || size === null || size !== known(frenchOf(valueIn(row, "Size Fr"))) || length !== before
  );
}

export const spareAfter = (row: CaseloadRow, form: ChangeForm, next: NewDevice): Readonly<Record<string, Cell>> =>
  isForAnother(row, form, next) ? { "Spare at home": "not known" } : {};

export function carriedSentences(row: CaseloadRow, form: ChangeForm, next: NewDevice): readonly string[] {
  const agreed = isOtherType(row, form) ? AGREED.filter((header) => textIn(row, header) !== "") : [];
  return [
    ...(agreed.length === 0
      ? []
      : [`${agreed.join(" and ")}: agreed for another type of tube, so emptied. Ask the placing team.`]),
    ...(isForAnother(row, form, next)
      ? ["The spare at home was for the tube before: it is put on “not known” until somebody has looked at it."]
      : []),
  ];
}

interface Circumstances {
  readonly where: string | null;
  readonly reason: string | null;
  readonly hoursOut: number | null;
  readonly daysOut: number;
}

const BY_PROCEDURE = ["radiology", "endoscopy", "theatre"];

/** Asked where another end or a new opening is likely: the row keeps both, and tube out goes by them. */
export function openingAsk(
  { row, access }: Device,
  form: ChangeForm,
  { where, reason, hoursOut, daysOut }: Circumstances,
  names: Caseload["names"],
): readonly string[] {
  const isLikely =
    BY_PROCEDURE.includes(where ?? "") ||
    reason === "change of type" ||
    isOtherType(row, form) ||
    daysOut > 0 ||
    (hoursOut ?? 0) >= numberIn(names, "Out_Most");
  if (!isLikely) return [];
  const day = known(dateOf(valueIn(row, "Stoma made")));
  const made = day === null ? textIn(row, "Stoma made") || "a day not written down" : shortDate(day);
  return [
    `The list still says that the feed ends in: ${access}, through the opening made on ${made}. If the new tube ends elsewhere, or the opening was made again, change Access or Stoma made there too: tube out goes by them.`,
  ];
}
