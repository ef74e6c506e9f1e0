/**
 * The quiet truth of the invented caseload, counted again from its rows: about 2 to 3 unplanned changes per 1,000 tube-days,
 * three failures of five bursts, one bad quarter. Reasons that count as failed or unplanned: the shared template's list.
 */
import { describe, expect, it } from "vitest";
import { inventedCaseload } from "../../../src/caseload/invented";
import { RATECHART } from "../../../src/service/ratechart";
import { call } from "../../../src/worksheet/call";
import { dateOf, day, everyMonth, someDays } from "./days";

const FAILED = ["balloon burst", "balloon leaking", "split or broken", "came out, balloon empty"];
const AS_MEANT = ["planned", "change of type", "recall", "no longer needed", "left"];

interface Span {
  readonly from: number;
  readonly to: number;
}

const known = new Map<number, ReturnType<typeof count>>();

function counted(asOf: number) {
  if (!known.has(asOf)) known.set(asOf, count(asOf));
  return known.get(asOf)!;
}

function count(asOf: number) {
  const { tubes, changes } = inventedCaseload(asOf);
  const inUse = tubes.filter((row) => row.Status !== "left" && typeof row["Device in"] === "number");
  const spans: Span[] = [
    ...changes.map((row) => ({ from: Number(row.In), to: Number(row.Out) })),
    ...inUse.map((row) => ({ from: Number(row["Device in"]), to: asOf })).filter(({ from, to }) => from <= to),
  ];
  return {
    changes,
    unplanned: changes.filter((row) => !AS_MEANT.includes(String(row.Reason))).map((row) => Number(row.Out)),
    failed: changes.filter((row) => FAILED.includes(String(row.Reason))),
    daysBetween: (from: number, to: number) =>
      spans.reduce((sum, span) => sum + Math.max(0, Math.min(to, span.to) - Math.max(from, span.from)), 0),
  };
}

/** First days of the calendar's months or quarters, newest last, up to the day itself. */
function periods(asOf: number, months: number, count: number): Span[] {
  const date = dateOf(asOf);
  const first = date.with({ day: 1, month: date.month - ((date.month - 1) % months) });
  return Array.from({ length: count }, (_, i) => {
    const from = first.subtract({ months: months * (count - i) });
    return { from: day(from.toString()), to: day(from.add({ months }).toString()) };
  });
}

function chanceOfAtLeast(events: number, expected: number): number {
  let [term, below] = [Math.exp(-expected), 0];
  for (let k = 0; k < events; k++) {
    below += term;
    term *= expected / (k + 1);
  }
  return 1 - below;
}

const days = [...everyMonth, ...someDays.map(day)];

describe("the invented caseload's rates, on the first of every month from 2026 to 2040 and on other days", () => {
  it("has about 2 to 3 unplanned changes per 1,000 tube-days", () => {
    for (const asOf of days) {
      const { unplanned, daysBetween } = counted(asOf);
      const rate = (1000 * unplanned.length) / daysBetween(0, asOf);
      expect(rate).toBeGreaterThan(2);
      expect(rate).toBeLessThan(3.1);
    }
  });

  it("has three bursts among five failures", () => {
    for (const asOf of days) {
      const { failed } = counted(asOf);
      const bursts = failed.filter((row) => row.Reason === "balloon burst");
      expect(bursts.length / failed.length).toBeGreaterThan(0.57);
      expect(bursts.length / failed.length).toBeLessThan(0.63);
    }
  });

  it.each([
    ["quarter", 3, 6],
    ["month", 1, 18],
  ])("shows its bad time, and no other, in a chart by %s", (_, months, count) => {
    for (const asOf of days) {
      const { unplanned, daysBetween } = counted(asOf);
      const rows = periods(asOf, months, count).map((span) => ({
        ...span,
        events: unplanned.filter((out) => out >= span.from && out < span.to).length,
        tubeDays: daysBetween(span.from, span.to),
      }));
      /* More than chance gives but once in 741 (0.00135), by the definition of the Poisson distribution and not by our chart. */
      const centre = rows.reduce((sum, row) => sum + row.events, 0) / rows.reduce((sum, row) => sum + row.tubeDays, 0);
      const above = rows.filter(({ events, tubeDays }) => chanceOfAtLeast(events, centre * tubeDays) <= 0.00135);
      const bad = periods(asOf, 3, 2)[0]!;
      expect(above.length).toBeGreaterThan(0);
      expect(above.every(({ from, to }) => from >= bad.from && to <= bad.to)).toBe(true);
      const chart = call(RATECHART, [rows.map(({ events }) => [events]), rows.map(({ tubeDays }) => [tubeDays])]);
      const signals = (chart as unknown[][]).flatMap((row, i) => (row[4] === "above limits" ? [rows[i]!.from] : []));
      expect(signals).toEqual(above.map(({ from }) => from));
    }
  });

  it("has the lot's three devices fail in the bad quarter", () => {
    for (const asOf of days) {
      const bad = periods(asOf, 3, 2)[0]!;
      const ofLot = counted(asOf).failed.filter((row) => row.Lot === "B2291");
      expect(ofLot).toHaveLength(3);
      expect(ofLot.every((row) => Number(row.Out) >= bad.from && Number(row.Out) < bad.to)).toBe(true);
    }
  });
});
