/** Removing the invented people, on a workbook in memory: who goes, who stays, what is said first. */
import { beforeEach, describe, expect, it } from "vitest";
import { inventedCaseload } from "../../../src/caseload/invented/index";
import { INVENTED_ON, sheetNames, tableNames, type RowsTable } from "../../../src/caseload/names";
import type { Header } from "../../../src/caseload/headers";
import type { CaseloadRow } from "../../../src/caseload/rows";
import { removeInvented, type RemovePlan } from "../../../taskpane/actions/set-up/remove-invented";
import { areaAddress } from "../../../taskpane/workbook/area";
import type { CellDescription, SheetDescription } from "../../../taskpane/workbook/fake/description";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import type { Cell } from "../../../src/worksheet/cell";
import type { Workbook } from "../../../taskpane/workbook/port";
import { day } from "../../../src/worksheet/dates";
import { headers } from "../caseload-jobs/book";

const INVENTED = day("2026-11-26");
const HEADER_ROW = 3;
/** Columns that formulas fill; a few are enough to tell them from typed ones. */
const COMPUTED = new Set(["To do", "Change due", "Age", "Days in place", "State", "Loss mL"]);

type Rows = Record<RowsTable, CaseloadRow[]>;

function sheet(key: RowsTable, rows: readonly CaseloadRow[]): SheetDescription {
  const columns = headers[key];
  const cell = (row: CaseloadRow, header: string): Cell | CellDescription =>
    COMPUTED.has(header) ? { formula: '="worked out"', value: "worked out" } : (row[header as Header] ?? null);
  return {
    name: sheetNames[key],
    rows: [[], [], [], [...columns], ...rows.map((row) => columns.map((header) => cell(row, header)))],
    tables: [
      {
        name: tableNames[key],
        area: areaAddress({ top: HEADER_ROW, left: 0, rows: rows.length + 1, columns: columns.length }),
      },
    ],
  };
}

function caseload(rows: Rows, marked: Cell = INVENTED): Workbook {
  return fakeWorkbook({
    sheets: [
      sheet("tubes", rows.tubes),
      sheet("checks", rows.checks),
      sheet("changes", rows.changes),
      { name: sheetNames.settings, rows: [["Invented on", marked]] },
    ],
    names: [{ name: INVENTED_ON, refersTo: `='${sheetNames.settings}'!$B$1`, value: marked }],
  });
}

const quiet = { report: () => undefined, signal: new AbortController().signal };

async function planned(workbook: Workbook, withChanged = false): Promise<RemovePlan> {
  const plan = removeInvented.plan(await removeInvented.survey(workbook, undefined), { withChanged });
  if (plan.outcome === "problem") throw new Error(plan.sentence);
  return plan;
}

/** Identifiers that stand in a table now. */
async function identifiers(workbook: Workbook, key: RowsTable): Promise<unknown[]> {
  const { values } = await workbook.read({ table: tableNames[key] }, ["values"]);
  return values!.slice(1).map((row) => row[0]);
}

const mark = async (workbook: Workbook) =>
  (await workbook.overview()).names.find(({ name }) => name === INVENTED_ON)?.value;

let rows: Rows;
beforeEach(() => {
  const { tubes, checks, changes } = inventedCaseload(INVENTED);
  rows = { tubes: [...tubes], checks: [...checks], changes: [...changes] };
});

describe("a caseload as it was set up", () => {
  it("loses every invented row and its mark", async () => {
    const workbook = caseload(rows);
    const plan = await planned(workbook);
    const all = rows.tubes.length + rows.checks.length + rows.changes.length;
    // 48 people in 50 rows, as the shared template asks.
    expect(rows.tubes).toHaveLength(50);
    expect(plan.removed).toBe(all);
    expect(plan.changed).toEqual([]);
    expect(plan.says).toEqual([
      `Removes ${all.toLocaleString("en-GB")} invented rows: 50 in Tubes in use, ${rows.checks.length} in Balloon checks and ${rows.changes.length} in Changes.`,
      "No other row is in these sheets.",
      "The sheets are no longer marked as invented.",
    ]);
    const receipt = await workbook.apply(plan.change, quiet);
    expect(receipt.outcome, receipt.sentence).toBe("done");
    for (const key of ["tubes", "checks", "changes"] as const) {
      expect((await identifiers(workbook, key)).filter((id) => id !== null)).toEqual([]);
    }
    expect(await mark(workbook)).toBeNull();
    expect(removeInvented.afterwards(plan, receipt).sentences).toEqual([
      `Removed ${all.toLocaleString("en-GB")} invented rows.`,
      "The sheets are no longer marked as invented.",
    ]);
  });

  it("has them all back when it is taken back", async () => {
    const workbook = caseload(rows);
    const receipt = await workbook.apply((await planned(workbook)).change, quiet);
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(await identifiers(workbook, "tubes")).toEqual(rows.tubes.map(({ ID }) => ID));
    expect(await identifiers(workbook, "checks")).toEqual(rows.checks.map(({ ID }) => ID));
    expect(await mark(workbook)).toBe(INVENTED);
  });
});

