import type { UrgencyClass } from "../../src/caseload/urgency";
import { count } from "./pieces";

/** The day at a glance. */
export const today = {
  /** What a word asks for, beside its count. */
  classes: {
    act: "act today",
    soon: "soon",
    missing: "put right",
    arranged: "arranged",
    quiet: "nothing due",
  } satisfies Record<UrgencyClass, string>,
  counted: (n: number) => count(n, "tube in use", "tubes in use"),
  headings: { act: "Act today", soon: "Soon", missing: "Put right" },
  noWord: "no word in To do",
  noIdentifier: "no ID",
  none: "No row asks for anything. That is what the list says: look at what nobody has written down.",
  more: (n: number) => `${n} more: show the whole list`,
  /** Heard after a row's identifier and word. */
  show: ": show the row",
  wearsFast: "Wears devices through fast",
  wearsFastMore: (n: number) => `${n} more: Pictures has them.`,
  write: "Write down",
  back: "Back to today",
  before: "Before you rely on this",
  noNumbers: "The numbers to call are not entered.",
  enter: { calls: "Enter the numbers here", agreement: "Write down who agreed the settings" },
  look: "Look at all settings first",
  noCaseload: "Recording needs a ready-made caseload. Your own list gets its dates and words under ‘My list’.",
  own: {
    counted: (n: number, list: string) => `${count(n, "row")} of the ${list}`,
    /** No more than the columns that were read can say. */
    quiet: "these columns ask for nothing",
    read: (headers: readonly string[]) =>
      `Read from ${headers.join(", ")}. What these columns do not read is not in it.`,
  },
  toList: "Go to ‘My list’",
  toSetUp: "Set up a caseload",
  printWeek: "Print the week list",
  week: {
    title: (from: string, until: string) => `Week list: ${from} to ${until}`,
    lead: (n: number) => `${count(n, "tube in use", "tubes in use")}. What nobody has written down is not in it.`,
    parts: {
      act: "Act now",
      due: "Due or booked this week, or past",
      arrange: "Arrange",
      ask: "Ask about: nothing can be ruled out",
    },
    none: "Nobody, by what is written down.",
    done: "Done",
    columns: ["ID", "What", "Tube to take", "Change", "By, note"],
    booked: (day: string) => `booked ${day}`,
    due: (day: string) => `due ${day}`,
    noDay: "no day",
    noTube: "not written down",
  },
};
