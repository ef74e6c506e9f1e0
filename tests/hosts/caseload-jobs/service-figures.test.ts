/** Service figures of the invented caseload: each count again from the cells, and the bad quarter behind its lot. */
import { describe, expect, it } from "vitest";
import { inventedCaseload } from "../../../src/caseload/invented/index";
import { addMonths } from "../../../src/maths/calendar";
import { periodOf } from "../../../src/pictures/months";
import { day } from "../../../src/worksheet/dates";
import { boardOf, readService } from "../../../taskpane/actions/service-figures";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { workOut } from "../../examples/caseload/worked-rows";
import { caseloadBook, type RowOf } from "./book";

const TODAY = day("2026-11-26");
const { tubes, changes } = workOut(inventedCaseload(TODAY), { asOf: TODAY, groups: ["fit", "plan", "spare"] });
const book = caseloadBook({ tubes: tubes as readonly RowOf[], changes: changes as readonly RowOf[] });

async function read() {
  const service = await readService(fakeWorkbook(book), TODAY);
  if (service.is !== "service") throw new Error(service.sentence);
  return service;
}
const within = (from: number, end: number) =>
  (changes as readonly RowOf[]).filter(
    (row) =>
      typeof row.Out === "number" &&
      row.Out >= from &&
      row.Out < end &&
      typeof row["Days in place"] === "number" &&
      row.Unplanned !== "",
  );

describe("the invented caseload", () => {
  it("offers quarters and years that are over, the newest first, and none that still goes on", async () => {
    const { periods } = await read();
    expect(periods[0]!.period).toEqual(periodOf(day("2026-09-30"), "quarter"));
    expect(periods.every(({ period }) => period.end <= TODAY + 1)).toBe(true);
    expect(periods.filter(({ length }) => length === "year")[0]!.period.from).toBe(day("2025-01-01"));
  });

  it("counts each period as its cells do, and shows no count under the clinic's own number", async () => {
    const service = await read();
    for (const one of service.periods) {
      const { now } = boardOf(service, one);
      const own = within(now.from, now.end);
      const unplanned = own.filter((row) => row.Unplanned === "yes");
      const check = (told: typeof now.planned, value: number) => {
        if (told.value !== null) expect(told.value).toBe(value);
        if (value < service.least) expect(told.shown).toBe("under");
        else expect(told.shown).not.toBe("under");
      };
      check(now.unplanned, unplanned.length);
      check(now.planned, own.length - unplanned.length);
      check(now.visits, unplanned.filter((row) => row["Unplanned visit"] === "yes").length);
      for (const { word, count } of now.tables.reasons.rows) {
        expect(count).toBe(unplanned.filter((row) => row.Reason === word).length);
        expect(count).toBeGreaterThanOrEqual(service.least);
      }
    }
  });

  it("tells of the bad quarter: more than the one before, beyond chance", async () => {
    const service = await read();
    const from = periodOf(addMonths(TODAY, -6), "quarter").from;
    const one = service.periods.find(({ length, period }) => length === "quarter" && period.from === from)!;
    const { now, ratio } = boardOf(service, one);
    expect(now.unplanned.value).toBeGreaterThanOrEqual(20);
    expect(ratio === null || ratio.low > 1).toBe(true);
    expect(now.tables.reasons.rows[0]!.word).toBe("balloon burst");
  });
});
