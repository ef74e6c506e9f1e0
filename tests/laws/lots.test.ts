/** What must hold of every lot, however it is written. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { finder } from "../../src/lots/find";
import { lotKey } from "../../src/lots/lot-text";
import { likeness } from "../../src/lots/similar";
import { shortOrLong } from "../budget";

const runs = { seed: 20261201, numRuns: shortOrLong(300, 5000) };
const sign = fc.constantFrom(..."ABCDEGILOQSZ0123456789-/. ");
const lot = fc
  .array(sign, { minLength: 1, maxLength: 12 })
  .map((signs) => `${signs.join("").trim()}7`)
  .filter((text) => lotKey(text).length > 1);
const anyCase = (text: string, upper: readonly boolean[]) =>
  [...text].map((one, i) => (upper[i % upper.length] ? one.toUpperCase() : one.toLowerCase())).join(" ");

describe("lots", () => {
  it("are found whatever their case and spaces", () =>
    fc.assert(
      fc.property(lot, fc.array(fc.boolean(), { minLength: 1 }), (text, upper) => {
        expect(finder([text], 2026)({ value: anyCase(text, upper), isDate: false })).toEqual({ is: "found" });
      }),
      runs,
    ));

  it("of two, each is as like the other; one sign more, less or another is never passed over", () =>
    fc.assert(
      fc.property(lot, fc.nat(), fc.constantFrom(..."ABCDEGILOQSZ0123456789"), (text, at, other) => {
        const key = lotKey(text).replace(/[^A-Z0-9]/gu, "");
        if (key.length < 5) return;
        const place = at % key.length;
        const variants = [
          key.slice(0, place) + other + key.slice(place),
          key.slice(0, place) + key.slice(place + 1),
          key.slice(0, place) + other + key.slice(place + 1),
        ];
        for (const variant of variants) {
          expect(likeness(key, variant)).toBe(likeness(variant, key));
          if (variant !== key) expect(likeness(key, variant)).not.toBe(null);
        }
      }),
      runs,
    ));

  it("that a spreadsheet has read as a number are never ruled out", () =>
    fc.assert(
      fc.property(fc.stringMatching(/^0{0,3}[1-9]\d{0,9}(?:E[0-9])?$/u), (text) => {
        const { is } = finder([text], 2026)({ value: Number(text), isDate: false });
        expect(is === "found" || is === "open").toBe(true);
      }),
      runs,
    ));

  it("blank, a date or an error never rules out", () =>
    fc.assert(
      fc.property(
        lot,
        fc.constantFrom(null, "", "  ", 0),
        fc.integer({ min: 1, max: 80_000 }),
        (text, blank, serial) => {
          const look = finder([text], 2026);
          expect(look({ value: blank, isDate: false }).is).toBe("open");
          expect(look({ value: serial, isDate: true }).is).toBe("open");
        },
      ),
      runs,
    ));
});
