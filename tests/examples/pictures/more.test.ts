/** Intervals, comparisons, checks and strips on lists that can be worked out by hand, by publication or by another way. */
import { describe, expect, test } from "vitest";
import { dayNumber } from "../../../src/maths/calendar";
import { randomFrom } from "../../../src/maths/random";
import { checksPicture, type Check } from "../../../src/pictures/checks";
import { comparison } from "../../../src/pictures/compare";
import type { Device } from "../../../src/pictures/devices";
import { BAR_DAYS, barsOf, intervalPicture } from "../../../src/pictures/intervals";
import { stripPicture } from "../../../src/pictures/strip";
import freireich from "../check-values/freireich.json";

const FROM = dayNumber(2026, 1, 1);
const device = (cells: Partial<Device>): Device => ({
  ...{ person: "a", kind: "balloon", shape: "", lot: "", from: FROM, until: FROM + 60, isInUse: false },
  ...{ days: 60, failed: true, unplanned: true, reason: "balloon burst" },
  ...cells,
});

describe("lives compared", () => {
  const group = (name: "sixmp" | "placebo") =>
    freireich[name].time.map((days, i) => device({ days, failed: freireich[name].status[i] === 1, shape: name }));

  test(`the two groups of ${freireich.source}: log-rank chi-square 16.79, published`, () => {
    const { groups, small, test: rank } = comparison([...group("sixmp"), ...group("placebo"), device({})], "shape");
    expect(groups.map(({ name }) => name).sort()).toEqual(["placebo", "sixmp"]);
    expect(small.map(({ name, life }) => [name, life.devices])).toEqual([["not known", 1]]);
    expect(rank!.chiSquare).toBeCloseTo(16.79, 2);
  });

  test("one group that is large enough is compared with nothing", () => {
    const { groups, test: rank } = comparison([...group("sixmp"), device({ shape: "long" })], "shape");
    expect([groups.length, rank]).toEqual([1, undefined]);
  });
});

describe("planned intervals", () => {
  /** A Weibull life of shape 2 and scale 200, drawn with a fixed seed, changed at 180 days. */
  const random = randomFrom(11);
  const devices = Array.from({ length: 6000 }, (_, i) => {
    const life = 200 * Math.sqrt(-Math.log(random()));
    return device({
      ...{ person: `p${i % 300}`, days: Math.min(180, life), failed: life < 180, unplanned: life < 180 },
      until: FROM + Math.round(Math.min(180, life)),
    });
  });
  const tubes = Array.from({ length: 300 }, (_, i) => ({ person: `p${i}`, agreed: 180 }));
  const seen = intervalPicture(devices, tubes, 180, 3);

  test("fails before the agreed day: 1 - exp(-(180/200)^2) = 55.5%, within limits that hold it", () => {
    const { value, low, high } = seen.atAgreed!;
    const truth = 1 - Math.exp(-((180 / 200) ** 2));
    expect(Math.abs(value - truth)).toBeLessThan(0.02);
    expect(low!).toBeLessThan(truth);
    expect(high!).toBeGreaterThan(truth);
    expect(high! - low!).toBeLessThan(0.06);
  });

  test("cost 3: the least at 147.58 days by the published formula (Barlow and Proschan), here within its limits", () => {
    expect(seen.best).toMatchObject({ is: "earlier" });
    if (seen.best?.is !== "earlier") throw new Error("no day");
    expect(seen.best.day.low!).toBeLessThan(147.58);
    expect(seen.best.day.high!).toBeGreaterThan(147.58);
    expect(Math.abs(seen.best.day.value - 147.58)).toBeLessThan(6);
  });

  test("no interval longer than the agreed one is looked at, and a day beyond it is never told as earlier", () => {
    expect(Math.max(...seen.rows!.map(({ days }) => days))).toBeLessThanOrEqual(180);
    expect(intervalPicture(devices, [{ person: "p0", agreed: 60 }], 180, 3).best).toMatchObject({ is: "not earlier" });
    expect(intervalPicture(devices, [], 180, 3).best).toBeNull();
    expect(intervalPicture(devices, tubes, 180, null).best).toBeNull();
  });

  test("changes a year add up to 100 people's years over the mean stay, by adding up the survival day by day", () => {
    const { days, planned, unplanned, failing } = seen.rows![3]!;
    /* The fit's own scale and shape from two of its shares. */
    const logH = (share: number) => Math.log(-Math.log(1 - share));
    const other = seen.rows![1]!;
    const shape = (logH(failing.value) - logH(other.failing.value)) / Math.log(days / other.days);
    const scale = days / Math.exp(logH(failing.value) / shape);
    let stay = 0;
    const step = 0.01;
    for (let t = step / 2; t < days; t += step) stay += step * Math.exp(-((t / scale) ** shape));
    expect(planned.value + unplanned.value).toBeCloseTo((100 * 365.25) / stay, 3);
    expect(unplanned.value / (planned.value + unplanned.value)).toBeCloseTo(failing.value, 8);
  });

  test("k at or below 1: no planned change pays", () => {
    const even = Array.from({ length: 40 }, (_, i) => device({ person: `p${i}`, days: 2 ** (1 + (i % 10)) }));
    expect(intervalPicture(even, tubes, 500, 5).best).toEqual({ is: "never" });
  });

  test("seven failures are too few, and the stays are told all the same", () => {
    const few = devices.filter(({ failed }) => !failed).concat(Array.from({ length: 7 }, () => device({})));
    const told = intervalPicture(few, tubes, 180, 3);
    expect([told.rows, told.atAgreed, told.best]).toEqual([undefined, undefined, null]);
    expect(told.stays.planned.length).toBe(few.length - 7);
  });

  test("later than agreed: by the person's own interval, else by the middle one", () => {
    const stays = [
      device({ person: "a", days: 100, failed: false, unplanned: false }),
      device({ person: "b", days: 100, failed: false, unplanned: false }),
      device({ person: "c", days: 100, failed: false, unplanned: false }),
    ];
    const agreed = [
      { person: "a", agreed: 90 },
      { person: "b", agreed: 120 },
    ];
    expect(intervalPicture(stays, agreed, 100, null)).toMatchObject({ agreed: 105, stays: { late: 1 } });
  });

  test("bars hold every stay once", () => {
    const days = [0, 14.9, 15, 29, 30, 44];
    expect([BAR_DAYS, barsOf(days)]).toEqual([15, [2, 2, 2]]);
    expect(barsOf([])).toEqual([]);
  });
});

