/**
 * Sizes as people type them. One French is a third of a millimetre (ISO 20696); what a text says is what a person reads
 * there, and doubt is refused.
 */
import { expect, test } from "vitest";
import { FRTOMM } from "../../../src/sizes/frtomm";
import { call } from "../../../src/worksheet/call";
import { SheetError } from "../../../src/worksheet/error";

test.each([
  ["PEG 15", 15],
  ["RIG, size 12", 12],
  ["G-tube 14", 14],
  ["14Fr 2.3", 14],
  ["14 Fr/2.3", 14],
  ["14 Fr/2.3 cm", 14],
  ["14Fr2.3cm", 14],
  ["14Frx2.3cm", 14],
  ["12 Fr x .8 cm", 12],
  ["Ch.14", 14],
  ["CH14 (5 mL)", 14],
  ["14 Fr balloon", 14],
])("%s is read", (text, french) => expect(call(FRTOMM, [text])).toBeCloseTo(french / 3, 12));

const AGAINST = /has a letter or a sign against its number/;
test.each([
  ["l4Fr", AGAINST],
  ["I4 Fr", AGAINST],
  ["1O Fr", AGAINST],
  ["14½", AGAINST],
  ["14½ Fr", AGAINST],
  ["14²", AGAINST],
  ["PEG15", AGAINST],
  ["1E1", AGAINST],
  ["2١ Fr", AGAINST],
  ["14·5 Fr", AGAINST],
  ["l·4 Fr", AGAINST],
  ["l.4 Fr", AGAINST],
  ["14 Fr 16", /more than one number/],
  ["14 Fr 10", /more than one number/],
  ["2/14 Fr", /more than one number/],
  ["14+14 Fr", /more than one number/],
  ["14 Fr + 14 Fr", /more than one number/],
  ["14/14 Fr", /more than one number/],
  ["<14 Fr", AGAINST],
  ["balloon 5", /no French size/],
  ["room 12", /no French size/],
  ["PEG 75", /at most 60/],
  ["14 g", /gauge/],
])("%s is refused", (text, says) => {
  const answer = call(FRTOMM, [text]);
  expect(answer).toBeInstanceOf(SheetError);
  expect((answer as SheetError).message).toMatch(says);
});

test("a text of 33,000 characters is cited in part", () => {
  for (const text of [`${"x".repeat(33_000)} 14`, `14? ${"y".repeat(33_000)}`, "12/14 ".repeat(5_500)]) {
    const answer = call(FRTOMM, [text]) as SheetError;
    expect(answer).toBeInstanceOf(SheetError);
    expect(answer.message.length).toBeLessThan(200);
  }
});
