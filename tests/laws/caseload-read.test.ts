/**
 * Nothing is asked of people that nothing reads: every typed column is read by a formula or a page, or says that it is
 * for them only; every setting is read by a formula of the caseload or by the pane.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { BookDescription } from "../../src/caseload/book";
import { caseloadBook } from "../../src/caseload/index";
import { rowsTables, type RowsTable } from "../../src/caseload/names";
import { boundColumns, columnNames, columnsOf } from "../../src/caseload/tables";
import { FOR_YOU_ONLY } from "../../src/caseload/typed";
import { inTable } from "../../src/columns/formula";
import { clinicSettings } from "../../src/settings/index";
import { AS_OF, ALL } from "../examples/caseload/one-row";

const sources = (folder: string): string =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => readFileSync(join(entry.parentPath, entry.name), "utf8"))
    .join("\n");
const ACTIONS = join(__dirname, "../../taskpane/actions");
const actions = sources(ACTIONS);

/** Read by a page only, with the file that reads it. */
const readByPages: Readonly<Record<RowsTable, Readonly<Record<string, string>>>> = {
  tubes: { Lot: "record-change/plan.ts", Notes: "tube-out/facts.ts" },
  checks: {},
  changes: {
    "New held by": "tube-out/middle.ts",
    "Held by": "find-lot/survey.ts",
    "Size Fr": "find-lot/survey.ts",
    "Length cm": "find-lot/survey.ts",
    Lot: "find-lot/survey.ts",
    "New lot": "find-lot/survey.ts",
    Where: "service-figures/index.ts",
    "Unplanned visit": "service-figures/index.ts",
    Nights: "service-figures/index.ts",
    "Position confirmed by": "service-figures/index.ts",
  },
};

describe.each(rowsTables)("typed columns of %s", (table) => {
  const columns = columnsOf(table, ALL);
  const bound = boundColumns(columns);
  const read = new Set([
    ...bound.flatMap(({ formula }) => (formula ?? []).flatMap((part) => (typeof part === "string" ? [] : part.header))),
    ...columnNames.filter((name) => name.table === table).map(({ header }) => header),
  ]);
  const typed = columns.filter(({ kind }) => kind !== "computed");
  it.each(typed.map((column) => [column.header, column] as const))(
    "%s is read, or says that it is not",
    (header, one) => {
      const page = readByPages[table][header];
      if (page !== undefined) expect(readFileSync(join(ACTIONS, page), "utf8")).toContain(`"${header}"`);
      expect(one.isForYouOnly ?? false).toBe(!read.has(header) && page === undefined);
      const hint = bound.find((column) => column.header === header)!.validation!.hint ?? "";
      expect(hint.includes(FOR_YOU_ONLY)).toBe(one.isForYouOnly ?? false);
    },
  );
  it("lists no page for a column that a formula reads already", () => {
    for (const header of Object.keys(readByPages[table])) expect(read.has(header)).toBe(false);
  });
});

describe("settings", () => {
  const book: BookDescription = caseloadBook({ asOf: AS_OF, groups: ALL, people: "none" });
  const formulas = book.sheets
    .flatMap(({ table, cells }) => [
      ...(table?.columns ?? []).flatMap(({ formula }) => (formula ? [inTable(formula, table!.name)] : [])),
      // its own note beside a setting only says whether it is usual
      ...cells.flatMap(({ formula }) => (formula && !formula.includes("not usual") ? [formula] : [])),
    ])
    .join("\n");
  const recipes = sources(join(__dirname, "../../src/columns"));
  it.each(clinicSettings.map(({ name }) => name))("%s is read by a rule or a text", (name) => {
    const isRead = new RegExp(`\\b${name}\\b`);
    expect([formulas, recipes, actions].some((text) => isRead.test(text))).toBe(true);
  });
});
