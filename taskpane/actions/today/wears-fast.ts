/** Whose interval the list itself speaks against: people who are known to wear devices through fast, earlier than is agreed. */
import { adviceFor, wearModel } from "../../../src/pictures/advice";
import { kindsIn, ofKind } from "../../../src/pictures/devices";
import { fastWearers } from "../../../src/pictures/wear";
import type { Overview, Workbook } from "../../workbook/port";
import { readPictured } from "../pictures";
import { adviceSentences } from "../pictures/advice";

export interface FastWearer {
  readonly person: string;
  /** As sentences beside the name. */
  readonly says: readonly string[];
}

export async function wearsFast(workbook: Workbook, overview: Overview, today: number): Promise<readonly FastWearer[]> {
  const pictured = await readPictured(workbook, overview, today);
  if (pictured.is !== "pictured") return [];
  return kindsIn(pictured.devices).flatMap((kind) => {
    const model = wearModel(ofKind(pictured.devices, kind));
    const fast = new Set(fastWearers(model));
    return ofKind(pictured.tubes, kind).flatMap(({ person, agreed }): FastWearer[] => {
      if (!fast.has(person)) return [];
      const advice = adviceFor(model, person, agreed);
      return advice.is === "person" && advice.isEarlier
        ? [{ person, says: adviceSentences(advice, agreed, kind) }]
        : [];
    });
  });
}
