import { calendarDate } from "../maths/calendar";
import { sources } from "../sources";
import { dateResult, day } from "../worksheet/dates";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { notAvailable, SheetError } from "../worksheet/error";
import { choice, date, reading } from "../worksheet/parameters";
import { dayOf, readGs1 } from "./gs1";

/** Where two-digit years are read when no day is given: 1976 to 2075. */
const USUAL_YEAR = 2025;

const PARTS = {
  item: "01",
  lot: "10",
  made: "11",
  expiry: "17",
  serial: "21",
  quantity: "30",
} as const;
type Part = keyof typeof PARTS;

const asNumber = new SheetError("must be text: format the cell as text before you scan into it");

export const READCODE = define(
  {
    name: "READCODE",
    family: "Supplies",
    summary: "One part of a scanned or typed GS1 label code: item number, lot, dates, serial number or quantity.",
    params: {
      code: reading(
        "What the scanner gave, or the line with brackets under the bar code",
        {},
        (cell): string | null | SheetError => (cell === 0 ? null : typeof cell === "string" ? cell : asNumber),
      ),
      part: choice("Which part of the label", Object.keys(PARTS) as Part[], {}),
      asof: date("A day near the label's dates, such as today: years are read from 49 before to 50 after it", {
        optional: true,
        fallbackHelp: "years 1976 to 2075",
      }),
    },
    subject: ["code"],
    result: {
      shape: "cell",
      kind: "mixed",
      dateWith: { choice: "part", words: ["made", "expiry"] satisfies Part[] },
      help: "Item, lot and serial number as text; made and expiry as dates (format the cell); quantity as a number",
      blank: "",
    },
    compute: ({ code, part, asof }) => {
      const year = asof === undefined ? USUAL_YEAR : calendarDate(asof).year;
      const elements = readGs1(code, year);
      if (elements instanceof SheetError) return elements;
      const value = elements.get(PARTS[part]);
      if (value === undefined) return notAvailable(`the code holds no ${part} (${PARTS[part]})`);
      if (part === "quantity") return Number(value);
      if (part !== "made" && part !== "expiry") return value;
      const serial = dayOf(value, year);
      return typeof serial === "number" ? dateResult(serial) : new SheetError(serial);
    },
  },
  documented && {
    details:
      "Reads the code as a scanner sends it (with the separator sign GS, or marked ]d2, ]C1, ]Q3, ]e0) or with brackets as " +
      "printed, with every identifier of GS1's dictionary. The whole code is checked, also the parts not asked for: characters, " +
      "lengths, months, days and check digits. Day 00 is the last day of its month.",
    cautions: [
      "Compare lot and expiry with the print before you rely on them.",
      "Some scanners drop the separator: then a lot runs on into what follows. Set the scanner to send GS (ASCII 29).",
      "Other coding systems are refused: type lot and expiry from the print.",
      "Excel cuts long numbers: format the cell as text before you scan.",
    ],
    evidence: "standard",
    sources: [sources.gs1Dictionary, sources.gs1Tests, sources.udiExample],
    examples: [
      {
        shows: "published",
        args: { code: "(01)51022222233336(11)141231(17)150707(10)A213B1(21)1234", part: "lot" },
        gives: "A213B1",
        source: sources.udiExample,
      },
      {
        shows: "published",
        args: { code: "(01)51022222233336(11)141231(17)150707(10)A213B1(21)1234", part: "expiry" },
        gives: day("2015-07-07"),
        source: sources.udiExample,
      },
      {
        shows: "published",
        args: { code: "]d2011231231231233310ABC123", part: "item" },
        gives: "12312312312333",
        source: sources.gs1Tests,
      },
      {
        shows: "use",
        args: { code: "(01) 51022222233336 (30) 10", part: "quantity" },
        gives: 10,
        source: sources.gs1Dictionary,
      },
      {
        shows: "use",
        args: { code: "(01)12345678901231(10)A1(3102)000475(7003)2612312359(8200)example.org", part: "lot" },
        gives: "A1",
        source: `${sources.gs1Dictionary}: net weight, expiry time and product address beside the lot`,
      },
      {
        shows: "range",
        args: {
          code: [["(01)12345678901231(10)03-04"], [""], ["(01)12345678901232(10)03-04"], ["(01)12345678901231"]],
          part: "lot",
        },
        gives: [["03-04"], [""], [{ error: "#VALUE!" }], [{ error: "#N/A" }]],
        source: `${sources.gs1Tests}: 12345678901231 is a right number, 12345678901232 is not`,
      },
      { shows: "blank", args: { code: "", part: "lot" }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { code: "(17)201310(10)A1", part: "lot" },
        gives: { error: "#VALUE!", says: "element (17) has no month 13" },
        source: sources.gs1Tests,
      },
      {
        shows: "bad input",
        args: { code: "+H123ABC01234567890D", part: "lot" },
        gives: { error: "#VALUE!", says: "not a GS1 code" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { code: "(01)12345678901231(8201)x", part: "item" },
        gives: { error: "#VALUE!", says: "element (8201) is not one this function reads" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { code: "(17)240200", part: "expiry" },
        gives: day("2024-02-29"),
        source: `${sources.gs1Tests}: day 00 is the month's last day`,
      },
      {
        shows: "boundary",
        args: { code: "(17)760101", part: "expiry", asof: "2026-05-14" },
        gives: day("2076-01-01"),
        source: `${sources.gs1Tests}: 50 years ahead`,
      },
      {
        shows: "boundary",
        args: { code: "(17)770101", part: "expiry", asof: "2026-05-14" },
        gives: day("1977-01-01"),
        source: `${sources.gs1Tests}: 49 years back`,
      },
    ],
  },
);
