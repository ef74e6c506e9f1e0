/** A file's spelling of formulas. */
import { describe, expect, it } from "vitest";
import { fromFile, toFile } from "../../../src/formula/file-spelling";
import { corpusFormulas, hasCorpus } from "./corpus";

// as Excel itself wrote them into public workbooks
it.each([
  ["AGGREGATE(9,4,A1:A3)", "_xlfn.AGGREGATE(9,4,A1:A3)"],
  ["NETWORKDAYS.INTL(A1,A2)", "NETWORKDAYS.INTL(A1,A2)"],
  ["WORKDAY.INTL(A1,A2)", "WORKDAY.INTL(A1,A2)"],
  ["ISO.CEILING(A1)", "ISO.CEILING(A1)"],
  ["_xlfn.SINGLE(A1:A3)", "_xlfn.SINGLE(A1:A3)"],
])("%s", (typed, filed) => {
  expect(toFile(typed)).toBe(filed);
  expect(fromFile(filed)).toBe(typed);
});

describe.skipIf(!hasCorpus)("formulas of other programs' workbooks (skipped where FORMULA_CORPUS names none)", () => {
  it("come back from people's spelling as their files have them", () => {
    const all = hasCorpus ? corpusFormulas() : [];
    const changed = all.filter(({ formula }) => toFile(fromFile(formula)) !== formula);
    expect(changed).toEqual([]);
  });
});
