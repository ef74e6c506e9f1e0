/** LET written out means the same: checked by hand, by Excel's documented rule that a name stands for its value. */
import { expect, it } from "vitest";
import { writtenOut, type Help } from "./written-out";

const cells: string[] = [];
const help: Help = {
  cellFor: (text) => `Z${cells.push(text)}`,
  resultOf: ({ args }) => `result_of_${args.length}`,
};
const long = (text: string): string => `IF(${Array.from({ length: 60 }, () => text).join("+")}>0,1,2)`;

it.each([
  ["1+LET(x,2,y,x*3,x&y)", "(1+(2&(2*3)))"],
  // an inner name hides the outer one, in its own result only
  ["LET(x,1,LET(x,2,x)+x)", "(2+1)"],
  // the value of a name is read where the name is bound
  ["LET(x,1,y,x,LET(x,9,y))", "1"],
  ["LET(Low,A1,IF(low>0,LOW,low_day))", "IF((A1>0),A1,low_day)"],
  ['LET(x,"x, x",x)', '"x, x"'],
  ["-LET(x,B2,x%)^2", "((-(B2%))^2)"],
  ["TUBE.FRTOMM(A1)+1", "(result_of_1+1)"],
])("%s", (formula, expected) => expect(writtenOut(formula, help)).toBe(expected));

it("puts a long value into a cell of its own, once for each name", () => {
  cells.length = 0;
  expect(writtenOut(`LET(x,${long("A1")},x+x)`, help)).toBe("(Z1+Z1)");
  expect(cells).toHaveLength(1);
});

it("leaves a long value where it may be an empty cell: in a cell of its own it would be 0", () => {
  cells.length = 0;
  const chosen = `IF(${Array.from({ length: 60 }, () => "A1").join("+")}>0,A2,A3)`;
  expect(writtenOut(`LET(x,${chosen},LEN(x))`, help)).toMatch(/^LEN\(IF\(.*,A2,A3\)\)$/);
  expect(cells).toEqual([]);
});

it("refuses a formula that cannot be read", () => expect(() => writtenOut("=1+(", help)).toThrow("Cannot be read"));
