/**
 * Tube out, over combinations of missing, impossible and contradictory cells. What must be said is derived a second
 * time here, from the service's order of rules (the sources of CAMEOUT), typed by hand.
 */
import { describe, expect, test } from "vitest";
import { CAMEOUT } from "../../../src/words/cameout";
import { call } from "../../../src/worksheet/call";
import { day } from "../../../src/worksheet/dates";
import { CellError } from "../../../src/worksheet/error";
import { whoIsMeant } from "../../../taskpane/actions/caseload/identity";
import { tubeOut } from "../../../taskpane/actions/tube-out";
import { caseloadOf, type Cells, type InMemory } from "./in-memory";

const TODAY = day("2026-11-26");
const weeksAgo = (weeks: number, days = 0) => TODAY - 7 * weeks - days;
const ERROR = new CellError("#N/A");

const healthy: Cells = {
  ID: "D-001",
  Status: "active",
  Born: day("1950-06-01"),
  Access: "G",
  "Stoma made": day("2024-01-08"),
  "Slow healing": "no",
  "Held by": "balloon",
  "Known from": "label",
  Shape: "low-profile",
  "Size Fr": 14,
  "Length cm": 2.3,
  "Device in": day("2026-09-01"),
  "First tube": "no",
  "Trained for tube out": "put in spare",
  "Own tube-out plan": "yes",
  "Cannot wait": "insulin",
  "Spare at home": "same size",
  "Spare Fr": 14,
  "Spare expires": day("2027-12-31"),
};
const settings = { Tract_Low: 6, Tract_High: 12, First_Days: 14 };

function out(cells: Cells, more: InMemory = {}) {
  const caseload = caseloadOf({ tubes: [{ ...healthy, ...cells }], names: settings, ...more });
  const meant = whoIsMeant(caseload.tubes, "D-001");
  return tubeOut(caseload, meant, meant.devices[0] ?? null, TODAY);
}
const whole = (said: ReturnType<typeof out>) => [...said.first, ...said.more].join(" ");

/** Beginnings of the classes' sentences, as the service words them. */
const classes = {
  J: "Emergency. This opening leads straight into the bowel.",
  GJ: "Emergency. Part of this tube lies in the bowel",
  access: "Emergency. It is not recorded where this tube ends.",
  date: "Emergency. It is not recorded when the opening was made.",
  immature: "Emergency. The opening is new (under 6 weeks).",
  uncertain: "Emergency. The opening is 6 to 12 weeks old",
  first: "Emergency. This is still the first tube, or healing is slow",
  firstNotKnown: "Emergency. It is not recorded whether this is still the first tube",
  bumper: "Urgent. A tube held by a bumper cannot go back in",
  other: "Urgent. This kind of tube is not put back at home.",
  balloon: "Urgent. The opening can close within hours, however old it is.",
};

/** One way of writing a cell, and what it is: null where it is not known. */
type Written<T> = readonly (readonly [cell: Cells[string], is: T | null])[];

const accesses: Written<string> = [
  ["G", "G"],
  ["G-J", "GJ"],
  ["J", "J"],
  [null, null],
  [7, null],
  [ERROR, null],
];
const made: Written<number> = [
  [day("2024-01-08"), 150],
  [weeksAgo(12), 12],
  [weeksAgo(11, 6), 11],
  [weeksAgo(6), 6],
  [weeksAgo(5, 6), 5],
  [TODAY, 0],
  [TODAY + 1, null],
  [2019, null],
  [null, null],
  ["3/4/24", null],
  [ERROR, null],
];
const holds: Written<string> = [
  ["balloon", "balloon"],
  [" Balloon", "balloon"],
  ["bumper", "bumper"],
  ["catheter", "catheter"],
  ["button", null],
  [null, null],
  [true, null],
  [ERROR, null],
];
/** Days from the making of the opening to the tube now in; null: a cell that gives none. */
const put: Written<number> = [
  [15, 15],
  [14, 14],
  [-1, null],
  ["12/3/26", null],
  [null, null],
  [ERROR, null],
];
const yesNo: Written<string> = [
  ["no", "no"],
  ["yes", "yes"],
  ["not known", null],
  [null, null],
  ["?", null],
  [ERROR, null],
];

