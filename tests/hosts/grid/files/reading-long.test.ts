/** A long list is read in slices, between which somebody may type: what is read is of one moment all the same. */
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from "vitest";
import { gridOn } from "../../../../taskpane/workbook/embedded/face";
import type { Grid } from "../../../../taskpane/workbook/embedded/interface";
import type { Engine } from "../../../../taskpane/workbook/embedded/engine";
import { packagesHere } from "../../../../taskpane/workbook/embedded/packages/here";
import { oneSheet } from "../../../workbooks/package/build";
import { startHeadless } from "../headless";

const ROWS = 2_000;

let engine: Engine;
let grid: Grid;
beforeAll(async () => {
  engine = startHeadless();
  const options = { today: 46_132, dayFirst: true, say: () => undefined, hush: () => undefined };
  grid = gridOn(engine, options, undefined, Promise.resolve(packagesHere()));
  const rows = Array.from({ length: ROWS }, (_, i) => `<row r="${i + 1}"><c r="A${i + 1}"><v>1</v></c></row>`);
  await grid.open(oneSheet(rows.join("")), "long.xlsx");
});
afterEach(() => vi.restoreAllMocks());
afterAll(() => engine.univer.dispose());

/** Every look at the clock finds a slice's time over. */
function slow(): void {
  let now = 0;
  vi.spyOn(performance, "now").mockImplementation(() => (now += 1_000));
}

const type = (row: number, value: number) =>
  void engine.api.getActiveWorkbook()!.getActiveSheet().getRange(row, 0).setValue(value);

async function column(whileReading: () => void): Promise<readonly unknown[]> {
  const { sheets } = await grid.workbook.overview();
  const area = { top: 0, left: 0, rows: ROWS, columns: 1 };
  const reading = grid.workbook.read({ sheet: sheets[0]!.id, area }, ["values"]);
  whileReading();
  return (await reading).values!.map(([value]) => value);
}

describe("a long list", () => {
  it("is read with what was typed into rows that had been read already", async () => {
    slow();
    const values = await column(() => {
      type(0, 2);
      type(ROWS - 1, 2);
    });
    expect([values[0], values[1], values.at(-1)]).toEqual([2, 1, 2]);
  });

  it("lets the page have its turn between slices, and is still read while somebody goes on typing", async () => {
    slow();
    let [turns, isRead] = [0, false];
    const values = await column(() => {
      const again = () => {
        if (isRead) return;
        type(0, ++turns);
        setTimeout(again, 0);
      };
      again();
    });
    isRead = true;
    expect(turns).toBeGreaterThan(1);
    expect(values).toHaveLength(ROWS);
  });
});
