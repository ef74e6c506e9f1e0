/** What the rules of a cell say together is put together once, and is the grid's own. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { puttingTogetherOnce, type Colours } from "../../../taskpane/workbook/embedded/mends/colours-put-together";

it("the grid of this version merges what the rules say on each repaint, also where none says anything", () => {
  const file = "../../../node_modules/@univerjs/sheets-conditional-formatting/lib/es/index.js";
  const script = readFileSync(new URL(file, import.meta.url)).toString();
  const composing = script.split("composeStyle(unitId, subUnitId, row, col) {")[1]!.split("_initSnapshot() {")[0]!;
  expect(composing).toContain("this._mergeComposeResult(result, rule, cacheItem.result)");
  expect(composing).not.toMatch(/cache\.|Map\(/i);
});

it("asks the grid once for as long as it keeps what each rule says, and never where none says anything", () => {
  const red = [{ result: {} }, { result: { bg: { rgb: "#FF0000" } } }];
  const cells: Record<string, readonly { result: unknown }[] | undefined> = {
    "0,0": red,
    "0,1": [{ result: {} }, { result: null }],
    "0,2": undefined,
    "0,3": [{ result: "a bar" }],
  };
  const asked: string[] = [];
  const service: Colours = {
    _conditionalFormattingViewModelV2: { getCellCfs: (_unit, _sheet, row, column) => cells[`${row},${column}`] },
    composeStyle: puttingTogetherOnce((_unit, _sheet, row, column) => {
      asked.push(`${row},${column}`);
      return { style: `of ${row},${column}` };
    }),
  };
  const repaint = () => [0, 1, 2, 3].map((column) => service.composeStyle("u", "s", 0, column));
  const first = repaint();
  expect(first).toEqual([{ style: "of 0,0" }, null, null, { style: "of 0,3" }]);
  expect(repaint()).toEqual(first);
  expect(asked).toEqual(["0,0", "0,3"]);
  // after an edit the grid works them out anew, into new lists
  cells["0,0"] = [...red];
  repaint();
  expect(asked).toEqual(["0,0", "0,3", "0,0"]);
});
