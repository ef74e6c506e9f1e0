/** What the pictures count, on lists small enough to count by hand, and on published data where there are such. */
import { describe, expect, test } from "vitest";
import { dayNumber } from "../../../src/maths/calendar";
import { devicesOf, kindsIn, ofKind, type Device, type RowOf } from "../../../src/pictures/devices";
import { duePicture } from "../../../src/pictures/due";
import { lifePicture, workingAt } from "../../../src/pictures/life";
import { periodsBetween } from "../../../src/pictures/months";
import { reasonsPicture } from "../../../src/pictures/reasons";
import { unplannedPicture } from "../../../src/pictures/unplanned";
import { adviceFor, wearModel } from "../../../src/pictures/advice";
import { fastWearers, wearPicture } from "../../../src/pictures/wear";
import { CellError } from "../../../src/worksheet/error";
import type { SheetValue } from "../../../src/columns/sheet-block";
import { randomFrom, simulate } from "../../simulated/clinic";
import freireich from "../check-values/freireich.json";

const day = (month: number, date: number, year = 2026): number => dayNumber(year, month, date);
const TODAY = day(11, 26);
const OLDEST = day(1, 1, 2000);

const rowOf =
  (cells: Readonly<Record<string, SheetValue>>) =>
  (header: string): SheetValue =>
    cells[header] ?? null;
const change = (cells: Readonly<Record<string, SheetValue>>): RowOf<"changes"> =>
  rowOf({
    ID: "P-01",
    "Held by": "balloon",
    In: day(1, 1),
    Out: day(3, 2),
    Reason: "balloon burst",
    "Days in place": 60,
    Failed: "yes",
    Unplanned: "yes",
    ...cells,
  });
const tube = (cells: Readonly<Record<string, SheetValue>>): RowOf<"tubes"> =>
  rowOf({ ID: "P-01", Status: "active", "Held by": "balloon", "Device in": day(10, 27), ...cells });

describe("devices", () => {
  const read = (changes: RowOf<"changes">[], tubes: RowOf<"tubes">[]) => devicesOf({ changes, tubes }, TODAY, OLDEST);

  test("one that came out, and one that is in with the days up to now", () => {
    const { devices, leftOut } = read([change({})], [tube({})]);
    expect(leftOut).toEqual([]);
    expect(devices.map(({ days, failed, unplanned, until }) => [days, failed, unplanned, until])).toEqual([
      [60, true, true, day(3, 2)],
      [30, false, false, null],
    ]);
  });

  test("out on its first day counts for half a day: a failure is not lost", () => {
    expect(read([change({ "Days in place": 0 })], []).devices[0]!.days).toBe(0.5);
  });

  test.each([
    ["no ID", { ID: "" }],
    ["dates missing or wrong", { "Days in place": "" }],
    ["dates missing or wrong", { "Days in place": new CellError("#VALUE!") }],
    ["dates missing or wrong", { Out: "March" }],
    ["reason missing or not known", { Failed: "", Unplanned: "" }],
    ["reason missing or not known", { Failed: "not known" }],
  ])("a past device is left out with its reason: %s, %j", (why, cells) => {
    expect(read([change(cells)], [])).toEqual({ devices: [], leftOut: [{ table: "changes", row: 0, why }] });
  });

  test.each([
    ["no ID", { ID: null }],
    ["dates missing or wrong", { "Device in": "soon" }],
    ["dates missing or wrong", { "Device in": TODAY + 1 }],
    ["dates missing or wrong", { "Device in": OLDEST - 1 }],
    ["no day since when", { Status: "on hold" }],
    ["no day since when", { Status: "left", "Status since": day(10, 1) }],
  ])("a tube in use is left out with its reason: %s, %j", (why, cells) => {
    expect(read([], [tube({}), tube(cells)]).leftOut).toEqual([{ table: "tubes", row: 1, why }]);
  });

  test("somebody who is away is watched up to the day they went", () => {
    const [device] = read([], [tube({ Status: "in hospital", "Status since": day(11, 6) })]).devices;
    expect(device!.days).toBe(10);
    /* Nobody knows whether it is still in: it is not said to be, and no change of it is forecast. */
    expect(device!.isInUse).toBe(false);
    expect(lifePicture([device!]).stillIn).toBe(0);
  });

  test("blank rows are no devices, and kinds come by their number", () => {
    const blank = rowOf({});
    const { devices, leftOut } = read(
      [blank, change({}), change({ "Held by": "" })],
      [blank, tube({}), tube({ "Held by": "Bumper" })],
    );
    expect(leftOut).toEqual([]);
    expect(kindsIn(devices)).toEqual(["balloon", "not known", "bumper"]);
    expect(ofKind(devices, "bumper")).toHaveLength(1);
    expect(ofKind(devices, null)).toHaveLength(4);
  });
});

