/** Every example of every function, as it stands in the reference: the formula to try and the source to open. */
import { describe, expect, test } from "vitest";
import { exampleArguments, exampleFormula } from "../../functions/formula-text";
import { functions } from "../../src/index";
import { call } from "../../src/worksheet/call";
import { SheetError } from "../../src/worksheet/error";

/** Inputs are frozen, so that a function that changes them fails. */
const frozen = <T>(value: T): T => {
  if (Array.isArray(value)) value.forEach(frozen);
  return Object.freeze(value);
};

const wanted = (value: unknown) =>
  typeof value === "object" && value !== null ? (value as { error: string }).error : value;
const got = (value: unknown) => (value instanceof SheetError ? value.code : value);

describe.each(functions.map((f) => [f.name, f] as const))("%s", (_, definition) => {
  for (const example of definition.documentation!.examples) {
    test(`${exampleFormula(definition, example)} (${example.shows}) — ${example.source}`, () => {
      const result = call(definition, frozen(exampleArguments(definition, example)));
      const { gives, within } = example;

      if (typeof gives === "object" && gives !== null && "error" in gives) {
        expect(result).toBeInstanceOf(SheetError);
        expect((result as SheetError).code).toBe(gives.error);
        if (gives.says !== undefined) expect((result as SheetError).message).toContain(gives.says);
        return;
      }
      expect(Array.isArray(result)).toBe(Array.isArray(gives));
      const results = [result].flat(2);
      const expected = [gives].flat(2);
      expect(results).toHaveLength(expected.length);
      expected.forEach((want, i) => {
        if (typeof want !== "number") return expect(got(results[i])).toBe(wanted(want));
        expect(typeof results[i]).toBe("number");
        expect(Math.abs((results[i] as number) - want)).toBeLessThanOrEqual(
          within ?? 1e-12 * Math.max(1, Math.abs(want)),
        );
      });
    });
  }
});
