/** Every formula that other programs wrote is read. FORMULA_CORPUS names a folder of workbooks; else this is skipped. */
import { describe, expect, it } from "vitest";
import { read } from "../../../src/formula/parse";
import { tokens, untokened } from "../../../src/formula/tokens";
import { corpusFormulas, hasCorpus } from "./corpus";

describe.skipIf(!hasCorpus)("formulas of other programs' workbooks (skipped where FORMULA_CORPUS names none)", () => {
  const all = hasCorpus ? corpusFormulas() : [];
  it("are many", () => expect(all.length).toBeGreaterThan(500));
  it("put together again are the text they came from", () => {
    expect(all.filter(({ formula }) => untokened(tokens(formula)) !== formula)).toEqual([]);
  });
  it("are read as trees", () => {
    expect(
      all.flatMap(({ file, formula }) => {
        const { fault } = read(formula);
        return fault ? [{ file, formula, fault }] : [];
      }),
    ).toEqual([]);
  });
});
