/** Numbers in texts are read sign by sign where they are simple; JavaScript's own reading says what they are. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { numberOfText, plainDigits } from "../../src/worksheet/numbers";

const digits = fc.stringMatching(/^\d{1,16}$/);

test("simple digits are the number that JavaScript reads, to the last bit", () => {
  fc.assert(
    fc.property(digits, fc.option(digits, { nil: undefined }), (whole, decimals) => {
      const text = decimals === undefined ? whole : `${whole}.${decimals}`;
      expect(plainDigits(text) ?? Number(text)).toBe(Number(text));
      expect(numberOfText(text)).toBe(Number(text));
    }),
    { seed: 20261130, numRuns: 5000 },
  );
});

test.each(["", ".", "5.", ".5", "1.2.3", "1,5", "-5", "1e5", " 5", "٣", "0x1"])(
  "%j is not taken for simple",
  (text) => {
    expect(plainDigits(text)).toBeUndefined();
  },
);
