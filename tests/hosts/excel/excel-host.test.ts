/**
 * Our Excel adapter on Microsoft's own Excel library. Below the library stands a stand-in for Excel that answers its
 * requests. What only a real Excel can prove is listed in docs.
 */
import { describe, expect, it } from "vitest";
import { formula } from "../../../src/columns/formula";
import { parseArea } from "../../../taskpane/workbook/area";
import { Book } from "../../../taskpane/workbook/fake/book";
import type { Change } from "../../../taskpane/workbook/port";
import { describeContract } from "../contract/contract";
import { beside, CLINIC, FILTERED, LONG, LONG_ROWS } from "../contract/workbooks";
import { describeFilterTraps } from "./filter-traps";
import { open, usedMembers, using, watch } from "./open";
import { excelMembers } from "./members";
import { Model } from "./model";
import { ApiError } from "./objects";
import { range } from "./range";
import { describeRowTraps } from "./row-traps";

/* Excel's library tells neither of chart sheets nor of the date system. */
describeContract("Excel", open, ["chart sheets", "date system"]);

const half = { header: "Half", formula: formula`${{ header: "Size", index: 1 }}/2`, format: "0.0" };
const add = (table: string, ...columns: (typeof half)[]): Change => ({
  steps: [{ kind: "addColumns", to: { table }, columns }],
  expects: [],
});
describe("Excel's traps", () => {
  it("stand in the way here too: an array written over filtered rows is spoilt", () => {
    const book = new Book(FILTERED);
    const sheet = book.sheet("Sheet1")!;
    const column = range(new Model(book), sheet, parseArea("C2:C5")!);
    column.properties!["values"]!.set!([["a"], ["b"], ["c"], ["d"]]);
    expect([1, 2, 3, 4].map((row) => sheet.value(row, 2))).toEqual(["a", null, "a", null]);
  });

  it(
    "new cells take the look of their neighbours, and give it back",
    using(beside({}), async ({ workbook, book, model }) => {
      const sheet = book.sheet("Sheet1")!;
      const look = (row: number, column: number, trait: string) => model.looks.get(sheet, row, column, trait);
      for (const [trait, value] of [
        ["fill/color", "#C0E0E0"],
        ["font/color", "#203040"],
        ["borders/EdgeBottom/style", "Continuous"],
        ["wrapText", true],
      ] as const)
        model.looks.set(sheet, 0, 1, trait, value);
      for (const row of [1, 2, 3]) model.looks.set(sheet, row, 1, "horizontalAlignment", "Right");
      model.looks.set(sheet, 1, 1, "fill/color", "#FFFF00");
      const before = JSON.stringify(["fill/color", "fill/pattern", "font/color"].map((one) => look(0, 2, one)));

      const receipt = await workbook.apply(add("Table1", half), watch());
      expect(receipt.outcome).toBe("done");
      expect([look(0, 2, "fill/color"), look(0, 2, "font/color"), look(0, 2, "wrapText")]).toEqual([
        "#C0E0E0",
        "#203040",
        true,
      ]);
      expect(look(0, 2, "borders/EdgeBottom/style")).toBe("Continuous");
      expect([1, 2, 3].map((row) => look(row, 2, "horizontalAlignment"))).toEqual(["Right", "Right", "Right"]);
      /* One neighbour of three is yellow: nothing to follow, and no outright white either. */
      expect([1, 2, 3].map((row) => look(row, 2, "fill/pattern"))).toEqual(["None", "None", "None"]);

      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(JSON.stringify(["fill/color", "fill/pattern", "font/color"].map((one) => look(0, 2, one)))).toBe(before);
      expect(look(0, 2, "borders/EdgeBottom/style")).toBe("None");
      expect([1, 2, 3].map((row) => look(row, 2, "horizontalAlignment"))).toEqual(["General", "General", "General"]);
    }),
  );

  it(
    "columns formatted as text get formulas all the same, and their format back",
    using(
      beside({ cells: Object.fromEntries(["C2", "C3", "C4"].map((cell) => [cell, { format: "@" }])) }),
      async ({ workbook, book }) => {
        const sheet = book.sheet("Sheet1")!;
        const receipt = await workbook.apply(add("Table1", half), watch());
        expect(receipt.outcome).toBe("done");
        expect([1, 2, 3].map((row) => sheet.cell(row, 2)?.formula)).toEqual(
          new Array(3).fill("=Table1[[#This Row],[Size]]/2"),
        );
        await workbook.takeBack(receipt);
        expect([1, 2, 3].map((row) => sheet.cell(row, 2)?.format)).toEqual(["@", "@", "@"]);
      },
    ),
  );

  it(
    "cells beyond the table do not move",
    using(beside({ cells: { F2: "mine", F3: { formula: "=B3" } } }), async ({ workbook, book }) => {
      const receipt = await workbook.apply(add("Table1", half), watch());
      const sheet = book.sheet("Sheet1")!;
      expect([sheet.value(1, 5), sheet.cell(2, 5)?.formula]).toEqual(["mine", "=B3"]);
      await workbook.takeBack(receipt);
      expect([sheet.value(1, 5), sheet.cell(2, 5)?.formula]).toEqual(["mine", "=B3"]);
    }),
  );

  it(
    "a chart sheet in front means no selection",
    using(
      {
        sheets: [...CLINIC.sheets, { name: "Chart1", kind: "chart sheet" }],
        selection: { sheet: "Chart1", area: "A1" },
      },
      async ({ workbook }) => {
        const overview = await workbook.overview();
        expect(overview.selection).toBeNull();
        expect(overview.sheets.map((sheet) => sheet.name)).not.toContain("Chart1");
      },
    ),
  );

  it(
    "a name that stands for one cell tells that cell's value",
    using({ ...CLINIC, names: [{ name: "First", refersTo: "='Tubes in use'!$B$4" }] }, async ({ workbook }) => {
      expect((await workbook.overview()).names).toEqual([
        { name: "First", refersTo: "='Tubes in use'!$B$4", value: 46000 },
      ]);
    }),
  );
});

