/** Progress, stop, taking back; reveal and change events. */
import { describe, expect } from "vitest";
import { formula } from "../../../src/columns/formula";
import type { Area } from "../../../taskpane/workbook/port";
import { addTo, apply, at, doubled, due, kept, needing, type Contract } from "./kit";
import { CLINIC, LONG, LONG_ROWS } from "./workbooks";

export function checkUndoing(contract: Contract): void {
  const { name, open, lacks } = contract;
  const needs = needing(contract);

  describe(`${name}: progress and stop`, () => {
    const both = addTo("Long", [
      { header: "Half", formula: formula`${{ header: "Size", index: 1 }}/2`, format: "0.0" },
      { header: "Third", formula: formula`${{ header: "Size", index: 1 }}/3`, format: "0.0" },
    ]);

    needs("tables")("tells progress that only grows, and finishes", async () => {
      const { workbook } = await open(LONG);
      const told: [number, number][] = [];
      const watch = {
        report: (done: number, of: number) => told.push([done, of]),
        signal: new AbortController().signal,
      };
      expect((await workbook.apply(both, watch)).outcome).toBe("done");
      expect(told.length).toBeGreaterThan(1);
      expect(told[0]![0]).toBe(0);
      expect(told.at(-1)![0]).toBe(told.at(-1)![1]);
      for (let i = 1; i < told.length; i++) {
        expect(told[i]![0]).toBeGreaterThanOrEqual(told[i - 1]![0]);
        expect(told[i]![1]).toBe(told[0]![1]);
      }
      const { formulas } = await workbook.read({ table: "Long" }, ["formulas"]);
      expect(formulas!.filter((row) => row[2] !== null && row[3] !== null).length).toBe(LONG_ROWS);
    });

    needs("tables")("takes everything back when stopped half-way", async () => {
      const { workbook } = await open(LONG);
      const before = await kept(workbook);
      const overview = await workbook.overview();
      const stop = new AbortController();
      let halfway = false;
      const report = (done: number, of: number) => {
        if (done > 0 && done < of) {
          halfway = true;
          stop.abort();
        }
      };
      const steps = [{ kind: "defineName" as const, name: "Limit_days", refersTo: "=14" }, ...both.steps];
      const receipt = await workbook.apply({ steps, expects: [] }, { report, signal: stop.signal });
      expect(halfway).toBe(true);
      expect(receipt).toMatchObject({ outcome: "stopped", done: [] });
      expect(receipt.sentence).not.toBe("");
      expect(await kept(workbook)).toEqual(before);
      const after = await workbook.overview();
      expect(after.tables).toEqual(overview.tables);
      expect(after.names).toEqual(overview.names);
    });
  });

  describe(`${name}: taking back`, () => {
    needs("tables")("restores the table exactly", async () => {
      const host = await open(CLINIC);
      const { workbook } = host;
      const before = await kept(workbook);
      const overview = await workbook.overview();
      const receipt = await apply(workbook, {
        steps: [{ kind: "defineName", name: "As_of", refersTo: "=TODAY()" }, ...addTo("Tubes", [due, doubled]).steps],
        expects: [],
      });
      expect(receipt.outcome).toBe("done");
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
      const after = await workbook.overview();
      expect(after.tables).toEqual(overview.tables);
      expect(after.names).toEqual(overview.names);
      const left = await workbook.read(await at(workbook, "Tubes in use", "G3:H9"), ["values", "formats"]);
      expect(left.formats!.flat().every((format) => format === "General")).toBe(true);
      if (!lacks.includes("styles")) expect(await host.isBold!("Tubes in use", "G3")).toBe(false);
    });

    needs("tables")("names the cells edited meanwhile and touches nothing, then removes when asked again", async () => {
      const host = await open(CLINIC);
      const { workbook } = host;
      const before = await kept(workbook);
      const receipt = await apply(workbook, addTo("Tubes", [due, doubled]));
      await host.type("Tubes in use", "H5", 99);
      const edited = await kept(workbook);
      const outcome = await workbook.takeBack(receipt);
      expect(outcome).toMatchObject({ outcome: "differs", cells: ["H5"] });
      if (outcome.outcome === "differs") expect(outcome.sentence).toContain("H5");
      expect(await kept(workbook)).toEqual(edited);
      expect(await workbook.takeBack(receipt, { force: true })).toEqual({ outcome: "taken back" });
      expect(await kept(workbook)).toEqual(before);
    });

    needs("tables")("fails with a sentence when a new column was renamed", async () => {
      const host = await open(CLINIC);
      const receipt = await apply(host.workbook, addTo("Tubes", [due]));
      await host.type("Tubes in use", "G3", "Mine now");
      const now = await kept(host.workbook);
      expect(await host.workbook.takeBack(receipt, { force: true })).toMatchObject({
        outcome: "failed",
        sentence: expect.stringContaining("Tubes"),
      });
      expect(await kept(host.workbook)).toEqual(now);
    });

    needs("tables")("happens once only", async () => {
      const { workbook } = await open(CLINIC);
      const receipt = await apply(workbook, addTo("Tubes", [due]));
      expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      expect(await workbook.takeBack(receipt)).toMatchObject({ outcome: "failed" });
    });
  });

  describe(`${name}: reveal and change events`, () => {
    needs("selection")("selects and shows a place", async () => {
      const { workbook } = await open(CLINIC);
      const place = (await at(workbook, "Übersicht", "B3:C4")) as { sheet: string; area: Area };
      await workbook.reveal(place);
      expect((await workbook.overview()).selection).toEqual(place);
    });

    needs("change events")("tells of edits until told to stop", async () => {
      const host = await open(CLINIC);
      let [told, heard, edits] = [0, 0, 0];
      // a host begins to listen in its own time, and may gather changes that follow one another before it tells of them
      const typedUntil = async (count: () => number) => {
        let typed = -Infinity;
        const told = async () => {
          if (count() === 0 && performance.now() - typed > 500) {
            await host.type("Übersicht", "A3", `edited ${++edits}`);
            typed = performance.now();
          }
          return count();
        };
        await expect.poll(told).toBeGreaterThan(0);
      };
      const stop = host.workbook.onChange(() => told++);
      await typedUntil(() => told);
      stop();
      told = 0;
      const stopOther = host.workbook.onChange(() => heard++);
      await typedUntil(() => heard);
      expect(told).toBe(0);
      stopOther();
    });
  });
}
