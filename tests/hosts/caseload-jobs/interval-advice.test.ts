/** What a person's past says of the agreed interval: in Record a change and in Today, on a clinic whose truth is known. */
import { expect, test } from "vitest";
import { day } from "../../../src/worksheet/dates";
import { adviceSentences } from "../../../taskpane/actions/pictures/advice";
import { wearsFast } from "../../../taskpane/actions/today/wears-fast";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { intervalAdvice as words } from "../../../taskpane/texts/interval-advice";
import { caseloadBook, type RowOf } from "./book";

const TODAY = day("2026-11-26");
const bounded = (value: number) => ({ value, low: value - 5, high: value + 5 });

test("a day is said only where it is earlier than the agreed one", () => {
  const own = { is: "person", devices: 3, failures: 2, failedBy: 60, day: bounded(38) } as const;
  expect(adviceSentences({ ...own, isEarlier: true }, 180, "balloon")).toEqual([
    "2 of 3 failed by day 60; one in ten would by day 38.",
    words.earlier(180),
  ]);
  const later = adviceSentences({ ...own, isEarlier: false }, 30, "balloon");
  expect(later).toEqual(["2 of 3 failed by day 60.", words.notEarlier]);
  expect(adviceSentences({ ...own, isEarlier: false }, null, "balloon")[1]).toBe(words.noneAgreed);
  const clinic = { is: "clinic", devices: 1, failures: 1, day: 70 } as const;
  expect(adviceSentences({ ...clinic, isEarlier: true }, 180, "balloon").join(" ")).toMatch(
    /1 of 1 device failed.*day 70/,
  );
  expect(adviceSentences({ ...clinic, isEarlier: false }, 60, "balloon").join(" ")).not.toMatch(/70/);
  expect(adviceSentences({ is: "too few", failures: 3, devices: 15 }, 180, "balloon")[0]).toMatch(/3 of 15 devices/);
});

test("Today names somebody whose balloons burst at 40 days where others last 180, and nobody else", async () => {
  const people = Array.from({ length: 12 }, (_, i) => `P-${i}`);
  const change = (ID: string, from: number, days: number, failed: boolean): RowOf => ({
    ...{ ID, Access: "G", "Held by": "balloon", In: from, Out: from + days, "Days in place": days },
    ...{
      Reason: failed ? "balloon burst" : "planned",
      Failed: failed ? "yes" : "no",
      Unplanned: failed ? "yes" : "no",
    },
  });
  const changes = people.flatMap((id, i) =>
    i === 0
      ? Array.from({ length: 12 }, (_, k) => change(id, TODAY - 40 * (k + 2), 40, true))
      : [1, 2, 3].map((k) => change(id, TODAY - 190 * k - 20, i === 1 && k === 1 ? 150 : 180, i === 1 && k === 1)),
  );
  const tubes = people.map((ID): RowOf => ({
    ...{ ID, Status: "active", Access: "G", "Held by": "balloon", "Device in": TODAY - 20, "Change due": TODAY + 160 },
  }));
  const workbook = fakeWorkbook(caseloadBook({ tubes, changes }));
  const fast = await wearsFast(workbook, await workbook.overview(), TODAY);
  expect(fast.map(({ person }) => person)).toEqual(["p-0"]);
  expect(fast[0]!.says.join(" ")).toMatch(/^12 of 13 failed by day 40; one in ten would by day \d+\. .*180 days/);
});
