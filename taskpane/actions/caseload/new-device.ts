/** The tube that goes in, as typed: its figures, and what is doubtful about them. For Record a change and Add a person. */
import type { Access } from "../../../src/device/access";
import { LARGEST_VOLUME } from "../../../src/balloon/volumes";
import { forms } from "../../texts/forms";
import type { WordOf } from "./lists";
import type { Caseload } from "./read";
import { numberIn } from "./settings";
import type { FieldsOf, Reader } from "./typed";

export type DeviceField = "heldBy" | "knownFrom" | "shape" | "size" | "length" | "fill" | "most";
export type DeviceForm = Readonly<Record<DeviceField, string>>;

export interface NewDevice {
  readonly heldBy: WordOf<"Held by"> | null;
  readonly knownFrom: WordOf<"Known from"> | null;
  readonly shape: WordOf<"Shape"> | null;
  /** Fr, as a number. */
  readonly size: number | null;
  readonly length: number | null;
  readonly fill: number | null;
  readonly most: number | null;
}

/** cm and mL below which a figure is rather a slip; the least that the sheet takes too. Clinic setting, no published source. */
const LEAST = 0.5;

/** Only a balloon is filled; of a tube that is held in a way not known it may be one. */
const mayBeFilled = (heldBy: string): boolean => ["balloon", "catheter", "not known"].includes(heldBy);

const { heldBy, knownFrom, shape, length, fill, most, size } = forms.device;

/** The tube that goes in, in every form. */
export const deviceFields: FieldsOf<DeviceForm> = {
  labels: { heldBy, knownFrom, shape, size: `${size}, ${forms.units.Fr}`, length, fill, most },
  required: { heldBy: "choose one; “not known” is an answer", shape: "choose one" },
  applies: (field, form) => {
    if (field === "length") return form.shape === "low-profile";
    return (field !== "fill" && field !== "most") || mayBeFilled(form.heldBy);
  },
};

export const isOfDevice = (field: string): field is DeviceField => field in deviceFields.labels;

export const readDevice = (
  read: Reader<DeviceForm & Readonly<Record<string, string>>>,
  names: Caseload["names"],
): NewDevice => ({
  heldBy: read.word("heldBy", "Held by"),
  knownFrom: read.word("knownFrom", "Known from"),
  shape: read.word("shape", "Shape"),
  size: read.french("size"),
  length: read.number("length", LEAST, numberIn(names, "Length_Most"), "cm"),
  fill: read.number("fill", LEAST, LARGEST_VOLUME, "mL"),
  most: read.number("most", LEAST, LARGEST_VOLUME, "mL"),
});

export function deviceAsks(device: NewDevice, names: Caseload["names"]): readonly string[] {
  const { heldBy, knownFrom, shape, size, length, fill, most } = device;
  const [least, largest] = [numberIn(names, "Size_Least"), numberIn(names, "Size_Most")];
  const asks: (string | false)[] = [
    knownFrom === null && "It is not written down how it is known what holds the tube (label, record, seen).",
    size === null && "Size Fr is blank.",
    size !== null && size < least && `${size} Fr is below ${least}: is it mm?`,
    size !== null && size > largest && `${size} Fr is above ${largest}: look at the tube.`,
    shape === "low-profile" && length === null && "Length cm is blank, though the tube is low-profile.",
    heldBy === "balloon" && fill === null && "Fill mL is blank, though the tube is held by a balloon.",
    heldBy === "balloon" &&
      most === null &&
      "Most mL, as printed on the label, is blank: too much water will not be noticed.",
    fill !== null &&
      most !== null &&
      fill > most &&
      `Fill ${fill} mL is above the largest volume on the label (${most} mL).`,
    heldBy === "not known" && "Not known how the tube is held: tube out will always say hospital.",
  ];
  return asks.filter((ask) => ask !== false);
}

/** Carer at home is for a balloon that ends in the stomach. */
export const carerAsk = (changedBy: string | null, access: Access, holds: readonly string[]): readonly string[] => {
  if (changedBy !== "carer") return [];
  const other = holds.find((held) => held !== "balloon");
  if (access !== "G")
    return [
      `Changed by carer, but ${access === "not known" ? "it is not known where the tube ends" : `a ${access} tube is never changed at home`}.`,
    ];
  return other === undefined
    ? []
    : [`Changed by carer, but the tube is held by ${other === "" ? "something not written down" : other}.`];
};