/** Born 1950: an opening made before that, or in the future, has no date. */
function expected(
  access: string | null,
  weeks: number | null,
  firstTube: string | null,
  slow: string | null,
  held: string | null,
) {
  if (access === "J") return classes.J;
  if (access === "GJ") return classes.GJ;
  if (access === null) return classes.access;
  if (weeks === null) return classes.date;
  if (weeks < 6) return classes.immature;
  if (weeks < 12) return classes.uncertain;
  if (firstTube === "yes" || slow === "yes") return classes.first;
  if (firstTube === null || slow === null) return classes.firstNotKnown;
  if (held === "bumper") return classes.bumper;
  return held === "balloon" ? classes.balloon : classes.other;
}

/** First_Days, a clinic setting without a published source: within 14 days of the stoma is the first tube; either date blank: not known. */
function firstTube(written: string | null, weeks: number | null, daysBetween: number | null): string | null {
  const counted = weeks === null || daysBetween === null ? null : daysBetween <= 14 ? "yes" : "no";
  if (counted === "yes" || written === "yes") return "yes";
  return counted === "no" && written === "no" ? "no" : null;
}

test("every combination gives its own class, and only one class speaks of the spare", () => {
  const speaking = new Set<string>();
  const wrong: unknown[] = [];
  let combinations = 0;
  for (const [access, isAccess] of accesses)
    for (const [stoma, weeks] of made)
      for (const [held, isHeld] of holds)
        for (const [between, days] of put)
          for (const [first, isFirst] of yesNo)
            for (const [slow, isSlow] of yesNo) {
              const base = typeof stoma === "string" ? day("2024-01-08") : stoma;
              const device = typeof between === "number" && typeof base === "number" ? base + between : between;
              const inFuture = typeof device === "number" && device > TODAY;
              if (typeof between === "number" && typeof base !== "number") continue;
              const said = out({
                Access: access,
                "Stoma made": stoma === "3/4/24" || stoma === "2024-01-08" ? stoma : base,
                "Held by": held,
                "Device in": device,
                "First tube": first,
                "Slow healing": slow,
              });
              combinations += 1;
              const known = firstTube(isFirst, weeks, inFuture ? null : days);
              const is = expected(isAccess, weeks, known, isSlow, isHeld);
              const text = whole(said);
              if (text.includes("put in the spare")) speaking.add(is);
              else if (!/hospital now/i.test(said.middle)) wrong.push([is, said.middle]);
              if (!said.middle.startsWith(is)) wrong.push([is, said.middle]);
              if (said.first[1] !== said.middle) wrong.push([is, "not said first"]);
              if (text.includes("Only a written plan for this person") !== (is !== classes.balloon))
                wrong.push([is, "plan"]);
            }
  expect(wrong.slice(0, 5)).toEqual([]);
  expect([...speaking]).toEqual([classes.balloon]);
  expect(combinations).toBeGreaterThan(40_000);
});

test("the words are those of the worksheet function, none left out", () => {
  for (const cells of [{}, { Access: "J" }, { "Held by": "bumper" }, { "Stoma made": weeksAgo(3) }] as Cells[]) {
    const one = { ...healthy, ...cells };
    const text = call(CAMEOUT, [
      ...["Stoma made", "today", "Held by", "Access"].map((header) =>
        header === "today" ? TODAY : (one[header] as never),
      ),
      "no",
      "no",
    ]) as string;
    const said = out(cells);
    for (const part of text.replace(" Call the number on your emergency card.", "").split(/(?<=\.) /))
      expect(whole(said), part).toContain(part);
  }
});

