/** A formula written out means the same; only the calls of our functions are somebody else's. */
import { expect, it } from "vitest";
import { writtenOut, type Help } from "./written-out";

const help: Help = { resultOf: ({ args }) => `result_of_${args.length}` };

it.each([
  ["-B2%^2", "((-(B2%))^2)"],
  ['"x, x"&A1', '("x, x"&A1)'],
  ["TUBE.FRTOMM(A1)+1", "(result_of_1+1)"],
  ["IF(LEN(A1)=0,,TUBE.FRTOMM(A1))", "IF((LEN(A1)=0),,result_of_1)"],
])("%s", (formula, expected) => expect(writtenOut(formula, help)).toBe(expected));

it("refuses a formula that cannot be read", () => expect(() => writtenOut("=1+(", help)).toThrow("Cannot be read"));
