/** GS1's own test cases, the Poisson table and a textbook's example of stock. */
import { describe, expect, test } from "vitest";
import { hasCheckDigit, readGs1 } from "../../src/supplies/gs1";
import { day } from "../../src/worksheet/dates";
import { SheetError } from "../../src/worksheet/error";
import { tube } from "./caller";
import { poisson } from "./check-values/distributions.json";
import gs1 from "./check-values/gs1.json";

const YEAR = 2026;
/** GS1 writes FNC1 as "^": a mark in front, a separator inside. */
const scanned = (raw: string): string => raw.replace("^", "]d2").replaceAll("^", "\u001d");
const message = (answer: unknown): string => (answer instanceof SheetError ? answer.message : "no error");

describe(gs1.checkdigit.source, () => {
  test.each(gs1.checkdigit.valid)("%s has its check digit", (number) => expect(hasCheckDigit(number)).toBe(true));
  test.each(gs1.checkdigit.invalid)("%s has not", (number) => expect(hasCheckDigit(number)).toBe(false));
  test.each(Object.entries(gs1.checkdigit.compute))("%s gets %i and no other", (body, digit) => {
    const right = Array.from({ length: 10 }, (_, d) => d).filter((d) => hasCheckDigit(`${body}${d}`));
    expect(right).toEqual([digit]);
  });
});

describe("longest values, from the GS1 Barcode Syntax Dictionary", () => {
  test.each([
    ...([
      ["10", 20],
      ["21", 20],
      ["22", 20],
      ["235", 28],
      ["240", 30],
      ["241", 30],
    ] as const),
    ...([
      ["250", 30],
      ["30", 8],
      ["37", 8],
      ["710", 20],
      ["8004", 30],
    ] as const),
  ])("(%s): %i characters, and not one more", (id, most) => {
    const code = (length: number) => `(01)12345678901231(${id})${"1".repeat(length)}`;
    expect(message(readGs1(code(most), YEAR))).toBe("no error");
    expect(message(readGs1(code(most + 1), YEAR))).toContain(`element (${id}) is longer than ${most} characters`);
  });
});

describe(gs1.dates.source, () => {
  const expiry = (yymmdd: string, year = YEAR): unknown =>
    tube("READCODE", `(17)${yymmdd}`, "expiry", day(`${year}-05-14`));

  test.each(Object.entries(gs1.dates.dd00_lastDay))("%s is %s", (code, date) => expect(expiry(code)).toBe(day(date)));

  test.each(
    [2026, 2021, 2060].flatMap((year) =>
      Object.entries(gs1.dates.century[`current ${year}` as "current 2026"]).map(
        ([yy, full]) => [year, yy, full] as const,
      ),
    ),
  )("in %i, %s is %i", (year, yy, full) => expect(expiry(`${yy}0101`, year)).toBe(day(`${full}-01-01`)));

  test.each(gs1.dates.rejectMonth)("%s: no such month", (code) =>
    expect(message(expiry(code))).toContain("has no month"),
  );
  test.each(gs1.dates.rejectDay)("%s: no such day", (code) => expect(message(expiry(code))).toContain("has no day"));
  test.each(gs1.dates.accept)("%s is read", (code) => expect(typeof expiry(code)).toBe("number"));
  test.each(gs1.dates.length)("'%s' has a wrong length", (code) =>
    expect(message(expiry(code))).toMatch(/is empty|is too short|is longer than 6/),
  );
  test("day 00 is refused where a time of day follows", () => {
    expect(message(tube("READCODE", "(7003)2604000930(10)A", "lot"))).toContain("has no day 00");
    expect(message(tube("READCODE", "(7003)2604302400(10)A", "lot"))).toContain("no such time");
    expect(tube("READCODE", "(7003)2604302359(10)A", "lot")).toBe("A");
  });
});

describe(gs1.elementStrings.source, () => {
  const same = (a: string, b: string): void => {
    const [left, right] = [readGs1(a, YEAR), readGs1(b, YEAR)];
    expect(left).toBeInstanceOf(Map);
    expect([...(left as Map<string, string>)]).toEqual([...(right as Map<string, string>)]);
  };
  test.each(Object.entries(gs1.elementStrings.bracketed_to_raw))("%s is %s", (bracketed, raw) =>
    same(bracketed, scanned(raw)),
  );

  test.each(gs1.elementStrings.reject_bracketed)("%s is refused", (code) =>
    expect(readGs1(code, YEAR)).toBeInstanceOf(SheetError),
  );
  test.each(gs1.elementStrings.raw_ok)("%s is read", (raw) => expect(readGs1(scanned(raw), YEAR)).toBeInstanceOf(Map));
  test.each(gs1.elementStrings.raw_bad)("'%s' is refused", (raw) =>
    expect(readGs1(scanned(raw), YEAR)).toBeInstanceOf(SheetError),
  );
  test.each(Object.entries(gs1.elementStrings.scan_prefix))("the mark of %s (%s) is known", (_, mark) =>
    expect(tube("READCODE", `${mark}10ABC123\u001d17260430`, "lot")).toBe("ABC123"),
  );
  test("the scanner's example", () => {
    const { raw, ais } = gs1.elementStrings.scan_example;
    expect([...(readGs1(raw, YEAR) as Map<string, string>)]).toEqual(ais);
  });
});

describe(gs1.udiExample.source, () => {
  const { hri, raw, gtin, lot, serial, production, expiry } = {
    ...gs1.udiExample,
    hri: "(01)51022222233336(11)141231(17)150707(10)A213B1(21)1234",
  };
  test.each([hri, raw, raw.replace("]d2", ""), hri.replaceAll(")", ") ").replaceAll("(", " (").trim()])(
    "%j",
    (code) => {
      expect(tube("READCODE", code, "item")).toBe(gtin);
      expect(tube("READCODE", code, "lot")).toBe(lot);
      expect(tube("READCODE", code, "serial")).toBe(serial);
      expect(tube("READCODE", code, "made")).toBe(day(production));
      expect(tube("READCODE", code, "expiry")).toBe(day(expiry));
      expect(message(tube("READCODE", code, "quantity"))).toContain("holds no quantity");
    },
  );
});

describe("Poisson table (R ppois): STOCKLEVEL is the first number from 1 that reaches the chance", () => {
  test.each(poisson)("mean $lambda", ({ lambda, cdf }) => {
    cdf.forEach((chance, k) => {
      if (chance >= 1) return;
      const before = k === 0 ? 0 : cdf[k - 1]!;
      if (before < chance) expect(tube("STOCKLEVEL", lambda, 30.4375, 0, (before + chance) / 2)).toBe(Math.max(1, k));
    });
  });
  test("Stevenson, Operations Management, 14th ed., example 15: shortage 3, excess 2, mean 4: stock 4", () =>
    expect(tube("STOCKLEVEL", 4, 30.4375, 0, 3 / (3 + 2))).toBe(4));
});
