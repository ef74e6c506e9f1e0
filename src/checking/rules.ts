/**
 * The contradictions that a row of an own list can hold, most dangerous at the bedside first. Each says what does not go
 * together, never which of the two is right.
 */
import { CONTRADICTION, tellsOfBalloon } from "../columns/recipes/not-a-balloon";
import { dateDoubt } from "../columns/recipes/date-doubt";
import { lengthOfALongTube, sittingBelowLying } from "../columns/recipes/opening";
import { LARGEST_USUAL_FRENCH, SMALLEST_FRENCH } from "../columns/recipes/size-mm";
import { roleNamed, type Role } from "../columns/role";
import { kindNamed } from "../settings/kinds";
import { settingNamed } from "../settings/index";
import { readFrench } from "../sizes/french";
import { CellError, SheetError } from "../worksheet/error";
import { dayIn, isEmpty, numberIn, wordIn } from "./cells";
import type { RowRule } from "./rule";

const FIRST_CHECK = settingNamed("Check_First").default;
const OVER_READ = settingNamed("Over_Read").default;
const LONGEST = settingNamed("Length_Most").default;
/** A catheter that holds an opening, until the tube is put back: days. From memory, no published source. */
const CATHETER_DAYS = 7;

const CARER = /\b(?:carers?|parents?|mother|father|mum|dad|family|self|herself|himself|angehörige|eltern)\b/;
/** Words for the way of placing or the shape. */
const PLACED_OR_SHAPED = /^(?:peg|rig|prg|pej|button|knopf|g-?tube|gastrostomy|mic)s?$/;

const label = (role: Role): string => roleNamed(role).label.toLowerCase();

const carerChanges: RowRule = {
  reads: ["changedBy"],
  at: "changedBy",
  finds: ({ changedBy, access }, { kind }) => {
    if (!CARER.test(wordIn(changedBy))) return null;
    const ends = wordIn(access);
    const isJejunal = ends === "j" || ends === "gj" || kind === "gastrojejunal" || kind === "balloon jejunostomy";
    if (isJejunal) return "a carer is to change a tube that ends in the bowel: never at home";
    return kind !== null && kindNamed(kind).hasBalloon === false
      ? "a carer is to change a tube held by a bumper: never at home"
      : null;
  },
};

const balloonOfABumper: RowRule = {
  reads: ["kind"],
  at: "kind",
  finds: (row, { kind }) =>
    kind !== null && kindNamed(kind).hasBalloon === false && tellsOfBalloon(row) ? CONTRADICTION : null,
};

const bowelAsBalloonG: RowRule = {
  reads: ["kind", "access"],
  at: "access",
  finds: ({ access }, { kind }) => {
    const ends = wordIn(access);
    const isBowel = ends === "j" || ends === "gj";
    if (isBowel && kind === "balloon gastrostomy") return "the kind ends in the stomach, the access in the bowel";
    return ends === "g" && (kind === "gastrojejunal" || kind === "balloon jejunostomy")
      ? "the kind ends in the bowel, the access in the stomach"
      : null;
  },
};

const checkedTooEarly: RowRule = {
  reads: ["lastCheck", "stomaMade"],
  at: "lastCheck",
  finds: ({ lastCheck, stomaMade }) => {
    const [checked, made] = [dayIn(lastCheck), dayIn(stomaMade)];
    if (checked === null || made === null) return null;
    if (checked < made) return "the last check is before the stoma was made";
    return checked - made < FIRST_CHECK
      ? `the balloon was checked before day ${FIRST_CHECK} of a new opening (clinic setting)`
      : null;
  },
};

const overfilled: RowRule = {
  reads: ["out", "putIn"],
  at: "out",
  finds: ({ out, putIn }) => {
    const [came, went] = [numberIn(out), numberIn(putIn)];
    return came !== null && went !== null && came - went > OVER_READ ? "more water came out than was put in" : null;
  },
};

const catheterTooLong: RowRule = {
  reads: ["kind", "last"],
  at: "last",
  finds: ({ kind, last }, { asOf }) => {
    const day = dayIn(last);
    return /\bcatheter|katheter\b/.test(wordIn(kind)) && day !== null && asOf - day > CATHETER_DAYS
      ? `a catheter as a stop-gap for more than ${CATHETER_DAYS} days`
      : null;
  },
};

const beforeTheStoma: RowRule = {
  reads: ["last", "stomaMade"],
  at: "last",
  finds: ({ last, stomaMade }) => {
    const [changed, made] = [dayIn(last), dayIn(stomaMade)];
    return changed !== null && made !== null && changed < made ? "last change is before the stoma was made" : null;
  },
};

