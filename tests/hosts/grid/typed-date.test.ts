/** Dates typed in figures: read as the setting says, or refused; never turned round. Day numbers: ECMA-376 part 1, 18.17.4. */
import { expect, it } from "vitest";
import { typedDate, yearFirst } from "../../../taskpane/workbook/embedded/by-hand/typed-date";
import { readPlain } from "../../../taskpane/workbook/embedded/by-hand/pasting";

it.each([
  ["03/04/2026", true, 46_115],
  ["03/04/2026", false, 46_085],
  ["3.4.2026", true, 46_115],
  ["3-4-2026", true, 46_115],
  ["29/02/2024", true, 45_351],
  ["2026-04-03", null, 46_115],
  ["2026/04/03", null, 46_115],
  ["2026-04-03T12:00", null, 46_115.5],
  ["03/04/2026 6:00 pm", true, 46_115.75],
] as const)("%s, day first %s, is day %d", (text, dayFirst, serial) => {
  expect(typedDate(text, dayFirst)).toMatchObject({ kind: "date", serial });
});

it.each([
  ["03/04/2026", null, /Which part/],
  ["31/04/2026", true, /no such day/],
  ["13/13/2026", false, /no such day/],
  ["04/31/2026", true, /no such day/],
  ["2026-02-30", null, /no such day/],
  ["3/4/26", true, /four figures/],
  ["3/4", true, /four figures/],
  ["03.04.26", false, /four figures/],
] as const)("%s, day first %s, is refused", (text, dayFirst, sentence) => {
  const read = typedDate(text, dayFirst);
  expect(read.kind).toBe("refused");
  if (read.kind === "refused") expect(read.sentence).toMatch(sentence);
});

it.each(["4.7", "14 Fr", "007", "12/14 Fr", "4.5.", "3-4", "1.5", "", "=A1/2", "14 May 2026"])(
  "%s is no date in figures",
  (text) => {
    expect(typedDate(text, null)).toEqual({ kind: "other" });
  },
);

const asItIs = (text: string) => ({ text });

it("texts from the clipboard come in year first, or not at all", () => {
  expect(readPlain("a\t03/04/2026\r\n4.7\t2026-01-02", true, asItIs)).toEqual({
    text: "a\t2026-04-03\r\n4.7\t2026-01-02",
  });
  expect(readPlain("a\t03/04/2026", null, asItIs)).toHaveProperty("refused");
  expect(yearFirst(46_115.75)).toBe("2026-04-03 18:00");
});
