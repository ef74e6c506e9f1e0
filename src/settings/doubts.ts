/** From where on an entry is asked about: rather a slip than a fact. */
import { NO_SOURCE, setting, type Setting } from "./setting";

const doubt = <const Name extends string>(
  name: Name,
  label: string,
  value: number,
  unit: Setting["unit"],
  allowed: readonly [number, number],
): Setting<Name> =>
  setting({
    name,
    label,
    default: value,
    unit,
    range: null,
    allowed,
    source: NO_SOURCE,
    evidence: "clinic setting",
  });

export const doubts = [
  doubt("Adult_Age", "Adult: from the age of", 18, "years", [16, 21]),
  doubt("Age_Most", "Check a birth date further back than", 120, "years", [100, 130]),
  doubt("Past_Years", "Check any other date further back than", 100, "years", [10, 100]),
  doubt("Weight_Jump", "Ask about a weight that has changed by more than", 20, "%", [5, 50]),
  doubt("Weight_Child", "Weight too old, child: after", 3, "months", [1, 12]),
  doubt("Weight_Adult", "Weight too old, adult: after", 12, "months", [1, 36]),
  doubt("Size_Least", "Rather mm than Fr: a size below", 5, "Fr", [4, 8]),
  doubt("Size_Most", "Ask about a size above", 30, "Fr", [24, 40]),
  doubt("Length_Most", "Rather mm than cm: a length above", 10, "cm", [5, 10]),
  doubt("Mark_Most", "Ask about a mark at the skin above", 60, "cm", [30, 60]),
  doubt("Volume_Most", "Ask about a volume above", 60, "mL", [20, 60]),
  doubt("StopGap_Days", "Catheter as a stop-gap: no longer than", 7, "days", [1, 28]),
] as const;
