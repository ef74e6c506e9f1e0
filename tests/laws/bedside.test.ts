/** Laws and second derivations for sizes, balloon and schedule functions; fixed seed. */
import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, test } from "vitest";
import { BALLOONDEVIATION } from "../../src/balloon/balloondeviation";
import { BALLOONSTATE } from "../../src/balloon/balloonstate";
import { CHECKDUE } from "../../src/balloon/checkdue";
import { CHANGEDUE } from "../../src/schedule/changedue";
import { DUESTATE } from "../../src/schedule/duestate";
import { FRTOMM } from "../../src/sizes/frtomm";
import { MMTOFR } from "../../src/sizes/mmtofr";
import { call } from "../../src/worksheet/call";
import { isoText } from "../../src/worksheet/dates";
import { SheetError } from "../../src/worksheet/error";

const options = { seed: 20261125, numRuns: 3000 };
const serial = fc.integer({ min: 36_526, max: 73_050 }); // 2000 to 2099
const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);

describe("sizes of tubes", () => {
  test("every French size from 0.1 to 60 comes back from millimetres", () => {
    for (let tenth = 1; tenth <= 600; tenth++) {
      expect(call(MMTOFR, [call(FRTOMM, [tenth / 10])])).toBeCloseTo(tenth / 10, 10);
    }
  });

  test("however a size is written, it is the same size", () => {
    const writings = (fr: string) => [
      ...[`${fr} Fr`, `${fr}FR`, `${fr}F`, `CH${fr}`, `Ch. ${fr}`, `FG ${fr}`, `${fr} French`, `Charrière ${fr}`],
      ...[fr, ` ${fr}\u00a0Fr `, fr.replace(".", ","), `${fr} Fr x 2.3 cm`, `${fr} Fr, 5 mL`, `CH ${fr} (${fr} Fr)`],
      fr.replace(/\d/g, (digit) => String.fromCharCode(digit.charCodeAt(0) + 0xfee0)),
      `${fr} Fr, 3-5 mL`,
    ];
    for (let half = 10; half <= 72; half++) {
      const fr = half / 2;
      for (const text of writings(String(fr))) expect(call(FRTOMM, [text]), text).toBeCloseTo(fr / 3, 12);
    }
  });

  test.each([
    "14-16 Fr",
    "12/14",
    "14?",
    "14G",
    "14 gauge",
    "0 Fr",
    "-14",
    "-14 Fr",
    "61",
    "14 mm",
    "14 Fr 16",
    "Fr",
    "1,400 Fr",
    "fourteen",
    "14 Fr or 16 Fr",
    "1E1",
    "2.3 cm",
  ])("%s is not guessed", (text) => expect(call(FRTOMM, [text])).toBeInstanceOf(SheetError));
});

describe("the day on which a change is due (CHANGEDUE)", () => {
  test("is the one that Temporal counts, in months, weeks and days", () => {
    const units = fc.constantFrom("months", "weeks", "days");
    // Half of them short enough to be taken in every unit.
    const intervals = fc.oneof(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 2000 }));
    fc.assert(
      fc.property(serial, intervals, units, (start, interval, unit) => {
        const answer = call(CHANGEDUE, [start, interval, unit]);
        if (interval > { months: 60, weeks: 260, days: 1830 }[unit]!) {
          expect(answer).toBeInstanceOf(SheetError);
          return;
        }
        const want = Temporal.PlainDate.from(isoText(start)).add({ [unit]: interval });
        expect(isoText(answer as number)).toBe(want.toString());
      }),
      options,
    );
  });

  test("is never earlier after a later change, nor with a longer interval", () => {
    fc.assert(
      fc.property(serial, serial, fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }), (a, b, m, n) => {
        const due = (start: number, months: number) => call(CHANGEDUE, [start, months]) as number;
        expect(due(Math.min(a, b), m)).toBeLessThanOrEqual(due(Math.max(a, b), m));
        expect(due(a, Math.min(m, n))).toBeLessThanOrEqual(due(a, Math.max(m, n)));
      }),
      options,
    );
  });

  test("a closed day moves the date earlier, to an open day after the change, or says that there is none", () => {
    const names = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
    fc.assert(
      fc.property(
        serial,
        fc.integer({ min: 1, max: 20 }),
        fc.subarray(names, { minLength: 1 }),
        (start, days, shut) => {
          const closed = shut.map((name) => [name]);
          const answer = call(CHANGEDUE, [start, days, "days", closed]);
          // Second derivation: try every day between by its weekday in Temporal.
          const isOpen = (day: number) => !shut.includes(names[Temporal.PlainDate.from(isoText(day)).dayOfWeek % 7]!);
          const open = Array.from({ length: days }, (_, i) => start + days - i).find(isOpen);
          if (open === undefined) expect(answer).toBeInstanceOf(SheetError);
          else expect(answer).toBe(open);
        },
      ),
      options,
    );
  });
});

