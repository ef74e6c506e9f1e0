import { describe, expect, it } from "vitest";
import { utils } from "@e965/xlsx";
import { findList } from "../../../src/columns/find-list";
import type { Rectangle } from "../../../src/columns/rectangle";
import type { SheetValue } from "../../../src/columns/sheet-block";
import { expectedFiles, openFixture, readSheet } from "./fixtures";

const address = ({ top, left, rows, columns }: Rectangle): string =>
  utils.encode_range({ s: { r: top, c: left }, e: { r: top + rows - 1, c: left + columns - 1 } });

/** Files that this reader cannot read, and lists that are no plain ones. */
const UNREADABLE = ["prefixed-single-quoted.xlsx", "utf16-part.xlsx", "ten-thousand-rows.xlsx"];
const plainLists = Object.entries(expectedFiles)
  .filter(([file]) => !UNREADABLE.includes(file))
  .flatMap(([file, { lists = [] }]) => lists.map((list) => ({ ...list, file })))
  .filter((list) => list.table === null);

/** A sheet typed by hand from A1 on. */
const sheet = (rows: readonly (readonly SheetValue[])[]) => {
  const columns = Math.max(0, ...rows.map((row) => row.length));
  const values = rows.map((row) => Array.from({ length: columns }, (_, c) => row[c] ?? null));
  return { used: columns === 0 ? null : { top: 0, left: 0, rows: rows.length, columns }, values };
};
const found = (...args: Parameters<typeof findList>): string => {
  const list = findList(...args);
  return list.area === null ? list.sentence : address(list.area);
};

const body: readonly (readonly SheetValue[])[] = [
  ["D-1", "balloon", 14, 46001],
  ["D-2", "PEG", 12, 46002],
  ["D-3", "balloon", "14FR", "see letter"],
  ["D-4", "GJ", 16, 46004],
];
const heads = ["ID", "Kind", "Size", "Last change"];

describe("plain lists of the committed workbooks", () => {
  it("are some", () => expect(plainLists.length).toBeGreaterThan(15));
  it.each(plainLists)("$file, $sheet", ({ file, sheet: name, range, headerRow, firstRow }) => {
    const read = readSheet(openFixture(file).Sheets[name]!);
    const list = findList({ ...read, at: { row: firstRow + 1, column: utils.decode_range(range).s.c } });
    if (headerRow === null) {
      expect(list).toMatchObject({ area: null });
      return;
    }
    expect(list.area && address(list.area)).toBe(range);
    expect(list.area && list.firstRow + 1).toBe(firstRow);
  });
});

describe("a plain list", () => {
  it("starts under title rows and a group header", () => {
    const rows = [
      ["Feeding tubes"],
      ["kept by us", null, null, 46000],
      [],
      [null, "Tube", null, "Dates"],
      heads,
      ...body,
    ];
    expect(found({ ...sheet(rows), at: { row: 6, column: 1 } })).toBe("A5:D9");
  });
  it("takes the lower of two rows of names", () => {
    const rows = [["Person", "Tube", "Tube in", "Change"], heads, ...body];
    expect(found(sheet(rows))).toBe("A2:D6");
  });
  it("reads names that stand in upright merges", () => {
    const rows = [["ID", "Tube", null, "Last change"], [null, "Kind", "Size", null], ...body];
    const upright = (left: number) => ({ top: 0, left, rows: 2, columns: 1 });
    const list = findList({
      ...sheet(rows),
      merges: [upright(0), upright(3), { top: 0, left: 1, rows: 1, columns: 2 }],
    });
    expect(list).toMatchObject({ headers: heads, area: { top: 1, rows: 5, columns: 4 } });
  });
  it("goes on over a blank row, and ends before notes and totals", () => {
    const rows = [heads, ...body, [], ...body, ["Total", null, 98], [], [], ["Sizes are French."]];
    expect(findList(sheet(rows))).toMatchObject({
      area: { top: 0, rows: 10 },
      totalsRow: 10,
      sentence: "Header in row 1, data in rows 2 to 10. 1 blank row in between. The totals in row 11 are left out.",
    });
  });
  it("is the one in which one stands, where two stand side by side", () => {
    const both = [heads, ...body].map((row) => [...row, null, ...row]);
    expect(found({ ...sheet(both), at: { row: 2, column: 6 } })).toBe("F1:I5");
    expect(found({ ...sheet(both), at: { row: 2, column: 1 } })).toBe("A1:D5");
  });
  it("is the one in which one stands, where one stands under the other", () => {
    const rows = [heads, ...body, [], heads, ...body];
    expect(found({ ...sheet(rows), at: { row: 8, column: 1 } })).toBe("A7:D11");
    expect(found({ ...sheet(rows), at: { row: 2, column: 1 } })).toBe("A1:D5");
  });
  it("is the nearest one where one stands outside, and that is said", () => {
    const two = [heads, ...body].map((row) => [...row, null, ...row]);
    const list = findList({ ...sheet(two), at: { row: 40, column: 1 } });
    expect(list).toMatchObject({ sure: false, holdsSelection: false, area: { top: 0, left: 0 } });
    expect(list.sentence).toContain("nearest to the selected cell");
  });
  it("raises no doubt from outside where it is the only one", () => {
    const list = findList({ ...sheet([["Invented"], [], heads, ...body]), at: { row: 0, column: 0 } });
    expect(list).toMatchObject({ sure: true, holdsSelection: false });
    expect(list.sentence).toBe("Header in row 3, data in rows 4 to 7.");
  });
  it("has no header where the data begin at once", () => {
    expect(found(sheet([["Invented"], [], ...body]))).toContain("No header row was found");
  });
  it("is not there on an empty sheet", () => {
    expect(found(sheet([]))).toBe("This sheet is empty.");
    expect(found(sheet([["Notes for the team"]]))).toContain("No header row was found");
  });
  it("may have two columns of one name; both are told", () => {
    const list = findList(sheet([["ID", "Kind", "Date", "Date"], ...body]));
    expect(list).toMatchObject({ headers: ["ID", "Kind", "Date", "Date"] });
  });
  it("is what somebody says it is", () => {
    const rows = [["x1", "x2", "x3", "x4"], ...body, ["D-5", "balloon", 10, 46005]];
    expect(found(sheet(rows), { headerRow: 0, lastRow: 3 })).toBe("A1:D4");
    expect(found(sheet(rows), { headerRow: 0 })).toBe("A1:D6");
    expect(found(sheet(rows), { headerRow: 0, lastRow: 900 })).toBe("A1:D6");
    expect(found(sheet(rows), { headerRow: 5 })).toBe("There are no rows of data below row 6.");
    expect(found(sheet(rows), { headerRow: 77 })).toBe("Row 78 holds no column names.");
  });
});
