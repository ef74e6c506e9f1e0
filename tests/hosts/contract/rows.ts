/** Rows at the end of a table, and cells of one row. */
import { describe, expect } from "vitest";
import { formula } from "../../../src/columns/formula";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Change, FormulaColumn, RowValues, Workbook } from "../../../taskpane/workbook/port";
import { addTo, apply, at, expectFormula, expectRefused, kept, needing, type Contract } from "./kit";
import { beside, CLINIC, FILTERED, PEOPLE } from "./workbooks";

const size = { header: "Size", index: 1 };
export const twice: FormulaColumn = { header: "Twice", formula: formula`IF(${size}="","",${size}*2)`, format: "0.0" };

export const append = (table: string, ...rows: RowValues[]): Change => ({
  steps: [{ kind: "appendRows", table, rows }],
  expects: [],
});

export const change = (table: string, row: number, values: RowValues): Change => ({
  steps: [{ kind: "changeRow", table, row, values }],
  expects: [],
});

/** A table with a formula in its last column, put there as each host does it. */
export async function withFormulas(
  contract: Contract,
): Promise<{ workbook: Workbook; host: Awaited<ReturnType<Contract["open"]>> }> {
  const host = await contract.open(PEOPLE);
  expect((await apply(host.workbook, addTo("People", [twice]))).outcome).toBe("done");
  return { workbook: host.workbook, host };
}

