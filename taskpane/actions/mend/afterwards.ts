/** What to say once it has been tried, and where to look. */
import { mend as words } from "../../texts/mend";
import { areaAddress } from "../../workbook/area";
import type { Receipt } from "../../workbook/port";
import type { Afterwards } from "../action";
import type { MendPlan } from "./interface";

export function afterMend(plan: MendPlan, receipt: Receipt): Afterwards {
  const { outcome } = receipt;
  const standing = receipt.done.filter(({ changed }) => changed);
  const canTakeBack = standing.length > 0;
  const { from, place, put, reading, header } = plan;
  const shown = put === "in place" ? from : place;
  /* The first data row: an address of the whole column would be shown from its end. */
  const where = { sheet: shown.sheet, area: { ...shown.area, top: shown.area.top + 1, rows: 1 } };
  if (outcome !== "done") {
    const still = canTakeBack ? words.after.still(areaAddress(place.area)) : words.after.nothing;
    return { outcome, sentences: [receipt.sentence, still], where: canTakeBack ? where : null, canTakeBack };
  }
  return {
    outcome,
    sentences: words.after.done(reading, { put, from: from.header, header }),
    where,
    canTakeBack,
  };
}
