/** Somebody goes on typing while a workbook is opened and saved beside the page. */
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { gridOn } from "../../../../taskpane/workbook/embedded/face";
import type { Grid } from "../../../../taskpane/workbook/embedded/interface";
import type { Engine } from "../../../../taskpane/workbook/embedded/engine";
import { packagesHere } from "../../../../taskpane/workbook/embedded/packages/here";
import type { Packages } from "../../../../taskpane/workbook/embedded/packages/interface";
import { isRefusal, openPackage } from "../../../../taskpane/workbook/package";
import { startHeadless } from "../headless";

const FILE = new URL("../../../workbooks/files/plain-list-title-rows.xlsx", import.meta.url);

let engine: Engine;
let grid: Grid;
/** Done once, when the cells are known and the file is not written yet. */
let whileWriting: () => void = () => undefined;
beforeAll(() => {
  engine = startHeadless();
  const here = packagesHere();
  const packages: Packages = {
    ...here,
    patch(...asked) {
      whileWriting();
      whileWriting = () => undefined;
      return here.patch(...asked);
    },
  };
  const options = { today: 46_132, dayFirst: true, say: () => undefined, hush: () => undefined };
  grid = gridOn(engine, options, undefined, Promise.resolve(packages));
});
afterAll(() => engine.univer.dispose());

const type = (row: number, column: number, text: string) =>
  engine.api.getActiveWorkbook()!.getActiveSheet().getRange(row, column).setValue({ v: text, t: 1 });

async function saved(): Promise<readonly unknown[]> {
  const outcome = await grid.save();
  if (outcome.outcome === "refused") throw new Error(outcome.sentence);
  const opened = openPackage(outcome.bytes);
  if (isRefusal(opened)) throw new Error(opened.refused);
  return [...opened.cells(opened.sheets[0]!.name)].map(({ value }) => value);
}

describe("while a workbook is saved", () => {
  it("what is typed after the cells were read stays unsaved, and is in the next file", async () => {
    await grid.open(new Uint8Array(readFileSync(FILE)), "list.xlsx");
    type(300, 1, "before");
    whileWriting = () => void type(301, 1, "meanwhile");
    const first = await saved();
    expect(first).toContain("before");
    expect(first).not.toContain("meanwhile");
    grid.markSaved();
    expect(grid.isChanged()).toBe(true);
    expect(await saved()).toContain("meanwhile");
    grid.markSaved();
    expect(grid.isChanged()).toBe(false);
  });

  it("a stopped saving leaves everything as it was, unsaved", async () => {
    type(302, 1, "later");
    const stop = new AbortController();
    whileWriting = () => stop.abort();
    const outcome = await grid.save({ signal: stop.signal });
    expect(outcome).toMatchObject({ outcome: "refused", sentence: "Stopped. Nothing was saved." });
    expect(grid.isChanged()).toBe(true);
    expect(await saved()).toContain("later");
  });

  it("a stopped opening leaves the workbook that was there", async () => {
    const stop = new AbortController();
    stop.abort();
    const outcome = await grid.open(new Uint8Array(readFileSync(FILE)), "other.xlsx", { signal: stop.signal });
    expect(outcome).toMatchObject({
      outcome: "refused",
      sentence: "Stopped. Nothing was opened; what was here is still here.",
    });
    expect(await saved()).toContain("later");
  });
});
