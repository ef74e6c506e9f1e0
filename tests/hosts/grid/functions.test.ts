/** Our functions inside the grid's own engine: what arrives in them, and what becomes of what they give. */
import { afterAll, beforeAll, expect, it } from "vitest";
import { CellError, SheetError } from "../../../src/worksheet/error";
import { gridDescriptions, gridFunctions } from "../../../functions/grid";
import { functions } from "../../../src/index";
import { gridOn } from "../../../taskpane/workbook/embedded/face";
import type { Engine } from "../../../taskpane/workbook/embedded/engine";
import type { Grid } from "../../../taskpane/workbook/embedded/interface";
import { parseArea } from "../../../taskpane/workbook/area";
import { startHeadless } from "./headless";

let engine: Engine;
let grid: Grid;
beforeAll(async () => {
  engine = startHeadless();
  grid = gridOn(engine, { today: 46_132, dayFirst: null, say: () => undefined, hush: () => undefined });
  await grid.openEmpty();
});
afterAll(() => engine.univer.dispose());

const sheet = () => engine.api.getActiveWorkbook()!.getActiveSheet();
const id = () => sheet().getSheetId();

/** The values of a range once the engine has worked out the formula in its first cell. */
async function worksOut(formula: string, range: string) {
  const area = parseArea(range)!;
  const first = { sheet: id(), area: { ...area, rows: 1, columns: 1 } };
  sheet().getRange(area.top, area.left).setFormula(formula);
  await expect
    .poll(async () => (await grid.workbook.read(first, ["values"])).values![0]![0], { interval: 20 })
    .not.toBeNull();
  return (await grid.workbook.read({ sheet: id(), area }, ["values"])).values!;
}

it("one cell gives one value, and any case of its name does", async () => {
  sheet().getRange("A1").setValue({ v: "CH 15", t: 1 });
  expect(await worksOut("=tube.frtomm(A1)", "C1")).toEqual([[5]]);
});

it("a range spills, a blank in it stays blank and a fault stays in its row", async () => {
  sheet().getRange("A2").setValue(12);
  sheet().getRange("A4").setValue({ v: "12/14", t: 1 });
  expect(await worksOut("=TUBE.FRTOMM(A2:A4)", "C2:C4")).toEqual([[4], [""], [new CellError("#VALUE!")]]);
});

it("a literal that looks like a date arrives as typed: 1/2 is no day in February", async () => {
  expect(await worksOut('=TUBE.FRTOMM("1/2")', "C6")).toEqual([[new CellError("#VALUE!")]]);
});

it("an error that comes in is passed on by its kind", async () => {
  expect(await worksOut("=TUBE.FRTOMM(NA())", "C7")).toEqual([[new CellError("#N/A")]]);
  expect(await worksOut("=TUBE.FRTOMM(1/0)", "C8")).toEqual([[new CellError("#VALUE!")]]);
});

it("works inside the engine's own functions", async () => {
  expect(await worksOut("=IF(TUBE.FRTOMM(30)=10,LET(x,TUBE.MMTOFR(4),x*2),0)", "C9")).toEqual([[24]]);
});

it("a fault of our own does not stop the engine", () => {
  const broken = { ...functions[0]!, order: null as never };
  const [made] = gridFunctions([broken]);
  const result = new made![0]("TUBE.BROKEN").calculate() as { isError(): boolean };
  expect(result.isError()).toBe(true);
});

it("every function has argument help", () => {
  const help = gridDescriptions(functions);
  expect(help.map((one) => one.functionName)).toEqual(functions.map((one) => `TUBE.${one.name}`));
  for (const one of help) for (const parameter of one.functionParameter) expect(parameter.detail).not.toBe("");
  expect(new SheetError("x").code).toBe("#VALUE!");
});
