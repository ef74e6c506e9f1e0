/** Opening and saving a 10,000 x 15 workbook without a page, beside a general library that does both. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import ExcelJS from "exceljs";
import { isRefusal, openPackage, patchPackage } from "../../taskpane/workbook/package";
import { line, median, ms } from "./measure";

const FILE = fileURLToPath(new URL("../workbooks/files/ten-thousand-rows.xlsx", import.meta.url));
const RUNS = 3;

const since = async (work: () => unknown): Promise<number> => {
  const start = performance.now();
  await work();
  return performance.now() - start;
};

export async function benchFiles(): Promise<void> {
  const bytes = new Uint8Array(readFileSync(FILE));
  const figures = {
    ourOpen: [] as number[],
    ourSave: [] as number[],
    theirOpen: [] as number[],
    theirSave: [] as number[],
  };
  for (let i = 0; i < RUNS; i++) {
    let opened: ReturnType<typeof openPackage>;
    figures.ourOpen.push(
      await since(() => {
        opened = openPackage(bytes);
        if (!isRefusal(opened)) for (const cell of opened.cells(opened.sheets[0]!.name)) void cell;
      }),
    );
    figures.ourSave.push(await since(() => save(opened!)));
    const theirs = new ExcelJS.Workbook();
    figures.theirOpen.push(await since(() => theirs.xlsx.load(bytes.buffer.slice(0) as ArrayBuffer)));
    const sheet = theirs.worksheets[0]!;
    figures.theirSave.push(
      await since(async () => {
        for (let row = 4; row <= 10_003; row++) sheet.getCell(row, 16).value = { formula: `C${row}/3`, result: 5 };
        await theirs.xlsx.writeBuffer();
      }),
    );
  }
  const of = (what: keyof typeof figures) => median(figures[what]);
  line(
    "Read all cells of 10,000 x 15; peer: ExcelJS",
    `${ms(of("ourOpen"))} against ${ms(of("theirOpen"))}`,
    "measured",
  );
  line(
    "Save it with one more column; peer: ExcelJS",
    `${ms(of("ourSave"))} against ${ms(of("theirSave"))}`,
    "measured",
  );
}

function save(opened: ReturnType<typeof openPackage>): void {
  if (isRefusal(opened)) throw new Error(opened.refused);
  const fill = { column: 16, firstRow: 4, lastRow: 10_003, formula: { fromFirst: "C4/3" }, valueAt: () => 5 };
  const patched = patchPackage(opened, { sheets: new Map([[opened.sheets[0]!.name, { fills: [fill] }]]) });
  if (isRefusal(patched)) throw new Error(patched.refused);
}
