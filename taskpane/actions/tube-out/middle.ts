/**
 * The class that decides, and its sentence. The class is CAMEOUT's; what that cannot see (rows that contradict each other)
 * only ever takes the one class away whose tube may be put back.
 */
import type { Held } from "../../../src/device/retention-words";
import { immatureBelow, matureFrom, type DateOrDoubt } from "../../../src/schedule/tract";
import { countedFor, middleOf } from "../../../src/words/cameout-texts";
import { dateInWords } from "../../../src/words/date-in-words";
import { isAgeCounted, mayGoBack, tubeOutClass, type TubeOutClass } from "../../../src/words/tube-out-class";
import type { YesNo } from "../../../src/worksheet/yes-no";
import { accessOf, dateOf, heldOf, known, textOf, wordOf } from "../caseload/cells";
import { rowsOf, type Device } from "../caseload/identity";
import { textIn, valueIn, type Caseload, type CaseloadRow } from "../caseload/read";
import { carefulIn, numberIn } from "../caseload/settings";
import { doubtful, type Doubt } from "./sentences";

/** The setting First_Days: put in within so many days of the stoma. Known only where the list and the dates agree. */
export function firstTubeOf({ row }: Device, names: Caseload["names"], today: number): YesNo {
  const counted = countedFirst(known(dateOf(valueIn(row, "Stoma made"))), known(dateOf(valueIn(row, "Device in"))));
  function countedFirst(made: number | null, put: number | null): YesNo {
    if (made === null || put === null || put < made || put > today) return "not known";
    return put - made <= numberIn(names, "First_Days") ? "yes" : "no";
  }
  if (!row.values.has("first tube")) return counted;
  const written = wordOf(valueIn(row, "First tube"), ["yes", "no"]) || "not known";
  if (counted === "yes" || written === "yes") return "yes";
  return counted === "no" && written === "no" ? "no" : "not known";
}

export const slowHealingOf = ({ row }: Device): YesNo =>
  wordOf(valueIn(row, "Slow healing"), ["yes", "no"]) || "not known";

/** "not known" where the opening would be older than the person. */
export function stomaMade({ row }: Device): DateOrDoubt {
  const made = dateOf(valueIn(row, "Stoma made"));
  const born = known(dateOf(valueIn(row, "Born")));
  return typeof made === "number" && (born === null || born <= made) ? made : "not known";
}

/** Written down as balloon, but nobody knows from what: not known. */
const retentionOf = ({ row }: Device): Held =>
  textIn(row, "Known from").toLowerCase() === "not known" ? "not known" : heldOf(valueIn(row, "Held by"));

export interface Middle {
  /** What the tube is a case of, or what in the rows keeps it from being told. */
  readonly is: TubeOutClass | Doubt;
  readonly sentence: string;
  /** The only class in which a tube may go back at home. */
  readonly mayGoBack: boolean;
  /** The day that the age of the opening was counted for, in a sentence; null where it does not count. */
  readonly counted: string | null;
}

/** Where nothing else may be said of this tube. */
export const hospital = (doubt: Doubt): Middle => ({
  is: doubt,
  sentence: doubtful[doubt],
  mayGoBack: false,
  counted: null,
});

/** The clinic's weeks as CAMEOUT takes them, or null where they cannot be used. */
function bandsIn(names: Caseload["names"]): { readonly immature: number; readonly mature: number } | null {
  const immature = immatureBelow().read(carefulIn(names, "Tract_Low", "low"));
  const mature = matureFrom().read(carefulIn(names, "Tract_High", "low"));
  if (typeof immature !== "number" || typeof mature !== "number") return null;
  return immature > mature ? null : { immature, mature };
}

export function middleFor(caseload: Caseload, device: Device, today: number): Middle {
  const { names } = caseload;
  const bands = bandsIn(names);
  if (bands === null) return hospital("settings");
  const one = tubeOutClass({
    stomamade: stomaMade(device),
    asof: today,
    retention: retentionOf(device),
    access: accessOf(valueIn(device.row, "Access")),
    firsttube: firstTubeOf(device, names, today),
    slow: slowHealingOf(device),
    ...bands,
  });
  if (mayGoBack(one)) {
    if (textOf(valueIn(device.row, "Status")).toLowerCase() === "left") return hospital("left");
    if (isChangedSince(caseload, device)) return hospital("sheetsDisagree");
  }
  return {
    is: one,
    /* An entry above what is allowed is not believed: the opening closes. */
    sentence: middleOf(one, { ...bands, hours: carefulIn(names, "Out_Aim", "high") }),
    mayGoBack: mayGoBack(one),
    counted: isAgeCounted(one) ? countedFor(dateInWords(today)) : null,
  };
}

/** Whether the log tells of another device than the list: the one in it has come out, or another kind went in. */
function isChangedSince({ changes }: Caseload, { row, id, access }: Device): boolean {
  const put = known(dateOf(valueIn(row, "Device in")));
  const own = rowsOf(changes.rows, id).filter((change) => {
    const other = accessOf(valueIn(change, "Access"));
    return other === "not known" || other === access;
  });
  const outOf = (change: CaseloadRow<"changes">) => known(dateOf(valueIn(change, "Out")));
  /* A row without a day of coming out tells of an earlier device only where it says that it went in earlier. */
  const isLater = own.some((change) => {
    const [came, out] = [known(dateOf(valueIn(change, "In"))), outOf(change)];
    if (put === null) return true;
    return out === null ? came === null || came >= put : out > put;
  });
  const newest = own.reduce<CaseloadRow<"changes"> | null>(
    (best, change) => (best === null || (outOf(change) ?? 0) >= (outOf(best) ?? 0) ? change : best),
    null,
  );
  const next = newest === null ? "" : textIn(newest, "New held by");
  return isLater || (next !== "" && heldOf(next) !== heldOf(valueIn(row, "Held by")));
}
