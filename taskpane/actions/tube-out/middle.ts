/**
 * The sentence that decides. CAMEOUT gives it; what it cannot see (rows that contradict each other) only ever takes the
 * one class away that may be put back.
 */
import { closing, countedFor, middles, opening, planOnly } from "../../../src/words/cameout-texts";
import { CAMEOUT } from "../../../src/words/cameout";
import { dateInWords } from "../../../src/words/date-in-words";
import { call } from "../../../src/worksheet/call";
import type { Cell } from "../../../src/worksheet/cell";
import { CellError } from "../../../src/worksheet/error";
import type { Value } from "../../workbook/port";
import { accessOf, dateOf, heldOf, known, textOf, wordOf } from "../caseload/cells";
import { rowsOf, type Device } from "../caseload/identity";
import { textIn, valueIn, type Caseload, type CaseloadRow } from "../caseload/read";
import { carefulIn, numberIn } from "../caseload/settings";
import { doubtful } from "./sentences";

/** What an error cell counts as. */
const plain = (value: Value): Cell => (value instanceof CellError ? "not known" : value);

type YesNo = "yes" | "no" | "not known";

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
export function stomaMade({ row }: Device): Cell {
  const made = dateOf(valueIn(row, "Stoma made"));
  const born = known(dateOf(valueIn(row, "Born")));
  return typeof made === "number" && (born === null || born <= made) ? made : "not known";
}

/** Written down as balloon, but nobody knows from what: not known. */
const retentionOf = ({ row }: Device): string =>
  textIn(row, "Known from").toLowerCase() === "not known" ? "not known" : heldOf(valueIn(row, "Held by"));

const CARD = "Call the number on your emergency card.";

/** The last sentences without the number, which is shown by itself. */
export const last = closing("").replace(` ${CARD}`, "");

export interface Middle {
  readonly middle: string;
  /** The only class in which a tube may go back at home. */
  readonly mayGoBack: boolean;
  readonly planOnly: string | null;
  readonly counted: string | null;
}

const hospital = (middle: string): Middle => ({ middle, mayGoBack: false, planOnly, counted: null });

/** @param device null where nobody, or more than one row, may be meant */
export function middleFor(caseload: Caseload, device: Device | null, today: number, unknown: string): Middle {
  if (!device) return hospital(unknown);
  const { names } = caseload;
  const text = call(CAMEOUT, [
    stomaMade(device),
    today,
    retentionOf(device),
    plain(valueIn(device.row, "Access")),
    firstTubeOf(device, names, today),
    slowHealingOf(device),
    carefulIn(names, "Tract_Low", "low"),
    carefulIn(names, "Tract_High", "low"),
  ]);
  if (typeof text !== "string") return hospital(doubtful.settings);
  const said = between(text, today);
  if (said.middle !== middles.balloonMature) return said;
  if (textOf(valueIn(device.row, "Status")).toLowerCase() === "left") return hospital(doubtful.left);
  return isChangedSince(caseload, device) ? hospital(doubtful.sheetsDisagree) : said;
}

/** CAMEOUT gives one paragraph; the parts around the deciding sentence are known. */
function between(text: string, today: number): Middle {
  let middle = text.slice(opening.length + 1, text.length - closing("").length - 1);
  const take = (part: string): string | null => {
    if (!middle.endsWith(part)) return null;
    middle = middle.slice(0, middle.length - part.length).trim();
    return part;
  };
  const plan = take(planOnly);
  const counted = take(countedFor(dateInWords(today)));
  return { middle, mayGoBack: middle === middles.balloonMature, planOnly: plan, counted };
}

/** Whether the log tells of another device than the list: the one in it has come out, or another kind went in. */
function isChangedSince({ changes }: Caseload, { row, id, access }: Device): boolean {
  const put = known(dateOf(valueIn(row, "Device in")));
  const own = rowsOf(changes.rows, id).filter((change) => {
    const other = accessOf(valueIn(change, "Access"));
    return other === "not known" || other === access;
  });
  const outOf = (change: CaseloadRow) => known(dateOf(valueIn(change, "Out")));
  /* A row without a day of coming out tells of an earlier device only where it says that it went in earlier. */
  const isLater = own.some((change) => {
    const [came, out] = [known(dateOf(valueIn(change, "In"))), outOf(change)];
    if (put === null) return true;
    return out === null ? came === null || came >= put : out > put;
  });
  const newest = own.reduce<CaseloadRow | null>(
    (best, change) => (best === null || (outOf(change) ?? 0) >= (outOf(best) ?? 0) ? change : best),
    null,
  );
  const next = newest === null ? "" : textIn(newest, "New held by");
  return isLater || (next !== "" && heldOf(next) !== heldOf(valueIn(row, "Held by")));
}
