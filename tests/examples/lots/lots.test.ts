/** Lots compared as texts, and what cannot be ruled out. What spreadsheets make of them is Excel's and LibreOffice's own doing. */
import { describe, expect, it } from "vitest";
import { finder, type Verdict } from "../../../src/lots/find";
import { wantedLot } from "../../../src/lots/lot-text";
import { likeness } from "../../../src/lots/similar";
import { day } from "../../../src/worksheet/dates";
import { CellError } from "../../../src/worksheet/error";

const verdict = (wanted: string, value: Parameters<ReturnType<typeof finder>>[0]["value"], isDate = false): Verdict =>
  finder([wanted], 2026)({ value, isDate });

describe("the same lot", () => {
  it.each([
    ["B2291", "b2291 "],
    ["B2291", " B 2291"],
    ["B2291", "LOT: B2291"],
    ["B2291", "lot B2291"],
    ["B2291", "B2304 / B2291"],
    ["B2291", "B2304,\nB2291"],
    ["03-04", "03\u201104"],
    ["03-04", "03-04"],
    ["1E5", "1e5"],
    ["B2291", "(01)12345678901231(10)B2291"],
    ["B2291", "B2291\u200b"],
    ["12345", 12345],
  ])("%j is found in %j", (wanted, value) => expect(verdict(wanted, value)).toEqual({ is: "found" }));
});

describe("another lot", () => {
  it.each([
    ["B2291", "C7714"],
    ["03-04", "11-12"],
    ["1E5", "2E7"],
    ["B2291", 771455],
    ["LOTUS1", "US1"],
  ])("%j is not %j", (wanted, value) => expect(verdict(wanted, value)).toEqual({ is: "other" }));
});

describe("similar lots are offered with what makes them so", () => {
  it.each([
    ["B2291", "B229l", "signs that look alike"],
    ["B2291", "82291", "signs that look alike"],
    ["O1207", "01207", "signs that look alike"],
    ["B2291", "B2292", "one sign differs"],
    ["B2291", "B2219", "one sign differs"],
    ["B2291", "B229", "one sign differs"],
    ["B2291", "B22911", "one sign differs"],
    ["0012", "12", "other leading zeros"],
    ["AB0012", "AB12", "other leading zeros"],
    ["03-04", "0304", "other signs between"],
    ["2291", "AB2291-07", "part of it"],
    ["B2291", "\u04122291", "signs that look alike"],
  ])("%j and %j: %s", (a, b, why) => {
    expect(likeness(a.toUpperCase(), b.toUpperCase())).toBe(why);
    expect(likeness(b.toUpperCase(), a.toUpperCase())).toBe(why);
    expect(verdict(a, b)).toEqual({ is: "similar", lot: b, why });
  });

  it.each([
    ["A1", "A2"],
    ["B2291", "B3382"],
    ["123", "124"],
  ])("%j and %j have nothing in common", (a, b) => expect(likeness(a, b)).toBe(null));
});

describe("what cannot be ruled out", () => {
  it.each([
    [null, "no lot"],
    ["", "no lot"],
    [" ", "no lot"],
    [0, "no lot"],
    ["?", "not a lot"],
    ["n/k", "not a lot"],
    ["see letter", "not a lot"],
    [new CellError("#N/A"), "not a lot"],
  ])("%j: %s", (value, why) => expect(verdict("B2291", value)).toEqual({ is: "open", why }));

  it.each([
    ["1E5", 100000],
    ["12E3", 12000],
    ["0012", 12],
    ["1.50", 1.5],
    ["12345678901234567", 12345678901234500],
  ])("%j may have become the number %d", (wanted, value) =>
    expect(verdict(wanted, value)).toEqual({ is: "open", why: "made into a number" }),
  );

  it.each([
    ["03-04", "2026-04-03"],
    ["03-04", "2026-03-04"],
    ["03-04", "2004-03-01"],
    ["3/4/26", "2026-03-04"],
    ["26-04-03", "2026-04-03"],
    ["MAR12", "2026-03-12"],
    ["SEP2", "2026-09-02"],
    ["2-SEPT", "2026-09-02"],
    ["OKT24", "2024-10-01"],
    ["12MAR26", "2026-03-12"],
  ])("%j may have become the day %s", (wanted, date) => {
    expect(verdict(wanted, day(date), true)).toEqual({ is: "open", why: "made into a date" });
    /* A cell formatted as a number since then shows the day's number. */
    expect(verdict(wanted, day(date))).toEqual({ is: "open", why: "made into a number" });
  });

  it("a date where a lot should stand rules nothing out", () =>
    expect(verdict("B2291", day("2026-04-03"), true)).toEqual({ is: "open", why: "a date stands there" }));
});

describe("what is looked for", () => {
  it("is typed, or comes from a label", () => {
    expect(wantedLot(" B2291 ", 2026)).toEqual({ lot: "B2291", isFromLabel: false });
    expect(wantedLot("(01)51022222233336(11)141231(17)150707(10)A213B1(21)1234", 2026)).toEqual({
      lot: "A213B1",
      isFromLabel: true,
    });
    expect(wantedLot("]d2011231231231233310ABC123", 2026)).toEqual({ lot: "ABC123", isFromLabel: true });
    expect(wantedLot("011231231231233310ABC123\u001d17150707", 2026)).toEqual({ lot: "ABC123", isFromLabel: true });
  });
  it("a label that cannot be read, or has no lot, says so", () => {
    expect(wantedLot("(01)12345678901231(17)261231", 2026)).toHaveProperty("problem");
    expect(wantedLot("(17)201310(10)A1", 2026)).toHaveProperty("problem");
  });
});
