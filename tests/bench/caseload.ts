/** The work of a whole service at once: booking, wear by person, scanned codes. */
import { BOOK } from "../../src/schedule/book";
import { READCODE } from "../../src/supplies/readcode";
import { WEARRATIO } from "../../src/wear/wearratio";
import { caseloadBookOf } from "../../src/caseload/index";
import { tableNames } from "../../src/caseload/names";
import { readerOf } from "../../src/caseload/results";
import { call } from "../../src/worksheet/call";
import { caseloadRows, TODAY } from "../browser/caseload/many-rows";
import { growth, line, ms, randoms, time } from "./measure";

const FIRST_DAY = 46_143;

/** People due over two years, first and last days for some, and sessions over the same time with places for all. */
function booking(people: number, sessions: number, rule: string): () => unknown {
  const random = randoms(3);
  const due = Array.from({ length: people }, () => [FIRST_DAY + Math.floor(730 * random())]);
  const earliest = due.map(([day]) => [random() < 0.5 ? day! - 30 : ""]);
  const latest = due.map(([day]) => [random() < 0.5 ? day! + 60 : ""]);
  const days = Array.from({ length: sessions }, (_, i) => [FIRST_DAY + Math.floor((730 * i) / sessions)]);
  return () => call(BOOK, [due, days, Math.ceil(people / sessions), earliest, latest, rule]);
}

/** Every person's ratio in one spill, from all devices of all people. Two caseloads in turn: the last fit is kept. */
function wear(people: number, devices: number): (run: number) => unknown {
  const caseloads = [4, 5].map((seed) => {
    const random = randoms(seed);
    const names = Array.from({ length: people }, (_, i) => `P${i}`);
    const pace = names.map(() => 0.5 + random());
    const rows = Array.from({ length: people * devices }, (_, i) => i % people);
    return [
      names.map((name) => [name]),
      rows.map((person) => [names[person]]),
      rows.map((person) => [1 + Math.floor((300 * random()) / pace[person]!)]),
      rows.map(() => [random() < 0.7 ? "yes" : "no"]),
    ];
  });
  return (run) => call(WEARRATIO, caseloads[run % 2]!);
}

/** Codes as a scanner sends them: item, expiry, lot and serial number. */
function codes(rows: number): () => unknown {
  const column = Array.from({ length: rows }, (_, i) => [
    `]d201123123123123331728${String(1 + (i % 12)).padStart(2, "0")}0010LOT${i}\u001D21S${i}`,
  ]);
  return () => call(READCODE, [column, "lot"]);
}

const GROUPS = ["fit", "plan", "spare"] as const;

/** All columns of the ready-made caseload, as when the page opens it. */
function opening(devices: number): () => unknown {
  const rows = caseloadRows(devices);
  const book = caseloadBookOf(rows, { asOf: TODAY, groups: GROUPS, people: "none" });
  return () => readerOf(book, TODAY);
}

/** One cell typed into it; each time another row. */
function edit(devices: number): (run: number) => unknown {
  const rows = caseloadRows(devices);
  const book = caseloadBookOf(rows, { asOf: TODAY, groups: GROUPS, people: "none" });
  const reader = readerOf(book, TODAY);
  const { name: sheet, table } = book.sheets.find((one) => one.table?.name === tableNames.tubes)!;
  const column = table!.left + table!.columns.findIndex(({ header }) => header === "Device in");
  return (run) => reader.change([{ sheet, row: table!.top + 1 + ((run * 7) % devices), column, value: TODAY - run }]);
}

export function benchCaseload(): void {
  line("Ready-made caseload, 5,000 devices, all columns", ms(time(opening(5_000))), "below 1,000 ms");
  line("the same, 5,000, 10,000 and 20,000 devices", growth([5_000, 10_000, 20_000], opening), "about 2 times");
  line("the same, one edit of 5,000 devices", ms(time(edit(5_000))), "below 600 ms, all that the page does");
  for (const rule of ["worst first", "most in time"]) {
    line(`BOOK, 10,000 people, 500 sessions, ${rule}`, ms(time(booking(10_000, 500, rule))), "below 1,000 ms");
    line(
      `BOOK, 10,000, 20,000 and 40,000 people, 20 to a session, ${rule}`,
      growth([10_000, 20_000, 40_000], (people) => booking(people, people / 20, rule)),
      "about 2 times",
    );
  }
  line("WEARRATIO, 5,000 people x 20 devices, one spill", ms(time(wear(5_000, 20))), "below 1,000 ms");
  line("READCODE, 100,000 codes", ms(time(codes(100_000))), "no target");
  line("READCODE, 25,000, 50,000 and 100,000 codes", growth([25_000, 50_000, 100_000], codes), "about 2 times");
}