describe("what only takes the spare away", () => {
  const balloon = out({});
  test("nothing stands against it in the first place", () => {
    expect(whole(balloon)).toContain("put in the spare");
    expect(balloon.first).toEqual([balloon.first[0], balloon.middle]);
    expect(balloon.notWritten).toEqual([]);
  });

  test.each([
    ["a person who has left", { Status: "left" }, {}, "written down as left"],
    ["a kind that nobody knows", { "Known from": "not known" }, {}, classes.other],
    ["an opening older than the person", { Born: day("2025-01-01") }, {}, classes.date],
    [
      "a later change in the log",
      {},
      { changes: [{ ID: "d-001", Access: "G", Out: day("2026-10-01") }] },
      "later than the tube in this list",
    ],
    [
      "settings that cross",
      {},
      { names: { ...settings, Tract_Low: 12, Tract_High: 8 } },
      "settings for the age of an opening cannot be used",
    ],
  ] as const)("%s", (_, cells, more, begins) => {
    const said = out(cells, more);
    expect(said.middle).toContain(begins);
    expect(whole(said)).not.toContain("put in the spare");
    expect(whole(said)).toContain("Only a written plan for this person");
  });

  test.each([
    [{ "Trained for tube out": "no" }, "nobody is trained for tube out"],
    [{ "Trained for tube out": "hold opening only" }, "training is for holding the opening only"],
    [{ "Own tube-out plan": null }, "there is no plan of this person’s own"],
    [{ "Spare at home": "none" }, "there is no usable spare"],
    [{ "Spare at home": "not known" }, "there is no usable spare"],
    [{ "Spare expires": TODAY - 1 }, "there is no usable spare"],
    [{ "Spare expires": "soon" }, "there is no usable spare"],
    [{ "Spare Fr": 16 }, "the spare is larger than the tube"],
    [{ "Spare Fr": 12 }, "the spare’s size is not the tube’s"],
    [{ "Spare at home": "smaller", "Spare Fr": "16 Fr" }, "the spare is larger than the tube"],
    [{ "Spare cm": 1.7 }, "the spare is shorter than the tube"],
    [{ "Spare cm": 2.7 }, "the spare’s size is not the tube’s"],
  ] as const)("%j is said first", (cells, against) => {
    const said = out(cells);
    expect(said.first[1]).toBe(`Put nothing in and go to hospital now: in this list ${against}.`);
    // At night nobody is to read two instructions that contradict each other.
    expect(whole(said)).not.toContain("put in the spare");
    expect(whole(said)).toContain("within 2 hours");
    expect(said.more).toContain("Only a written plan for this person, and training in it, may say otherwise.");
  });

  test("a spare that expires today has not expired", () => {
    expect(out({ "Spare expires": TODAY }).first[1]).toMatch(/^Urgent\. The opening can close/);
  });

  test("a smaller spare and one of the same size are both spares", () => {
    expect(whole(out({ "Spare at home": "smaller", "Spare Fr": 12 }))).toContain("put in the spare");
    expect(whole(out({ "Spare Fr": "14FR", "Spare cm": 2.3 }))).toContain("put in the spare");
  });

  test.each([
    [{ Out: day("2026-09-01") }],
    [{ Out: day("2026-09-01"), "New held by": "balloon" }],
    [{ In: day("2026-03-01"), Out: null }],
    [{ In: day("2026-03-01"), Out: day("2026-06-01"), "New held by": "bumper" }, { Out: day("2026-09-01") }],
  ])("an earlier device in the log does not count: %j", (...logged) => {
    const changes = logged.map((change) => ({ ID: "D-001", Access: "G", ...change }));
    expect(out({}, { changes }).middle).toContain(classes.balloon);
  });

  test.each([
    ["this very device is written down as out, the day cannot be read", { In: day("2026-09-01"), Out: "12/10/26" }],
    ["a device is written down as out, without any day", { In: null, Out: null }],
    ["the newest change put another kind in", { Out: day("2026-09-01"), "New held by": "bumper" }],
    ["the newest change put in nobody knows what", { Out: day("2026-09-01"), "New held by": "not known" }],
  ])("%s: hospital", (_, change) => {
    const said = out({}, { changes: [{ ID: "D-001", Access: "G", ...change }] });
    expect(said.middle).toContain("it is not known which tube is in");
    expect(whole(said)).not.toContain("put in the spare");
  });
});

