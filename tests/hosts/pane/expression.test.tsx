import { describe, expect, test } from "vitest";
import { functions } from "../../../src/index";
import { callText, fieldText, readTyped } from "../../../taskpane/ui/put-in-cell/expression";
import { exampleFormula } from "../../../functions/formula-text";

describe("what is typed beside an argument", () => {
  test.each([
    ["", "nothing", ""],
    ["  ", "nothing", ""],
    ["=", "nothing", ""],
    ["14", "number", "14"],
    ["4,7", "number", "4.7"],
    ["-0.5", "number", "-0.5"],
    ["14 Fr", "text", '"14 Fr"'],
    ["2026-05-14", "text", '"2026-05-14"'],
    ['see "letter"', "text", '"see ""letter"""'],
    ["B4", "cell", "B4"],
    ["$B$4", "cell", "$B$4"],
    ["Adults!B4", "cell", "Adults!B4"],
    ["'Other sheet'!B4", "cell", "'Other sheet'!B4"],
    ["B4:B40", "range", "B4:B40"],
    ["B:B", "range", "B:B"],
    ["C2#", "range", "C2#"],
    ["Caseload[Last change]", "range", "Caseload[Last change]"],
    ["[@Size]", "range", "[@Size]"],
    ["{1;2}", "range", "{1;2}"],
    ["=TODAY()", "formula", "TODAY()"],
    ["true", "formula", "TRUE"],
    ["CH14", "cell", "CH14"],
    ['"CH14"', "text", '"CH14"'],
    ["as_of", "name", "As_of"],
    ["as of", "text", '"as of"'],
  ] as const)("%j is taken as %s: %s", (typed, as, text) => {
    expect(readTyped(typed, ["As_of"])).toEqual({ as, text });
  });
});

test("arguments left out at the end are dropped, in the middle they stay open", () => {
  expect(callText("CHANGEDUE", ['"2026-05-14"', "3", "", ""])).toBe('=TUBE.CHANGEDUE("2026-05-14", 3)');
  expect(callText("CHANGEDUE", ["A2", "3", "", "F1:F9"])).toBe("=TUBE.CHANGEDUE(A2, 3, , F1:F9)");
});

test.each(functions.map((fn) => [fn.name, fn] as const))(
  "the form of %s, as it opens, writes the formula of the first example",
  (name, fn) => {
    const example = fn.documentation!.examples[0]!;
    const typed = fn.order.map(({ name: argument }) => fieldText(example.args[argument]));
    const isChoice = fn.order.map(({ param }) => param.mode === "choice");
    const written = typed.map(
      (text, i) => (isChoice[i] && text !== "" ? readTyped(`"${text}"`) : readTyped(text)).text,
    );
    expect(callText(name, written)).toBe(exampleFormula(fn, example));
  },
);
