/** Changes: one row is a device that has come out. */
import type { Header } from "../headers";
import { PLAIN, type CaseloadColumn } from "../column";
import { key, person } from "../identity";
import { identityOf, isBlank, isPast } from "../phrases";
import { computed } from "../shown";
import { date, forYouOnly, list, number, text } from "../typed";
import * as words from "../words";

const out = { group: "The device that came out" } as const;
const how = { group: "What happened" } as const;
const next = { group: "The new device" } as const;

const daysInPlace: CaseloadColumn = {
  ...computed(
    "Days in place",
    `IF(AND(${isPast("[@In]")},${isPast("[@Out]")}),IF(INT([@Out])>=INT([@In]),INT([@Out])-INT([@In]),""),"")`,
    { format: "0", width: 9 },
  ),
  group: "Counted",
};

/** What the table of reasons on the settings sheet says; a reason that it does not have is not known. */
const byReason = (header: Header, column: string): CaseloadColumn => ({
  ...computed(
    header,
    `IF(${isBlank("[@Reason]")},"",IFERROR(INDEX(${column},MATCH(${identityOf("[@Reason]")},Reason_List,0)),"not known"))`,
    { format: PLAIN, width: 10, rules: [{ look: "missing", words: ["not known"] }] },
  ),
  group: "Counted",
});

const failed = byReason("Failed", "Reason_Failed");
const unplanned = byReason("Unplanned", "Reason_Unplanned");

export const changeColumns: readonly CaseloadColumn[] = [
  text("ID", 11, "As in Tubes in use.", out),
  list("Access", words.accesses, 8, "Where the feed ended.", out),
  list("Held by", words.holds, 12, "What held it inside.", out),
  forYouOnly(list("Shape", words.shapes, 11, "", out)),
  number("Size Fr", [5, 30], "As printed.", out),
  number("Length cm", [0.5, 10], "Low-profile only.", out),
  number("Fill mL", [0.5, 30], "The fill that was agreed.", out),
  text("Lot", 14, "As printed. Kept as text.", out),
  date("In", "The day it was put in.", out),
  date("Out", "The day it came out; not before In.", out),
  list(
    "Reason",
    words.reasons.map(({ word }) => word),
    22,
    "Why it came out.",
    how,
  ),
  list("Where", words.places, 18, "", how, "ask"),
  list("Unplanned visit", ["no", "yes"], 10, "", how, "ask"),
  number("Nights", [0, 99], "Nights in hospital.", how, { format: "0", isWhole: true }),
  forYouOnly(number("Hours out", [0, 240], "Blank: not known.", how)),
  forYouOnly(list("Changed by", words.changers, 15, "", how, "ask")),
  list("Position confirmed by", words.confirmedBy, 15, "How the position of the new tube was confirmed.", how, "ask"),
  forYouOnly(number("pH", [0, 14], "", how)),
  list("New held by", words.holds, 12, "", next, "ask"),
  forYouOnly(list("New shape", words.shapes, 11, "", next, "ask")),
  forYouOnly(number("New size Fr", [5, 30], "", next)),
  forYouOnly(number("New length cm", [0.5, 10], "", next)),
  text("New lot", 14, "As printed. Kept as text.", next),
  forYouOnly(number("New fill put in mL", [0, 60], "Never above the label.", next)),
  forYouOnly(text("Note", 30, "No names.", next)),
  ...[daysInPlace, failed, unplanned, person, key],
];
