/** Dates as people type them. What each text means was written down by hand, from a calendar. */
import { describe, expect, test } from "vitest";
import { mendDates, NOTHING_SAID, readDateColumn } from "../../../src/mending/dates";
import { dayMeant, notRead, readWrittenDate } from "../../../src/mending/written-date";
import { day } from "../../../src/worksheet/dates";
import { CellError } from "../../../src/worksheet/error";

const TODAY = day("2026-11-30");
const NOTHING = { order: null, century: null } as const;

const meaning = (text: string) => {
  const date = readWrittenDate(text);
  return typeof date === "string" ? date : dayMeant(date, NOTHING, TODAY);
};

describe("one text", () => {
  test.each([
    ["2026-10-22", "2026-10-22"],
    ["2026/10/22", "2026-10-22"],
    ["2026-10-22 14:30", "2026-10-22"],
    ["2026-10-22T14:30:05Z", "2026-10-22"],
    ["20261022", "2026-10-22"],
    ["13 Jun 2026", "2026-06-13"],
    ["13. Juni 2026", "2026-06-13"],
    ["13.Juni 2026", "2026-06-13"],
    ["13-Jun-2026", "2026-06-13"],
    ["13th of June 2026", "2026-06-13"],
    ["1er août 2026", "2026-08-01"],
    ["1º de agosto de 2026", "2026-08-01"],
    ["3 mrt 2026", "2026-03-03"],
    ["5. März 2026", "2026-03-05"],
    ["5 settembre 2026", "2026-09-05"],
    ["June 13, 2026", "2026-06-13"],
    ["Jun 13 2026", "2026-06-13"],
    ["2026 Jun 13", "2026-06-13"],
    ["13Jun2026", "2026-06-13"],
    ["Sa, 13.06.2026", "2026-06-13"],
    ["Saturday 13 June 2026", "2026-06-13"],
    ["22/10/2026", "2026-10-22"],
    ["10/22/2026", "2026-10-22"],
    ["21.07.2026", "2026-07-21"],
    ["21. 07. 2026", "2026-07-21"],
    ["21 - 7 - 2026", "2026-07-21"],
    ["21–7–2026", "2026-07-21"],
    ["22 10 2026", "2026-10-22"],
    ["4/4/2026", "2026-04-04"],
    ["  22/10/2026\u00a0", "2026-10-22"],
    ["２２/１０/２０２６", "2026-10-22"],
    ["22/10/2026 9:05 am", "2026-10-22"],
    ["29.02.2024", "2024-02-29"],
  ])("%s is %s", (text, meant) => expect(meaning(text)).toBe(day(meant)));

  test.each(["3/4/2026", "03.04.2026", "3-4-2026", "13/4/24", "13 Jun 26", "3/4/24", "4/4/24"])(
    "%s is asked about and not guessed",
    (text) => expect(meaning(text)).toBeNull(),
  );

  test.each([
    ["31.02.2026", notRead.noSuchDay],
    ["29/02/2026", notRead.noSuchDay],
    ["13/13/2026", notRead.noSuchDay],
    ["2026-13-01", notRead.noSuchDay],
    ["01.01.1889", notRead.noSuchDay],
    ["32 Jun 2026", notRead.noSuchDay],
    ["Monday 13 June 2026", notRead.weekday],
    ["Mo 13.06.2026", notRead.weekday],
    ["Jun 2026", notRead.day],
    ["6/2026", notRead.day],
    ["2026", notRead.day],
    ["13 Jun", notRead.year],
    ["13/6", notRead.year],
    ["13.06.", notRead.year],
    ["13 Jun 2026?", notRead.doubt],
    ["ca. 13.06.2026", notRead.doubt],
    ["~13.06.2026", notRead.doubt],
    ["13.06.2026 / 14.07.2026", notRead.several],
    ["13 Jun or 14 Jul 2026", notRead.several],
    ["changed 13 Jun 2026", notRead.beside],
    ["13.06.2026 (clinic)", notRead.beside],
    ["22/10-2026", notRead.beside],
    ["22/10/2026 25:00", notRead.beside],
    ["22/10/202", notRead.beside],
    ["see letter", notRead.words],
    ["14 Fr", notRead.words],
    ["n/k", notRead.words],
    ["June", notRead.words],
    [`13 Jun 2026 ${"x".repeat(60)}`, notRead.words],
  ])("%s: %s", (text, why) => expect(meaning(text)).toBe(why));

  test("with the answers, each as it was said", () => {
    const meant = (text: string, order: "day first" | "month first", century: "2000s" | "up to today") => {
      const date = readWrittenDate(text);
      return typeof date === "string" ? date : dayMeant(date, { order, century }, TODAY);
    };
    expect(meant("3/4/24", "day first", "2000s")).toBe(day("2024-04-03"));
    expect(meant("3/4/24", "month first", "2000s")).toBe(day("2024-03-04"));
    expect(meant("13/4/24", "month first", "2000s")).toBe(day("2024-04-13"));
    expect(meant("13 Jun 31", "day first", "2000s")).toBe(day("2031-06-13"));
    expect(meant("13 Jun 31", "day first", "up to today")).toBe(day("1931-06-13"));
    expect(meant("30/11/26", "day first", "up to today")).toBe(day("2026-11-30"));
    expect(meant("1/12/26", "day first", "up to today")).toBe(day("1926-12-01"));
    expect(meant("29/2/00", "day first", "2000s")).toBe(day("2000-02-29"));
  });
});

