/** Showing only some rows of a list, with the host's own filter. */
import { describe, expect } from "vitest";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Change, Criterion, Workbook } from "../../../taskpane/workbook/port";
import { apply, expectRefused, kept, needing, type Contract } from "./kit";
import { beside, FILTERED, PEOPLE } from "./workbooks";

const show = (table: string, ...criteria: Criterion[]): Change => ({
  steps: [{ kind: "showRows", of: { table }, criteria }],
  expects: [],
});

export function checkFiltering(contract: Contract): void {
  const { name, open } = contract;
  const needs = needing(contract);
  const idsShown = async (workbook: Workbook, table: string) => {
    const block = await workbook.read({ table }, ["values", "hidden"]);
    return block.values!.filter((_, row) => !block.hidden![row]).map((row) => row[0]);
  };

  describe(`${name}: show only some rows`, () => {
    needs("showing rows", "tables")("of a table by words, numbers and blanks, and all again", async () => {
      const { workbook } = await open(PEOPLE);
      const before = await kept(workbook);
      const receipt = await apply(workbook, show("People", { column: 3, keeps: ["WELL", "y"] }));
      expect(receipt).toMatchObject({ outcome: "done", done: [{ place: { area: parseArea("A3:D7") } }] });
      expect(await idsShown(workbook, "People")).toEqual(["Id", "007", "010"]);
      expect((await workbook.overview()).tables[0]!.isFiltered).toBe(true);

      await apply(workbook, show("People", { column: 3, keeps: [null, "x"] }));
      expect(await idsShown(workbook, "People")).toEqual(["Id", "008", "009"]);
      await apply(workbook, show("People", { column: 3, keeps: [null, "x"] }, { column: 1, keeps: [12] }));
      expect(await idsShown(workbook, "People")).toEqual(["Id", "009"]);
      await apply(workbook, show("People", { column: 2, keeps: [46020, null] }));
      expect(await idsShown(workbook, "People")).toEqual(["Id", "009", "010"]);

      await apply(workbook, show("People"));
      expect(await idsShown(workbook, "People")).toEqual(["Id", "007", "008", "009", "010"]);
      expect((await workbook.overview()).tables[0]!.isFiltered).toBe(false);
      expect(await kept(workbook)).toEqual(before);
    });

    needs(
      "showing rows",
      "tables",
      "selection",
    )("and goes to the first of them, or to the headers", async () => {
      const { workbook } = await open(PEOPLE);
      const { sheet } = (await workbook.overview()).tables[0]!;
      await workbook.reveal({ sheet, area: parseArea("T190")! });
      await apply(workbook, show("People", { column: 3, keeps: ["y"] }));
      expect((await workbook.overview()).selection).toEqual({ sheet, area: parseArea("A7") });
      await apply(workbook, show("People", { column: 3, keeps: ["nobody"] }));
      expect((await workbook.overview()).selection).toEqual({ sheet, area: parseArea("A3") });
    });

    needs("showing rows", "tables")("none, where none is kept", async () => {
      const { workbook } = await open(PEOPLE);
      expect((await apply(workbook, show("People", { column: 3, keeps: ["nobody"] }))).outcome).toBe("done");
      expect(await idsShown(workbook, "People")).toEqual(["Id"]);
    });

    needs("showing rows", "tables")("and takes that back", async () => {
      const { workbook } = await open(PEOPLE);
      const first = await apply(workbook, show("People", { column: 3, keeps: ["y"] }));
      expect(await idsShown(workbook, "People")).toEqual(["Id", "010"]);
      expect(await workbook.takeBack(first)).toEqual({ outcome: "taken back" });
      expect(await idsShown(workbook, "People")).toEqual(["Id", "007", "008", "009", "010"]);
    });

    needs(
      "showing rows",
      "filters",
      "tables",
    )("shows again what a filter of the file hid", async () => {
      const { workbook } = await open(FILTERED);
      expect((await apply(workbook, show("Table1"))).outcome).toBe("done");
      expect((await workbook.read({ table: "Table1" }, ["hidden"])).hidden).toEqual([
        false,
        false,
        false,
        false,
        false,
      ]);
      expect((await workbook.overview()).tables[0]!.isFiltered).toBe(false);
    });

    needs("showing rows")("of a plain list", async () => {
      const { workbook } = await open(beside({ tables: [] }));
      const sheet = (await workbook.overview()).sheets[0]!.id;
      const area = parseArea("A1:B4")!;
      const steps = (criteria: Criterion[]): Change => ({
        steps: [{ kind: "showRows", of: { list: { sheet, area } }, criteria }],
        expects: [],
      });
      const hidden = async () => (await workbook.read({ sheet, area }, ["hidden"])).hidden;
      const receipt = await apply(workbook, steps([{ column: 1, keeps: [10, 14] }]));
      expect(receipt.outcome).toBe("done");
      expect(await hidden()).toEqual([false, false, true, false]);
      await apply(workbook, steps([{ column: 0, keeps: ["C2"] }]));
      expect(await hidden()).toEqual([false, true, false, true]);
      await apply(workbook, steps([]));
      expect(await hidden()).toEqual([false, false, false, false]);
    });

    needs("showing rows", "tables")("is refused for a table or a column that is not there", async () => {
      const { workbook } = await open(PEOPLE);
      await expectRefused(workbook, show("Nobody", { column: 0, keeps: [1] }), /Nobody/);
      await expectRefused(workbook, show("People", { column: 4, keeps: [1] }), /column/);
    });
  });
}