describe("a caseload in which a clinic has begun to work", () => {
  /** Somebody real by the clinic's count, with an identifier that an invented person has too. */
  const real = { ID: "D-001", Status: "active", Born: day("1960-02-03"), Access: "G", "Device in": day("2026-10-01") };

  it("keeps what the clinic added, even under an invented identifier", async () => {
    rows.tubes.splice(10, 0, { ...real, ID: "K-77" });
    rows.tubes.push(real);
    rows.checks.push({ ID: "K-77", "Checked on": day("2026-11-20"), "Out mL": 4, "Put in mL": 5 });
    rows.checks.push({ ID: "D-001", "Checked on": day("2026-11-21"), "Out mL": 4, "Put in mL": 5 });
    const workbook = caseload(rows);
    const plan = await planned(workbook);
    expect(plan.says[1]).toBe("4 rows that your clinic added stay: 2 in Tubes in use and 2 in Balloon checks.");
    expect((await workbook.apply(plan.change, quiet)).outcome).toBe("done");
    expect(await identifiers(workbook, "tubes")).toEqual(["K-77", "D-001"]);
    expect(await identifiers(workbook, "checks")).toEqual(["K-77", "D-001"]);
    expect(await mark(workbook)).toBeNull();
  });

  it("names rows that were changed first, keeps them and the mark unless they are asked for", async () => {
    const at = rows.tubes.findIndex(({ ID }) => ID === "D-005");
    rows.tubes[at] = { ...rows.tubes[at]!, "Size Fr": 12.5 };
    rows.checks.push({ ID: "D-005", "Checked on": day("2026-11-25"), "Out mL": 3.3, "Put in mL": 5 });
    const workbook = caseload(rows);
    const plan = await planned(workbook);
    // Headers stand in sheet row 4, so the first row of data is row 5.
    const [tubeRow, checkRow] = [at + 5, rows.checks.length - 1 + 5];
    expect(plan.says[0]).toBe(
      `2 rows of invented people were changed or added since (Tubes in use row ${tubeRow}; Balloon checks row ${checkRow}): they stay.`,
    );
    expect(plan.changed.map(({ label }) => label)).toEqual([
      `Tubes in use, row ${tubeRow}`,
      `Balloon checks, row ${checkRow}`,
    ]);
    expect(plan.says.at(-1)).toBe("The sheets stay marked as invented, because invented rows stay.");
    expect((await workbook.apply(plan.change, quiet)).outcome).toBe("done");
    expect(await identifiers(workbook, "tubes")).toEqual(["D-005"]);
    expect(await identifiers(workbook, "checks")).toEqual(["D-005"]);
    expect(await mark(workbook)).toBe(INVENTED);
  });

  it("removes them too where that was asked for", async () => {
    const at = rows.tubes.findIndex(({ ID }) => ID === "D-005");
    rows.tubes[at] = { ...rows.tubes[at]!, "Size Fr": 12.5 };
    rows.tubes.push({ ...real, ID: "K-77" });
    const workbook = caseload(rows);
    const plan = await planned(workbook, true);
    expect(plan.says[0]).toContain("it goes too");
    expect((await workbook.apply(plan.change, quiet)).outcome).toBe("done");
    expect(await identifiers(workbook, "tubes")).toEqual(["K-77"]);
    expect(await mark(workbook)).toBeNull();
  });

  it("does nothing when the list was sorted or changed since the preview", async () => {
    const workbook = caseload(rows);
    const plan = await planned(workbook);
    const change = { kind: "changeRow", table: tableNames.tubes, row: 3, values: { ID: "K-1" } } as const;
    expect((await workbook.apply({ steps: [change], expects: [] }, quiet)).outcome).toBe("done");
    const receipt = await workbook.apply(plan.change, quiet);
    expect(receipt.outcome).toBe("refused");
    expect(await identifiers(workbook, "tubes")).toHaveLength(50);
  });
});

describe("what is not a caseload with invented people", () => {
  it.each([
    ["a caseload that is not marked", () => caseload(rows, null), "not marked as invented"],
    ["another workbook", () => fakeWorkbook({ sheets: [{ name: "S" }] }), "no ready-made caseload"],
  ])("is left alone: %s", async (_, make, sentence) => {
    const plan = removeInvented.plan(await removeInvented.survey(make(), undefined), { withChanged: true });
    expect(plan.outcome).toBe("problem");
    if (plan.outcome === "problem") expect(plan.sentence).toContain(sentence);
  });

  it("loses its mark when no invented row is left", async () => {
    rows = {
      tubes: [{ ID: "K-1", Status: "active", Born: day("1960-02-03"), Access: "G", "Device in": day("2026-10-01") }],
      checks: [{}],
      changes: [{}],
    };
    const workbook = caseload(rows);
    const plan = await planned(workbook);
    expect(plan.says[0]).toBe("No invented row is left as it was invented: none is removed.");
    expect((await workbook.apply(plan.change, quiet)).outcome).toBe("done");
    expect(await identifiers(workbook, "tubes")).toEqual(["K-1"]);
    expect(await mark(workbook)).toBeNull();
  });
});
