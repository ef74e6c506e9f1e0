/** The self-checking workbook as an .xlsx file; the same bytes every time. */
import { unzipSync, zipSync } from "fflate";
import { writeXlsx, type Cell, type CellValue } from "hucre";
import { toFile } from "../src/formula/file-spelling";
import type { SheetFunction } from "../src/worksheet/define";
import { agreement, checks } from "./self-checking";

const FIRST_ROW = 7;
const SHEET = "Self-check";
/** Any fixed day: the file must not change when nothing else does. */
const STAMP = new Date(Date.UTC(2026, 0, 1));

export async function selfCheckingWorkbook(definitions: readonly SheetFunction[]): Promise<Uint8Array> {
  const all = checks(definitions);
  const cells = new Map<string, Partial<Cell>>();
  const rows: CellValue[][] = [
    ["Do the worksheet functions give what their sources say?"],
    ["Every line is a worked example of the reference. Invented values only; no person stands behind them."],
    ["Needs the add-in, or open it on the add-in's own page. It shows arithmetic, not whether a tube is sound."],
    ["All agree", null],
    [],
    ["Function", "Formula gives", "Expected", "Within", "Agrees", "Where the expected value comes from", "Formula"],
    ...all.map((check) => [
      check.name,
      null,
      check.expected === "" ? null : check.expected,
      check.within,
      null,
      check.source,
      `=${check.formula}`,
    ]),
  ];
  const put = (row: number, column: number, formula: string, result: CellValue) =>
    cells.set(`${row},${column}`, {
      formula,
      formulaResult: result,
      formulaType: "array",
      formulaRef: `${"ABCDEFG"[column]}${row + 1}`,
      formulaDynamic: true,
    });
  put(3, 1, `AND(E${FIRST_ROW}:E${FIRST_ROW + all.length - 1})`, true);
  all.forEach((check, i) => {
    const row = FIRST_ROW - 1 + i;
    put(row, 1, toFile(check.formula), check.expected);
    cells.set(`${row},4`, { formula: agreement(check, row + 1), formulaResult: true });
  });

  const written = await writeXlsx({
    sheets: [
      {
        name: SHEET,
        rows,
        cells,
        columns: [16, 18, 18, 12, 10, 60, 60].map((width) => ({ width })),
        freezePane: { rows: FIRST_ROW - 1 },
      },
    ],
    properties: { title: "Self-checking workbook", created: STAMP, modified: STAMP },
  });
  return restamped(unzipSync(written));
}

const restamped = (parts: Record<string, Uint8Array>): Uint8Array =>
  zipSync(Object.fromEntries(Object.entries(parts).map(([name, bytes]) => [name, [bytes, { mtime: STAMP }]])), {
    level: 6,
  });
