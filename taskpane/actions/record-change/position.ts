/** Whether the position of the new tube is confirmed: only what says so does, and a low pH is no proof either. */
import type { Access } from "../../../src/device/access";
import type { Caseload } from "../caseload/read";
import type { WordOf } from "../caseload/lists";
import { carefulIn } from "../caseload/settings";

const NOTHING = "Nothing goes down this tube until its position is confirmed.";

export interface Confirmed {
  readonly by: WordOf<"Position confirmed by"> | null;
  readonly pH: number | null;
}

/** Null where nothing needs to be said. */
export function positionSentence({ by, pH }: Confirmed, access: Access, names: Caseload["names"]): string | null {
  if (by === null || by === "not recorded") return `Position not confirmed. ${NOTHING}`;
  if (access !== "G" && by !== "X-ray or contrast") {
    const where = access === "not known" ? "It is not recorded where this tube ends" : "Part of it lies in the bowel";
    return `Position not confirmed. ${where}: the new position is seen by imaging. ${NOTHING}`;
  }
  if (by !== "pH") return null;
  const most = carefulIn(names, "PH_Max", "high");
  if (pH === null) return `Position not confirmed: no pH is written down. ${NOTHING}`;
  if (pH > most) return `pH ${pH} is above ${most}: position not confirmed. ${NOTHING}`;
  return `pH ${pH} is not above ${most}. A low pH is not proof either: acid medicine and recent feed mislead.`;
}
