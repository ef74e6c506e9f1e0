/** What a row would keep from the tube before though it may no longer hold: agreements, the spare, the opening, the end. */
import type { Cell } from "../../../src/worksheet/cell";
import type { ByHeader } from "../../../src/caseload/headers";
import { sparesThere } from "../../../src/caseload/words";
import { recordChange } from "../../texts/record-change";
import { shortDate } from "../../../src/words/date-in-words";
import { dateOf, frenchOf, known, numberOf, wordOf } from "../caseload/cells";
import type { Device } from "../caseload/identity";
import type { NewDevice } from "../caseload/new-device";
import { textIn, valueIn, type Caseload } from "../caseload/read";
import { numberIn } from "../caseload/settings";
import { emptied } from "../caseload/write";
import { accessAfter, endsElsewhere, isOtherType, type ChangeForm } from "./form";

/** Agreed for a tube of the old type: months for a bumper would put a balloon's change years off. */
const AGREED = ["Own interval months", "Date set by placing team"] as const;

export const forgotten = (device: Device, form: ChangeForm): ByHeader<Cell, "tubes"> =>
  isOtherType(device, form) ? emptied(AGREED) : {};

/** A spare of the tube before: perhaps larger or shorter than the new one. */
function isForAnother(device: Device, form: ChangeForm, { size, length }: NewDevice): boolean {
  const { row } = device;
  if (wordOf(valueIn(row, "Spare at home"), sparesThere) === "") return false;
  const before = known(numberOf(valueIn(row, "Length cm"), 0, Infinity, ["cm"]));
  return (
    isOtherType(device, form) || size === null || size !== known(frenchOf(valueIn(row, "Size Fr"))) || length !== before
  );
}

export const spareAfter = (device: Device, form: ChangeForm, next: NewDevice): ByHeader<Cell, "tubes"> =>
  isForAnother(device, form, next) ? { "Spare at home": "not known" } : {};

export function carriedSentences(device: Device, form: ChangeForm, next: NewDevice): readonly string[] {
  const agreed = isOtherType(device, form) ? AGREED.filter((header) => textIn(device.row, header) !== "") : [];
  return [
    ...(agreed.length === 0
      ? []
      : [`${agreed.join(" and ")}: agreed for another type of tube, so emptied. Ask the placing team.`]),
    ...(isForAnother(device, form, next)
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
  device: Device,
  form: ChangeForm,
  { where, reason, hoursOut, daysOut }: Circumstances,
  names: Caseload["names"],
): readonly string[] {
  const isLikely =
    BY_PROCEDURE.includes(where ?? "") ||
    reason === "change of type" ||
    isOtherType(device, form) ||
    daysOut > 0 ||
    (hoursOut ?? 0) >= numberIn(names, "Out_Most");
  if (!isLikely) return [];
  const { row, access } = device;
  const day = known(dateOf(valueIn(row, "Stoma made")));
  const made = day === null ? textIn(row, "Stoma made") || "a day not written down" : shortDate(day);
  return [
    endsElsewhere(device, form)
      ? `The list will say that the feed ends in: ${accessAfter(device, form)}, through the opening made on ${made}. If it is another opening, or the opening was made again, change Stoma made there too: tube out goes by both.`
      : `The list still says that the feed ends in: ${access}, through the opening made on ${made}. If the new tube ends elsewhere, choose so under “${recordChange.access}”; if it is another opening, or the opening was made again, change Stoma made in the list: tube out goes by both.`,
  ];
}