describe("When Excel breaks off", () => {
  it(
    "before anything was written, the change is refused in plain words",
    using(LONG, async ({ workbook, protocol, book }) => {
      protocol.fault = () => new ApiError("InvalidOperationInCellEditMode", "Excel is in cell-editing mode.");
      const receipt = await workbook.apply(add("Long", half), watch());
      expect(receipt).toMatchObject({
        outcome: "refused",
        sentence: "A cell is being edited. Press Enter or Esc in the sheet, then try again.",
        done: [],
      });
      expect(book.table("Long")!.table.columns).toEqual(["Id", "Size"]);
    }),
  );

  it(
    "half-way, everything is taken back",
    using(LONG, async ({ workbook, protocol, book }) => {
      let isBroken = false;
      const report = (done: number) => {
        if (done < 1_000 || isBroken) return;
        isBroken = true;
        const from = protocol.requests;
        protocol.fault = (request) =>
          request === from + 1 ? new ApiError("AccessDenied", "The sheet was protected meanwhile.") : null;
      };
      const receipt = await workbook.apply(add("Long", half), { report, signal: new AbortController().signal });
      expect(isBroken).toBe(true);
      expect(receipt).toMatchObject({ outcome: "stopped", done: [] });
      expect(receipt.sentence).toMatch(/protected.*taken back/s);
      expect(book.table("Long")!.table.columns).toEqual(["Id", "Size"]);
      expect(book.sheet("Long")!.used()).toEqual(parseArea(`A1:B${LONG_ROWS + 1}`));
    }),
  );

  it(
    "and does not come back, the receipt says what still stands, and it can be taken back later",
    using(LONG, async ({ workbook, protocol, book }) => {
      const report = (done: number) => {
        if (done >= 1_000) protocol.fault = () => new ApiError("RequestAborted", "The request was aborted.");
      };
      const receipt = await workbook.apply(add("Long", half), { report, signal: new AbortController().signal });
      expect(receipt).toMatchObject({ outcome: "stopped", done: [{ changed: true }] });
      expect(receipt.sentence).toMatch(/Not everything/);
      protocol.fault = () => null;
      expect(await workbook.takeBack(receipt, { force: true })).toEqual({ outcome: "taken back" });
      expect(book.sheet("Long")!.used()).toEqual(parseArea(`A1:B${LONG_ROWS + 1}`));
    }),
  );
});