const device = (cells: Partial<Device>): Device => ({
  person: "a",
  kind: "balloon",
  shape: "",
  lot: "",
  from: day(1, 1),
  until: day(3, 2),
  isInUse: false,
  days: 60,
  failed: true,
  unplanned: true,
  reason: "balloon burst",
  ...cells,
});

describe("life", () => {
  const { time, status } = freireich.sixmp;
  const devices = time.map((days, i) =>
    device({ days, failed: status[i] === 1, until: status[i] === 1 ? day(3, 2) : null, isInUse: status[i] !== 1 }),
  );
  const life = lifePicture(devices);

  test(`half at 23, nine of 21 (${freireich.source})`, () => {
    expect([life.half.day, life.failures, life.devices, life.stillIn]).toEqual([23, 9, 21, 12]);
    // Kaplan and Meier's share after week 10 of the published table: 0.7529.
    expect(workingAt(life.curve!, 12)).toBeCloseTo(0.7529, 4);
    expect(workingAt(life.curve!, 0)).toBe(1);
  });

  test("the figures under the curve count those still watched, and the curve is cut where fewer than 5 are", () => {
    for (const at of [0, 6, 10, 23, 35, 36]) expect(life.watchedAt(at)).toBe(time.filter((one) => one >= at).length);
    expect(time.filter((one) => one >= life.lastDay).length).toBeGreaterThanOrEqual(5);
    expect(time.filter((one) => one > life.lastDay).length).toBeLessThan(5);
  });

  test("the last one watched fails: half is not said to have lasted until then", () => {
    const last = lifePicture([...devices.filter((one) => !one.failed || one.days < 20), device({ days: 400 })]);
    expect(last.curve!.working.at(-1)).toBe(0);
    expect(last.half.day).toBeUndefined();
  });

  test("seven failures, or 19 devices: too few, and no curve", () => {
    expect(lifePicture(devices.filter(({ failed }, i) => !failed || i > 2)).curve).toBeUndefined();
    expect(lifePicture(devices.slice(0, 19)).curve).toBeUndefined();
    expect(lifePicture([])).toMatchObject({ devices: 0, curve: undefined, lastDay: 0 });
  });
});

describe("unplanned changes", () => {
  test("periods begin with the calendar's", () => {
    expect(periodsBetween(day(2, 14), day(8, 1), "quarter").map(({ from }) => from)).toEqual([
      day(1, 1),
      day(4, 1),
      day(7, 1),
    ]);
    expect(periodsBetween(day(11, 30), day(2, 1, 2027), "month")).toHaveLength(4);
  });

  test("tube-days are counted within each period, events where they fell (counted on a calendar)", () => {
    const seen = unplannedPicture(
      [
        device({ from: day(1, 11), until: day(2, 10), days: 30 }),
        device({ from: day(2, 1), until: null, days: TODAY - day(2, 1), failed: false, unplanned: false, reason: "" }),
      ],
      day(1, 1),
      day(3, 31),
      "month",
    );
    // January 11 to 31: 21 days; February: 9 of the first and 28 of the second; March: 31 of the second.
    expect(seen.periods.map(({ tubeDays, events }) => [tubeDays, events])).toEqual([
      [21, 0],
      [37, 1],
      [31, 0],
    ]);
    expect(seen.rate!.value).toBeCloseTo(1000 / 89, 10);
    // Garwood's limits for one event: 0.0253 and 5.572 (published pages).
    expect((seen.rate!.low * 89) / 1000).toBeCloseTo(0.0253, 4);
    expect((seen.rate!.high * 89) / 1000).toBeCloseTo(5.572, 3);
  });

  test("twelve in one month where one is usual is a signal; chance alone is none", () => {
    const year = Array.from({ length: 12 }, (_, i) =>
      device({ person: `p${i}`, from: day(1, 1), until: null, days: 330, failed: false, unplanned: false }),
    );
    const burst = Array.from({ length: 12 }, () => device({ from: day(4, 30), until: day(5, 10), days: 10 }));
    const some = [3, 6, 8].map((month) => device({ from: day(month, 1), until: day(month, 9), days: 8 }));
    const seen = unplannedPicture([...year, ...burst, ...some], day(1, 1), day(11, 26), "month");
    expect(seen.periods.filter(({ signal }) => signal === "above").map(({ from }) => from)).toEqual([day(5, 1)]);
  });

  test("nothing watched: no rate", () => {
    expect(unplannedPicture([], day(1, 1), TODAY, "month")).toMatchObject({ rate: null, periods: [] });
  });
});

