/**
 * How large a row of the ready-made caseload is in a file, and that a caseload too large for the page is refused in words
 * that say what to do. Large ones are stood in for by small ones under limits that are smaller by as much.
 */
import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { tableNames, type RowsTable } from "../../../src/caseload/names";
import { shell } from "../../../taskpane/texts/shell";
import { openPackage } from "../../../taskpane/workbook/package/open-package";
import { LIMITS } from "../../../taskpane/workbook/xlsx/limits";
import { caseloadFile, caseloadRows } from "../../bench/caseload/rows";

const textOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);
const rowsOf = (sheet: string): readonly string[] => sheet.match(/<row [^]*?<\/row>/g) ?? [];
const longest = (rows: readonly string[]): number =>
  Math.max(...rows.map((row) => new TextEncoder().encode(row).length));

const DEVICES = 40;
const file = await caseloadFile(caseloadRows(DEVICES));
const parts = Object.entries(unzipSync(file)).filter(([name]) => /worksheets\/sheet\d+\.xml$/.test(name));
const rowsWith = (table: RowsTable): readonly string[] =>
  parts
    .map(([, bytes]) => rowsOf(textOf(bytes)).filter((row) => row.includes(`${tableNames[table]}[[#This Row]`)))
    .find((rows) => rows.length > 0) ?? [];

describe("a row in the file", () => {
  /* As they are; docs/decisions.md says why they are not shorter. */
  it.each([
    ["tubes", DEVICES, 43_900],
    ["checks", DEVICES * 4, 13_600],
    ["changes", DEVICES, 2_400],
  ] as const)("of %s is no longer than it was", (table, rows, most) => {
    expect(rowsWith(table)).toHaveLength(rows);
    expect(longest(rowsWith(table))).toBeLessThanOrEqual(most);
  });
});

describe("a caseload too large for the page", () => {
  const opened = (share: Partial<typeof LIMITS>) => openPackage(file, { ...LIMITS, ...share });
  const unpacked = Object.values(unzipSync(file)).reduce((sum, { length }) => sum + length, 0);

  it("opens where it is within the limits", () => expect(opened({ unpackedBytes: unpacked })).not.toHaveProperty("refused"));
  it.each([
    ["bytes of the file", { fileBytes: file.length - 1 }],
    ["bytes unpacked", { unpackedBytes: unpacked - 1 }],
    ["cells", { cells: 10_000 }],
  ] as const)("by its %s is refused, with what to do", (_, share) => {
    expect(JSON.stringify(opened(share))).toMatch(/Work with it in Excel, or split it\./);
  });
  it("by its bytes is refused before they are read, with what to do", () => {
    expect(shell.tooLarge(104)).toMatch(/104 MB.*Work with it in Excel, or split it\./);
  });
});
