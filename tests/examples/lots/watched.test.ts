/** Lots watched: what is seen and expected, by R's own fit of the same devices (the worksheet function's checked example). */
import { describe, expect, it } from "vitest";
import { LEAST, watchLots, type WatchedDevice } from "../../../src/lots/watched";
import { LOTSIGNAL } from "../../../src/wear/lotsignal";
import { inventedLots } from "../../../src/wear/invented-list";
import { call } from "../../../src/worksheet/call";

const flat = (column: unknown): unknown[] => (column as unknown[][]).map(([cell]) => cell);
const devices = flat(inventedLots.lots).map((lot, i): WatchedDevice => ({
  lot: String(lot ?? "").toUpperCase(),
  kind: "balloon",
  days: Number(flat(inventedLots.days)[i]),
  failed: ["yes", 1].includes(flat(inventedLots.failed)[i] as string),
  agreed: null,
}));

describe("the invented list of LOTSIGNAL", () => {
  const watch = watchLots(devices);

  it("is expected and seen as R works it out: survreg without the lot, poisson.test", () => {
    const lot = watch.lots.find((one) => one.lot === "B2291")!;
    // R 4.2.2, survival 3.5-3: as in the function's own example.
    expect(lot.seen).toBe(4);
    expect(lot.expected).toBeCloseTo(0.5406094561756, 6);
    expect(lot.ratio).toBeCloseTo(7.3990566652258, 5);
    expect(lot.low).toBeCloseTo(2.0159939142322, 5);
    expect(lot.high).toBeCloseTo(18.9445237378117, 4);
    expect(lot.signals).toBe(true);
  });

  it("divides the level by the lots that could signal, and counts the others and devices without a lot", () => {
    const lots = devices.map(({ lot }) => lot).filter((lot) => lot !== "");
    const sizes = [...new Set(lots)].map((lot) => lots.filter((one) => one === lot).length);
    const large = sizes.filter((size) => size >= LEAST).length;
    expect(watch.lots.length + watch.notToTell).toBe(large);
    expect(watch.small).toBe(sizes.length - large);
    expect(watch.levelEach).toBeCloseTo(0.05 / watch.lots.length, 12);
    expect(watch.withoutLot).toBe(devices.filter(({ lot }) => lot === "").length);
  });

  it("is held against devices of its own kind only", () => {
    const others = devices.map((one) => ({ ...one, kind: one.lot === "B2291" ? "balloon" : "bumper" }));
    const alone = watchLots(others);
    expect(alone.lots.some(({ lot }) => lot === "B2291")).toBe(false);
    expect(alone.notToTell).toBeGreaterThan(0);
  });
});

it("agrees with LOTSIGNAL where that is told the same total and level", () => {
  const { lots, levelEach } = watchLots(devices);
  for (const { lot, seen, expected } of lots) {
    const row = call(LOTSIGNAL, [lot, inventedLots.lots, inventedLots.days, inventedLots.failed, 4, levelEach]);
    expect((row as unknown[][])[0]!.slice(0, 2)).toEqual([seen, expected]);
  }
});

it("nobody, and nobody with a lot", () => {
  expect(watchLots([])).toMatchObject({ lots: [], small: 0, notToTell: 0, withoutLot: 0 });
  expect(watchLots(devices.map((one) => ({ ...one, lot: "" })))).toMatchObject({
    lots: [],
    withoutLot: devices.length,
  });
});
