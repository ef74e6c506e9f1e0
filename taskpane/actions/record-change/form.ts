/** The form of a change: where it starts, and what is forgotten when the new tube is of another type. */
import type { Access } from "../../../src/device/access";
import { isoText } from "../../../src/worksheet/dates";
import { recordChange } from "../../texts/record-change";
import { recordCheck } from "../../texts/record-check";
import type { Device } from "../caseload/identity";
import { deviceFields, isOfDevice } from "../caseload/new-device";
import { textIn } from "../caseload/read";
import type { FieldsOf } from "../caseload/typed";

const ofTheOld = {
  out: recordChange.out,
  reason: recordChange.reason,
  where: recordChange.where,
  unplanned: recordChange.unplanned,
  nights: recordChange.nights,
  hoursOut: recordChange.hoursOut,
  changedBy: recordChange.changedBy,
  note: recordCheck.note,
};
const ofTheNew = {
  deviceIn: recordChange.deviceIn,
  access: recordChange.access,
  ...deviceFields.labels,
  lot: recordChange.lot,
  confirmedBy: recordChange.confirmedBy,
  pH: recordChange.pH,
};
const labels = { ...ofTheOld, ...ofTheNew };
const fields = Object.keys(labels) as readonly ChangeField[];

export type ChangeField = keyof typeof labels;

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

export const changeFields: FieldsOf<ChangeForm> = {
  labels,
  required: { out: "give the date", reason: "choose one", ...deviceFields.required },
  applies: (field, form) => {
    if (field in ofTheNew && endsCare(form)) return false;
    /* Nobody spends nights in hospital for a change at home; a pH is asked for where it confirmed the position. */
    if (field === "nights") return form.where !== "home";
    if (field === "pH") return form.confirmedBy === "pH";
    return !isOfDevice(field) || deviceFields.applies!(field, form);
  },
};
