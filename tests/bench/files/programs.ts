/** Who opens and saves a workbook. Saving adds one column that holds a formula and its result in every row. */
import { COLUMNS, SHEET } from "./make";

export interface Program {
  readonly open: (bytes: Uint8Array) => unknown;
  /** What `open` gave goes in. */
  readonly save: (opened: never, rows: number) => unknown;
}

const COLUMN = COLUMNS + 1;
const FORMULA = (row: number): string => `C${row}/3`;
const RESULT = 5;

/** As the page does it on a thread of its own. */
async function ours(): Promise<Program> {
  const { isRefusal, openUnhurried, patchUnhurried } = await import("../../../taskpane/workbook/package");
  type Opened = Parameters<typeof patchUnhurried>[0];
  return {
    async open(bytes) {
      const opened = await openUnhurried(bytes);
      if (isRefusal(opened)) throw new Error(opened.refused);
      for (const cell of opened.cells(SHEET)) void cell;
      return opened;
    },
    async save(opened: Opened, rows: number) {
      const fill = {
        column: COLUMN,
        firstRow: 2,
        lastRow: rows + 1,
        formula: { fromFirst: FORMULA(2) },
        valueAt: () => RESULT,
      };
      const patched = await patchUnhurried(opened, { sheets: new Map([[SHEET, { fills: [fill] }]]) });
      if (isRefusal(patched)) throw new Error(patched.refused);
      return patched;
    },
  };
}

async function hucre(): Promise<Program> {
  const { readXlsx, writeXlsx } = await import("hucre/xlsx");
  type Book = Awaited<ReturnType<typeof readXlsx>>;
  return {
    open: (bytes) => readXlsx(bytes, { readStyles: true }),
    save(book: Book, rows: number) {
      const [sheet] = book.sheets;
      const values = sheet!.rows;
      for (let row = 1; row <= rows; row++) values[row]![COLUMN - 1] = RESULT;
      return writeXlsx({ sheets: [sheet!] } as Parameters<typeof writeXlsx>[0]);
    },
  };
}

async function sheetJs(): Promise<Program> {
  const { read, write } = await import("@e965/xlsx");
  return {
    open: (bytes) => read(bytes, { cellStyles: true, cellFormula: true, dense: true }),
    save(book: ReturnType<typeof read>, rows: number) {
      const sheet = book.Sheets[SHEET]! as unknown as { "!data": unknown[][]; "!ref": string };
      for (let row = 1; row <= rows; row++)
        sheet["!data"][row]![COLUMN - 1] = { t: "n", f: FORMULA(row + 1), v: RESULT };
      sheet["!ref"] = `A1:P${rows + 1}`;
      return write(book, { type: "buffer", bookType: "xlsx", compression: true }) as Uint8Array;
    },
  };
}

async function excelJs(): Promise<Program> {
  const { default: ExcelJS } = await import("exceljs");
  type Book = InstanceType<typeof ExcelJS.Workbook>;
  return {
    async open(bytes) {
      const book = new ExcelJS.Workbook();
      await book.xlsx.load(bytes.buffer as ArrayBuffer);
      return book;
    },
    save(book: Book, rows: number) {
      const sheet = book.worksheets[0]!;
      for (let row = 2; row <= rows + 1; row++)
        sheet.getCell(row, COLUMN).value = { formula: FORMULA(row), result: RESULT };
      return book.xlsx.writeBuffer();
    },
  };
}

/** Zip alone: what any program in JavaScript spends before it reads a cell, and after it has written the last. */
async function fflate(): Promise<Program> {
  const { unzipSync, zipSync } = await import("fflate");
  return { open: (bytes) => unzipSync(bytes), save: (parts: Parameters<typeof zipSync>[0]) => zipSync(parts) };
}

export const programs = { ours, hucre, sheetJs, excelJs, fflate } as const;
export type ProgramName = keyof typeof programs;