const nothingSince: RowRule = {
  reads: ["lastCheck", "last"],
  at: "lastCheck",
  finds: ({ lastCheck, last }, { kind }) => {
    const [checked, changed] = [dayIn(lastCheck), dayIn(last)];
    const isBalloon = kind !== null && kindNamed(kind).hasBalloon === true;
    return isBalloon && checked !== null && changed !== null && checked < changed
      ? "no balloon check is written down since the last change"
      : null;
  },
};

const dueBeforeLast: RowRule = {
  reads: ["due", "last"],
  at: "due",
  finds: ({ due, last }) => {
    const [next, changed] = [dayIn(due), dayIn(last)];
    return next !== null && changed !== null && next <= changed ? "the due date is not after the last change" : null;
  },
};

const latestBeforeDue: RowRule = {
  reads: ["latest", "due"],
  at: "latest",
  finds: ({ latest, due }) => {
    const [end, next] = [dayIn(latest), dayIn(due)];
    return end !== null && next !== null && end < next ? "the latest date is before the due date" : null;
  },
};

const inUseWithoutDay: RowRule = {
  reads: ["status", "last"],
  at: "last",
  finds: ({ status, last }) =>
    /^(?:active|aktiv|in use)$/.test(wordIn(status)) && isEmpty(last) ? "in use, but no last change" : null,
};

const sittingBelow: RowRule = { reads: ["lying", "sitting"], at: "sitting", finds: sittingBelowLying };
const longTubeWithLength: RowRule = {
  reads: ["length", "shape"],
  at: "length",
  finds: (row) => (isEmpty(row.length) ? null : lengthOfALongTube(row)),
};

const tooLong = (role: "length" | "lying" | "sitting"): RowRule => ({
  reads: [role],
  at: role,
  finds: (row) => ((numberIn(row[role]) ?? 0) > LONGEST ? `${label(role)} over ${LONGEST} cm: mm?` : null),
});

const nothingInside: RowRule = {
  reads: ["markNow"],
  at: "markNow",
  finds: ({ markNow }) =>
    markNow === 0 ? "the mark now is 0: nothing is inside, or the cell is linked to an empty one" : null,
};

const kindNotSaid: RowRule = {
  reads: ["kind"],
  at: "kind",
  finds: ({ kind: cell }, { kind }) => {
    if (kind !== null) return null;
    if (cell instanceof CellError) return "kind is an error";
    if (isEmpty(cell)) return "no kind entered";
    return PLACED_OR_SHAPED.test(wordIn(cell))
      ? "the kind says how it was placed or its shape, not how it is held"
      : "the kind does not say how it is held";
  },
};

const unreadSize: RowRule = {
  reads: ["size"],
  at: "size",
  finds: ({ size }) => {
    if (size instanceof CellError) return "size is an error";
    if (size === undefined || size === null || isEmpty(size)) return null;
    const french = readFrench(size);
    if (french instanceof SheetError) return `size: ${french.bare().said({ cell: "it" })}`;
    return french !== null && (french < SMALLEST_FRENCH || french > LARGEST_USUAL_FRENCH)
      ? "size looks like mm?"
      : null;
  },
};

/** Days that lie behind us; the others may lie anywhere. */
const PAST: readonly Role[] = ["last", "stomaMade", "lastCheck"];

const noDate = (role: "last" | "stomaMade" | "lastCheck" | "due" | "latest"): RowRule => ({
  reads: [role],
  at: role,
  finds: (row, { asOf }) => {
    const cell = row[role] ?? null;
    if (cell instanceof CellError) return `${label(role)} is an error`;
    if (isEmpty(cell)) return null;
    if (typeof cell === "string" && dayIn(cell) === null) return `${label(role)} is text, not a date`;
    return PAST.includes(role) ? dateDoubt(label(role), cell, asOf) : null;
  },
});

export const rowRules: readonly RowRule[] = [
  carerChanges,
  balloonOfABumper,
  bowelAsBalloonG,
  checkedTooEarly,
  overfilled,
  nothingInside,
  catheterTooLong,
  beforeTheStoma,
  nothingSince,
  dueBeforeLast,
  latestBeforeDue,
  inUseWithoutDay,
  ...(["last", "stomaMade", "lastCheck", "due", "latest"] as const).map(noDate),
  kindNotSaid,
  unreadSize,
  ...(["length", "lying", "sitting"] as const).map(tooLong),
  sittingBelow,
  longTubeWithLength,
];
