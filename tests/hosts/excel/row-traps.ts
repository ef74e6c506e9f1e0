/** Where Excel is known to be treacherous with rows of tables. All people in these lists are invented. */
import { describe, expect, it } from "vitest";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Sheet } from "../../../taskpane/workbook/fake/book";
import type { WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import type { Change, RowValues, Step } from "../../../taskpane/workbook/port";
import { apply, kept } from "../contract/kit";
import { beside } from "../contract/workbooks";
import { using, watch, type Opened } from "./open";
import { ApiError } from "./objects";

const change = (...steps: Step[]): Change => ({ steps, expects: [] });
const append = (table: string, ...rows: RowValues[]): Change => change({ kind: "appendRows", table, rows });
const remove = (table: string, ...rows: number[]): Change => change({ kind: "removeRows", table, rows });

const TEXT = "@";
const text = (value: string) => ({ value, format: TEXT });

/** Identifiers are texts, a formula follows each row, and something stands below the table. */
const CASELOAD: WorkbookDescription = {
  sheets: [
    {
      name: "Caseload",
      rows: [
        ["Id", "Size", "Twice", "Next row"],
        [text("007"), 14, { formula: "=Caseload[[#This Row],[Size]]*2", value: 28 }, { formula: "=B2+$F$1", value: 1 }],
        [text("008"), 16, { formula: "=Caseload[[#This Row],[Size]]*2", value: 32 }, { formula: "=B3+$F$1", value: 1 }],
        [text("009"), 12, { formula: "=Caseload[[#This Row],[Size]]*2", value: 24 }, { formula: "=B4+$F$1", value: 1 }],
      ],
      cells: { F1: 1, A12: "mine", B13: "Other", B14: 5 },
      tables: [
        { name: "Caseload", area: "A1:D4" },
        { name: "Below", area: "B13:B14" },
      ],
    },
  ],
};

const wide = (people: number): WorkbookDescription => ({
  sheets: [
    {
      name: "Wide",
      rows: [
        Array.from({ length: 12 }, (_, c) => `Column ${c + 1}`),
        ...Array.from({ length: people }, (_, r) => Array.from({ length: 12 }, (_, c) => (c === 0 ? `P${r}` : r + c))),
      ],
      tables: [{ name: "Wide", area: `A1:L${people + 1}` }],
    },
  ],
});

const MANY = 5_000;

/** The stand-in does not calculate. */
const typedOnly = async ({ workbook }: Opened) =>
  new Map(
    [...(await kept(workbook))].map(([address, cell]) => [
      address,
      cell.formula === null ? cell : { ...cell, value: null },
    ]),
  );

const sheetOf = ({ book }: Opened, name = "Caseload"): Sheet => book.sheet(name)!;
const formulas = (sheet: Sheet, row: number) => [2, 3].map((column) => sheet.cell(row, column)?.formula);

/** Excel breaks off at the n-th request after this one, and only there. */
function breakAt(host: Opened, requests: number): void {
  const from = host.protocol.requests;
  host.protocol.fault = (request) =>
    request === from + requests ? new ApiError("AccessDenied", "The sheet was protected meanwhile.") : null;
}

export function describeRowTraps(): void {
  describe("Excel's traps with new rows", () => {
    for (const fillsFormulas of [true, false])
      it(
        `formulas come along when Excel ${fillsFormulas ? "fills" : "does not fill"} them by itself`,
        using(CASELOAD, async (host) => {
          host.model.fillsFormulas = fillsFormulas;
          expect((await apply(host.workbook, append("Caseload", { Id: "010" }, { Id: "011" }))).sentence).toBe("Done.");
          const sheet = sheetOf(host);
          expect(formulas(sheet, 4)).toEqual(["=Caseload[[#This Row],[Size]]*2", "=B5+$F$1"]);
          expect(formulas(sheet, 5)).toEqual(["=Caseload[[#This Row],[Size]]*2", "=B6+$F$1"]);
        }),
      );

    it(
      "a row typed over above is not taken for the column's formula",
      using(CASELOAD, async (host) => {
        host.model.fillsFormulas = false;
        await host.type("Caseload", "C4", 99);
        await apply(host.workbook, append("Caseload", { Id: "010" }));
        expect(formulas(sheetOf(host), 4)).toEqual(["=Caseload[[#This Row],[Size]]*2", "=B5+$F$1"]);
        expect(sheetOf(host).value(3, 2)).toBe(99);
      }),
    );

    it(
      "columns formatted as text keep their texts and their format, and numbers stay numbers",
      using(CASELOAD, async (host) => {
        const before = await kept(host.workbook);
        const receipt = await apply(host.workbook, append("Caseload", { Id: "03-04", Size: 12 }, { Id: 12 }));
        expect(receipt.sentence).toBe("Done.");
        const sheet = sheetOf(host);
        expect([4, 5].map((row) => sheet.value(row, 0))).toEqual(["03-04", 12]);
        expect(sheet.cell(4, 0)?.format).toBe(TEXT);
        const changed = await apply(
          host.workbook,
          change({ kind: "changeRow", table: "Caseload", row: 0, values: { Id: 7, Size: "@x" } }),
        );
        expect([sheet.value(1, 0), sheet.value(1, 1)]).toEqual([7, "@x"]);
        await host.workbook.takeBack(changed);
        expect(sheet.cell(1, 0)).toMatchObject({ value: "007", format: TEXT });
        await host.workbook.takeBack(receipt);
        expect(await kept(host.workbook)).toEqual(before);
        expect(sheet.cell(4, 0)?.format).toBe("General");
      }),
    );

    it(
      "new rows look like the row above, column by column, and leave nothing behind",
      using(beside({}), async (host) => {
        const { looks } = host.model;
        const sheet = sheetOf(host, "Sheet1");
        looks.set(sheet, 3, 1, "horizontalAlignment", "Right");
        looks.set(sheet, 3, 0, "fill/color", "#C0E0E0");
        looks.set(sheet, 3, 1, "borders/EdgeBottom/style", "Continuous");
        const receipt = await apply(host.workbook, append("Table1", { Id: "C4" }, { Id: "C5" }));
        const seen = (row: number) =>
          [0, 1].flatMap((column) =>
            ["horizontalAlignment", "fill/color", "fill/pattern", "borders/EdgeBottom/style"].map((trait) =>
              looks.get(sheet, row, column, trait),
            ),
          );
        expect(seen(4)).toEqual(seen(3));
        expect(seen(5)).toEqual(seen(3));
        await host.workbook.takeBack(receipt);
        expect(seen(4)).toEqual(seen(6));
      }),
    );

    it(
      "the only row is blank again at taking back, with what was typed into it since, and keeps its formula",
      using(
        {
          sheets: [
            {
              name: "Caseload",
              rows: [
                ["Id", "Size", "Twice"],
                [{ format: TEXT }, null, { formula: "=Caseload[[#This Row],[Size]]*2" }],
              ],
              tables: [{ name: "Caseload", area: "A1:C2" }],
            },
          ],
        },
        async (host) => {
          const receipt = await apply(host.workbook, append("Caseload", { Id: "007" }, { Id: "008" }));
          const sheet = sheetOf(host);
          expect([1, 2].map((row) => sheet.cell(row, 2)?.formula)).toEqual(
            new Array(2).fill("=Caseload[[#This Row],[Size]]*2"),
          );
          await host.type("Caseload", "B2", 14);
          expect(await host.workbook.takeBack(receipt)).toMatchObject({ outcome: "differs", cells: ["B2"] });
          expect(await host.workbook.takeBack(receipt, { force: true })).toEqual({ outcome: "taken back" });
          expect([0, 1].map((column) => sheet.value(1, column))).toEqual([null, null]);
          expect(sheet.cell(1, 0)?.format).toBe(TEXT);
          expect(sheet.cell(1, 2)?.formula).toBe("=Caseload[[#This Row],[Size]]*2");
          expect(host.book.table("Caseload")!.table.area).toEqual(parseArea("A1:C2"));
        },
      ),
    );

    it(
      "a break half-way takes all of several steps back",
      using(wide(3), async (host) => {
        const before = await kept(host.workbook);
        const rows = Array.from({ length: 1_200 }, (_, i) => ({ "Column 1": `N${i}` }));
        let isBroken = false;
        const report = (done: number) => {
          if (done > 400 && !isBroken) breakAt(host, 1);
          isBroken ||= done > 400;
        };
        const receipt = await host.workbook.apply(
          change(
            { kind: "changeRow", table: "Wide", row: 0, values: { "Column 1": "changed" } },
            { kind: "appendRows", table: "Wide", rows },
          ),
          { report, signal: new AbortController().signal },
        );
        expect(receipt.sentence).toMatch(/protected.*taken back/s);
        expect(isBroken).toBe(true);
        expect(receipt).toMatchObject({ outcome: "stopped", done: [] });
        expect(receipt.sentence).toMatch(/protected.*taken back/s);
        expect(await kept(host.workbook)).toEqual(before);
        expect(host.book.table("Wide")!.table.area).toEqual(parseArea("A1:L4"));
      }),
    );
  });

  describe("Excel's traps with removed rows", () => {
    it(
      "what stands below stays where it is, another table too, then and at taking back",
      using(CASELOAD, async (host) => {
        const before = await typedOnly(host);
        const { tables } = await host.workbook.overview();
        const receipt = await apply(host.workbook, remove("Caseload", 0, 2));
        expect(receipt.sentence).toBe("Done.");
        const sheet = sheetOf(host);
        expect([sheet.value(1, 0), sheet.value(11, 0), sheet.value(13, 1)]).toEqual(["008", "mine", 5]);
        expect(host.book.table("Below")!.table.area).toEqual(parseArea("B13:B14"));
        expect(await host.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
        expect(await typedOnly(host)).toEqual(before);
        expect((await host.workbook.overview()).tables).toEqual(tables);
      }),
    );

    it(
      "a row put back at the top does not look like the header, and keeps its own colour",
      using(CASELOAD, async (host) => {
        const { looks } = host.model;
        const sheet = sheetOf(host);
        for (const column of [0, 1, 2, 3]) looks.set(sheet, 0, column, "fill/color", "#203040");
        looks.set(sheet, 1, 1, "fill/color", "#FFFF00");
        const receipt = await apply(host.workbook, remove("Caseload", 0));
        expect(looks.get(sheet, 1, 1, "fill/pattern")).toBe("None");
        await host.workbook.takeBack(receipt);
        expect([0, 1].map((column) => looks.get(sheet, 1, column, "fill/pattern"))).toEqual(["None", "Solid"]);
        expect(looks.get(sheet, 1, 1, "fill/color")).toBe("#FFFF00");
        expect(sheet.cell(1, 0)?.format).toBe(TEXT);
      }),
    );

    it(
      "a filter set meanwhile keeps them from being put back, with a sentence",
      using(CASELOAD, async (host) => {
        const receipt = await apply(host.workbook, remove("Caseload", 1));
        await apply(
          host.workbook,
          change({ kind: "showRows", of: { table: "Caseload" }, criteria: [{ column: 0, keeps: ["007"] }] }),
        );
        const taken = await host.workbook.takeBack(receipt);
        expect(taken).toMatchObject({ outcome: "failed", sentence: expect.stringMatching(/filter/i) });
        expect(sheetOf(host).value(2, 0)).toBe("009");
      }),
    );

    it(
      "a break half-way puts back those that had gone",
      using(wide(300), async (host) => {
        const before = await kept(host.workbook);
        const odd = Array.from({ length: 150 }, (_, i) => i * 2 + 1);
        let deletions = 0;
        const { answer } = host.protocol;
        host.protocol.answer = function (body) {
          if (body.includes('"Name":"Delete"') && ++deletions === 2)
            return { Results: [], Error: { Code: "AccessDenied", Message: "protected", ActionIndex: 0 } };
          return answer.call(this, body);
        };
        const receipt = await apply(host.workbook, remove("Wide", ...odd));
        expect(deletions).toBeGreaterThan(1);
        expect(receipt).toMatchObject({ outcome: "stopped", done: [] });
        expect(await kept(host.workbook)).toEqual(before);
      }),
    );
  });

  describe("Excel's traps with a column written anew", () => {
    it(
      "formulas go into cells formatted as text and into hidden rows, and what was there comes back",
      using(
        beside({
          cells: { A3: text("03-04"), A4: { formula: "=B4*3", value: 42 } },
          tables: [{ name: "Table1", area: "A1:B4", filteredRows: [3] }],
        }),
        async (host) => {
          const before = await typedOnly(host);
          const sheet = sheetOf(host, "Sheet1");
          const formula = [{ header: "Size", index: 1 }, "*2"];
          const receipt = await apply(
            host.workbook,
            change({ kind: "refreshColumn", to: { table: "Table1" }, column: 0, formula }),
          );
          expect(receipt.sentence).toBe("Done.");
          const written = "=Table1[[#This Row],[Size]]*2";
          expect([1, 2, 3].map((row) => sheet.cell(row, 0)?.formula)).toEqual([written, written, written]);
          expect(await host.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
          expect(await typedOnly(host)).toEqual(before);
          expect(sheet.cell(2, 0)).toMatchObject({ value: "03-04", formula: null, format: TEXT });
        },
      ),
    );
  });

  describe("Excel and rows of long tables", () => {
    it(
      "thousands are removed, put back and added in requests far below 5 MB",
      using(wide(MANY), async (host) => {
        const { workbook, protocol } = host;
        const going = Array.from({ length: 1_000 }, (_, i) => (i < 980 ? i + 1_000 : 3_000 + 2 * i));
        const removed = await workbook.apply(remove("Wide", ...going), watch());
        expect(removed.sentence).toBe("Done.");
        expect(host.book.table("Wide")!.table.area.rows).toBe(MANY - 1_000 + 1);
        expect(await workbook.takeBack(removed)).toEqual({ outcome: "taken back" });
        const rows = Array.from({ length: 1_000 }, (_, i) => ({ "Column 1": `N${i}`, "Column 2": i }));
        expect((await workbook.apply(append("Wide", ...rows), watch())).sentence).toBe("Done.");
        expect(sheetOf(host, "Wide").value(MANY + 1_000, 1)).toBe(999);
        expect(protocol.largest).toBeLessThan(1_000_000);
      }),
    );
  });
}
