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
  /* The first row holds the texts that all others share: with it the window of the zip must still reach back to a row above. */
  it.each([
    ["tubes", DEVICES, 20_000],
    ["checks", DEVICES * 4, 5_000],
    ["changes", DEVICES, 2_000],
  ] as const)("of %s is no longer than it was", (table, rows, most) => {
    const [first = "", ...others] = rowsWith(table);
    expect(others).toHaveLength(rows - 1);
    expect(longest(others)).toBeLessThanOrEqual(most);
    expect(longest([first])).toBeLessThanOrEqual(most + 14_000);
  });
  it("holds a step's formula once for its column, as Excel writes such columns", () => {
    const [first = "", second = "", third = ""] = rowsWith("checks");
    const steps = (row: string): readonly string[] => row.match(/<f t="shared"[^>]*>/g) ?? [];
    expect(steps(first).length).toBeGreaterThan(20);
    expect(steps(second)).toEqual(steps(first).map((tag) => tag.replace(/ ref="[^"]*"/, "").replace(">", "/>")));
    expect(steps(third)).toEqual(steps(second));
    expect(first).toMatch(/<f t="shared" ref="R(\d+):R\d+" si="0">IF\(IFERROR\(LEN\(TRIM\(\$A\1\)\),1\)=0/);
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
