import type { WhyOpen } from "../../src/lots/find";
import type { Likeness } from "../../src/lots/similar";
import { count, figure, inQuotes, rows, together } from "./pieces";

/** Find a lot. Finding nothing is never said to be good news. */
export const findLot = {
  label: "Lot, or a scanned label",
  hint: "As printed beside LOT, or what a scanner reads from the label.",
  find: "Find",
  empty: "Type or scan a lot.",
  lookedIn: (columns: string) => `Looked in ${columns}.`,
  nowhere: "No column with lots was found in this workbook. Say below in which one to look.",
  also: "Look in another column too",
  chooseColumn: "Choose a column",
  column: (header: string, sheet: string) => `${inQuotes(header)} on ${sheet}`,
  title: (lots: readonly string[]) => `Lot ${together(lots)}`,
  fromLabel: (lot: string) => `The label says lot ${lot}.`,
  groups: {
    "in use": "Devices in use",
    spare: "Spares at home",
    past: "Past devices",
    "put in": "Written down when it was put in",
    list: "Rows of your lists",
  },
  counted: {
    "in use": (n: number) => `${figure(n)} in use`,
    spare: (n: number) => `${count(n, "spare")} at home`,
    past: (n: number) => count(n, "past device"),
    "put in": (n: number) => `${figure(n)} written in Changes as put in`,
    list: (n: number) => `${rows(n)} of your lists`,
  },
  found: (parts: readonly string[]) => `${together(parts)}.`,
  none: (looked: number) => `No row of ${figure(looked)} has this lot.`,
  open: (n: number) =>
    `${rows(n)} ${n === 1 ? "has" : "have"} no lot that can be read: ${n === 1 ? "it" : "they"} cannot be ruled out.`,
  noLot: (n: number) =>
    `${rows(n)} ${n === 1 ? "has" : "have"} no lot: ${n === 1 ? "it" : "they"} cannot be ruled out.`,
  openTitle: "Cannot be ruled out",
  why: {
    "no lot": "no lot written down",
    "not a lot": "no lot, but something else",
    "a date stands there": "a date where the lot should be",
    "made into a number": "a number that a spreadsheet may have made of this lot",
    "made into a date": "a date that a spreadsheet may have made of this lot",
  } satisfies Record<WhyOpen, string>,
  similar: "Similar lots: read these labels again",
  likeness: {
    "other signs between": "other signs between",
    "other leading zeros": "other leading zeros",
    "signs that look alike": "signs that look alike",
    "one sign differs": "one sign differs",
    "part of it": "one is part of the other",
  } satisfies Record<Likeness, string>,
  similarLine: (lot: string, n: number, why: string) => `${lot}: ${rows(n)}, ${why}`,
  take: (lot: string) => `Look for ${lot} too`,
  leave: "Only the lot that was typed",
  showThese: (n: number, list: string) => `Show only ${n === 1 ? "this row" : `these ${figure(n)} rows`} of ${list}`,
  showOpen: (n: number, list: string) => `Show only the ${count(n, "row")} without a lot in ${list}`,
  showAll: (list: string) => `Show all rows of ${list}`,
  shown: (list: string) => `Only these rows of ${list} are shown now.`,
  allShown: (list: string) => `All rows of ${list} are shown again.`,
  print: "Print the list of this lot",
  caution:
    "A row that is not named here has another lot written down, which does not show that it is another lot. Ask your stock and your supplier too: what nobody wrote down cannot be found.",
  spare: "spare",
  expires: (date: string) => `expires ${date}`,
  since: (date: string) => `since ${date}`,
  putIn: (date: string) => `put in ${date}`,
  fromTo: (from: string, until: string) => `${from} to ${until}`,
  noDay: "no date",
  noId: "(no ID)",
  page: {
    heading: (lots: readonly string[]) => `To tell: lot ${together(lots)}`,
    similar: (lines: readonly string[]) => `Similar lots, not on this page: ${lines.join("; ")}.`,
    columns: ["Told", "ID", "Device", "Lot as written", "Told on, by"] as readonly string[],
    openColumns: ["Looked", "ID", "Device", "What stands there", "Lot read from the label, by"] as readonly string[],
    none: "No row.",
  },
};