test("settings: fewer weeks than allowed are not believed, more are", () => {
  const at = (weeks: number, names: Readonly<Record<string, number | string>>) =>
    out({ "Stoma made": weeksAgo(weeks), "Device in": weeksAgo(weeks - 3) }, { names: { First_Days: 14, ...names } });
  expect(at(11, { Tract_Low: 1, Tract_High: 2 }).middle).toMatch(/^Emergency\. The opening is 6 to 12 weeks old/);
  expect(at(11, { Tract_Low: "six" }).middle).toMatch(/^Emergency\. The opening is 6 to 12 weeks old/);
  expect(at(20, { Tract_Low: 8, Tract_High: 26 }).middle).toMatch(/^Emergency\. The opening is 8 to 26 weeks old/);
  expect(at(7, { Tract_Low: 8, Tract_High: 26 }).middle).toMatch(/new \(under 8 weeks\)/);
  expect(at(20, { Tract_Low: "six" }).doubts.join(" ")).toContain("cannot be read: 6 weeks is used");
});

describe("rows in doubt", () => {
  const two = (access: string, id = "D-001") => {
    const caseload = caseloadOf({ tubes: [healthy, { ...healthy, ID: id, Access: access }], names: settings });
    const meant = whoIsMeant(caseload.tubes, "D-001");
    return { meant, said: tubeOut(caseload, meant, meant.devices[0]!, TODAY), caseload };
  };
  test("the same identifier and access twice: hospital, and both rows are shown", () => {
    const { said } = two("G");
    expect(said.middle).toContain("not known which of these devices");
    expect(whole(said)).not.toContain("put in the spare");
    expect(said.facts.map(({ sheetRow }) => sheetRow)).toEqual([5, 6]);
    expect(said.doubts[0]).toContain("rows 5 and 6");
  });
  test("two spellings: hospital", () => {
    expect(whole(two("J", "d-001 ").said)).not.toContain("put in the spare");
  });
  test("two devices told apart by access: the chosen one counts; not sure which: hospital", () => {
    const { said, meant, caseload } = two("J");
    expect(said.middle).toContain(classes.balloon);
    expect(tubeOut(caseload, meant, null, TODAY).middle).toContain("not known which of these devices");
  });
  test("nobody of that name in the list: hospital", () => {
    const caseload = caseloadOf({ tubes: [healthy], names: settings });
    const said = tubeOut(caseload, whoIsMeant(caseload.tubes, "D-002"), null, TODAY);
    expect(said.middle).toMatch(/nothing is known of this tube\. Go to hospital now\. Put nothing in\./);
  });
});

describe("details", () => {
  test("what is not written down is listed", () => {
    const blank = Object.fromEntries(Object.keys(healthy).map((header) => [header, null]));
    const said = out({ ...blank, ID: "D-001" });
    expect(said.notWritten).toEqual([
      ...["Opening made", "Held by", "Size", "First tube", "Slow healing", "Trained for tube out", "Own tube-out plan"],
      ...["Cannot wait", "Spare at home", "Access"],
    ]);
    expect(said.facts[0]!.facts.every(({ isDoubt }) => isDoubt)).toBe(true);
  });

  test("weeks, kind, size and spare are told", () => {
    // 8 January 2024 to 26 November 2026: 1053 days, 150 weeks and 3 days.
    const texts = Object.fromEntries(out({}).facts[0]!.facts.map(({ label, text }) => [label, text]));
    expect(texts).toMatchObject({
      "Opening made": "150 weeks ago (8 Jan 2024)",
      "Held by": "balloon (known from: label)",
      Size: "14 Fr, low-profile, 2.3 cm",
      "Cannot wait": "insulin",
      "Spare at home": "same size, 14 Fr, expires 31 Dec 2027",
    });
  });

  test("numbers to call: an empty one says what to do", () => {
    const calls = (names: Readonly<Record<string, string>>) =>
      Object.fromEntries(out({}, { names: { ...settings, ...names } }).calls.map(({ label, text }) => [label, text]));
    expect(calls({})["In hours"]).toBe("No number entered: call the emergency number.");
    expect(calls({ Call_Day: "0000 000000", Call_Emergency: "000" })).toEqual({
      "In hours": "0000 000000",
      "Out of hours": "No number entered: call the emergency number.",
      "Hospital that can replace tubes": "Not entered.",
      "Emergency number": "000",
    });
  });
});