describe("a column", () => {
  const texts = [
    "13 Jun 2026",
    "22/10/2026",
    "23/10/2026",
    "3/4/2026",
    "3/4/24",
    "13.01.25",
    "",
    null,
    "see letter",
    "?",
  ];
  const values = [...texts, day("2025-05-20"), new CellError("#REF!"), "31/6/2026"];
  const column = readDateColumn(values);

  test("groups its texts by how they are written and by what is to be asked", () => {
    expect(column.wordings.map(({ form, asks, rows }) => [form, asks, rows])).toEqual([
      ["strokes", [], [1, 2]],
      ["month in words", [], [0]],
      ["strokes", ["order"], [3]],
      ["strokes", ["order", "century"], [4]],
      ["points", ["century"], [5]],
    ]);
    expect(column.wordings[0]!.example).toBe("22/10/2026");
    expect(column.unread).toEqual([
      { reason: notRead.words, rows: [8] },
      { reason: notRead.doubt, rows: [9] },
      { reason: "is an error", rows: [11] },
      { reason: notRead.noSuchDay, rows: [12] },
    ]);
    expect([column.of, column.blank, column.dates]).toEqual([13, 2, [10]]);
  });

  test("counts what its cells prove", () => {
    expect(column.proof).toEqual({ dayFirst: 3, monthFirst: 0, points: 1 });
    expect(column.years).toEqual([2025, 2026]);
  });

  test("changes nothing that was not asked, and all that is certain", () => {
    const { results, waiting } = mendDates(column, NOTHING_SAID, TODAY);
    expect(results).toEqual([
      day("2026-06-13"),
      day("2026-10-22"),
      day("2026-10-23"),
      ...new Array<null>(values.length - 3).fill(null),
    ]);
    expect(waiting).toEqual([3, 4, 5]);
  });

  test("says which days to look at", () => {
    const { doubts } = mendDates(readDateColumn(["22/12/2026", "13 Jun 1926"]), NOTHING_SAID, TODAY, "last change");
    expect(doubts.map(({ reason, rows }) => [reason, rows])).toEqual([
      ["last change is in the future", [0]],
      [expect.stringContaining("years ago: a year, not a date?"), [1]],
    ]);
  });

  test("a year that only one century knows", () => {
    const { results, failed } = mendDates(
      readDateColumn(["29/2/00"]),
      { ...NOTHING_SAID, century: "up to today" },
      day("1999-01-01"),
    );
    expect(results).toEqual([null]);
    expect(failed).toEqual([{ reason: notRead.noSuchDay, rows: [0] }]);
  });
});

describe("dates that a program has exchanged", () => {
  const turned = ["2026-04-03", "2026-12-01", "2026-01-09", "2026-05-05", "2026-11-02"].map(day);
  const texts = ["22/10/2026", "30/01/2026", "13/06/2026"];

  test("are suspected where texts know one order and real dates never pass the 12th", () => {
    const column = readDateColumn([...texts, ...turned]);
    expect(column.exchanged).toEqual([3, 4, 5, 7]);
    expect(mendDates(column, NOTHING_SAID, TODAY).results.slice(3)).toEqual([null, null, null, null, null]);
    expect(mendDates(column, { ...NOTHING_SAID, putRight: true }, TODAY).results.slice(3)).toEqual([
      day("2026-03-04"),
      day("2026-01-12"),
      day("2026-09-01"),
      null,
      day("2026-02-11"),
    ]);
  });

  test.each([
    ["one real date on the 13th", [...texts, ...turned, day("2026-04-13")]],
    ["too few texts", [...texts.slice(1), ...turned]],
    ["too few dates", [...texts, ...turned.slice(1)]],
    ["texts of both orders", [...texts, "10/22/2026", ...turned]],
    ["a text that a program would have read", [...texts, "3/4/2026", ...turned]],
  ])("not with %s", (_, values) => expect(readDateColumn(values).exchanged).toEqual([]));
});
