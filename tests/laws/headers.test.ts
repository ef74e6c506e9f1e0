/**
 * Headers are types. The columns of the caseload are those of `headers`, in their order; whoever asks for another does not
 * compile, which the lines below hold: TypeScript reports a `@ts-expect-error` that expects nothing.
 */
import { describe, expect, expectTypeOf, test } from "vitest";
import { DATE, type CaseloadColumn, type Slots } from "../../src/caseload/column";
import { hiddenHeaders, shownHeaders, type Header, type ShownHeader } from "../../src/caseload/headers";
import { isBlank, joined, sentence } from "../../src/caseload/phrases";
import { computed, hidden, shown } from "../../src/caseload/shown";
import { formula } from "../../src/columns/formula";
import { rowsTables } from "../../src/caseload/names";
import type { CaseloadRow as TypedRow } from "../../src/caseload/rows";
import { columnNames, columnsOf } from "../../src/caseload/tables";
import type { lists } from "../../taskpane/actions/caseload/lists";
import { columnOf, textIn, valueIn, type Caseload, type CaseloadRow } from "../../taskpane/actions/caseload/read";
import type { requiredHeaders } from "../../taskpane/actions/caseload/recognise";
import { dateHeaders, stillSo, underHeaders } from "../../taskpane/actions/caseload/write";

const columns = (table: (typeof rowsTables)[number]) => columnsOf(table, ["fit", "plan", "spare"]);

describe.each(rowsTables)("the columns of %s", (table) => {
  test("that people see are those headers, in their order, and so are the hidden ones", () => {
    const named = (isHidden: boolean) =>
      columns(table)
        .filter((column) => (column.isHidden ?? false) === isHidden)
        .map(({ header }) => header);
    expect(named(false)).toEqual(shownHeaders[table]);
    expect([...named(true)].sort()).toEqual([...hiddenHeaders[table]].sort());
  });

  test("each header once", () => {
    const all = [...shownHeaders[table], ...hiddenHeaders[table]].map((header) => header.toLowerCase());
    expect(new Set(all).size).toBe(all.length);
  });

  test("formulas read columns of their own table only", () => {
    const own = new Set<string>([...shownHeaders[table], ...hiddenHeaders[table]]);
    const asked = new Set<string>();
    const cell: Slots = Object.assign((header: string) => (asked.add(header), [`[${header}]`]), {
      has: (header: string) => (asked.add(header), true),
    });
    for (const { formula, rules } of columns(table)) {
      formula?.(cell);
      if (typeof rules === "function") rules(cell);
    }
    expect([...asked].filter((header) => !own.has(header))).toEqual([]);
    expect(asked.size).toBeGreaterThan(1);
  });
});

test("names of whole columns stand for columns that are there", () => {
  for (const { table, header } of columnNames) expect(columns(table).map((one) => one.header)).toContain(header);
});

test("the pane's days are the columns that hold days", () => {
  const days = rowsTables.flatMap((table) =>
    columns(table)
      .filter(({ format, isHidden }) => format === DATE && !isHidden)
      .map(({ header }) => header),
  );
  // "Device in" of a check and "Change due" are days too, whatever table they stand in
  expect([...new Set(days)].sort()).toEqual([...dateHeaders].sort());
});

describe("a header that is none does not compile", () => {
  // Never run: what counts is that it compiles, and that each line below would not.
  const read = ({ tubes, checks, changes }: Caseload, row: CaseloadRow<"tubes">) => {
    valueIn(row, "Held by");
    // @ts-expect-error misspelt
    valueIn(row, "Held By");
    // @ts-expect-error of another table
    textIn(row, "Reason");
    textIn(changes.rows[0]!, "Reason");
    // @ts-expect-error of another table
    textIn(checks.rows[0]!, "Stoma made");
    // @ts-expect-error misspelt
    columnOf(tubes, "Device In");
    // @ts-expect-error a row of one table under the headers of another
    stillSo(checks, row, ["ID"]);
    // @ts-expect-error misspelt among others
    stillSo(tubes, row, ["ID", "Acces"]);
    underHeaders(tubes, { Status: "left", "Booked for": null });
    // @ts-expect-error misspelt
    underHeaders(tubes, { Status: "left", "Booked For": null });
    // @ts-expect-error of another table
    underHeaders(tubes, { "New held by": "balloon" });
  };
  const typed = () => {
    const row: TypedRow = { ID: "D-001", "Held by": "balloon" };
    // @ts-expect-error misspelt
    const wrong: TypedRow = { ID: "D-001", "Held By": "balloon" };
    // @ts-expect-error of another table
    const other: TypedRow<"checks"> = { ID: "D-001", "Held by": "balloon" };
    // @ts-expect-error misspelt, in what is read
    return [row["Size FR"], wrong, other];
  };

  const inFormulas = (cell: Slots): unknown => {
    const column: CaseloadColumn = { header: "Notes", kind: "typed", format: "@", width: 8 };
    // @ts-expect-error misspelt, of a column
    const wrong: CaseloadColumn = { header: "notes", kind: "typed", format: "@", width: 8 };
    // @ts-expect-error misspelt, where a column is asked for
    cell.has("Spare fr");
    // @ts-expect-error misspelt
    return [formula`IF(${cell("Held by")}="balloon",${cell("Fill ml")},"")`, column, wrong];
  };

  const asShown = () => {
    const ofNow = `IF(${isBlank("[@[Fill mL]]")},"",[@[Fill mL]]&[@Live])` as const;
    return [
      hidden("Live", ofNow),
      hidden("Live", `IF(${isBlank("[@[Fill mL]]")},"",IF([@Live]="live",[@[Fill mL]],""))`),
      // @ts-expect-error misspelt, in brackets of its own
      hidden("Live", `IF([@Live]="live",[@[Fill ml]],"")`),
      // @ts-expect-error misspelt, behind a phrase
      hidden("Live", `IF(${isBlank("[@[Fill mL]]")},"",[@live])`),
      // @ts-expect-error misspelt, in front of a phrase
      computed("Balloon", `IF([@live]="live",${isBlank("[@[Fill mL]]")},"")`, { format: DATE, width: 8 }),
      // @ts-expect-error misspelt, in a phrase
      hidden("Live", `IF(${isBlank("[@[Fill ml]]")},"",[@Live])`),
      // @ts-expect-error misspelt, in one of several sentences
      joined("[@[Gaps of dates]]", sentence("[@live]=1", "not read")),
      // @ts-expect-error misspelt, beside others
      joined("[@[Gaps of dates]]", "[@[Gaps of date]]"),
      // @ts-expect-error not closed
      shown("[@[Fill mL"),
      // @ts-expect-error misspelt, of the column itself
      hidden("live", "1"),
    ];
  };

  test("in readers, writers, rows and formulas", () => {
    expect([read, typed, inFormulas, asShown]).toHaveLength(4);
    expectTypeOf<"Device in">().toExtend<Header<"checks">>();
    expectTypeOf<"Stoma made">().not.toExtend<Header<"checks">>();
    expectTypeOf<"Urgency">().not.toExtend<ShownHeader>();
    expectTypeOf<keyof typeof lists>().toExtend<ShownHeader>();
    expectTypeOf<(typeof requiredHeaders)["checks"][number]>().toExtend<ShownHeader<"checks">>();
  });
});
