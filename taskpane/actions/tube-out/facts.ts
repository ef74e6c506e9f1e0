/** What the list says of the person and the tube, for the phone call: what is not written down is said so. */
import type { Device } from "../caseload/identity";
import { dateOf, isUnreadable, known, textOf, wordOf } from "../caseload/cells";
import { lists } from "../caseload/lists";
import { textIn, valueIn, type Caseload } from "../caseload/read";
import { shortDate } from "../../../src/words/date-in-words";
import { firstTubeOf, slowHealingOf, stomaMade } from "./middle";
import { NOT_WRITTEN } from "./sentences";

export interface Fact {
  readonly label: string;
  readonly text: string;
  /** Not known, or it stands in the way. */
  readonly isDoubt: boolean;
}

const fact = (label: string, text: string, isDoubt = false): Fact =>
  text === "" ? { label, text: NOT_WRITTEN, isDoubt: true } : { label, text, isDoubt };

const notKnown = (word: string): boolean => word === "" || word === "not known";

const weeksOld = (made: number, today: number): number => Math.floor((today - made) / 7);

function opening(device: Device, today: number): Fact {
  const made = stomaMade(device);
  const written = valueIn(device.row, "Stoma made");
  if (typeof made === "number" && made <= today) {
    const weeks = weeksOld(made, today);
    return fact("Opening made", `${weeks} ${weeks === 1 ? "week" : "weeks"} ago (${shortDate(made)})`);
  }
  const text = typeof made === "number" ? `${shortDate(made)}: in the future` : textOf(written);
  return fact("Opening made", text === "" ? "" : `${text} (cannot be right: not known)`, true);
}

function device({ row }: Device): Fact {
  const held = wordOf(valueIn(row, "Held by"), lists["Held by"]);
  const from = wordOf(valueIn(row, "Known from"), lists["Known from"]);
  const text = held || textIn(row, "Held by");
  return fact(
    "Held by",
    text === "" ? "" : `${text} (known from: ${notKnown(from) ? NOT_WRITTEN : from})`,
    notKnown(held) || notKnown(from),
  );
}

const size = ({ row }: Device): Fact => {
  const [french, shape, length] = [textIn(row, "Size Fr"), textIn(row, "Shape"), textIn(row, "Length cm")];
  const size = french === "" ? "" : /^\d+([.,]\d+)?$/.test(french) ? `${french} Fr` : french;
  return fact("Size", [size, shape, length === "" ? "" : `${length} cm`].filter(Boolean).join(", "), size === "");
};

interface Spare {
  readonly text: string;
  /** A spare that is there and has not run out. */
  readonly isThere: boolean;
}

function spareOf({ row }: Device, today: number): Spare {
  const word = wordOf(valueIn(row, "Spare at home"), lists["Spare at home"]);
  if (notKnown(word)) return { text: "", isThere: false };
  if (word === "none") return { text: "none at home", isThere: false };
  const expires = dateOf(valueIn(row, "Spare expires"));
  const day = known(expires);
  const isOver = isUnreadable(expires) || (day !== null && day < today);
  const parts = [
    word === "smaller" ? "smaller (only holds the opening)" : word,
    textIn(row, "Spare Fr") && `${textIn(row, "Spare Fr")} Fr`,
    textIn(row, "Spare cm") && `${textIn(row, "Spare cm")} cm`,
    day !== null
      ? `${isOver ? "expired" : "expires"} ${shortDate(day)}`
      : `expiry ${isOver ? "cannot be read" : NOT_WRITTEN}`,
  ];
  return { text: parts.filter(Boolean).join(", "), isThere: !isOver };
}

export function factsOf(one: Device, names: Caseload["names"], today: number): readonly Fact[] {
  const { row } = one;
  const first = firstTubeOf(one, names, today);
  const slow = slowHealingOf(one);
  const trained = wordOf(valueIn(row, "Trained for tube out"), lists["Trained for tube out"]);
  const plan = wordOf(valueIn(row, "Own tube-out plan"), lists["Own tube-out plan"]);
  const wait = textIn(row, "Cannot wait");
  const spare = spareOf(one, today);
  const unless = (word: string): string => (notKnown(word) ? "" : word);
  const notes = textIn(row, "Notes");
  return [
    opening(one, today),
    device(one),
    size(one),
    fact("First tube", unless(first), first === "yes"),
    fact("Slow healing", unless(slow), slow === "yes"),
    fact("Trained for tube out", unless(trained), trained !== "put in spare"),
    fact("Own tube-out plan", plan, plan !== "yes"),
    fact("Cannot wait", unless(wait), wait !== "none"),
    fact("Spare at home", spare.text, !spare.isThere),
    ...(notes === "" ? [] : [fact("Notes", notes)]),
  ];
}

/** Why the spare is not to be put in all the same, from what is written down of training, plan and spare. */
export function standsAgainst(one: Device, today: number): readonly string[] {
  const { row } = one;
  const trained = wordOf(valueIn(row, "Trained for tube out"), lists["Trained for tube out"]);
  return [
    ...(trained === "put in spare"
      ? []
      : [
          trained === "hold opening only"
            ? "training is for holding the opening only"
            : "nobody is trained for tube out",
        ]),
    ...(wordOf(valueIn(row, "Own tube-out plan"), ["yes"]) === "yes" ? [] : ["there is no plan of this person’s own"]),
    ...(spareOf(one, today).isThere ? [] : ["there is no usable spare"]),
  ];
}