describe("Excel's view", () => {
  it.each([
    ["held in place", { rows: 1, columns: 1 }],
    ["held in place above only", { rows: 1, columns: 0 }],
    ["moving", { rows: 0, columns: 0 }],
  ])("shows the first row and column again, from far down and right: headers %s", async (_, frozen) => {
    await using(beside({}), async ({ workbook, book, model }) => {
      const sheet = book.sheet("Sheet1")!;
      const view = model.view(sheet);
      view.frozen = frozen;
      const home = { top: frozen.rows, left: frozen.columns };
      const far = () => workbook.reveal({ sheet: sheet.id, area: parseArea("AZ900")! });
      for (const area of ["A1", "A1:C5", "B3"]) {
        await far();
        expect([view.top > 500, view.left > 20]).toEqual([true, true]);
        await workbook.reveal({ sheet: sheet.id, area: parseArea(area)! });
        expect([area, view.top, view.left]).toEqual([area, home.top, home.left]);
      }
      await far();
      await workbook.apply(
        {
          steps: [{ kind: "showRows", of: { table: "Table1" }, criteria: [{ column: 0, keeps: ["A"] }] }],
          expects: [],
        },
        watch(),
      );
      expect([view.top, view.left]).toEqual([home.top, home.left]);
    })();
  });
});

describe("Excel and large lists", () => {
  it(
    "10,000 rows by three columns go over in requests far below 5 MB",
    using(
      {
        sheets: [
          {
            name: "Large",
            rows: [["Id", "Size"], ...Array.from({ length: 10_000 }, (_, i) => [`N${i}`, 10 + (i % 9)])],
            tables: [{ name: "Large", area: "A1:B10001" }],
          },
        ],
      },
      async ({ workbook, protocol }) => {
        const three = ["One", "Two", "Three"].map((header) => ({ ...half, header }));
        const receipt = await workbook.apply(add("Large", ...three), watch());
        expect(receipt.outcome).toBe("done");
        expect(protocol.largest).toBeLessThan(500_000);
      },
    ),
  );

  it(
    "a workbook of an Excel too old for resizing tables says so",
    using(beside({}), ({ workbook }) => {
      const requirements = { isSetSupported: (_: string, version: string) => Number(version.split(".")[1]) <= 12 };
      Object.assign(globalThis, { Office: { context: { requirements } } });
      expect(workbook.can("addColumns")).toMatch(/too old/);
      return Promise.resolve();
    }),
  );
});

describeRowTraps();
describeFilterTraps();

describe("a chart on a sheet that is added", () => {
  it(
    "is Excel's own, with each series from its cells",
    using(beside({}), async ({ workbook, book, model }) => {
      const cells = [
        ["When", "Due", "Unplanned"],
        ["May", 3, 1],
        ["June", 5, 2],
      ];
      const chart = { kind: "columns", title: "Due", header: 0, rows: 2, names: 0, series: [1, 2] } as const;
      const sheet = { name: "Drawn", cells, charts: [{ ...chart, at: { row: 0, column: 4 } }] };
      const receipt = await workbook.apply({ steps: [{ kind: "addSheet", sheet }], expects: [] }, watch());
      expect(receipt.outcome).toBe("done");
      const column = (left: number) => ({ top: 1, left, rows: 2, columns: 1 });
      expect(model.drawn.get(book.sheet("Drawn")!)).toMatchObject([
        {
          ...{ type: "ColumnStacked", title: "Due", at: { top: 0, left: 4 } },
          series: [
            { name: null, values: column(1), names: column(0) },
            { name: "Unplanned", values: column(2), names: column(0) },
          ],
        },
      ]);
    }),
  );
});

describe("Excel's members", () => {
  /* ExcelApi 1.14 is the newest that the library of 2022 and Excel 2021 have. `can` asks for 1.13. */
  it("that were used above all came with ExcelApi 1.13 or earlier", () => {
    const members = excelMembers();
    expect(members.get("Table.resize")).toBe(113);
    expect(members.get("Range.getMergedAreasOrNullObject")).toBe(113);
    expect(members.get("TableRowCollection.deleteRows")).toBeUndefined();
    const used = [...usedMembers].map((one) => one.replace(/=$/, "")).filter((one) => !one.includes("._"));
    expect(used).toContain("AutoFilter.criteria");
    expect(used.filter((one) => !((members.get(one) ?? 999) <= 113))).toEqual([]);
  });
});
