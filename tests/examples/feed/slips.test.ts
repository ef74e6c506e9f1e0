/**
 * Numbers that nobody can have meant: refused, with the likely slip in the sentence, and the last number that is taken
 * beside each. Limits without a source are clinic settings, no published source; what they keep clear of is named.
 */
import { describe, expect, test } from "vitest";
import { CHECKDUE } from "../../../src/balloon/checkdue";
import { DROPRATE } from "../../../src/feed/droprate";
import { FEEDGIVES } from "../../../src/feed/feedgives";
import { FEEDPLAN } from "../../../src/feed/feedplan";
import { FLUIDGOAL } from "../../../src/feed/fluidgoal";
import { RESTENERGY } from "../../../src/feed/restenergy";
import { WATERGAP } from "../../../src/feed/watergap";
import { CHANGEDUE } from "../../../src/schedule/changedue";
import { CHANGELOAD } from "../../../src/schedule/changeload";
import { DUEDATES } from "../../../src/schedule/duedates";
import { settings } from "../../../src/settings/index";
import { call } from "../../../src/worksheet/call";
import { day } from "../../../src/worksheet/dates";
import type { SheetFunction } from "../../../src/worksheet/define";
import { SheetError } from "../../../src/worksheet/error";

const first = (definition: SheetFunction, args: readonly unknown[]): unknown => {
  const answer = call(definition, args);
  return Array.isArray(answer) ? answer[0]![0] : answer;
};
const says = (definition: SheetFunction, args: readonly unknown[]): string => {
  const answer = first(definition, args);
  return answer instanceof SheetError ? `${answer.code} ${answer.message}` : `no refusal: ${String(answer)}`;
};

/** Dietetic course notes: 1,800 kcal, 1 kcal/mL, 24 hours, 83% water, 40 g/L, need 1,800 mL: 306 mL still to give. */
const plan = (change: Readonly<Record<string, unknown>>): unknown[] => [
  ...Object.values({
    energy: 1800,
    density: 1,
    hours: 24,
    water: 83,
    protein: 40,
    fluid: 1800,
    flush: 0,
    step: 1,
    ...change,
  }),
];

