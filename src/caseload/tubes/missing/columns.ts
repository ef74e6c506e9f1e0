/** Missing or contradictory: all gaps of a row in words, one after the other, put together from hidden columns. */
import type { Header } from "../../headers";
import { formula, quoted, type FormulaTemplate } from "../../../columns/formula";
import { letting, PLAIN, type CaseloadColumn } from "../../column";
import { CHECK_SETTINGS } from "../../ready";
import { awayGapIn } from "../away";
import { is } from "../../reading";
import { ifLive } from "../live";
import { balloonGaps } from "./balloon";
import { dateGaps } from "./dates";
import { deviceGaps } from "./device";
import type { Gap } from "./gap";
import { identityGaps } from "./identity";
import { namesUsed } from "./names";
import { spareGaps } from "./spare";
import { weightGaps } from "./weight";

/** One part of the list, out of sight: Excel takes no formula of more than 8,192 characters. */
function gapsColumn(header: Header, gaps: readonly Gap[]): CaseloadColumn {
  return {
    header,
    kind: "computed",
    format: PLAIN,
    width: 4,
    isHidden: true,
    formula: (cell) => {
      const asked = gaps.filter(({ needs }) => needs === undefined || cell.has(needs));
      const list = asked.reduce<FormulaTemplate>(
        (all, { says, when }) => formula`${all},IF(${when},${quoted(says)},"")`,
        [],
      );
      return ifLive(cell, letting(namesUsed(cell, asked), formula`TEXTJOIN("; ",TRUE${list})`));
    },
  };
}

const PERSON = "Gaps of person and dates";
const DEVICE = "Gaps of device";
const WATER = "Gaps of balloon, weight and spare";

export const hiddenGaps: readonly CaseloadColumn[] = [
  gapsColumn(PERSON, [...identityGaps, ...dateGaps]),
  gapsColumn(DEVICE, deviceGaps),
  gapsColumn(WATER, [...balloonGaps, ...weightGaps, ...spareGaps]),
];

export const missing: CaseloadColumn = {
  header: "Missing or contradictory",
  kind: "computed",
  format: PLAIN,
  width: 34,
  formula: (cell) => {
    const all = formula`TEXTJOIN("; ",TRUE,${cell(PERSON)},${cell(DEVICE)},${cell(WATER)})`;
    return formula`IF(${is(cell("Live"), "live")},IF(Ready_Entries,${all},"${CHECK_SETTINGS}"),${awayGapIn(cell)})`;
  },
};
