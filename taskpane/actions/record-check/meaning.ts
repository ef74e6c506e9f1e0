/**
 * What a check means and what to do, said before it is recorded, bad news first. What to do follows the check card and
 * the cautions of BALLOONSTATE; nothing here says that a balloon will hold.
 */
import { leftColumns } from "../../../src/caseload/checks/left";
import {
  ABOVE_LABEL,
  CLOUDY,
  LEFT_EMPTY,
  leftBadly,
  MILKY,
  NOT_AGREED_FILL,
  NOTHING_CAME,
  PUT_IN_NOT_KNOWN,
} from "../../../src/caseload/checks/words";
import { givenFrom } from "../../../src/caseload/given-cells";
import { CHECK_DATE } from "../../../src/columns/state-words";
import { SheetError } from "../../../src/worksheet/error";
import { rounded } from "../../../src/worksheet/numbers";
import { count } from "../../texts/pieces";
import type { Caseload } from "../caseload/read";
import { numberIn } from "../caseload/settings";
import { actionFor, expectedAfter, lowInARow, stateOf, type Check } from "./history";

export interface Meaning {
  /** A word of BALLOONSTATE; null where the figures contradict each other. */
  readonly state: string | null;
  readonly expected: number | null;
  readonly loss: number | null;
  readonly daysSinceFill: number | null;
  readonly lowInARow: number;
  /** How expected is known, what is missing. */
  readonly figures: readonly string[];
  /** What to do. */
  readonly advice: readonly string[];
  /** Somebody is to be called: the numbers are shown. */
  readonly isUrgent: boolean;
}

export interface Measured {
  readonly day: number;
  readonly out: number | null;
  readonly putIn: number | null;
  readonly looked: string | null;
}

export interface Balloon {
  readonly fill: number | null;
  readonly most: number | null;
  readonly deviceIn: number | null;
  /** Written down as held by one. */
  readonly isBalloon: boolean;
  /** A gastrostomy by a balloon in an opening that is mature by weeks, not the first tube, healing not slow: Tube out says so. */
  readonly mayBeRefilled: boolean;
  /** Of this balloon, up to the day of the new one. */
  readonly earlier: readonly Check[];
}

/** Words after which nobody needs to be called at once; none of them is good news. */
const CALM = ["as filled", "not measured", CHECK_DATE, PUT_IN_NOT_KNOWN, NOT_AGREED_FILL];

export function meaningOf(measured: Measured, balloon: Balloon, names: Caseload["names"]): Meaning {
  const { day, out } = measured;
  const { fill, most, deviceIn, earlier } = balloon;
  const previous = earlier.at(-1);
  const expected = expectedAfter(previous, fill);
  const answer = stateOf(out, expected, most, names);
  const left = leftIn(measured.putIn, fill, most, names);
  const state = typeof answer === "string" ? wordFor(answer, measured, balloon, left) : null;
  const loss = out === null || expected === null ? null : rounded(expected - out);
  const filled = previous?.day ?? deviceIn;
  const low = lowInARow([...earlier, measured], fill, most, names);
  const daysSinceFill = filled === null ? null : day - filled;
  return {
    state,
    expected,
    loss,
    daysSinceFill,
    lowInARow: low,
    figures: figures(expected, previous, loss, daysSinceFill),
    advice: [
      ...fluid(measured),
      ...(answer instanceof SheetError ? [`These figures contradict each other: ${answer.message}.`] : []),
      ...(balloon.isBalloon ? [] : ["No balloon is recorded: what was drawn out may not have been a balloon’s water."]),
      ...(state === null ? [] : adviceFor(state, measured, { ...balloon, expected }, names)),
      /* Water was missing, and what was put back is no better: both are said. */
      ...(state !== left && leftBadly.includes(left) && balloon.isBalloon
        ? adviceFor(left, measured, { ...balloon, expected }, names)
        : []),
      ...(low >= numberIn(names, "Loss_Twice") ? [`Low ${count(low, "time")} in a row: plan a change.`] : []),
    ],
    isUrgent: state === null || !CALM.includes(state) || leftBadly.includes(left) || fluid(measured).length > 0,
  };
}

/** What the check leaves in the balloon, as its row in Balloon checks will say it; with numbers of the clinic's that can be used. */
function leftIn(putIn: number | null, fill: number | null, most: number | null, names: Caseload["names"]): string {
  const cells = { Key: "k:", "Put in mL": putIn, "Put in, read": putIn, "Agreed mL": fill, "Label mL": most };
  const numbers = (["Fill_Small", "Loss_Small", "Loss_Large"] as const).map((name) => [
    name,
    String(numberIn(names, name)),
  ]);
  return String(givenFrom(leftColumns, cells, { Ready_Balloon: "TRUE", ...Object.fromEntries(numbers) }));
}

/** Figures that agree are no good news where something else speaks against them; null: no word at all. */
function wordFor(
  state: string,
  { looked }: Measured,
  { deviceIn, fill, isBalloon }: Balloon,
  left: string,
): string | null {
  if (["empty", "half or less", "low"].includes(state)) return state;
  if (leftBadly.includes(left)) return left;
  if (looked === "milky, yellow or like feed") return MILKY;
  if (state === "not measured" && looked === NOTHING_CAME) return NOTHING_CAME;
  if (state !== "as filled") return state;
  if (looked === "nothing came") return "not measured";
  if (left !== "") return left;
  if (looked === "cloudy") return CLOUDY;
  if (!isBalloon) return null;
  if (deviceIn === null) return CHECK_DATE;
  return fill === null ? "not measured" : state;
}