describe("share of water", () => {
  test("course notes: 306 mL still to give; a blank or 0% never gives 1,800", () => {
    expect(call(WATERGAP, [1800, 1800, 83])).toBe(306);
    expect((call(FEEDPLAN, plan({})) as unknown[][])[0]).toEqual([1800, 75, 1800, 72, 1494, 1494, 306]);
    for (const blank of [0, "", null, "0%"]) {
      expect(says(WATERGAP, [1800, 1800, blank])).toMatch(/^#VALUE! waterpercent is missing/);
      expect(says(FEEDPLAN, plan({ water: blank }))).toBe("#VALUE! waterpercent is missing");
      expect(says(FEEDGIVES, [1800, 1, 40, blank, 60])).toBe("#VALUE! waterpercent is missing");
    }
  });

  test("below 40% is refused: 17 is what 83% leaves, 1.5 an energy; published shares are 69 to 85%", () => {
    for (const share of [17, 1.5, 39.9]) {
      expect(says(WATERGAP, [1800, 1800, share])).toMatch(/at least 40, at most 100: the dry part, or the energy\?$/);
      expect(says(FEEDPLAN, plan({ water: share }))).toMatch(/the dry part/);
      expect(says(FEEDGIVES, [1800, 1, 40, share, 60])).toMatch(/the dry part/);
    }
    expect(says(WATERGAP, [1800, 1800, 0.83])).toMatch(/write 85 for 85%/);
    expect(call(WATERGAP, [1800, 1000, 40])).toBe(1400);
  });

  test("without feed there is no share to know", () => {
    for (const share of [0, "", null, 83]) expect(call(WATERGAP, [1800, 0, share, 300])).toBe(1500);
    expect(
      call(WATERGAP, [
        [[1800], [1800]],
        [[0], [1800]],
        [[""], [83]],
      ]),
    ).toEqual([[1800], [306]]);
  });
});

describe("energy", () => {
  test("a target in kJ is refused: 1,800 kcal are 7,531 kJ (4.184 kJ are 1 kcal)", () => {
    expect(says(FEEDPLAN, plan({ energy: 7531 }))).toMatch(/energytarget must be above 0, at most 6000: kJ\?/);
    expect(first(FEEDPLAN, plan({ energy: 6000, density: 2 }))).toBe(3000);
    expect(says(FEEDPLAN, plan({ energy: 6001, density: 2 }))).toMatch(/kJ/);
  });

  test("with a weight more than 200 kcal per kg is refused; preterm infants get 110 to 130 (AAP and ESPGHAN)", () => {
    expect(first(FEEDPLAN, [...plan({ energy: 130 }), 1])).toBe(120); // 5 mL an hour for 24 hours
    expect(first(FEEDPLAN, [...plan({ energy: 1000 }), 5])).toBe(1008);
    expect(says(FEEDPLAN, [...plan({ energy: 1001 }), 5])).toMatch(/above 200 kcal for each kg: kJ/);
    expect(first(FEEDPLAN, plan({ energy: 1001 }))).toBe(1008);
    expect(says(FEEDGIVES, [1000, 1, 40, 85, 4.9])).toMatch(/above 200 kcal for each kg/);
    expect(first(FEEDGIVES, [1000, 1, 40, 85, 5])).toBe(1000);
    expect(says(FEEDGIVES, [6001, 1, 40, 85, 70])).toMatch(/above 6000 kcal a day/);
  });

  test("a density above 3 kcal/mL is refused: 4.2 is kJ, 100 is for 100 mL; the densest in use has 2.4 (from memory)", () => {
    for (const density of [4.2, 100, 3.01]) {
      expect(says(FEEDPLAN, plan({ density }))).toMatch(/density must be at least 0.1, at most 3: kJ, or for 100 mL\?/);
      expect(says(FEEDGIVES, [1000, density, 40, 70, 60])).toMatch(/at most 3: kJ/);
    }
    expect(first(FEEDPLAN, plan({ density: 3 }))).toBe(600);
  });
});

describe("FEEDPLAN's rate", () => {
  test("above 400 mL an hour only where the plan allows it; published goals end at 125 (KDOQI 2008)", () => {
    expect(first(FEEDPLAN, plan({ energy: 1600, hours: 4 }))).toBe(1600);
    expect(says(FEEDPLAN, plan({ energy: 1604, hours: 4 }))).toMatch(/401 mL an hour, above 400: check hours/);
    expect(first(FEEDPLAN, [...plan({ energy: 1604, hours: 4 }), "", 401])).toBe(1604);
    expect(says(FEEDPLAN, [...plan({ energy: 1604, hours: 4 }), "", 400])).toMatch(/above fastest/);
    expect(says(FEEDPLAN, [...plan({}), "", 60])).toMatch(/75 mL an hour, above fastest/);
    // A blank that arrives as 0 lifts nothing.
    expect(says(FEEDPLAN, [...plan({ energy: 1604, hours: 4 }), 0, 0])).toMatch(/above 400/);
  });

  test("with a weight above 25 mL an hour for each kg; published goals for infants are 6 (KDOQI 2008)", () => {
    expect(first(FEEDPLAN, [...plan({ energy: 600, hours: 6 }), 4])).toBe(600);
    expect(says(FEEDPLAN, [...plan({ energy: 606, hours: 6 }), 4])).toMatch(/101 mL an hour, above 25 for each kg/);
    expect(first(FEEDPLAN, plan({ energy: 606, hours: 6 }))).toBe(606);
    expect(first(FEEDPLAN, [...plan({ energy: 606, hours: 6 }), 4, 110])).toBe(606);
  });
});

describe("RESTENERGY", () => {
  test("inches are refused by the adults' equation; the handbook's woman of 45, 75 kg, 165.1 cm has 1,396 kcal", () => {
    expect(Math.abs((call(RESTENERGY, ["F", 45, 75, 165.1]) as number) - 1396)).toBeLessThanOrEqual(0.5);
    expect(says(RESTENERGY, ["F", 45, 75, 65])).toMatch(/below 100 cm for the adults' equation: inches\?/);
    expect(says(RESTENERGY, ["F", 45, 75, 99.9, "Mifflin-St Jeor"])).toMatch(/inches/);
    expect(first(RESTENERGY, ["F", 45, 75, 100])).toBe(10 * 75 + 6.25 * 100 - 5 * 45 - 161); // Mifflin 1990
    // Schofield and Henry do not use the height.
    expect(first(RESTENERGY, ["F", 45, 75, 65, "Schofield"])).toBe(call(RESTENERGY, ["F", 45, 75]));
  });

  test.each([
    [2, 6],
    [6, 9],
    [10, 12],
    [18, 18],
  ])("from %d years below %d kg: months?", (age, least) => {
    for (const method of ["Schofield", "Henry", ""]) {
      expect(says(RESTENERGY, ["F", age, least - 0.1, "", method])).toMatch(/months\?$/);
      expect(first(RESTENERGY, ["F", age, least, "", method])).toBeTypeOf("number");
      expect(first(RESTENERGY, ["F", age - 0.01, least - 0.1, "", method])).toBeTypeOf("number");
    }
  });

  test("Schofield (FAO 2004, table 5.2) for a boy of 9 kg: 505.2 kcal as an infant, never as a child of 9 years", () => {
    expect(call(RESTENERGY, ["M", 0.75, 9])).toBeCloseTo(505.2, 1);
    expect(says(RESTENERGY, ["M", 9, 8.9])).toMatch(/months/);
  });
});

describe("FLUIDGOAL", () => {
  test("5 to 200 mL per kg: 0.03 is litres; 200 is the most for preterm infants (AAP and ESPGHAN)", () => {
    expect(says(FLUIDGOAL, [70, 0.03])).toMatch(/at least 5, at most 200: litres/);
    expect(says(FLUIDGOAL, [70, 4.9])).toMatch(/litres/);
    expect(says(FLUIDGOAL, [70, 2100])).toMatch(/a whole day's volume\?/);
    expect(says(FLUIDGOAL, [70, "4.9 mL/kg"])).toMatch(/5 to 200/);
    expect(call(FLUIDGOAL, [70, 5])).toBe(350);
    expect(call(FLUIDGOAL, [1, 200])).toBe(200);
  });

  test("the children's rules from 3 kg, where Holliday and Segar's curve begins (1957)", () => {
    expect(call(FLUIDGOAL, [3, "Holliday-Segar"])).toBe(300);
    expect(call(FLUIDGOAL, [3, "4-2-1"])).toBe(288);
    for (const rule of ["Holliday-Segar", "4-2-1"]) expect(says(FLUIDGOAL, [2.9, rule])).toMatch(/below 3 kg/);
    expect(call(FLUIDGOAL, [2.9, 150])).toBe(435);
  });
});

describe("intervals", () => {
  const last = "2026-01-15";
  test.each([
    ["months", 60, "2031-01-15", "weeks or days?"],
    ["weeks", 260, "2031-01-09", "days?"],
    ["days", 1830, "2031-01-19", "a date?"],
  ])("%s: at most %d, counted on a calendar", (unit, most, due, slip) => {
    expect(call(CHANGEDUE, [last, most, unit])).toBe(day(due));
    expect(call(DUEDATES, [last, most, 1, unit])).toEqual([[day(due)]]);
    for (const answer of [says(CHANGEDUE, [last, most + 1, unit]), says(DUEDATES, [last, most + 1, 1, unit])])
      expect(answer).toBe(`#VALUE! interval is above ${most} ${unit}: ${slip}`);
  });

  test("CHANGELOAD: at most 60 months, for one tube or for all", () => {
    const due = [["2026-01-31"], ["2026-02-28"]];
    expect(says(CHANGELOAD, [due, 61, last, 2])).toMatch(/interval in row 1 .* at most 60: weeks or days\?/);
    expect(says(CHANGELOAD, [due, [[60], [61]], last, 2])).toMatch(/interval in row 2/);
    expect(call(CHANGELOAD, [due, 60, last, 2])).toEqual([
      [day("2026-01-01"), 1],
      [day("2026-02-01"), 1],
    ]);
  });

  test("CHECKDUE: every and after at most 90 days, first 180", () => {
    const due = (firstCheck: unknown, every: unknown, after: unknown, checked: unknown = "2026-03-09") => [
      "2025-01-06",
      "2026-03-02",
      checked,
      firstCheck,
      every,
      after,
    ];
    expect(call(CHECKDUE, due(28, 90, 7))).toBe(day("2026-03-09") + 90);
    expect(says(CHECKDUE, due(28, 91, 7))).toMatch(/every must be at least 1, at most 90: hours, or a date\?/);
    expect(call(CHECKDUE, due(28, 7, 90, ""))).toBe(day("2026-03-02") + 90);
    expect(says(CHECKDUE, due(28, 7, 91, ""))).toMatch(/after must be at least 0, at most 90/);
    expect(call(CHECKDUE, ["2026-03-02", "2026-03-02", "", 180])).toBe(day("2026-03-02") + 180);
    expect(says(CHECKDUE, ["2026-03-02", "2026-03-02", "", 181])).toMatch(/first must be at least 1, at most 180/);
  });

  test("every interval that the clinic settings allow is one that the functions take", () => {
    const most = (name: string) => settings.find((one) => one.name === name)!.allowed[1];
    for (const { name, unit, allowed } of settings)
      if (/^(Int|Lim|Rev)_/.test(name) && unit === "months")
        expect(first(CHANGEDUE, [last, allowed[1]]), name).toBeTypeOf("number");
    expect(
      first(CHECKDUE, [last, last, last, most("Check_First"), most("Check_Days"), most("Check_AfterChange")]),
    ).toBeTypeOf("number");
  });
});

test("DROPRATE: above 200 drops a minute is #N/A; ASPEN's 60 mL in an hour at 14 drops are 14", () => {
  expect(call(DROPRATE, [60, 60, 14])).toBe(14);
  expect(call(DROPRATE, [300, 30, 20])).toBe(200);
  expect(says(DROPRATE, [301, 30, 20])).toMatch(/^#N\/A .*too fast to count/);
  expect(call(DROPRATE, [[[301], [240]], 30, 20])).toMatchObject([[{ code: "#N/A" }], [160]]);
});
