/**
 * What Record a check says before it is recorded, and what the caseload's own columns say of the same row afterwards:
 * two derivations of one rule, over the invented people and every kind of reading.
 */
import { expect, test } from "vitest";
import { inventedCaseload } from "../../../src/caseload/invented/index";
import { settings } from "../../../src/settings/index";
import { day } from "../../../src/worksheet/dates";
import { whoIsMeant } from "../../../taskpane/actions/caseload/identity";
import { planCheck, startOfCheck } from "../../../taskpane/actions/record-check";
import { textIn } from "../../../taskpane/actions/caseload/read";
import { tubeOut } from "../../../taskpane/actions/tube-out";
import { workOut } from "../../examples/caseload/worked-rows";
import { caseloadOf } from "./in-memory";

const TODAY = day("2026-11-26");
const sight = { asOf: TODAY, groups: ["fit", "plan", "spare"] } as const;
const rows = inventedCaseload(TODAY);
const names = Object.fromEntries(settings.map(({ name, default: usual }) => [name, usual]));

const TYPED = ["ID", "Access", "Checked on", "Out mL", "Looked", "Put in mL"];
const worked = workOut(rows, sight);
const caseload = caseloadOf({ tubes: worked.tubes, checks: worked.checks, changes: worked.changes, names });
/** Rows that can be told apart, each with who is meant. */
const clear = caseload.tubes.rows.flatMap((row) => {
  const meant = whoIsMeant(caseload.tubes, textIn(row, "ID"));
  const device = meant.devices.find((one) => one.row === row);
  return device && meant.doubt === null ? [{ meant, device }] : [];
});
const computed = { row: new Set<string>(), check: new Set<string>() };

/** The planned check of everyone, and the row that would stand in the log. */
function checksOfAll(out: string, looked: string, putIn: string) {
  const form = { ...startOfCheck(TODAY), out, looked, putIn };
  return clear.flatMap(({ meant, device }) => {
    const plan = planCheck({ caseload, meant, device, computed }, form, TODAY);
    const step = plan.outcome === "planned" ? plan.change.steps[0] : undefined;
    if (plan.outcome !== "planned" || step?.kind !== "appendRows") return [];
    const typed = Object.entries(step.rows[0]!).filter(([header]) => TYPED.includes(header));
    return [{ id: device.id, meaning: plan.meaning, row: Object.fromEntries(typed) }];
  });
}

test("a check reads as the sheet will read it; where this form gives no word, it holds one back", () => {
  const readings = [
    ...["", "milky, yellow or like feed", "nothing came", "cloudy"].map((looked) => [looked, "5"] as const),
    ...["", "0", "2", "7", "12"].map((putIn) => ["clear", putIn] as const),
  ];
  const differ: unknown[] = [];
  const words = new Set<unknown>();
  const heldBack = new Set<string>();
  for (const out of ["", "0", "1", "2.5", "4", "4.5", "5", "7", "12"])
    for (const [looked, putIn] of readings) {
      const planned = checksOfAll(out, looked, putIn);
      const after = workOut({ ...rows, checks: [...rows.checks, ...planned.map(({ row }) => row)] }, sight);
      const added = after.checks.slice(rows.checks.length);
      for (const [i, { id, meaning }] of planned.entries()) {
        const { state, expected, loss, daysSinceFill, lowInARow } = meaning;
        const theirs = added[i]!;
        const figures = ["Expected mL", "Loss mL", "Days since fill"].map((header) => theirs[header]);
        const isSame = JSON.stringify([expected ?? "", loss ?? "", daysSinceFill ?? ""]) === JSON.stringify(figures);
        const low = theirs["Low in a row"];
        // The sheet counts to three.
        const isSameRow = low === "" || state === null || low === Math.min(lowInARow, 3);
        words.add(theirs.State);
        if (state === null) heldBack.add(id);
        // A label such as "5cc" this form reads and the sheet does not: then it is the louder of the two.
        if (state === "above the label" && theirs["Label mL"] === "") continue;
        if (!isSame || !isSameRow || (state !== null && state !== theirs.State))
          differ.push([id, out, looked, meaning, theirs]);
      }
    }
  expect(differ).toEqual([]);
  // Kinds typed as PEG, RIG or the like with a fill; more put in last time than the label allows.
  expect([...heldBack].sort()).toEqual(["D-009", "D-010", "D-012", "D-024"]);
  expect(words.size).toBeGreaterThan(6);
});

test("Tube out speaks of the spare only where the sheet's own words leave nothing else", () => {
  const word = (value: unknown) => String(value).trim().toLowerCase();
  let spoken = 0;
  for (const { meant, device } of clear) {
    const { first, more } = tubeOut(caseload, meant, device, TODAY);
    const row = worked.tubes[device.row.index]!;
    const mayGoBack =
      row.Tract === "mature by weeks" &&
      row["First tube"] === "no" &&
      word(row["Held by"]) === "balloon" &&
      word(row.Access) === "g" &&
      word(row["Slow healing"]) === "no";
    const speaks = [...first, ...more].join(" ").includes("put in the spare");
    if (speaks) spoken += 1;
    expect(speaks && !mayGoBack, device.id).toBe(false);
  }
  expect(clear.length).toBeGreaterThan(40);
  expect(spoken).toBeGreaterThan(5);
});
