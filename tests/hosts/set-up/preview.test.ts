/** What is said of a new caseload before it is made. */
import { describe, expect, it } from "vitest";
import type { BookDescription } from "../../../src/caseload/book";
import { caseloadBook } from "../../../src/caseload/index";
import { sheetNames, tableNames } from "../../../src/caseload/names";
import { clinicSettings } from "../../../src/settings/index";
import { day } from "../../../src/worksheet/dates";
import { setUp } from "../../../taskpane/actions/set-up";
import { columnGroups } from "../../../taskpane/actions/set-up/interface";
import { isRefusal, openPackage } from "../../../taskpane/workbook/package";
import { writeBook } from "../../../taskpane/workbook/file";

const AS_OF = day("2026-11-26");
const described = (people: "invented" | "none", groups = columnGroups as readonly (typeof columnGroups)[number][]) =>
  caseloadBook({ asOf: AS_OF, people, groups: [...groups] });
const tubesOf = (book: BookDescription) => book.sheets.find(({ name }) => name === sheetNames.tubes)!.table!;

describe("the preview of a caseload", () => {
  it("says what each of the five sheets is for", () => {
    const { sheets } = setUp.preview(described("invented"));
    expect(sheets.map(({ name }) => name)).toEqual(Object.values(sheetNames));
    for (const { name, purpose } of sheets) expect(purpose, name).toMatch(/\.$/);
  });

  it("counts invented rows and says that nobody stands behind them", () => {
    const { says, sheets } = setUp.preview(described("invented"));
    // D-001 to D-047: one of them in two rows with two tubes, one twice by mistake, one in two spellings.
    expect(says[0]).toMatch(/^47 people, \d+ past checks and changes, all invented\. Nobody stands behind them/);
    const past = sheets.slice(2, 4).reduce((sum, { holds }) => sum + parseInt(holds!), 0);
    expect(says[0]).toContain(`, ${past} past`);
    // 50 rows, as the shared template asks.
    expect(sheets[1]?.holds).toMatch(/^50 rows, \d+ columns, \d+ of them worked out\.$/);
  });

  it("says that empty lists are empty, though a table keeps one blank row", () => {
    const { says, sheets } = setUp.preview(described("none"));
    expect(says[0]).toBe("Empty lists: nobody is in them yet.");
    expect(sheets[1]?.holds).toMatch(/^No row yet, /);
    expect(sheets[2]?.holds).toMatch(/^No row yet, /);
  });

  it("counts every setting", () => {
    const { says, settings } = setUp.preview(described("none"));
    const counted = settings.reduce((sum, line) => sum + Number(/: (\d+) /.exec(line)![1]), 0);
    expect(counted).toBe(clinicSettings.length);
    expect(says[2]).toContain(`${clinicSettings.length} clinic settings`);
  });

  it("leaves out the columns of groups that were not chosen", () => {
    const headers = tubesOf(described("none", [])).columns.map(({ header }) => header);
    for (const header of ["Lying cm", "Spare lot", "Site"]) expect(headers).not.toContain(header);
    for (const header of ["ID", "Status", "Born", "Held by", "Device in"]) expect(headers).toContain(header);
    expect(headers.length).toBeLessThan(tubesOf(described("none")).columns.length);
  });
});

describe("the maker", () => {
  it.each(["invented", "none"] as const)("makes a file that our reader opens, for %s", async (people) => {
    const maker = await setUp.load();
    const choices = { people, groups: ["plan"] as const };
    const opened = openPackage(await writeBook(maker.describe(choices, AS_OF)));
    if (isRefusal(opened)) throw new Error(opened.refused);
    expect(opened.tables.map(({ name }) => name)).toEqual(
      expect.arrayContaining([tableNames.tubes, tableNames.changes]),
    );
    expect(setUp.fileName(choices)).toMatch(people === "invented" ? /^Invented/ : /^Caseload\.xlsx$/);
  });
});
