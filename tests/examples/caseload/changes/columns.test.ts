/** Changes: a device that has come out. Words worked out by hand from what the shared template says of them. */
import { describe, expect, it } from "vitest";
import { day } from "../../../../src/worksheet/dates";
import { AS_OF, worked, type Cells } from "../one-row";

describe("Changes", () => {
  const change = (cells: Cells) => worked({ changes: [{ ID: "T-1", Access: "G", ...cells }] }).changes[0]!;
  it("counts days, failures and unplanned changes", () => {
    const row = change({ In: day("2026-01-31"), Out: day("2026-03-01"), Reason: "Balloon burst" });
    // February 2026 has 28 days.
    expect([row["Days in place"], row["Failed"], row["Unplanned"]]).toEqual([29, "yes", "yes"]);
    const planned = change({ In: AS_OF, Out: AS_OF - 1, Reason: "planned" });
    expect([planned["Days in place"], planned["Failed"], planned["Unplanned"]]).toEqual(["", "no", "no"]);
    expect(change({ Reason: "*" })["Failed"]).toBe("not known");
  });
});
