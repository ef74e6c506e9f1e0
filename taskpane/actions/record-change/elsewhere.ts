/**
 * A new tube that ends elsewhere than the one before: what was arranged for that one may be wrong for it, and its feed
 * plan is. What must not be is put right or emptied; the rest is told.
 */
import { NEVER_TURN } from "../../../src/caseload/cautions";
import type { Access } from "../../../src/device/access";
import type { ByHeader } from "../../../src/caseload/headers";
import type { Cell } from "../../../src/worksheet/cell";
import { together } from "../../texts/pieces";
import type { Device } from "../caseload/identity";
import type { NewDevice } from "../caseload/new-device";
import { textIn, type CaseloadRow } from "../caseload/read";
import { accessAfter, endsElsewhere, type ChangeForm } from "./form";

const isInBowel = (access: Access): boolean => access === "GJ" || access === "J";

/** Never at home: the caution on tubes in the bowel; the same as the list's own "carer is to change a device ...". */
const hasLostCarer = (row: CaseloadRow<"tubes">, access: Access): boolean =>
  isInBowel(access) && textIn(row, "Changed by").toLowerCase() === "carer";

/** What Turning is to hold then; undefined where it stays. */
function turningAfter(row: CaseloadRow<"tubes">, access: Access, { heldBy }: NewDevice): Cell | undefined {
  const turning = textIn(row, "Turning").toLowerCase();
  if (turning === "") return undefined;
  if (isInBowel(access) || heldBy === "stitched") return turning === "never" ? undefined : "never";
  return null;
}

export function arrangedAfter(device: Device, form: ChangeForm, next: NewDevice): ByHeader<Cell, "tubes"> {
  if (!endsElsewhere(device, form)) return {};
  const access = accessAfter(device, form);
  const turning = turningAfter(device.row, access, next);
  return {
    ...(hasLostCarer(device.row, access) && { "Changed by": "not decided" }),
    ...(turning !== undefined && { Turning: turning }),
  };
}

const ARRANGED = ["Changed by", "Trained for tube out", "Own tube-out plan"] as const;

export function elsewhereSentences(device: Device, form: ChangeForm, next: NewDevice): readonly string[] {
  if (!endsElsewhere(device, form)) return [];
  const { row } = device;
  const access = accessAfter(device, form);
  const after = arrangedAfter(device, form, next);
  const kept = ARRANGED.filter((header) => !(header in after) && textIn(row, header) !== "");
  const sentences: (string | false)[] = [
    "Changed by" in after &&
      `Changed by: a ${access} tube is never changed by a carer, so it is put on “not decided”. Arrange who changes it.`,
    after.Turning === "never" && "Turning: this tube must not be turned, so it is put on “never”.",
    after.Turning === null && "Turning: said of a tube that ended elsewhere, so emptied. Ask the placing team.",
    kept.length > 0 && `As before: ${together(kept)}. Look whether that holds for the new tube.`,
  ];
  return sentences.filter((sentence) => sentence !== false);
}

export function elsewhereAdvice(device: Device, form: ChangeForm): readonly string[] {
  if (!endsElsewhere(device, form)) return [];
  const access = accessAfter(device, form);
  if (!isInBowel(access))
    return [
      "The feed ends in the stomach now: what was agreed for feed and medicines may have been for the bowel. Ask before feeding.",
    ];
  return [
    "The feed ends in the bowel now: no bolus. What was agreed for feed and medicines may have been for the stomach: ask before feeding.",
    NEVER_TURN,
  ];
}
