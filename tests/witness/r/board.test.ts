/** Every figure of a board page against R's own counts and tests: board.csv was written by board.R. Needs no R. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import type { Device } from "../../../src/pictures/devices";
import { board } from "../../../src/service/board";
import { NOT_WRITTEN, type ServiceChange } from "../../../src/service/figures";
import { day } from "../../../src/worksheet/dates";

const text = readFileSync(fileURLToPath(new URL("board.csv", import.meta.url)), "utf8");
const [rows, figures] = text.split("# figures\n").map((part) => part.trimEnd().split("\n")) as [string[], string[]];
const r = new Map(
  figures.map((line) => line.split(",") as [string, string]).map(([name, value]) => [name, Number(value)]),
);

const changes = rows.slice(1).map((line): ServiceChange => {
  const [person, from, until, unplanned, reason, where, nights] = line.split(",") as string[];
  const isUnplanned = unplanned === "1";
  const device = {
    ...{ person: person!, kind: "balloon", shape: "long", lot: "", from: Number(from), until: Number(until) },
    ...{ isInUse: false, days: Number(until) - Number(from), failed: isUnplanned, unplanned: isUnplanned },
    reason: reason!,
  } as unknown as Device;
  return { device, where: where!, isVisit: false, nights: Number(nights), position: "pH", isLast: false };
});
const period = { from: day("2026-07-01"), end: day("2026-10-01") };
const words = {
  reasons: ["balloon burst", "blocked", "split or broken"],
  where: ["home", "clinic", "ward", NOT_WRITTEN],
  position: ["pH"],
};
const options = { asOf: day("2026-12-01"), words };
const devices = changes.map(({ device }) => device);
const page = board(devices, changes, period, "quarter", { ...options, least: 0 });

describe.each(["now", "before"] as const)("%s", (when) => {
  const own = page[when]!;
  const of = (name: string): number => r.get(`${when} ${name}`)!;
  it("counts as R does", () => {
    const counted = [own.people.value, own.tubeDays, own.planned.value, own.unplanned.value, own.nights.value];
    expect(counted).toEqual(["people", "tubeDays", "planned", "unplanned", "nights"].map(of));
    expect(own.tables.reasons.rows.find(({ word }) => word === "balloon burst")!.count).toBe(of("burst"));
    expect(own.tables.where.rows.find(({ word }) => word === "home")!.count).toBe(of("home"));
  });
  it("has R's rate and limits (poisson.test)", () => {
    expect(own.rate!.value).toBeCloseTo(of("rate"), 10);
    expect(own.rate!.low).toBeCloseTo(of("low"), 8);
    expect(own.rate!.high).toBeCloseTo(of("high"), 8);
  });
});

it("has R's ratio to the period before and its limits", () => {
  expect(page.ratio!.ratio).toBeCloseTo(r.get("ratio value")!, 10);
  expect(page.ratio!.low).toBeCloseTo(r.get("ratio low")!, 8);
  expect(page.ratio!.high).toBeCloseTo(r.get("ratio high")!, 8);
});

it("under the clinic's number the same page shows no count below it", () => {
  const held = board(devices, changes, period, "quarter", { ...options, least: 5 });
  for (const { rows: lines } of Object.values(held.now.tables))
    for (const { count } of lines) expect(count).toBeGreaterThanOrEqual(5);
});
