/** Devices of somebody's own list: what is counted, what is left out and why, on rows short enough to read. */
import { describe, expect, test } from "vitest";
import type { SheetValue } from "../../../src/columns/sheet-block";
import { dayNumber } from "../../../src/maths/calendar";
import { ownColumns } from "../../../src/pictures/own-columns";
import { ownDevices, type ListColumns, type Meaning } from "../../../src/pictures/own-devices";
import { CellError } from "../../../src/worksheet/error";

const day = (month: number, date: number, year = 2026): number => dayNumber(year, month, date);
const NOW = { asOf: day(11, 26), oldest: day(1, 1, 1990) };

const columns: ListColumns = {
  ...{ person: 0, kind: 1, putIn: 2, cameOut: 3, reason: 4, due: 5, interval: { column: 6, unit: "months" } },
  ...{ shape: null, lot: null, status: 7 },
};
type Row = readonly SheetValue[];
const read = (rows: readonly Row[], said = new Map<string, Meaning>(), of: ListColumns = columns) =>
  ownDevices(rows, of, NOW, said);

describe("which column is what", () => {
  test("by its header, whatever the case and brackets", () => {
    expect(ownColumns(["ID", "Kind", "Date in", "Date out", "Reason for change", "Change every (months)"])).toEqual({
      ...{ person: 0, putIn: 2, cameOut: 3, reason: 4, lot: null, interval: { column: 5, unit: "months" } },
    });
  });
  test("two of one name, an interval without its unit, and a day in without a day out: none is guessed", () => {
    expect(ownColumns(["Reason", "Why", "Interval", "In"])).toMatchObject({
      reason: null,
      interval: null,
      putIn: null,
    });
  });
});

describe("rows", () => {
  test("in since, out since with a reason of ours, and a blank row", () => {
    const { devices, leftOut, tubes } = read([
      ["A1", "Balloon G-tube", day(10, 27), null, "", day(4, 27, 2027)],
      ["a1", "balloon", day(1, 1), day(3, 2), "Balloon  burst"],
      [null, "", " ", null, null, null],
      ["B2", "PEG", day(5, 1), day(6, 1), "planned"],
    ]);
    expect(leftOut).toEqual([]);
    expect(
      devices.map(({ person, kind, days, failed, unplanned, isInUse }) => [
        person,
        kind,
        days,
        failed,
        unplanned,
        isInUse,
      ]),
    ).toEqual([
      ["a1", "balloon gastrostomy", 30, false, false, true],
      ["a1", "balloon gastrostomy", 60, true, true, false],
      ["b2", "peg", 31, false, false, false],
    ]);
    expect(tubes).toEqual([{ day: day(4, 27, 2027), person: "a1", kind: "balloon gastrostomy", agreed: 182 }]);
  });

  test("a due day from the agreed months where the list has no day of its own", () => {
    const row = ["A1", "balloon", day(8, 31), null, null, null, 6];
    expect(read([row]).tubes[0]!.day).toBe(day(2, 28, 2027));
    expect(read([[...row.slice(0, 5), "no date", 0.5]]).tubes[0]!.day).toBeNull();
    expect(read([row], new Map(), { ...columns, interval: { column: 6, unit: "weeks" } }).tubes[0]!.day).toBe(
      day(8, 31) + 42,
    );
  });

  test.each<readonly [string, Row]>([
    ["no ID", ["", "balloon", day(1, 1)]],
    ["dates missing or wrong", ["A1", "balloon", "3/4/26"]],
    ["dates missing or wrong", ["A1", "balloon", NOW.asOf + 1]],
    ["dates missing or wrong", ["A1", "balloon", NOW.oldest - 1]],
    ["dates missing or wrong", ["A1", "balloon", day(3, 1), "March", "planned"]],
    ["dates missing or wrong", ["A1", "balloon", day(3, 1), day(2, 1), "planned"]],
    ["dates missing or wrong", ["A1", "balloon", day(3, 1), new CellError("#N/A"), "planned"]],
    ["dates missing or wrong", ["A1", "balloon", day(3, 1), NOW.asOf + 1, "planned"]],
    ["reason missing or not known", ["A1", "balloon", day(3, 1), day(4, 1), ""]],
    ["reason missing or not known", ["A1", "balloon", day(3, 1), day(4, 1), "pulled"]],
    ["no day since when", ["A1", "balloon", day(3, 1), null, null, null, null, "on hold"]],
  ])("left out with its reason: %s, %j", (why, row) => {
    const found = read([row]);
    expect([found.devices.length, found.leftOut.map((one) => one.why)]).toEqual([0, [why]]);
  });

  test("a log of changes without a day out: only the newest row of a person is still in", () => {
    const { devices, leftOut, tubes } = read([
      ["A1", "balloon", day(1, 5)],
      ["a1", "balloon", day(7, 5)],
      ["A1", "balloon", day(4, 5)],
      ["B2", "balloon", day(4, 5)],
    ]);
    expect(devices.map(({ person, from }) => [person, from])).toEqual([
      ["a1", day(7, 5)],
      ["b2", day(4, 5)],
    ]);
    expect(leftOut.map(({ row, why }) => [row, why])).toEqual([
      [0, "a later row of the same person"],
      [2, "a later row of the same person"],
    ]);
    expect(tubes).toHaveLength(2);
  });

  test("a reason in the list's own words counts once somebody has said what it means, and is asked until then", () => {
    const rows: readonly Row[] = [
      ["A1", "balloon", day(1, 1), day(3, 2), "Popped "],
      ["B2", "balloon", day(1, 1), day(3, 2), "popped"],
      ["C3", "balloon", day(1, 1), day(3, 2), "pulled"],
    ];
    expect(read(rows).openReasons).toEqual([
      { word: "Popped", rows: [0, 1] },
      { word: "pulled", rows: [2] },
    ]);
    const said = new Map<string, Meaning>([
      ["popped", "failed"],
      ["pulled", "unplanned"],
    ]);
    const told = read(rows, said);
    expect(told.openReasons).toEqual([]);
    expect(told.devices.map(({ failed, unplanned }) => [failed, unplanned])).toEqual([
      [true, true],
      [true, true],
      [false, true],
    ]);
  });
});
