/** How much energy a day can be: a larger number is a slip, most often kJ. */
import { argument, fault, SheetError } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";

/** kcal a day. FAO/WHO/UNU 2004 reckons 3,925 for a man of 70 kg at heavy work; the limit is a clinic setting. */
export const MOST_ENERGY = 6000;
/** kcal for each kg. Preterm infants, who need most, get 110 to 130 (AAP and ESPGHAN as tabulated); clinic setting. */
const MOST_PER_KG = 200;

const perKg = fault`energy is above ${MOST_PER_KG} kcal for each kg: kJ, or ${argument("weight")} not in kg?`;
const inAll = new SheetError(`energy is above ${MOST_ENERGY} kcal a day: kJ, or volume or density of something else?`);

/** A sentence where nobody gets so much energy; without a weight that comparison is not made. */
export function tooMuchEnergy(kcal: number, weight: number | undefined): SheetError | undefined {
  if (rounded(kcal) > MOST_ENERGY) return inAll;
  return weight !== undefined && rounded(kcal / weight) > MOST_PER_KG ? perKg : undefined;
}
