/** Reading the ready-made caseload: what makes it one, and who is meant by an identifier. */
import { describe, expect, test } from "vitest";
import { whoIsMeant } from "../../../taskpane/actions/caseload/identity";
import { named, readCaseload, textIn, valueIn } from "../../../taskpane/actions/caseload/read";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { caseloadBook, headers, type Parts } from "./book";

async function read(parts: Parts) {
  const found = await readCaseload(fakeWorkbook(caseloadBook(parts)));
  if (found.is !== "caseload") throw new Error(found.sentence);
  return found;
}

describe("the workbook", () => {
  test("is read by headers, wherever its columns stand", async () => {
    const columns = { tubes: ["Our own", ...headers.tubes.filter((header) => header !== "Lying cm")].reverse() };
    const { tubes, names } = await read({
      tubes: [{ ID: "D-001", "Held by": "balloon", "Our own": "ward 3" }, {}, { ID: "D-002", "Held by": "bumper" }],
      names: { Tract_Low: 8 },
      columns,
    });
    expect(tubes.rows.map((row) => [textIn(row, "ID"), textIn(row, "Held by"), row.index, row.sheetRow])).toEqual([
      ["D-001", "balloon", 0, 5],
      ["D-002", "bumper", 2, 7],
    ]);
    expect(tubes.rows[0]!.values.get("our own")).toBe("ward 3");
    expect(valueIn(tubes.rows[0]!, "Lying cm")).toBeNull();
    expect([named(names, "tract_low"), named(names, "Tract_High")]).toEqual([8, null]);
  });

  test("without any of its tables is no caseload", async () => {
    const found = await readCaseload(fakeWorkbook({ sheets: [{ name: "List", rows: [["ID"]] }] }));
    expect(found).toEqual({ is: "none", sentence: "There is no ready-made caseload in this workbook." });
  });

  test.each([
    [
      "a table that is gone",
      (book: ReturnType<typeof caseloadBook>) => ({ ...book, sheets: book.sheets.slice(0, 3) }),
      'the table "Device_changes" is missing',
    ],
    [
      "dates from 1904",
      (book: ReturnType<typeof caseloadBook>) => ({ ...book, dateSystem: 1904 as const }),
      "its dates are counted from 1904",
    ],
  ])("%s is told", async (_, spoil, what) => {
    const found = await readCaseload(fakeWorkbook(spoil(caseloadBook({}))));
    expect(found).toEqual({
      is: "incomplete",
      sentence: `This caseload cannot be read: ${what}. Put that right, or set up a new caseload.`,
    });
  });

  test("columns that are gone are told by name", async () => {
    const tubes = headers.tubes.filter((header) => header !== "Access" && header !== "Born");
    const found = await readCaseload(fakeWorkbook(caseloadBook({ columns: { tubes } })));
    expect(found).toMatchObject({ is: "incomplete" });
    expect((found as { sentence: string }).sentence).toContain('"Tubes_in_use" has no column "Born" and "Access"');
  });
});

describe("who is meant", () => {
  const meant = async (rows: readonly (readonly [id: string | number, access: string | null])[], typed: string) =>
    whoIsMeant((await read({ tubes: rows.map(([ID, Access]) => ({ ID, Access, Status: "active" })) })).tubes, typed);

  test("letter case, outer and doubled spaces do not count", async () => {
    const { devices, doubt } = await meant([["D-001", "G"]], "  d-001 ");
    expect([devices.map(({ row }) => row.sheetRow), doubt]).toEqual([[5], null]);
  });

  test.each(["03-04", "1E5", "007", "=A1"])("%s is a text and nothing else", async (id) => {
    // What a spreadsheet might have made of them: a date (4 March 2026), a number, a number, a blank.
    const others: [number | string, string][] = [
      [46085, "G"],
      [100000, "G"],
      [7, "G"],
      ["A1", "G"],
    ];
    expect((await meant(others, id)).devices).toEqual([]);
    expect((await meant([...others, [id, "G"]], id)).devices.map(({ row }) => row.sheetRow)).toEqual([9]);
  });

  test("two devices of one person are told apart by Access", async () => {
    const { devices, doubt } = await meant(
      [
        ["D-001", "G"],
        ["D-001", "J"],
      ],
      "D-001",
    );
    expect([devices.map(({ access }) => access), doubt]).toEqual([["G", "J"], null]);
  });

  test.each([
    [
      "the same Access twice",
      [
        ["D-001", "G"],
        ["D-001", "g"],
      ],
    ],
    [
      "one Access not known",
      [
        ["D-001", "G"],
        ["D-001", null],
      ],
    ],
    [
      "another spelling, though Access differs",
      [
        ["D-017", "G"],
        ["d-017 ", "J"],
      ],
    ],
  ] as const)("%s is a doubt", async (_, rows) => {
    const { devices, doubt } = await meant(rows, rows[0][0]);
    expect(devices).toHaveLength(2);
    expect(doubt).toMatch(/rows 5 and 6.*look at the list/);
  });

  test("nobody", async () => {
    expect(await meant([["D-001", "G"]], "D-002")).toEqual({ devices: [], doubt: null });
    expect(await meant([["", "G"]], " ")).toEqual({ devices: [], doubt: null });
  });
});
