/** Add columns on the embedded grid's real engine: what stands in the cells is what the preview said. */
import type { IWorkbookData } from "@univerjs/core";
import { afterEach, describe, expect, it } from "vitest";
import { addColumns } from "../../../taskpane/actions/add-columns";
import type { AddColumnsPlan } from "../../../taskpane/actions/add-columns/interface";
import { parseArea } from "../../../taskpane/workbook/area";
import { GridWorkbookPort } from "../../../taskpane/workbook/embedded/workbook";
import type { SheetDescription } from "../../../taskpane/workbook/fake/description";
import { day } from "../../../src/worksheet/dates";
import { CellError } from "../../../src/worksheet/error";
import { described } from "../grid/described";
import { startHeadless } from "../grid/headless";

const TODAY = day("2026-06-01");
const date = (iso: string) => ({ value: day(iso), format: "dd/mm/yyyy" });
const heads = ["Tube #", "Kind (what sort?)", "Size [Fr]", "Last\nchange", "Put in", "Water out", "It's noted"];
/** Invented. */
const people: NonNullable<SheetDescription["rows"]> = [
  ["007", "balloon", 14, date("2026-04-01"), 5, 4.8, "well"],
  ["008", "BGT ", "14FR", date("2025-11-01"), 5, 4, null],
  ["009", "bumper", 15, date("2023-02-01"), null, null, null],
  ["010", "PEG", "12/14", date("2026-03-01"), 5, null, null],
  ["011", null, 12, null, 5, 0, null],
  ["012", "Balloon", null, "2026-03-05", 5, 4.4, "x"],
  ["013", "balloon", 4.7, date("2052-03-01"), 5, 5, null],
  ["014", "*", 12, date("2026-03-01"), 5, 7, null],
  ["015", "1/2", 10, date("2026-05-01"), 5, 5, null],
];
const TABLE: SheetDescription = {
  name: "Adults",
  rows: [["Invented"], [], heads, ...people],
  tables: [{ name: "Caseload", area: "A3:G12" }],
};
const PLAIN: SheetDescription = { name: "Adults", rows: [["Invented"], [], heads, ...people] };

const engines: ReturnType<typeof startHeadless>[] = [];
afterEach(() => engines.splice(0).forEach((engine) => engine.univer.dispose()));

async function open(sheet: SheetDescription): Promise<GridWorkbookPort> {
  const engine = startHeadless();
  engines.push(engine);
  const workbook = new GridWorkbookPort(engine, TODAY);
  const { snapshot, facts } = described({ sheets: [sheet] });
  workbook.load(snapshot as unknown as Partial<IWorkbookData>, facts);
  const { sheets } = await workbook.overview();
  await workbook.reveal({ sheet: sheets[0]!.id, area: parseArea("B5")! });
  return workbook;
}

describe.each([
  ["a table with odd column names", TABLE],
  ["a plain list", PLAIN],
])("columns added to %s", (_, sheet) => {
  it("show what was promised", async () => {
    const workbook = await open(sheet);
    const survey = await addColumns.survey(workbook, { today: TODAY });
    const plan = addColumns.plan(survey, {
      recipes: ["changeDue", "atTheLatest", "change", "balloon", "sizeMm"],
      columns: { ...survey.proposal.columns, kind: 1, size: 2, last: 3, putIn: 4, out: 5 },
      kinds: {
        from: "words",
        words: {
          balloon: "balloon gastrostomy",
          bgt: "gastrojejunal",
          bumper: "bumper adult",
          "1/2": "balloon jejunostomy",
        },
      },
      numbers: {},
      lengths: [],
    }) as AddColumnsPlan;
    expect(plan.outcome).toBe("planned");
    const signal = new AbortController().signal;
    const receipt = await workbook.apply(plan.change, { report: () => undefined, signal });
    expect(receipt).toMatchObject({ outcome: "done" });

    const area = { ...plan.place.area, top: plan.place.area.top + 1, rows: people.length };
    const settled = async () => (await workbook.read({ sheet: plan.place.sheet, area }, ["values"])).values!;
    let values = await settled();
    for (let tries = 0; tries < 60 && values.some((row) => row.includes(null)); tries++) {
      await new Promise((resolve) => setTimeout(resolve, 50));
      values = await settled();
    }
    const shown = values.map((row) => row.map((value) => (value instanceof CellError ? value.code : value)));
    // By hand: due after 3 months, the limit after 6 (bumper 24); 14 Fr are 4.67 mm.
    expect(shown.map((row) => row.map((v) => (typeof v === "number" && v < 100 ? Number(v.toFixed(2)) : v)))).toEqual([
      [day("2026-07-01"), day("2026-10-01"), "later", 4.67, "as filled"],
      [day("2026-02-01"), day("2026-05-01"), "past limit", 4.67, "low"],
      ["no set change", day("2025-02-01"), "past limit", 5, "not measured"],
      ["kind not known", "kind not known", "kind not known", "#VALUE!", "not measured"],
      ["no date", "no date", "no date", 4, "empty"],
      [day("2026-06-05"), day("2026-09-05"), "due soon", "", "low"],
      [day("2052-06-01"), day("2052-09-01"), "check date", 1.57, "as filled"],
      ["kind not known", "kind not known", "kind not known", 4, "more than put in"],
      [day("2026-08-01"), day("2026-11-01"), "later", 3.33, "as filled"],
    ]);
    const words = (column: number) =>
      Object.fromEntries(plan.columns[column]!.counts.map(({ word, rows }) => [word, rows]));
    const counted = (column: number) =>
      shown.reduce<Record<string, number>>((sum, row) => {
        const word = String(row[column]);
        return { ...sum, [word]: (sum[word] ?? 0) + 1 };
      }, {});
    expect(counted(2)).toEqual(words(2));
    expect(counted(4)).toEqual(words(4));
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
  });
});
