/** What to say once it has been tried. What was not read is said again. */
import { areaAddress } from "../../workbook/area";
import type { Receipt } from "../../workbook/port";
import type { Afterwards } from "../action";
import { inQuotes } from "../../texts/pieces";
import type { SizesPlan } from "./interface";
import { readingSentences } from "./sentences";

export function afterSizes(plan: SizesPlan, receipt: Receipt): Afterwards {
  const { outcome } = receipt;
  const standing = receipt.done.filter(({ changed }) => changed);
  const canTakeBack = standing.length > 0;
  const where = standing[0]?.place ?? null;
  if (outcome !== "done") {
    const still = canTakeBack ? `Still there: ${areaAddress(plan.place.area)}.` : "Nothing was changed.";
    return { outcome, sentences: [receipt.sentence, still], where, canTakeBack };
  }
  const done =
    plan.header === null
      ? `The answers stand in ${areaAddress(plan.place.area)}.`
      : `The column ${inQuotes(plan.header)} was added: ${areaAddress(plan.place.area)}.`;
  return { outcome, sentences: [...readingSentences(plan.reading), done], where: where ?? plan.place, canTakeBack };
}
