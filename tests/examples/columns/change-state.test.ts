import { describe, expect, it } from "vitest";
import { changeState } from "../../../src/columns/change-state";
import { DUESTATE } from "../../../src/schedule/duestate";
import { call } from "../../../src/worksheet/call";
import { day } from "../../../src/worksheet/dates";
import { CellError } from "../../../src/worksheet/error";
import { CASES_AS_OF, changeCases, type CaseCell } from "../../hosts/change-cases";

const cell = (value: CaseCell) => (value === "=NA()" ? new CellError("#N/A") : value);
const rule = { asOf: CASES_AS_OF, soonDays: 14, farMonths: 60 };

describe("where a change stands", () => {
  it.each(changeCases)("$why: $gives", ({ due, latest, last, gives }) => {
    expect(changeState({ due: cell(due), latest: cell(latest), last: cell(last) }, rule).state).toBe(gives);
  });

  it("says what DUESTATE says, for every due and latest date round today, the limit included or not", () => {
    const near = (around: number) => Array.from({ length: 40 }, (_, i) => around - 20 + i);
    const dues = [...near(CASES_AS_OF), ...near(CASES_AS_OF + 14), day("2024-02-29"), day("2031-06-01"), null];
    const limits = [undefined, null, ...near(CASES_AS_OF), CASES_AS_OF + 200];
    let compared = 0;
    for (const due of dues)
      for (const latest of limits)
        for (const soonDays of [1, 14, 60]) {
          const said = changeState(latest === undefined ? { due } : { due, latest }, { ...rule, soonDays }).state;
          const expected = call(DUESTATE, [due, CASES_AS_OF, soonDays, latest ?? null]);
          // A limit that has gone by is told even where there is no due date.
          const isKnownLimit = due === null && typeof latest === "number" && latest < CASES_AS_OF;
          expect([due, latest, soonDays, said]).toEqual([
            due,
            latest,
            soonDays,
            isKnownLimit ? "past limit" : expected,
          ]);
          compared += 1;
        }
    expect(compared).toBe(dues.length * limits.length * 3);
  });
});