export function checkRows(contract: Contract): void {
  const { name, open } = contract;
  const needs = needing(contract);
  const tableNamed = async (workbook: Workbook, table: string) =>
    (await workbook.overview()).tables.find((one) => one.name === table)!;

  describe(`${name}: append rows to a table`, () => {
    needs("rows")("grows the table; formulas and formats come along, all else stays", async () => {
      const { workbook } = await withFormulas(contract);
      const before = await kept(workbook);
      const receipt = await apply(workbook, append("People", { Id: "011", size: 20, Seen: 46030.5 }, { Id: "012" }));
      expect(receipt).toMatchObject({ outcome: "done" });
      const { sheets } = await workbook.overview();
      expect(receipt.done[0]!.place).toEqual({ sheet: sheets[0]!.id, area: parseArea("A8:E9") });
      expect(await tableNamed(workbook, "People")).toMatchObject({ area: parseArea("A3:E9") });
      const block = await workbook.read(await at(workbook, "People", "A8:E9"), ["values", "formulas", "formats"]);
      expect(block.values!.map((row) => row.slice(0, 4))).toEqual([
        ["011", 20, 46030.5, null],
        ["012", null, null, null],
      ]);
      block.formulas!.forEach((row, r) => {
        expect(row.slice(0, 4)).toEqual([null, null, null, null]);
        expectFormula(row[4], twice.formula, "People", 7 + r, 0);
      });
      const above = await workbook.read(await at(workbook, "People", "A7:E7"), ["formats"]);
      expect(block.formats).toEqual([above.formats![0], above.formats![0]]);
      expect(await kept(workbook, { sheet: "People", area: parseArea("A8:E9")! })).toEqual(before);
    });

    needs("rows")("keeps every text a text, whatever it looks like", async () => {
      const { workbook } = await open(PEOPLE);
      const texts = ["03-04", "1E5", "=A1", "0070", "TRUE", "'quoted", "+1", "12/05/2026", "50%"];
      const receipt = await apply(workbook, append("People", ...texts.map((text) => ({ Id: text, Note: text }))));
      expect(receipt.outcome).toBe("done");
      const block = await workbook.read(await at(workbook, "People", "A8:D16"), ["values", "formulas"]);
      expect(block.values).toEqual(texts.map((text) => [text, null, null, text]));
      expect(block.formulas!.flat().every((text) => text === null)).toBe(true);
    });

    needs("rows")("fills a table whose only row is blank, then goes on below it", async () => {
      const { workbook } = await open(PEOPLE);
      const before = await kept(workbook);
      const first = await apply(workbook, append("Visits", { Id: "007", On: 46001 }));
      expect(first.done[0]!.place).toMatchObject({ area: parseArea("A2:C2") });
      expect((await tableNamed(workbook, "Visits")).area).toEqual(parseArea("A1:C2"));
      const second = await apply(workbook, append("Visits", { Id: "008" }, { Id: "009" }));
      expect(second.done[0]!.place).toMatchObject({ area: parseArea("A3:C4") });
      expect((await tableNamed(workbook, "Visits")).area).toEqual(parseArea("A1:C4"));
      const { values } = await workbook.read({ table: "Visits" }, ["values"]);
      expect(values!.slice(1)).toEqual([
        ["007", 46001, null],
        ["008", null, null],
        ["009", null, null],
      ]);
      expect(await workbook.takeBack(second)).toEqual({ outcome: "taken back" });
      expect(await workbook.takeBack(first)).toEqual({ outcome: "taken back" });
      expect((await tableNamed(workbook, "Visits")).area).toEqual(parseArea("A1:C2"));
      expect(await kept(workbook)).toEqual(before);
    });

    needs("rows")("takes the blank only row and more at once, and gives them back", async () => {
      const { workbook } = await open(PEOPLE);
      const before = await kept(workbook);
      const receipt = await apply(workbook, append("Visits", { Id: "007" }, { Id: "008", Said: "well" }));
      expect((await tableNamed(workbook, "Visits")).area).toEqual(parseArea("A1:C3"));
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect((await tableNamed(workbook, "Visits")).area).toEqual(parseArea("A1:C2"));
      expect(await kept(workbook)).toEqual(before);
    });

    needs("rows")("is refused where it cannot be done", async () => {
      const { workbook } = await withFormulas(contract);
      await expectRefused(workbook, append("Nobody", { Id: "1" }), /Nobody/);
      await expectRefused(workbook, append("People", { Id: "1", Colour: "red" }), /Colour/);
      await expectRefused(workbook, append("People", { Id: "1", Twice: 5 }), /Twice/);
      const totals = await open(CLINIC);
      await expectRefused(totals.workbook, append("Tubes", { "Tube #": "012" }), /totals/);
      const filled = await open(beside({ cells: { B6: "mine" } }));
      await expectRefused(filled.workbook, append("Table1", { Id: "C4" }, { Id: "C5" }), /B6/);
      expect((await apply(filled.workbook, append("Table1", { Id: "C4" }))).outcome).toBe("done");
    });

    needs("rows")("is refused where another table stands below", async () => {
      const { workbook } = await open(
        beside({
          cells: { A6: "Other", A7: 1 },
          tables: [
            { name: "Table1", area: "A1:B4" },
            { name: "Table2", area: "A6:A7" },
          ],
        }),
      );
      await expectRefused(workbook, append("Table1", { Id: "C4" }, { Id: "C5" }), /Table2/);
    });

    needs("rows", "protection")("is refused on a protected sheet", async () => {
      const { workbook } = await open(beside({ isProtected: true }));
      await expectRefused(workbook, append("Table1", { Id: "C4" }), /protected/);
      await expectRefused(workbook, change("Table1", 0, { Id: "C4" }), /protected/);
    });

    needs("rows", "filters")("shows the new row although a filter hides others", async () => {
      const { workbook } = await open(FILTERED);
      expect((await apply(workbook, append("Table1", { Id: "C5" }))).outcome).toBe("done");
      const block = await workbook.read({ table: "Table1" }, ["values", "hidden"]);
      expect(block.values!.at(-1)).toEqual(["C5", null]);
      expect(block.hidden).toEqual([false, false, true, false, true, false]);
    });
  });

  describe(`${name}: append rows, taken back`, () => {
    needs("rows")("restores the table exactly", async () => {
      const { workbook } = await withFormulas(contract);
      const before = await kept(workbook);
      const { tables } = await workbook.overview();
      const receipt = await apply(workbook, append("People", { Id: "011", Size: 20, Note: "=x" }, { Id: "012" }));
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
      expect((await workbook.overview()).tables).toEqual(tables);
    });

    needs("rows")("asks where a cell was edited meanwhile", async () => {
      const { workbook, host } = await withFormulas(contract);
      const before = await kept(workbook);
      const receipt = await apply(workbook, append("People", { Id: "011", Size: 20 }));
      await host.type("People", "B8", 21);
      await host.type("People", "D8", "noted");
      const edited = await kept(workbook);
      expect(await workbook.takeBack(receipt)).toMatchObject({ outcome: "differs", cells: ["B8", "D8"] });
      expect(await kept(workbook)).toEqual(edited);
      expect(await workbook.takeBack(receipt, { force: true })).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("rows")("does nothing where somebody else stands there now", async () => {
      const { workbook, host } = await withFormulas(contract);
      const receipt = await apply(workbook, append("People", { Id: "011", Size: 20 }));
      const swapped: [string, string | number | null][] = [
        ["A7", "011"],
        ["B7", 20],
        ["D7", null],
        ["A8", "010"],
        ["B8", 18],
        ["D8", "y"],
      ];
      for (const [address, value] of swapped) await host.type("People", address, value);
      const now = await kept(workbook);
      expect(await workbook.takeBack(receipt, { force: true })).toMatchObject({
        outcome: "failed",
        sentence: expect.stringContaining("People"),
      });
      expect(await kept(workbook)).toEqual(now);
    });
  });

  describe(`${name}: change a row`, () => {
    needs("rows")("writes the named cells only, and takes them back", async () => {
      const { workbook } = await withFormulas(contract);
      const before = await kept(workbook);
      const receipt = await apply(workbook, change("People", 1, { Size: 17, note: "03-04", Seen: null }));
      expect(receipt).toMatchObject({ outcome: "done", done: [{ place: { area: parseArea("A5:E5") } }] });
      const block = await workbook.read(await at(workbook, "People", "A5:E5"), ["values", "formulas", "formats"]);
      expect(block.values![0]!.slice(0, 4)).toEqual(["008", 17, null, "03-04"]);
      expectFormula(block.formulas![0]![4], twice.formula, "People", 4, 0);
      expect(block.formats![0]![2]).toBe("dd/mm/yyyy");
      expect(await kept(workbook, { sheet: "People", area: parseArea("A5:E5")! })).toEqual(
        new Map([...before].filter(([address]) => !/^People![A-E]5$/.test(address))),
      );
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("rows")("is refused for a formula, an unknown column and a row that is not there", async () => {
      const { workbook } = await withFormulas(contract);
      await expectRefused(workbook, change("People", 1, { Size: 17, Twice: 5 }), /Twice/);
      await expectRefused(workbook, change("People", 1, { Colour: "red" }), /Colour/);
      await expectRefused(workbook, change("People", 4, { Size: 17 }), /row 5/);
      await expectRefused(workbook, change("People", -1, { Size: 17 }), /row/);
    });

    needs("rows")("is allowed above a totals row", async () => {
      const { workbook } = await open(CLINIC);
      expect((await apply(workbook, change("Tubes", 4, { Size: 21 }))).outcome).toBe("done");
      expect((await workbook.read(await at(workbook, "Tubes in use", "F8"), ["values"])).values).toEqual([[21]]);
      await expectRefused(workbook, change("Tubes", 5, { Size: 21 }), /row 6/);
    });

    needs("rows")("asks where it was edited meanwhile, and does nothing where somebody else stands there", async () => {
      const { workbook, host } = await withFormulas(contract);
      const before = await kept(workbook);
      const receipt = await apply(workbook, change("People", 1, { Size: 17 }));
      await host.type("People", "B5", 18);
      expect(await workbook.takeBack(receipt)).toMatchObject({ outcome: "differs", cells: ["B5"] });
      await host.type("People", "A5", "999");
      expect(await workbook.takeBack(receipt, { force: true })).toMatchObject({ outcome: "failed" });
      await host.type("People", "A5", "008");
      expect(await workbook.takeBack(receipt, { force: true })).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });
  });

  describe(`${name}: rows of several tables in one change`, () => {
    needs("rows")("count together, and are taken back together", async () => {
      const { workbook } = await withFormulas(contract);
      const before = await kept(workbook);
      const { tables } = await workbook.overview();
      const receipt = await apply(workbook, {
        steps: [
          { kind: "appendRows", table: "Visits", rows: [{ Id: "008", On: 46040 }] },
          { kind: "changeRow", table: "People", row: 1, values: { Seen: 46040 } },
          { kind: "appendRows", table: "People", rows: [{ Id: "011" }] },
          { kind: "changeRow", table: "People", row: 4, values: { Size: 10 } },
        ],
        expects: [
          { kind: "row", table: "People", row: 1, values: { Id: "008", Size: 16, Note: null } },
          { kind: "table", table: "Visits", columns: ["Id", "On", "Said"], dataRows: 1 },
        ],
      });
      expect(receipt).toMatchObject({ outcome: "done" });
      const { values } = await workbook.read({ table: "People" }, ["values"]);
      expect(values![2]!.slice(0, 4)).toEqual(["008", 16, 46040, null]);
      expect(values![5]!.slice(0, 4)).toEqual(["011", 10, null, null]);
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
      expect((await workbook.overview()).tables).toEqual(tables);
    });

    needs("rows")("are all refused where one is", async () => {
      const { workbook } = await withFormulas(contract);
      await expectRefused(
        workbook,
        {
          steps: [
            { kind: "appendRows", table: "Visits", rows: [{ Id: "008" }] },
            { kind: "changeRow", table: "People", row: 1, values: { Twice: 1 } },
          ],
          expects: [],
        },
        /Twice/,
      );
    });

    needs("rows")("are refused where the row that was read has changed or moved", async () => {
      const { workbook, host } = await withFormulas(contract);
      const expecting = (row: number, values: RowValues): Change => ({
        steps: append("Visits", { Id: "008" }).steps,
        expects: [{ kind: "row", table: "People", row, values }],
      });
      await expectRefused(workbook, expecting(0, { Id: "008" }), /Id/);
      await expectRefused(workbook, expecting(1, { Id: "008", Size: "16" }), /Size/);
      await expectRefused(workbook, expecting(9, { Id: "008" }), /People/);
      await host.type("People", "D5", "typed meanwhile");
      await expectRefused(workbook, expecting(1, { Id: "008", Note: null }), /Note/);
      expect((await apply(workbook, expecting(1, { Id: "008", Size: 16 }))).outcome).toBe("done");
    });
  });
}
