/** The form of a change: where it starts, and what is forgotten when the new tube is of another type. */
import type { Access } from "../../../src/device/access";
import { isoText } from "../../../src/worksheet/dates";
import type { Device } from "../caseload/identity";
import { textIn } from "../caseload/read";

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
const ofTheNew = [
  "access",
  "heldBy",
  "knownFrom",
  "shape",
  "size",
  "length",
  "deviceIn",
  "lot",
  "fill",
  "most",
  "note",
] as const;
const fields = [...ofTheOld, ...ofTheNew];

export type ChangeField = (typeof fields)[number];

/** As the fields stand. A blank `deviceIn` is the day on which the old tube came out; a blank `access` is as it was. */
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

/** Where the new tube ends. */
export const accessAfter = ({ access: before }: Device, { access }: Pick<ChangeForm, "access">): Access =>
  access === "" ? before : (access as Access);

export const endsElsewhere = (device: Device, form: Pick<ChangeForm, "access">): boolean =>
  accessAfter(device, form) !== device.access;

type Type = Pick<ChangeForm, "access" | "heldBy" | "shape">;

/** Held or shaped otherwise, or it ends elsewhere. */
export const isOtherType = (device: Device, form: Type): boolean =>
  textIn(device.row, "Held by").toLowerCase() !== form.heldBy ||
  textIn(device.row, "Shape").toLowerCase() !== form.shape ||
  endsElsewhere(device, form);

const typeFields = ["access", "heldBy", "shape"] as const;

/** Of another type: fill, label and length of the old tube are not offered for it. */
export function retyped(device: Device, before: ChangeForm, change: Partial<ChangeForm>): ChangeForm {
  const after = { ...before, ...change };
  const hasChanged = typeFields.some((field) => before[field] !== after[field]);
  return hasChanged && isOtherType(device, after) ? { ...after, length: "", fill: "", most: "", ...change } : after;
}

/** No new tube follows. */
export const endsCare = ({ reason }: Pick<ChangeForm, "reason">): boolean =>
  reason === "no longer needed" || reason === "left";
