/** Carries a planned recording out on a workbook in memory, and looks at what stands there then. */
import { whoIsMeant } from "../../../taskpane/actions/caseload/identity";
import { readCaseload, type Caseload } from "../../../taskpane/actions/caseload/read";
import type { Faulty } from "../../../taskpane/actions/caseload/typed";
import type { Recording } from "../../../taskpane/actions/caseload/write";
import { fakeWorkbook, type FakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import type { Change, Value } from "../../../taskpane/workbook/port";
import { caseloadBook, type Parts } from "./book";

export async function open(parts: Parts, id: string) {
  const workbook = fakeWorkbook(caseloadBook(parts));
  const caseload = await read(workbook);
  const meant = whoIsMeant(caseload.tubes, id);
  return { workbook, caseload, meant, device: meant.devices[0]! };
}

export async function read(workbook: FakeWorkbook): Promise<Caseload> {
  const found = await readCaseload(workbook);
  if (found.is !== "caseload") throw new Error(found.sentence);
  return found;
}

/** The plan, or an error that names what was wrong with the form. */
export function planned<P extends Recording>(plan: P | Faulty): P {
  if (plan.outcome === "faulty") throw new Error(JSON.stringify(plan.faults));
  return plan;
}

export const faultsOf = (plan: Recording | Faulty): readonly string[] =>
  plan.outcome === "faulty" ? plan.faults.map(({ field, sentence }) => `${field}: ${sentence}`) : [];

export const apply = (workbook: FakeWorkbook, change: Change) =>
  workbook.apply(change, { report: () => undefined, signal: new AbortController().signal });

/** Rows of a table with what is not blank in them. */
export async function rowsIn(workbook: FakeWorkbook, table: "tubes" | "checks" | "changes") {
  const caseload = await read(workbook);
  const { columns, rows } = caseload[table];
  return rows.map((row) => {
    const filled = columns.map((header) => [header, row.values.get(header.toLowerCase()) ?? null] as const);
    return Object.fromEntries(filled.filter(([, value]) => value !== null)) as Record<string, Value>;
  });
}

/** Every cell, formula and number format of every sheet: to see that a taking back leaves nothing behind. */
export async function everything(workbook: FakeWorkbook): Promise<string> {
  const { sheets, tables } = await workbook.overview();
  const blocks = await Promise.all(
    sheets.map(({ id }) =>
      workbook.read({ sheet: id, area: { top: 0, left: 0, rows: 12, columns: 70 } }, ["values", "formulas", "formats"]),
    ),
  );
  return JSON.stringify([tables, blocks]);
}
