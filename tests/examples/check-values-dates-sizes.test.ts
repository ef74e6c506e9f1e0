/** Published tables that more than one function meets. Values as printed by the source named beside them. */
import { describe, expect, test } from "vitest";
import { addMonths } from "../../src/maths/calendar";
import { FRTOMM } from "../../src/sizes/frtomm";
import { call } from "../../src/worksheet/call";
import { day, isoText } from "../../src/worksheet/dates";

const OPENFORMULA = "OpenFormula EDATE test rows";
const WIKI = "OpenOffice.org wiki, EDATE";
const FORMULAJS = "formulajs, EDATE tests";

describe("adding months", () => {
  test.each([
    ["2006-01-01", 0, "2006-01-01", OPENFORMULA],
    ["2006-01-01", 2, "2006-03-01", OPENFORMULA],
    ["2006-01-01", -2, "2005-11-01", OPENFORMULA],
    ["2000-04-30", -2, "2000-02-29", OPENFORMULA],
    ["2000-04-05", 24, "2002-04-05", OPENFORMULA],
    ["2008-10-15", 2, "2008-12-15", WIKI],
    ["2008-05-31", -1, "2008-04-30", WIKI],
    ["2019-01-31", 1, "2019-02-28", "Temporal, PlainDate documentation"],
    ["2023-03-31", 1, "2023-04-30", FORMULAJS],
    ["2023-03-29", -1, "2023-02-28", FORMULAJS],
    ["2023-03-31", -1, "2023-02-28", FORMULAJS],
    ["2008-03-31", -1, "2008-02-29", FORMULAJS],
    ["2100-03-31", -1, "2100-02-28", FORMULAJS],
  ] as const)("%s plus %i months is %s (%s)", (start, months, want, _source) => {
    expect(isoText(addMonths(day(start), months))).toBe(want);
  });
});

describe("French sizes, 1 Fr = 1/3 mm (foreword of DIN EN ISO 20696:2020), to two decimals by hand", () => {
  test.each([
    [8, 2.67],
    [10, 3.33],
    [12, 4.0],
    [14, 4.67],
    [15, 5.0],
    [16, 5.33],
    [18, 6.0],
    [20, 6.67],
    [22, 7.33],
    [24, 8.0],
    [28, 9.33],
  ])("%i Fr is %f mm", (fr, mm) => {
    expect(Math.abs((call(FRTOMM, [fr]) as number) - mm)).toBeLessThanOrEqual(0.005);
  });
});

describe("day numbers (ECMA-376 part 1, 18.17.4 and the standard's own examples)", () => {
  test.each([
    ["1900-03-01", 61],
    ["9999-12-31", 2958465],
  ] as const)("%s is day %i", (text, serial) => {
    expect(day(text)).toBe(serial);
    expect(isoText(serial)).toBe(text);
  });
});
