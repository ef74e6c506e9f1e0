/** Laws of the supplies family. Fixed seed. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { day, isoText } from "../../src/worksheet/dates";
import { SheetError } from "../../src/worksheet/error";
import { tube } from "../examples/caller";

const SEED = 20261128;
const runs = (numRuns: number) => ({ seed: SEED, numRuns });

describe("how many spare devices a clinic keeps (STOCKLEVEL)", () => {
  /** Small enough that e^-mean is a number with all its digits. */
  const used = fc.double({ min: 0, max: 60, noNaN: true });
  const wait = fc.integer({ min: 0, max: 120 });
  const service = fc.integer({ min: 1, max: 999 }).map((n) => n / 1000);

  test("is the first number that is enough for the wait: Poisson's chances added up one by one", () => {
    fc.assert(
      fc.property(used, wait, wait, service, (permonth, lead, review, chance) => {
        const kept = tube("STOCKLEVEL", permonth, lead, review, chance) as number;
        const mean = (permonth * (lead + review) * 12) / 365.25;
        let [term, sum, before] = [Math.exp(-mean), Math.exp(-mean), 0];
        for (let k = 1; k <= kept; k++) {
          before = sum;
          term *= mean / k;
          sum += term;
        }
        expect(sum).toBeGreaterThanOrEqual(chance - 1e-9);
        if (permonth > 0) expect(kept).toBeGreaterThanOrEqual(1);
        if (kept > 1) expect(before).toBeLessThan(chance + 1e-9);
      }),
      runs(500),
    );
  });
  test("a clinic that uses more, waits longer or wants to run out more rarely is never told to keep fewer", () => {
    fc.assert(
      fc.property(used, wait, wait, service, (permonth, lead, review, chance) => {
        const kept = tube("STOCKLEVEL", permonth, lead, review, chance) as number;
        expect(tube("STOCKLEVEL", permonth + 0.7, lead, review, chance)).toBeGreaterThanOrEqual(kept);
        expect(tube("STOCKLEVEL", permonth, lead + 1, review, chance)).toBeGreaterThanOrEqual(kept);
        expect(tube("STOCKLEVEL", permonth, lead, review + 1, chance)).toBeGreaterThanOrEqual(kept);
        expect(tube("STOCKLEVEL", permonth, lead, review, (1 + chance) / 2)).toBeGreaterThanOrEqual(kept);
        expect(tube("STOCKLEVEL", permonth, lead + review, 0, chance)).toBe(kept);
      }),
      runs(300),
    );
  });
  test("even the busiest store and the smallest chance get an answer", () => {
    expect(tube("STOCKLEVEL", 1e6, 3660, 3660, 0.999)).toBeGreaterThan(240_500_000);
    expect(tube("STOCKLEVEL", 1e6, 3660, 3660, 1e-300)).toBeGreaterThan(239_000_000);
    expect(tube("STOCKLEVEL", 4, 1e-6, 0, 0.95)).toBe(1);
  });
});

describe("what to order for one person (SUPPLYNEED)", () => {
  const perday = fc.integer({ min: 0, max: 400 }).map((n) => n / 10);
  const days = fc.nat({ max: 400 });
  const pack = fc.integer({ min: 1, max: 300 }).map((n) => n / 10);
  const inCase = fc.integer({ min: 1, max: 24 });

  test("lasts the days in whole cases, and one case fewer would not", () => {
    fc.assert(
      fc.property(perday, days, pack, inCase, (daily, days, size, cases) => {
        const packs = tube("SUPPLYNEED", daily, days, size, "kept", cases) as number;
        expect(packs % cases).toBe(0);
        expect(packs * size).toBeGreaterThanOrEqual(daily * days - 1e-6);
        if (packs > 0) expect((packs - cases) * size).toBeLessThan(daily * days);

        const discarded = tube("SUPPLYNEED", daily, days, size, "discarded daily", cases) as number;
        expect(discarded).toBeGreaterThanOrEqual(packs);
        expect(tube("SUPPLYNEED", daily, days + 1, size, "kept", cases)).toBeGreaterThanOrEqual(packs);
        expect(tube("SUPPLYNEED", daily + 0.5, days, size, "discarded daily", cases)).toBeGreaterThanOrEqual(discarded);
      }),
      runs(1000),
    );
  });
});

