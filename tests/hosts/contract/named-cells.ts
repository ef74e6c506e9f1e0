/** A value into the one cell that a name stands for. */
import { describe, expect } from "vitest";
import type { Cell } from "../../../src/worksheet/cell";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Change } from "../../../taskpane/workbook/port";
import { apply, at, expectRefused, kept, needing, type Contract } from "./kit";
import { PEOPLE } from "./workbooks";

const write = (name: string, value: Cell): Change => ({ steps: [{ kind: "writeNamed", name, value }], expects: [] });

export function checkNamedCells(contract: Contract): void {
  const { name, open } = contract;
  const needs = needing(contract);

  describe(`${name}: a value into a named cell`, () => {
    needs("named cells")("is written as it is, and taken back", async () => {
      const { workbook } = await open(PEOPLE);
      const before = await kept(workbook);
      const cell = await at(workbook, "Clinic's settings", "B2");
      const receipt = await apply(workbook, write("limit", 21));
      expect(receipt).toMatchObject({ outcome: "done", done: [{ place: { area: parseArea("B2") } }] });
      expect((await workbook.read(cell, ["values"])).values).toEqual([[21]]);
      expect((await workbook.overview()).names.find((one) => one.name === "Limit")!.value).toBe(21);
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect((await workbook.read(cell, ["values"])).values).toEqual([[14]]);

      const text = await apply(workbook, write("Word", "=A1"));
      const word = await workbook.read(await at(workbook, "Clinic's settings", "B4"), ["values", "formulas"]);
      expect(word).toMatchObject({ values: [["=A1"]], formulas: [[null]] });
      expect(await workbook.takeBack(text)).toEqual({ outcome: "taken back" });

      const emptied = await apply(workbook, write("Word", null));
      expect((await workbook.read(await at(workbook, "Clinic's settings", "B4"), ["values"])).values).toEqual([[null]]);
      expect(await workbook.takeBack(emptied)).toEqual({ outcome: "taken back" });
      expect(withoutResult(await kept(workbook))).toEqual(withoutResult(before));
    });

    needs("named cells")("asks at taking back where another value was typed meanwhile", async () => {
      const host = await open(PEOPLE);
      const receipt = await apply(host.workbook, write("Limit", 21));
      await host.type("Clinic's settings", "B2", 30);
      expect(await host.workbook.takeBack(receipt)).toMatchObject({ outcome: "differs", cells: ["B2"] });
      expect(await host.workbook.takeBack(receipt, { force: true })).toEqual({ outcome: "taken back" });
      const cell = await at(host.workbook, "Clinic's settings", "B2");
      expect((await host.workbook.read(cell, ["values"])).values).toEqual([[14]]);
    });

    needs("named cells")("is refused where the name stands for no cell, for several, or for a formula", async () => {
      const { workbook } = await open(PEOPLE);
      await expectRefused(workbook, write("Nothing_here", 1), /Nothing_here/);
      await expectRefused(workbook, write("Seven", 1), /one cell/);
      await expectRefused(workbook, write("Limits", 1), /one cell/);
      await expectRefused(workbook, write("Limit_twice", 1), /formula/);
    });
  });
}

/** Hosts that calculate work B3 out anew; others keep the stored result. */
function withoutResult(cells: Awaited<ReturnType<typeof kept>>) {
  return new Map(
    [...cells].map(([address, cell]) => [address, cell.formula === null ? cell : { ...cell, value: null }]),
  );
}
