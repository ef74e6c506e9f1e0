/** The marks at texts that could be taken for numbers: each text is read once, and the marks are the grid's own. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { readOnce } from "../../../taskpane/workbook/embedded/mends/number-marks";

it("the grid of this version reads every text in sight before it asks whether marks are wanted", () => {
  const script = readFileSync(new URL("../../../node_modules/@univerjs/sheets-ui/lib/es/index.js", import.meta.url));
  const handler = script.toString().split("let ForceStringRenderController")[1]!.split("//#endregion")[0]!;
  const reading = handler.indexOf("getNumfmtParseValueFilter(cellRaw.v)");
  expect(reading).toBeGreaterThan(0);
  expect(handler.indexOf("disableForceStringMark")).toBeGreaterThan(reading);
});

it("reads a plain text once, and leaves every other cell to the grid", () => {
  const read: string[] = [];
  const mark = (cell: unknown) => ({ cell, mark: true });
  const handler = readOnce(mark, (text) => {
    read.push(text);
    return /\d/.test(text);
  });
  const ask = (v: unknown) => handler("cell", { rawData: { v } }, (cell) => cell);
  for (let repaint = 0; repaint < 3; repaint++) {
    expect(ask("balloon")).toBe("cell");
    expect(ask("12")).toEqual({ cell: "cell", mark: true });
    expect(ask(12)).toEqual({ cell: "cell", mark: true });
    expect(handler("cell", {}, (cell) => cell)).toEqual({ cell: "cell", mark: true });
  }
  expect(read.filter((text) => text === "balloon")).toHaveLength(1);
});