test("reasons: unplanned ones since a day, the commonest first", () => {
  const seen = reasonsPicture(
    [
      device({}),
      device({ reason: "blocked", failed: false }),
      device({ reason: "blocked", failed: false }),
      device({ reason: "planned", failed: false, unplanned: false }),
      device({ until: day(12, 31, 2025) }),
      device({ until: null, unplanned: false, reason: "" }),
    ],
    day(1, 1),
  );
  expect(seen).toEqual({
    reasons: [
      { reason: "blocked", count: 2 },
      { reason: "balloon burst", count: 1 },
    ],
    unplanned: 3,
    planned: 1,
  });
});

describe("due by month", () => {
  const tubes = [day(11, 1), day(11, 26), day(11, 30), day(12, 1), day(2, 28, 2027), day(6, 1, 2027), null, null].map(
    (one) => ({ day: one }),
  );

  test("past, the rest of this month, the months to come, later, and without a day: all are counted (calendar)", () => {
    const due = duePicture(tubes, [], TODAY);
    expect([due.past, due.later, due.without]).toEqual([1, 1, 2]);
    expect(due.months.map((one) => one.due)).toEqual([2, 1, 0, 1, 0, 0]);
    expect(due.months.map(({ from }) => from)).toEqual([
      ...[day(11, 1), day(12, 1), day(1, 1, 2027), day(2, 1, 2027), day(3, 1, 2027), day(4, 1, 2027)],
    ]);
    expect(due.months.every(({ unplanned }) => unplanned === undefined)).toBe(true);
  });

  test("the forecast is what enough simulated months of the same curve would bring (fixed seed)", () => {
    const random = randomFrom(7);
    const [shape, scale] = [2, 150];
    const life = (): number => scale * (-Math.log(random())) ** (1 / shape);
    const past = Array.from({ length: 4000 }, () => {
      const days = life();
      return device({ days: Math.min(180, days), failed: days <= 180 });
    });
    const ages = [5, 40, 80, 80, 120, 150, 200, 20, 60, 100];
    const present = ages.map((days) => device({ days, until: null, isInUse: true, failed: false, unplanned: false }));
    const { months } = duePicture([], [...past, ...present], TODAY);
    const december = months[1]!;
    const [from, end] = [december.from - TODAY, december.end - TODAY];
    const counts = Array.from({ length: 20_000 }, () => {
      let n = 0;
      for (const age of ages) {
        let whole = 0;
        do whole = life();
        while (whole < age);
        if (whole >= age + from && whole < age + end) n++;
      }
      return n;
    }).sort((a, b) => a - b);
    expect(december.unplanned).toBe(counts[Math.ceil(0.9 * counts.length) - 1]);
  });
});

describe("wear by person", () => {
  test("in a clinic whose truth is known a fast wearer stands first, and their limits lie above 1", () => {
    const clinic = simulate(
      { people: 40, years: 4, shape: 2, scale: 200, spread: 0, planned: 180, lots: 1, badLot: 1 },
      randomFrom(3),
    );
    const devices = clinic.ids.map((person, i) =>
      device({ person, days: clinic.days[i]!, failed: clinic.failed[i] === 1 }),
    );
    const fast = Array.from({ length: 24 }, () => device({ person: "fast", days: 60 }));
    const model = wearModel([...devices, ...fast]);
    const { told } = wearPicture(model);
    expect(told![0]!.person).toBe("fast");
    expect(told![0]!.wear.low).toBeGreaterThan(1);
    expect(told![0]!.day.value).toBeLessThan(60);
    for (const { failures } of told!) expect(failures).toBeGreaterThanOrEqual(2);
    /* Limits above 1, asked of each person in two ways. */
    expect(told!.filter(({ isFast }) => isFast)).toEqual(told!.filter(({ wear }) => wear.low > 1));
    expect(fastWearers(model)).toContain("fast");

    /* The same clinic's advice: earlier than 180 days for the fast wearer, never later than what is agreed. */
    const own = adviceFor(model, "fast", 180);
    expect(own).toMatchObject({ is: "person", devices: 24, failures: 24, failedBy: 60, isEarlier: true });
    expect(adviceFor(model, "fast", 10)).toMatchObject({ isEarlier: false });
    expect(adviceFor(model, "fast", null)).toMatchObject({ isEarlier: false });
    const day = own.is === "person" ? own.day.value : NaN;
    expect(told![0]!.day.value).toBe(day);
    expect(adviceFor(model, "nobody", 180)).toMatchObject({ is: "clinic", devices: 0, failures: 0 });
  });

  test("too few to say: no person is told of", () => {
    expect(wearPicture(wearModel([device({}), device({ person: "b" })])).told).toBeUndefined();
    expect(wearPicture(wearModel([])).told).toBeUndefined();
    expect(adviceFor(wearModel([device({})]), "a", 180)).toEqual({ is: "too few", devices: 1, failures: 1 });
  });
});
