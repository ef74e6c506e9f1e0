/** Every mess of the shared template's list is in the invented caseload, whatever the day: looked for in the rows. */
import { describe, expect, it } from "vitest";
import { inventedCaseload } from "../../../src/caseload/invented";
import type { Header } from "../../../src/caseload/headers";
import type { CaseloadRow } from "../../../src/caseload/rows";
import { dateOf, day, someDays } from "./days";

const isDay = (cell: unknown): cell is number => typeof cell === "number";
const months = (count: number) => count * 30.4;

describe.each(someDays)("the messes of the invented caseload on %s", (iso) => {
  const asOf = day(iso);
  const { tubes, checks, changes } = inventedCaseload(asOf);
  const active = tubes.filter((row) => row.Status === "active");
  const withText = (header: Header<"tubes">, text: string) => tubes.filter((row) => row[header] === text);
  const one = (row: readonly CaseloadRow[]): CaseloadRow => {
    expect(row).toHaveLength(1);
    return row[0]!;
  };
  const checksOf = (id: unknown) => checks.filter((row) => row.ID === id);
  const losses = (id: unknown) => checksOf(id).map((row) => Math.round(10 * (5 - Number(row["Out mL"]))) / 10);
  const olderThan = (row: CaseloadRow, days: number) =>
    isDay(row["Device in"]) && row["Device in"] <= asOf && asOf - row["Device in"] > days;

  it("dates: blank, text, 2052, before the opening, 31 August, 29 February, yesterday", () => {
    one(tubes.filter((row) => (row["Device in"] ?? "") === ""));
    one(withText("Device in", "3/4/24"));
    expect(dateOf(Number(one(tubes.filter((row) => Number(row["Device in"]) > asOf))["Device in"])).year).toBe(2052);
    one(tubes.filter((row) => isDay(row["Device in"]) && row["Device in"] < Number(row["Stoma made"])));
    const on = (month: number, dayOfMonth: number, row: CaseloadRow) => {
      if (!isDay(row["Device in"]) || row["Own interval months"] === undefined) return false;
      const date = dateOf(row["Device in"]);
      return date.month === month && date.day === dayOfMonth;
    };
    expect(one(tubes.filter((row) => on(8, 31, row)))["Own interval months"]).toBe(6);
    expect(one(tubes.filter((row) => on(2, 29, row)))["Own interval months"]).toBe(60);
    one(tubes.filter((row) => row["Stoma made"] === asOf - 1));
  });

  it("kinds: other words, a bumper with a fill and a check, a gastrojejunal tube that a carer changes", () => {
    for (const word of ["PEG", "button", "RIG", "BGT "]) one(withText("Held by", word));
    const filled = one(tubes.filter((row) => row["Held by"] === "bumper" && row["Fill mL"] === 5));
    expect(checksOf(filled.ID).length).toBeGreaterThan(0);
    one(tubes.filter((row) => row.Access !== "G" && row["Changed by"] === "carer"));
    expect(tubes.filter((row) => row["Changed by"] === "carer" && row["Held by"] === "bumper")).toEqual([]);
  });

  it("sizes, lengths and labels in many ways", () => {
    for (const text of ["14FR", "CH 14", "14,0", "14G", "12/14"]) one(withText("Size Fr", text));
    one(tubes.filter((row) => row["Size Fr"] === 4.7));
    one(tubes.filter((row) => row["Length cm"] === 23));
    for (const text of ["3-5 mL", "5cc"]) one(withText("Most mL", text));
  });

  it("a steady leaker: 0.3 mL a week, then 0.7 twice", () => {
    one(active.filter((row) => losses(row.ID).join() === "0.3,0.3,0.3,0.3,0.3,0.7,0.7" && row["Fill mL"] === 5));
  });

  it("six perfect checks, and a burst two days later", () => {
    const burst = changes.filter((row) => {
      const own = checksOf(row.ID).filter((check) => Number(check["Checked on"]) <= Number(row.Out));
      const last = own.slice(-6);
      return (
        row.Reason === "balloon burst" &&
        last.length === 6 &&
        last.every((check) => check["Out mL"] === row["Fill mL"] && check["Put in mL"] === row["Fill mL"]) &&
        Number(row.Out) - Number(last.at(-1)!["Checked on"]) === 2
      );
    });
    expect(one(tubes.filter((row) => row.ID === one(burst).ID))["Device in"]).toBe(one(burst).Out);
  });

  it("over-filled, 6 in 5: low against what was put in, not against the label", () => {
    const after = checks.filter((row, i) => {
      const before = checks
        .slice(0, i)
        .filter((check) => check.ID === row.ID)
        .at(-1);
      return before?.["Put in mL"] === 6 && 6 - Number(row["Out mL"]) > 0.5 && Number(row["Out mL"]) >= 5;
    });
    expect(one(tubes.filter((row) => row.ID === one(after).ID))["Most mL"]).toBe(5);
  });

  it("other balloons: 4 agreed of 5, nothing out, out not written, too early, twice a day, a card, nine weeks, milky", () => {
    expect(tubes.filter((row) => row["Fill mL"] === 4 && row["Most mL"] === 5).length).toBeGreaterThan(0);
    one(checks.filter((row) => row["Out mL"] === 0));
    one(checks.filter((row) => row["Out mL"] === null && row["Put in mL"] === 5));
    const made = (row: CaseloadRow) => Number(tubes.find((tube) => tube.ID === row.ID)!["Stoma made"]);
    one(checks.filter((row) => Number(row["Checked on"]) - made(row) === 10));
    const sameDay = checks.filter((row) =>
      checks.some(
        (other) =>
          other !== row &&
          other.ID === row.ID &&
          other["Checked on"] === row["Checked on"] &&
          other.Access === row.Access,
      ),
    );
    expect(sameDay).toHaveLength(2);
    const card = one(tubes.filter((row) => row["Checked by"] === "carer, keeps card" && row.Status === "active"));
    expect(checksOf(card.ID).every((row) => row["How known"] === "card")).toBe(true);
    const gaps = checks.flatMap((row, i) => {
      const next = checks.slice(i + 1).find((check) => check.ID === row.ID);
      return next ? [Number(next["Checked on"]) - Number(row["Checked on"])] : [];
    });
    expect(gaps.filter((gap) => gap >= 63)).toEqual([63]);
    one(checks.filter((row) => row.Looked === "milky, yellow or like feed"));
  });

  it("fit: an infant 18% heavier, sitting below lying, 2 mm play at 14 months, a mark 2 cm out", () => {
    const heavier = tubes.filter((row) => Number(row["Weight kg"]) / Number(row["Weight then kg"]) > 1.1);
    const infant = one(heavier);
    expect(Number(infant["Weight kg"]) / Number(infant["Weight then kg"])).toBeCloseTo(1.18, 2);
    expect(asOf - Number(infant.Born)).toBeLessThan(366);
    const slip = one(tubes.filter((row) => Number(row["Sitting cm"]) < Number(row["Lying cm"])));
    expect([slip["Lying cm"], slip["Sitting cm"]]).toEqual([2.1, 1.8]);
    const tight = one(tubes.filter((row) => row["Play mm"] === 2));
    expect(tight["Held by"]).toBe("bumper");
    expect(Math.round((asOf - Number(tight["Device in"])) / 30.44)).toBe(14);
    one(tubes.filter((row) => Number(row["Mark then cm"]) - Number(row["Mark now cm"]) === 2));
  });

  /* Due after 3 months for balloons, by 24 for a child's bumper: settings Int_Balloon_G, Lim_Bumper_Child. */
  it("plans: overdue booked, not booked, in hospital; missed; own interval; date set by the placing team", () => {
    const overdue = active.filter((row) => row["Held by"] === "balloon" && olderThan(row, months(3) + 2));
    expect(overdue.some((row) => Number(row["Booked for"]) > asOf)).toBe(true);
    expect(overdue.some((row) => row["Booked for"] === undefined)).toBe(true);
    expect(overdue.some((row) => isDay(row["Booked for"]) && row["Booked for"] < asOf)).toBe(true);
    one(tubes.filter((row) => row.Status === "in hospital" && row["Held by"] === "bumper" && olderThan(row, 731)));
    one(tubes.filter((row) => row["Own interval months"] === 2));
    expect(tubes.filter((row) => Number(row["Date set by placing team"]) > asOf).length).toBeGreaterThan(0);
    expect(active.some((row) => row["Held by"] === "catheter" && olderThan(row, 7))).toBe(true);
  });

  it("wear: nine devices in two years beside two that were short-lived", () => {
    const past = (id: string) => changes.filter((row) => row.ID === id && asOf - Number(row.In) <= 731);
    expect(past("D-041")).toHaveLength(9);
    expect(past("D-042").map((row) => Number(row.Out) - Number(row.In))).toEqual([26, 19]);
  });

  it("spares: expired, smaller, none, expiring before the change", () => {
    one(tubes.filter((row) => Number(row["Spare expires"]) < asOf));
    one(withText("Spare at home", "smaller"));
    expect(active.filter((row) => row["Spare at home"] === "none" && row.Access === "G").length).toBeGreaterThan(0);
    const early = active.filter(
      (row) =>
        Number(row["Spare expires"]) > asOf && Number(row["Spare expires"]) < Number(row["Device in"]) + months(3),
    );
    expect(early.length).toBeGreaterThan(0);
  });

  it("lots: texts that look like dates and numbers, one lot in many places, nine blank", () => {
    for (const text of ["03-04", "1E5"]) one(withText("Lot", text));
    expect(withText("Lot", "B2291")).toHaveLength(5);
    expect(withText("Spare lot", "B2291")).toHaveLength(2);
    const past = changes.filter((row) => row.Lot === "B2291");
    expect(past).toHaveLength(3);
    /* A lot is one item: the same length, and 14 Fr however it was typed. */
    const items = [...withText("Lot", "B2291"), ...past].map((row) => [
      row["Length cm"],
      parseInt(String(row["Size Fr"])),
    ]);
    expect(new Set(items.map(String))).toEqual(new Set(["2.3,14"]));
    expect(tubes.filter((row) => (row.Lot ?? "") === "")).toHaveLength(9);
  });

  it("identifiers twice: rightly with G and J, wrongly with G, and spelt in two ways", () => {
    const accesses = (id: string) => tubes.filter((row) => row.ID === id).map((row) => row.Access);
    expect(accesses("D-045").sort()).toEqual(["G", "J"]);
    expect(accesses("D-046")).toEqual(["G", "G"]);
    expect([...accesses("D-017"), ...accesses("d-017 ")]).toEqual(["G", "G"]);
  });

  it("texts: notes that look like formulas, a long note, answers that are none", () => {
    for (const start of ["=", "+44", "@"]) one(tubes.filter((row) => String(row.Notes ?? "").startsWith(start)));
    expect(tubes.filter((row) => String(row.Notes ?? "").length === 600)).toHaveLength(1);
    for (const text of ["n/k", "?", "see letter"]) one(tubes.filter((row) => Object.values(row).includes(text)));
  });
});
