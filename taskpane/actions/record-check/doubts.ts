/** What is doubtful about a check: recorded only after a second press. */
import { shortDate } from "../../../src/words/date-in-words";
import { dateOf, known } from "../caseload/cells";
import { textIn, valueIn, type Caseload, type CaseloadRow } from "../caseload/read";
import { numberIn } from "../caseload/settings";
import type { Balloon, Measured } from "./meaning";

export function asksOf(
  names: Caseload["names"],
  row: CaseloadRow<"tubes">,
  { day, out, putIn, looked }: Measured,
  { fill, most, deviceIn, isBalloon, earlier }: Balloon,
): readonly string[] {
  const made = known(dateOf(valueIn(row, "Stoma made")));
  const first = made === null ? null : made + numberIn(names, "Check_First");
  const asks: (string | false)[] = [
    !isBalloon && `No balloon is recorded for this person (held by: ${textIn(row, "Held by") || "not written down"}).`,
    textIn(row, "Status").toLowerCase() !== "active" &&
      `Status is "${textIn(row, "Status") || "not written down"}", not active.`,
    deviceIn === null && "It is not written down when this tube was put in: earlier checks may be of another balloon.",
    first === null &&
      "It is not written down when the opening was made: a balloon in a new opening is not emptied before the placing team’s date.",
    first !== null &&
      day < first &&
      `Before ${shortDate(first)} the balloon of this opening is not emptied, unless the placing team says so.`,
    most !== null &&
      putIn !== null &&
      putIn > most &&
      `${putIn} mL is above the largest volume on the label (${most} mL).`,
    fill !== null &&
      putIn !== null &&
      putIn > 0 &&
      putIn !== fill &&
      `${putIn} mL is not the agreed fill (${fill} mL).`,
    putIn === 0 && "Put in 0 mL: the balloon is left empty.",
    out !== null && putIn === null && "Put in is blank: the next check has nothing to be compared with.",
    looked === "nothing came" && out === null && "Nothing came and Out is blank: write 0 if the balloon was empty.",
    looked === "nothing came" && out !== null && out > 0 && `Nothing came, but ${out} mL is written as out.`,
    earlier.at(-1)?.day === day && "A check of this day is there already.",
  ];
  return asks.filter((ask) => ask !== false);
}
