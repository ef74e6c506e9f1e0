/** Whether a bumper in the stomach is to be looked at again: so long after it came in, or after its site was last seen. */
import { formula, type FormulaTemplate } from "../../columns/formula";
import { addMonths } from "../../maths/calendar";
import type { ClinicSettingName } from "../../settings/index";
import type { RowCells, Slots } from "../column";
import { CHECK_SETTINGS } from "../ready";
import { dayState, is, isNumber, monthsLater, numbered, stateOfDay, word, wordIn } from "../reading";
import type { Sight } from "../sight";
import { ageClassIn, ageClassOf } from "./kind";

export const REVIEW = "review the tube";

const SEEN = "Site seen on";
const names = { adult: "Rev_Bumper_Adult", child: "Rev_Bumper_Child" } as const satisfies Record<
  string,
  ClinicSettingName
>;

/** LET names for `reviewIn`. */
export const reviewNames = (cell: Slots) => ({
  ...numbered("in", cell("Device in")),
  inis: dayState("in"),
  ...numbered("seen", cell(SEEN)),
  seenis: dayState("seen"),
  ...numbered("born", cell("Born")),
  bornis: dayState("born"),
  age: ageClassIn,
  bumper: formula`AND(${is(wordIn(cell("Held by")), "bumper")},${is(wordIn(cell("Access")), "g")})`,
});

/** "" where nothing is to be reviewed. Where the age is not known the shorter time counts. */
export function reviewIn(): FormulaTemplate {
  const both = formula`IF(AND(ISNUMBER(${names.adult}),ISNUMBER(${names.child})),MIN(${names.adult},${names.child}),"")`;
  const months = formula`IF(${is("age", "adult")},${names.adult},IF(${is("age", "child")},${names.child},${both}))`;
  const last = formula`IF(seenis=1,IF(inis=1,MAX(in,seen),seen),IF(inis=1,in,""))`;
  const due = formula`IF(ISNUMBER(last),IF(${monthsLater("last", "months")}<As_of,"${REVIEW}",""),"")`;
  const known = formula`IF(ISNUMBER(months),IF(months>=1,${due},"${CHECK_SETTINGS}"),"${CHECK_SETTINGS}")`;
  return formula`IF(bumper,LET(last,${last},months,${months},${known}),"")`;
}

export function reviewOf(row: RowCells, sight: Sight): string {
  if (word(row["Held by"]!) !== "bumper" || word(row["Access"]!) !== "g") return "";
  const age = ageClassOf(row, sight);
  const settings = (age === "not known" ? [names.adult, names.child] : [names[age]]).map((name) => sight.setting(name));
  if (!settings.every(isNumber)) return CHECK_SETTINGS;
  const months = Math.min(...(settings as number[]));
  if (months < 1) return CHECK_SETTINGS;
  const days = [row["Device in"]!, sight.has(SEEN) ? row[SEEN]! : ""].filter((one) => stateOfDay(one, sight) === 1);
  if (days.length === 0) return "";
  return addMonths(Math.floor(Math.max(...(days as number[]))), Math.trunc(months)) < sight.asOf ? REVIEW : "";
}
