/**
 * How loud the invented caseload is: like a caseload of which most people are seen to. At most a fifth of the active
 * rows ask for a call today (what the work on this list set itself); more have nothing due, or a booking, than ask for
 * anything today or soon. The others show what a list can lack: nearly one in three has something to put right.
 */
import { describe, expect, it } from "vitest";
import { inventedCaseload } from "../../../src/caseload/invented";
import { urgencies, urgencyOf, type UrgencyClass } from "../../../src/caseload/urgency";
import { workOut } from "../caseload/worked-rows";
import { day, someDays } from "./days";

describe.each(someDays)("the invented caseload on %s", (iso) => {
  const asOf = day(iso);
  const { tubes } = workOut(inventedCaseload(asOf), { asOf, groups: ["fit", "plan", "spare"] });
  const active = tubes.filter((row) => row["Status"] === "active");
  const asking = (...classes: readonly UrgencyClass[]) =>
    active.filter((row) => classes.includes(urgencyOf(row["To do"] as string)!.asks)).length;

  it("asks for a call today on at most a fifth of the active rows, and on some", () => {
    expect(asking("act")).toBeGreaterThan(2);
    expect(asking("act") / active.length).toBeLessThanOrEqual(0.2);
  });
  it("has nothing due, or a booking, on more rows than ask for anything today or soon, and on most that lack nothing", () => {
    const quiet = asking("arranged", "quiet");
    expect(quiet).toBeGreaterThan(asking("act", "soon"));
    expect(quiet / (active.length - asking("missing"))).toBeGreaterThan(0.6);
  });
  it("says nothing but words of the order of urgency, and its key is their place", () => {
    for (const row of tubes) {
      const word = urgencyOf(row["To do"] as string)?.word;
      expect(urgencies[(row["Urgency"] as number) - 1]?.word, String(row["ID"])).toBe(word);
    }
  });
});