describe("how urgent a change is (DUESTATE)", () => {
  const ORDER = ["later", "due soon", "overdue", "past limit"];
  const rank = (...args: unknown[]) => ORDER.indexOf(call(DUESTATE, args) as string);

  test("only gets worse as days pass, and with an earlier due date or an earlier limit", () => {
    fc.assert(
      fc.property(
        serial,
        fc.integer({ min: -900, max: 3000 }),
        fc.integer({ min: -900, max: 3000 }),
        fc.nat(400),
        fc.nat(60),
        (asof, away, limit, days, soon) => {
          const [due, latest] = [asof + away, asof + limit];
          const now = rank(due, asof, soon, latest);
          expect(now).toBeGreaterThanOrEqual(0);
          expect(rank(due, asof + days, soon, latest)).toBeGreaterThanOrEqual(now);
          expect(rank(due - days, asof, soon, latest)).toBeGreaterThanOrEqual(now);
          expect(rank(due, asof, soon, latest - days)).toBeGreaterThanOrEqual(now);
          expect(rank(due, asof, soon + days, latest)).toBeGreaterThanOrEqual(now);
        },
      ),
      options,
    );
  });
});

describe("what a check of the water says of a balloon (BALLOONSTATE)", () => {
  /** The rule of the catalogue in whole tenths of a millilitre, where nothing is rounded. */
  const byHand = (out: number, expected: number, action: number | undefined, most: number | undefined) => {
    if (out === 0) return "empty";
    if (out > expected + 5 || (most !== undefined && out > most)) return "more than put in";
    if (2 * out <= expected) return "half or less";
    if (expected - out > (action ?? (expected <= 50 ? 5 : 10))) return "low";
    return most !== undefined && expected > most ? "refused: more put in than the device may hold" : "as filled";
  };
  const volume = fc.integer({ min: 1, max: 200 });

  test("is what the rule says, worked in whole tenths of a mL", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 220 }),
        volume,
        fc.option(fc.integer({ min: 0, max: 30 }), { nil: undefined }),
        fc.option(volume, { nil: undefined }),
        (out, expected, action, most) => {
          const tenth = (n: number | undefined) => (n === undefined ? undefined : n / 10);
          const answer = call(BALLOONSTATE, [out / 10, expected / 10, tenth(action), tenth(most)]);
          const word = answer instanceof SheetError ? "refused: more put in than the device may hold" : answer;
          expect(word).toBe(byHand(out, expected, action, most));
        },
      ),
      { ...options, numRuns: 20_000 },
    );
  });

  test("deviation and state tell the same story", () => {
    fc.assert(
      fc.property(tenths(0, 20), tenths(1, 20), (out, expected) => {
        const deviation = call(BALLOONDEVIATION, [out, expected]) as number;
        if (call(BALLOONSTATE, [out, expected]) === "as filled") expect(Math.abs(deviation)).toBeLessThanOrEqual(1);
      }),
      options,
    );
  });
});

describe("the day on which a check is due (CHECKDUE)", () => {
  test("is never before the opening's first-check date, and a later check never brings it forward", () => {
    fc.assert(
      fc.property(serial, fc.nat(900), fc.nat(900), fc.nat(60), (stoma, age, since, more) => {
        const due = (last: number) => call(CHECKDUE, [stoma, stoma + age, last]) as number;
        const last = stoma + age + since;
        expect(due(last)).toBeGreaterThanOrEqual(stoma + 28);
        expect(due(last + more)).toBeGreaterThanOrEqual(due(last));
      }),
      options,
    );
  });
});