const mL = (volume: number): string => `${volume} mL`;

function figures(
  expected: number | null,
  previous: Check | undefined,
  loss: number | null,
  days: number | null,
): readonly string[] {
  if (expected === null)
    return ["Neither a usable fill nor what was put in last time is written down: nothing to compare with."];
  const from = previous && previous.putIn !== null ? "put in last time" : "the agreed fill";
  return [
    `Expected ${mL(expected)} (${from}).`,
    ...(previous?.putIn === null ? ["What was put in last time is not written down."] : []),
    ...(loss === null
      ? []
      : [
          loss > 0
            ? `Missing ${mL(loss)}${days === null ? "" : `, ${count(days, "day")} since it was filled`}.`
            : loss < 0
              ? `${mL(-loss)} more than expected.`
              : "Nothing is missing.",
        ]),
  ];
}

function fluid({ looked, out }: Measured): readonly string[] {
  if (looked === "milky, yellow or like feed")
    return ["Milky, yellow or like feed: the balloon may have burst, or the wrong port was used. Call the same day."];
  if (looked === "nothing came" && out !== 0) return ["Nothing came: call the same day."];
  return looked === "cloudy" ? ["Cloudy: ask the team, these figures do not explain it."] : [];
}

function agreedFill(fill: number | null, most: number | null): string {
  if (fill === null) return "the agreed fill (it is not written down: ask)";
  return most !== null && fill > most ? "the agreed fill (it is above the label: ask)" : `the agreed ${mL(fill)}`;
}

const IN_ITS_PLACE = "Only if the tube is at its usual mark, or lies flat as usual, and moves freely:";

/**
 * A tube whose balloon is empty may have slipped: water put in then fills the balloon inside the tract. Services differ;
 * the second sentence is a clinic setting, from memory, without a published source.
 */
function emptyAdvice(refill: string | null): readonly string[] {
  const always = "Empty: put nothing in. Tape the tube to the skin where it lies, nothing down it, call now.";
  if (refill === null) return [always];
  return [
    always,
    `${IN_ITS_PLACE} if you are trained and this person’s own plan says so, put the agreed ${refill} of fresh water in, never above the label, and tell us today: the tube has to be changed soon.`,
  ];
}

function adviceFor(
  state: string,
  { putIn }: Measured,
  { fill, most, isBalloon, mayBeRefilled, expected }: Balloon & { readonly expected: number | null },
  names: Caseload["names"],
): readonly string[] {
  /* Water put into what is no balloon's valve goes into the stomach or the bowel; a balloon left empty falls out. */
  if (!isBalloon && state !== "not measured")
    return ["Put no water in before somebody who knows this tube says so: tape the tube to the skin, call now."];
  const agreed = agreedFill(fill, most);
  switch (state) {
    case "empty":
      return emptyAdvice(mayBeRefilled && fill !== null && (most === null || fill <= most) ? mL(fill) : null);
    case LEFT_EMPTY:
      return [
        "Left empty: nothing holds the tube. Tape it to the skin where it lies, nothing down it, call now. If the tube comes out: Tube out.",
      ];
    case ABOVE_LABEL:
      return [
        `Above the label${most === null ? "" : ` (${mL(most)})`}: call now, and ask before the tube is used. The label and the placing team decide what is drawn out again.`,
      ];
    case PUT_IN_NOT_KNOWN:
      return ["It is not written down how much was put in: ask. The next check has nothing to be compared with."];
    case NOT_AGREED_FILL:
      return [`${putIn === null ? "What" : mL(putIn)} was put in, not ${agreed}: ask why, and who agreed to it.`];
    case "half or less":
    case "low": {
      const missing = `More than ${mL(actionFor(expected, names))} is missing: call the same day.`;
      /* So little holds that the tube may have slipped, as with an empty one. Clinic setting, no published source. */
      if (state === "half or less" && !mayBeRefilled)
        return [`${missing} Put nothing in before somebody who knows this tube says so: tape the tube to the skin.`];
      const again = numberIn(names, "Loss_Again");
      const fillTo = `ill to ${agreed}, never above the label, and check again ${again === 1 ? "the next day" : `within ${again} days`}.`;
      return [`${missing} ${state === "low" ? "F" : `${IN_ITS_PLACE} f`}${fillTo}`];
    }
    case "more than put in":
      return [
        "More came out than was put in: fluid from the stomach or feed may be in the balloon, or a figure is wrong. Look at the fluid, measure again, call the same day.",
      ];
    case MILKY:
    case NOTHING_CAME:
    case CLOUDY:
      return [];
    case CHECK_DATE:
      return [
        "It is not written down when this tube was put in: the figures agree, but perhaps with another balloon’s.",
      ];
    case "as filled":
      return ["The two figures agree, and no more than that: balloons burst without warning."];
    default:
      return ["Not measured: nothing is known about this balloon. Check it again."];
  }
}