describe("what a scanned label says (READCODE)", () => {
  const digits = (length: number) =>
    fc.array(fc.nat({ max: 9 }), { minLength: length, maxLength: length }).map((all) => all.join(""));
  const withCheck = (body: string): string => {
    const sum = [...body].reverse().reduce((total, d, i) => total + Number(d) * (i % 2 === 0 ? 3 : 1), 0);
    return body + String((10 - (sum % 10)) % 10);
  };
  const item = digits(13).map(withCheck);
  const sign = fc.constantFrom(...`ABCXYZabcxyz0123456789!"%&'()*+,-./_:;<=>?`);
  const text = fc.array(sign, { minLength: 1, maxLength: 20 }).map((all) => all.join(""));
  const date = fc.integer({ min: day("1976-01-01"), max: day("2075-12-31") });
  const label = fc.record({ item, lot: text, serial: text, expiry: date, quantity: fc.nat({ max: 99_999_999 }) });
  const yymmdd = (serial: number): string => isoText(serial).replaceAll("-", "").slice(2);
  const escaped = (value: string): string => value.replaceAll("(", "\\(");

  test("item, lot, serial number and day come back as they were written, scanned and with brackets", () => {
    fc.assert(
      fc.property(
        label,
        fc.constantFrom("]d2", "]C1", "]Q3", "]e0", ""),
        ({ item, lot, serial, expiry, quantity }, mark) => {
          const scanned = `${mark}01${item}17${yymmdd(expiry)}10${lot}\u001d30${quantity}\u001d21${serial}`;
          const bracketed = `(01)${item}(17)${yymmdd(expiry)}(10)${escaped(lot)}(30)${quantity}(21)${escaped(serial)}`;
          for (const code of [scanned, bracketed]) {
            // A backslash cannot stand in a value, so "\(" has one meaning only.
            expect(tube("READCODE", code, "item")).toBe(item);
            expect(tube("READCODE", code, "lot")).toBe(lot);
            expect(tube("READCODE", code, "serial")).toBe(serial);
            expect(tube("READCODE", code, "expiry")).toBe(expiry);
            expect(tube("READCODE", code, "quantity")).toBe(quantity);
            expect((tube("READCODE", code, "made") as SheetError).code).toBe("#N/A");
          }
        },
      ),
      runs(500),
    );
  });

  test("one wrong digit of an item number is always noticed, even when only the lot is asked for", () => {
    fc.assert(
      fc.property(item, fc.nat({ max: 13 }), fc.integer({ min: 1, max: 9 }), (number, at, add) => {
        const wrong = number.slice(0, at) + String((Number(number[at]) + add) % 10) + number.slice(at + 1);
        const answer = tube("READCODE", `]d201${wrong}10A1`, "lot") as SheetError;
        expect(answer.message).toContain("element (01) has a wrong check digit");
      }),
      runs(500),
    );
  });

  test("a label never gives a month but 1 to 12, nor a day that its month lacks", () => {
    for (let month = 0; month <= 99; month++) {
      for (const dd of [0, 1, 28, 29, 30, 31, 32, 99]) {
        const [mm, two] = [month, dd].map((n) => String(n).padStart(2, "0")) as [string, string];
        const answer = tube("READCODE", `(17)26${mm}${two}`, "expiry");
        const last = new Date(Date.UTC(2026, month, 0)).getUTCDate();
        if (month < 1 || month > 12) expect((answer as SheetError).message).toContain(`no month ${mm}`);
        else if (dd > last) expect((answer as SheetError).message).toContain(`no day ${two}`);
        else expect(isoText(answer as number)).toBe(`2026-${mm}-${String(dd || last).padStart(2, "0")}`);
      }
    }
  });

  test("whatever a scanner sends is read, or refused with a sentence that says what to do", () => {
    const noise = fc.oneof(
      fc.string(),
      fc
        .array(fc.constantFrom("(", ")", "\\", "01", "10", "17", "21", "]d2", "\u001d", "99", "1", "A", " "), {
          maxLength: 25,
        })
        .map((all) => all.join("")),
    );
    fc.assert(
      fc.property(noise, fc.constantFrom("item", "lot", "expiry", "quantity"), (code, part) => {
        const answer = tube("READCODE", code, part);
        if (answer instanceof SheetError) return /type|again|holds no|cell as text/.test(answer.message);
        return answer === "" ? code.trim() === "" : typeof answer === "string" || typeof answer === "number";
      }),
      runs(5000),
    );
  });

  test.each([
    ["4006381333931", "not a GS1 code; type lot and expiry from the print"],
    ["+A123BJC5D6E71", "not a GS1 code"],
    ["]C0ABC", "not a GS1 code"],
    [4006381333931, "code must be text"],
    ["(01)12345678901231(10)", "element (10) is empty"],
    ["(01)12345678901231(10)A~1", "element (10) has a character that GS1 does not allow"],
    ["(01)12345678901231(10)ABCDEFGHIJKLMNOPQRSTU", "element (10) is longer than 20 characters"],
    ["(10)A(10)B", "element (10) stands there twice with different values"],
    ["(30)12A", "element (30) must be digits only"],
    ["]d28912", "element (89) is not one this function reads"],
    ["]d2XX12", '"XX" stands where an identifier should'],
  ] as const)("the code %j gives no lot: %s", (code, says) => {
    const answer = tube("READCODE", code, "lot") as SheetError;
    expect(answer.code).toBe("#VALUE!");
    expect(answer.message).toContain(says);
  });

  test("a lot that stands twice on the label, the same each time, is one lot", () => {
    expect(tube("READCODE", "(10)A(10)A", "lot")).toBe("A");
  });
});
