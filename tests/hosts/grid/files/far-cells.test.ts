/** Small files that would make a sheet of billions of cells: what is near is drawn, and the file keeps all of it. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { gridOn } from "../../../../taskpane/workbook/embedded/face";
import type { Engine } from "../../../../taskpane/workbook/embedded/engine";
import type { Grid } from "../../../../taskpane/workbook/embedded/interface";
import { book, cellsOf, oneSheet, opened, STYLES } from "../../../workbooks/package/build";
import { startHeadless } from "../headless";

let engine: Engine;
let grid: Grid;
beforeAll(() => {
  engine = startHeadless();
  grid = gridOn(engine, { today: 46_132, dayFirst: true, say: () => undefined, hush: () => undefined });
});
afterAll(() => engine.univer.dispose());

async function open(bytes: Uint8Array): Promise<readonly string[]> {
  const answer = await grid.open(bytes, "far.xlsx");
  if (answer.outcome === "refused") throw new Error(answer.sentence);
  return answer.remarks;
}

async function saved(): Promise<Uint8Array> {
  const answer = await grid.save();
  if (answer.outcome === "refused") throw new Error(answer.sentence);
  return answer.bytes;
}

const cell = (ref: string, value: number, formula?: string) =>
  `<c r="${ref}">${formula === undefined ? "" : `<f>${formula}</f>`}<v>${value}</v></c>`;
const row = (number: number, ...cells: string[]) => `<row r="${number}">${cells.join("")}</row>`;

const sheet = () => engine.api.getActiveWorkbook()!.getActiveSheet();
const used = async () => (await grid.workbook.overview()).sheets[0]!.used;

describe("a cell far away from all others", () => {
  const corner = oneSheet(
    row(1, cell("A1", 1), cell("B1", 41, "SUM(A:A)"), cell("C1", 40, "XFD1048576"), cell("D1", 2, "A1*2")) +
      row(2, cell("A2", 0), cell("B2", 40, "INDIRECT(&quot;XFD1048576&quot;)"), cell("C2", 40, "Far+0")) +
      row(1_048_576, cell("XFD1048576", 40)),
    { workbookTail: `<definedNames><definedName name="Far">S!$XFD$1048576</definedName></definedNames>` },
  );

  it("is left in the file and told; the rest is drawn", async () => {
    expect(await open(corner)).toEqual([
      expect.stringContaining('"S": XFD1048576 stands too far from the other cells'),
      expect.stringContaining("4 formulas use something"),
    ]);
    expect(await used()).toEqual({ top: 0, left: 0, rows: 2, columns: 4 });
    expect(sheet().getMaxRows()).toBeLessThan(1_000);
    expect(sheet().getMaxColumns()).toBeLessThan(100);
  });

  it("stays as it was in the file, with the results of formulas that read it", async () => {
    await open(corner);
    sheet().getRange("A1").setValue(5);
    await expect.poll(() => sheet().getRange("D1").getRawValue()).toBe(10);
    const cells = cellsOf(await saved());
    expect(cells.get("XFD1048576")).toMatchObject({ value: 40 });
    expect(cells.get("A1")).toMatchObject({ value: 5 });
    for (const [ref, text] of [
      ["C1", "XFD1048576"],
      ["C2", "Far+0"],
    ] as const)
      expect(cells.get(ref)).toMatchObject({ value: 40, formula: { text } });
    // these read a cell that was typed over too, or do not say what they read
    for (const [ref, text] of [
      ["B1", "SUM(A:A)"],
      ["B2", 'INDIRECT("XFD1048576")'],
    ] as const)
      expect(cells.get(ref)).toMatchObject({ value: { error: "#N/A" }, formula: { text } });
  });

  it("is the one that is left out, whichever way it lies, and never one of a list", async () => {
    const list = Array.from({ length: 300 }, (_, at) => row(at + 1, cell(`A${at + 1}`, at), cell(`B${at + 1}`, at)));
    const right = [row(1, cell("A1", 0), cell("B1", 0), cell("XFD1", 7)), ...list.slice(1)];
    await open(oneSheet(right.join("") + row(65_536, cell("A65536", 8))));
    const area = (await used())!;
    expect(area.rows * area.columns).toBeLessThanOrEqual(300 * 16_384);
    expect(area.rows).toBeGreaterThanOrEqual(300);
    expect([...cellsOf(await saved()).keys()]).toHaveLength(602);
  });

  it("does not hide a long list: two columns down to the last row are drawn", async () => {
    expect(await open(oneSheet(row(1, cell("A1", 1), cell("B1", 1)) + row(1_048_576, cell("B1048576", 1))))).toEqual(
      [],
    );
    expect((await used())!.rows).toBe(1_048_576);
  });
});

describe("rules, merged cells and panes of a whole sheet", () => {
  it("reach as far as the sheet is drawn, and stay whole in the file", async () => {
    const bytes = oneSheet(
      `<sheetViews><sheetView workbookViewId="0"><pane ySplit="1000000" topLeftCell="A1000001" state="frozen"/></sheetView></sheetViews>` +
        `<sheetData>${row(1, cell("A1", 1))}</sheetData>` +
        `<mergeCells count="2"><mergeCell ref="C3:XFD1048576"/><mergeCell ref="XA1:XB2"/></mergeCells>` +
        `<conditionalFormatting sqref="A1:XFD1048576"><cfRule type="duplicateValues" priority="1"/></conditionalFormatting>`,
    );
    await open(bytes);
    const { mergeData, freeze } = engine.api.getActiveWorkbook()!.save().sheets["sheet1"]!;
    expect(mergeData).toEqual([{ startRow: 2, startColumn: 2, endRow: 200, endColumn: 25 }]);
    expect(freeze?.ySplit ?? 0).toBe(0);
    sheet().getRange("A1").setValue(2);
    expect(opened(await saved()).layout("S").merges).toEqual(["C3:XFD1048576", "XA1:XB2"]);
  });
});

describe("names without number", () => {
  it("are read as far as cells use them; the others stay in the file", async () => {
    const names = Array.from({ length: 9_000 }, (_, at) => `<definedName name="name_${at}">S!$A$1</definedName>`).join(
      "",
    );
    const bytes = oneSheet(row(1, cell("A1", 1), cell("B1", 2, "name_8999+1"), cell("C1", 9, "name_7000+1")), {
      workbookTail: `<definedNames>${names}</definedNames>`,
    });
    expect(await open(bytes)).toEqual([expect.stringContaining("4000 of the 9000 names are not read here")]);
    sheet().getRange("A1").setValue(5);
    await expect.poll(() => sheet().getRange("B1").getRawValue()).toBe(6);
    const again = await saved();
    expect(opened(again).definedNames).toHaveLength(9_000);
    expect(cellsOf(again).get("B1")).toMatchObject({ value: 6, formula: { text: "name_8999+1" } });
  });
});

describe("the sheet that was in front", () => {
  const sheets = ["One", "Two", "Three"].map((name) => ({
    name,
    inside: `<sheetData>${row(1, cell("A1", 1))}</sheetData>`,
  }));

  it.each([
    [`<bookViews><workbookView activeTab="2"/></bookViews>`, "Three"],
    [`<bookViews><workbookView/></bookViews>`, "One"],
    [`<bookViews><workbookView activeTab="9"/></bookViews>`, "One"],
    ["", "One"],
  ])("%s", async (workbookHead, front) => {
    await open(book({ styles: STYLES, workbookHead, sheets }));
    expect(sheet().getSheetName()).toBe(front);
    expect(grid.isChanged()).toBe(false);
  });

  it("is not a hidden one", async () => {
    const workbookHead = `<bookViews><workbookView activeTab="1"/></bookViews>`;
    const [one, two, three] = sheets as [(typeof sheets)[0], (typeof sheets)[0], (typeof sheets)[0]];
    await open(book({ styles: STYLES, workbookHead, sheets: [one, { ...two, state: "hidden" }, three] }));
    expect(sheet().getSheetName()).toBe("One");
  });
});

it("nothing that is worked out asks for anything outside: IMAGE is a formula of the file's own", async () => {
  const bytes = oneSheet(row(1, cell("A1", 0, "_xlfn.IMAGE(&quot;https://example.org/a.png&quot;)")));
  expect(await open(bytes)).toEqual([expect.stringContaining("1 formula uses something this page cannot work out")]);
  sheet().getRange("B1").setValue(2);
  expect(cellsOf(await saved()).get("A1")?.formula?.text).toBe('_xlfn.IMAGE("https://example.org/a.png")');
});
