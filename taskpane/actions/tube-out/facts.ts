/** What the list says of the person and the tube, for the phone call: what is not written down is said so. */
import type { Header } from "../../../src/caseload/headers";
import type { Device } from "../caseload/identity";
import { dateOf, frenchOf, isUnreadable, known, numberOf, textOf, wordOf } from "../caseload/cells";
import { lists } from "../caseload/lists";
import { textIn, valueIn, type Caseload } from "../caseload/read";
import { shortDate } from "../../../src/words/date-in-words";
import { firstTubeOf, slowHealingOf, stomaMade } from "./middle";
import { NOT_WRITTEN } from "./sentences";

export interface Fact {
  readonly label: string;
  readonly text: string;
  readonly isWritten: boolean;
  /** Not known, or it stands in the way. */
  readonly isDoubt: boolean;
}

const fact = (label: string, text: string, isDoubt = false): Fact =>
  text === ""
    ? { label, text: NOT_WRITTEN, isWritten: false, isDoubt: true }
    : { label, text, isWritten: true, isDoubt };

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
  /** Why there is none to put in; null where there is one of the right size that has not run out. */
  readonly against: string | null;
}

const NO_SPARE = "there is no usable spare";

/** Said where sizes can be compared; a larger or shorter spare is never put in, whatever word stands in the list. */
function misfit({ row }: Device, word: string): string | null {
  const length = (header: Header<"tubes">) => known(numberOf(valueIn(row, header), 0, Infinity, ["cm"])) || null;
  const [french, spareFrench] = [known(frenchOf(valueIn(row, "Size Fr"))), known(frenchOf(valueIn(row, "Spare Fr")))];
  const [cm, spareCm] = [length("Length cm"), length("Spare cm")];
  const differs = (tube: number | null, spare: number | null) => tube !== null && spare !== null && tube !== spare;
  if (french !== null && spareFrench !== null && spareFrench > french) return "the spare is larger than the tube";
  if (cm !== null && spareCm !== null && spareCm < cm) return "the spare is shorter than the tube";
  const isOther = differs(french, spareFrench) || differs(cm, spareCm);
  return word === "same size" && isOther ? "the spare’s size is not the tube’s" : null;
}

function spareOf(one: Device, today: number): Spare {
  const { row } = one;
  const word = wordOf(valueIn(row, "Spare at home"), lists["Spare at home"]);
  if (notKnown(word)) return { text: "", against: NO_SPARE };
  if (word === "none") return { text: "none at home", against: NO_SPARE };
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
  return { text: parts.filter(Boolean).join(", "), against: isOver ? NO_SPARE : misfit(one, word) };
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
    fact("Spare at home", spare.text, spare.against !== null),
    ...(notes === "" ? [] : [fact("Notes", notes)]),
  ];
}

/** Why the spare is not to be put in all the same, from what is written down of training, plan and spare. */
export function standsAgainst(one: Device, today: number): readonly string[] {
  const { row } = one;
  const trained = wordOf(valueIn(row, "Trained for tube out"), lists["Trained for tube out"]);
  const { against } = spareOf(one, today);
  return [
    ...(trained === "put in spare"
      ? []
      : [
          trained === "hold opening only"
            ? "training is for holding the opening only"
            : "nobody is trained for tube out",
        ]),
    ...(wordOf(valueIn(row, "Own tube-out plan"), ["yes"]) === "yes" ? [] : ["there is no plan of this person’s own"]),
    ...(against === null ? [] : [against]),
  ];
}
