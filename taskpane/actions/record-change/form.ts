/** The form of a change: where it starts, and what is forgotten when the new tube is of another type. */
import { isoText } from "../../../src/worksheet/dates";
import type { Device } from "../caseload/identity";
import { textIn, type CaseloadRow } from "../caseload/read";

const ofTheOld = [
  "out",
  "reason",
  "where",
  "unplanned",
  "nights",
  "hoursOut",
  "changedBy",
  "confirmedBy",
  "pH",
] as const;
const ofTheNew = ["heldBy", "knownFrom", "shape", "size", "length", "deviceIn", "lot", "fill", "most", "note"] as const;
const fields = [...ofTheOld, ...ofTheNew];

export type ChangeField = (typeof fields)[number];

/** As the fields stand. A blank `deviceIn` is the day on which the old tube came out. */
export type ChangeForm = Readonly<Record<ChangeField, string>>;

/** The new tube is mostly like the old one: what was written of that one is offered, to be looked at. */
export function startOfChange({ row }: Device, today: number): ChangeForm {
  const blank = Object.fromEntries(fields.map((field) => [field, ""])) as ChangeForm;
  return {
    ...blank,
    out: isoText(today),
    heldBy: textIn(row, "Held by").toLowerCase(),
    shape: textIn(row, "Shape").toLowerCase(),
    size: textIn(row, "Size Fr"),
    length: textIn(row, "Length cm"),
    fill: textIn(row, "Fill mL"),
    most: textIn(row, "Most mL"),
  };
}

export const isOtherType = (row: CaseloadRow, { heldBy, shape }: Pick<ChangeForm, "heldBy" | "shape">): boolean =>
  textIn(row, "Held by").toLowerCase() !== heldBy || textIn(row, "Shape").toLowerCase() !== shape;

/** Held or shaped otherwise: fill, label and length of the old tube are not offered for it. */
export function retyped(row: CaseloadRow, before: ChangeForm, change: Partial<ChangeForm>): ChangeForm {
  const after = { ...before, ...change };
  const hasChanged = before.heldBy !== after.heldBy || before.shape !== after.shape;
  return hasChanged && isOtherType(row, after) ? { ...after, length: "", fill: "", most: "", ...change } : after;
}

/** No new tube follows. */
export const endsCare = ({ reason }: Pick<ChangeForm, "reason">): boolean =>
  reason === "no longer needed" || reason === "left";