describe("balloon checks", () => {
  const check = (cells: Partial<Check>): Check => ({
    ...{ person: "a", day: FROM, loss: 0.2, expected: 5, says: "as filled" },
    ...cells,
  });
  const limits = { smallUpTo: 5, small: 0.5, large: 1 };

  test("low first, then what cannot be told, then by what is missing; each with its own limit", () => {
    const seen = checksPicture(
      [
        check({ person: "quiet", loss: 0.4 }),
        check({ person: "blank", loss: null, says: "not measured" }),
        check({ person: "low", loss: 0.9, says: "low" }),
        check({ person: "low", day: FROM - 7, loss: 0.1 }),
        check({ person: "large", expected: 10, loss: 0.6 }),
        check({ person: "before", day: FROM - 30 }),
      ],
      limits,
      FROM - 10,
    );
    expect(seen.people.map(({ person, limit, isLow }) => [person, limit, isLow])).toEqual([
      ["low", 0.5, true],
      ["blank", 0.5, null],
      ["large", 1, false],
      ["quiet", 0.5, false],
    ]);
    expect([seen.low, seen.notTold]).toEqual([1, 1]);
    expect(seen.people[0]!.checks.map(({ day }) => day)).toEqual([FROM - 7, FROM]);
  });

  test("no limit where the fill or the setting is missing; the words that count as low are the caseload's", () => {
    const [one] = checksPicture([check({ expected: null })], limits, 0).people;
    expect(one!.limit).toBeNull();
    const [other] = checksPicture([check({ says: "half or less" })], { ...limits, small: null }, 0).people;
    expect([other!.limit, other!.isLow]).toEqual([null, true]);
    for (const says of ["check settings", "device not clear", "", "not measured"])
      expect(checksPicture([check({ says })], limits, 0).people[0]!.isLow).toBeNull();
  });
});

test("a person's strip: in the order in which they went in, with gaps of which nothing is written down", () => {
  const seen = stripPicture(
    [
      device({ from: FROM + 100, until: null, days: 50, isInUse: true, failed: false, unplanned: false, reason: "" }),
      device({}),
      device({ from: FROM + 60, until: FROM + 90, days: 30, failed: false, unplanned: false, reason: "planned" }),
      device({ person: "b" }),
    ],
    "a",
  );
  expect(seen.devices.map(({ from, to, ended }) => [from - FROM, to - FROM, ended])).toEqual([
    [0, 60, "failed"],
    [60, 90, "planned"],
    [100, 150, "in"],
  ]);
  expect(seen.gaps).toEqual([{ from: FROM + 90, to: FROM + 100 }]);
  expect(stripPicture([], "a")).toEqual({ devices: [], gaps: [] });
});
