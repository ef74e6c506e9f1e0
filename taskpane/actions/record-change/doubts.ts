/** What is doubtful about a change, and what to bear in mind after it. */
import { aroundWatch } from "../../../src/caseload/cautions";
import { reasons } from "../../../src/caseload/words";
import { count } from "../../texts/pieces";
import { dateOf, frenchOf, known, textOf } from "../caseload/cells";
import type { NewDevice } from "../caseload/new-device";
import { textIn, valueIn, type CaseloadRow } from "../caseload/read";

/** Hours without a tube, as the sheet Changes takes them. */
export const MOST_HOURS = 240;

/** @param hours the clinic's extra watch after a new tube */
export const watch = (hours: number): string => aroundWatch.join(count(hours, "hour"));

/** @param days as long as the clinic leaves a new bumper tube's bolster alone */
export const bolsterSentence = ({ heldBy }: NewDevice, days: number): readonly string[] =>
  heldBy === "bumper"
    ? [`Leave the outer bolster as it was set for ${count(days, "day")}, unless the placing team says otherwise.`]
    : [];

/** The date that the placing team had set was for this change or an earlier one. */
export function isSpent(row: CaseloadRow<"tubes">, deviceIn: number | null): boolean {
  const set = known(dateOf(valueIn(row, "Date set by placing team")));
  return set !== null && deviceIn !== null && set <= deviceIn;
}

export const keptSentence = (
  row: CaseloadRow<"tubes">,
  next: NewDevice | null,
  deviceIn: number | null,
): readonly string[] =>
  next !== null && textIn(row, "Date set by placing team") !== "" && !isSpent(row, deviceIn)
    ? ["The date set by the placing team stays as it is: look whether it still holds."]
    : [];

export function sizeSentence(row: CaseloadRow<"tubes">, { size }: NewDevice): readonly string[] {
  const before = known(frenchOf(valueIn(row, "Size Fr")));
  return before !== null && size !== null && size > before
    ? [`Larger than before (${before} to ${size} Fr): a leak is not cured by a larger tube.`]
    : [];
}

export const spareSentence = (row: CaseloadRow<"tubes">, lot: string | null): readonly string[] =>
  lot !== null && textOf(valueIn(row, "Spare lot")).toLowerCase() === lot.toLowerCase()
    ? ["This lot is the spare’s: look whether there is still a spare at home."]
    : [];

interface Happened {
  readonly out: number;
  readonly put: number | null;
  readonly deviceIn: number | null;
  readonly held: string;
  readonly Reason: string | null;
  readonly "Unplanned visit": string | null;
}

export function asksOf({ out, put, deviceIn, held, ...came }: Happened): readonly string[] {
  const days = deviceIn === null ? 0 : deviceIn - out;
  const asks: (string | false)[] = [
    put === null && "It is not written down when the tube that came out was put in: its life cannot be counted.",
    days * 24 > MOST_HOURS && `${days} days without a tube: look at both dates.`,
    came.Reason === "planned" && came["Unplanned visit"] === "yes" && "The reason is planned, but the visit was not.",
    reasons.some(({ word, ofBalloon }) => ofBalloon && word === came.Reason) &&
      !["balloon", "catheter"].includes(held.toLowerCase()) &&
      `The reason is a balloon’s, but the tube was held by ${held || "something not written down"}.`,
  ];
  return asks.filter((ask) => ask !== false);
}
