/** The workbook of 10,000 x 15 many times over, every text and formula its own: what a very large list looks like. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

const FILE = fileURLToPath(new URL("../workbooks/files/ten-thousand-rows.xlsx", import.meta.url));
const FIRST_ROW = 4;
const ROWS = 10_000;

export const tenThousand = (): Uint8Array => new Uint8Array(readFileSync(FILE));

/** @param times how many times 10,000 rows */
export function large(times: number): Uint8Array {
  const parts = unzipSync(tenThousand());
  const sheet = strFromU8(parts["xl/worksheets/sheet1.xml"]!);
  const texts = strFromU8(parts["xl/sharedStrings.xml"]!).match(/<si>.*?<\/si>/gs)!;
  const first = sheet.indexOf(`<row r="${FIRST_ROW}"`);
  const last = sheet.indexOf("</sheetData>");
  const rows = sheet.slice(first, last);
  const copies = Array.from({ length: times }, (_, copy) => {
    const down = copy * ROWS;
    return rows
      .replace(/(<row r="|<c r="[A-Z]+)(\d+)/g, (_, start: string, row: string) => start + (Number(row) + down))
      .replace(/t="s"><v>(\d+)/g, (_, text: string) => `t="s"><v>${Number(text) + copy * texts.length}`)
      .replace(
        /(<f>)([^<]*)/g,
        (_, tag: string, formula: string) =>
          tag +
          formula.replace(/\b([A-Z])(\d+)\b/g, (__, column: string, row: string) => column + (Number(row) + down)),
      );
  });
  parts["xl/worksheets/sheet1.xml"] = strToU8(
    sheet.slice(0, first).replace(/ref="A1:O\d+"/, `ref="A1:O${FIRST_ROW - 1 + times * ROWS}"`) +
      copies.join("") +
      sheet.slice(last),
  );
  const all = Array.from({ length: times }, (_, copy) =>
    copy === 0 ? texts.join("") : texts.join("").replaceAll("</t>", ` ${copy}</t>`),
  );
  parts["xl/sharedStrings.xml"] = strToU8(
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" uniqueCount="${texts.length * times}">${all.join("")}</sst>`,
  );
  return zipSync(parts, { level: 6 });
}
